package platecall.day;

import java.util.List;
import java.util.Optional;

/**
 * A dish wanted by a setup.
 *
 * @param setup the setup's id
 * @param dish the dish's id
 * @param stage the step of the dish after which it is wanted (raw, half done, finished)
 * @param platesPerTake plates in front of the camera at a time, at least 1
 * @param use how takes use them up
 * @param part what the plates are for
 * @param eatenBy ids of the cast who eat of it; may be empty
 * @param copies number of copies if the stylist fixed it, at least 1
 * @param looksWeight how much a minute outside the peak counts, at least 0
 * @param extraLooks copies wanted whole beside those that takes use up, 0 to 100: one for each still photograph, one for
 *     each that is held back until release; the last ones of those that are made
 */
public record Need(
        String setup,
        String dish,
        String stage,
        int platesPerTake,
        Use use,
        Part part,
        List<String> eatenBy,
        Optional<Integer> copies,
        int looksWeight,
        int extraLooks) {

    public Need {
        Demand.text(setup, "setup");
        Demand.text(dish, "dish");
        Demand.text(stage, "stage");
        Demand.that(platesPerTake >= 1 && platesPerTake <= 100, "plates per take must be 1 to 100", platesPerTake);
        eatenBy = List.copyOf(eatenBy);
        copies.ifPresent(count -> Demand.that(count >= 1 && count <= 1000, "copies must be from 1 to 1000", count));
        Demand.that(looksWeight >= 0 && looksWeight <= 1000, "looks weight must be from 0 to 1000", looksWeight);
        Demand.that(extraLooks >= 0 && extraLooks <= 100, "extra looks must be from 0 to 100", extraLooks);
    }

    /** A need without extra looks. */
    public Need(
            String setup,
            String dish,
            String stage,
            int platesPerTake,
            Use use,
            Part part,
            List<String> eatenBy,
            Optional<Integer> copies,
            int looksWeight) {
        this(setup, dish, stage, platesPerTake, use, part, eatenBy, copies, looksWeight, 0);
    }

    /** What tells this need from all others: {@code setup/dish/stage/part}. */
    public String key() {
        return setup + "/" + dish + "/" + stage + "/" + part.word();
    }
}
