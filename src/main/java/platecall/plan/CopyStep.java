package platecall.plan;

import java.util.Optional;

/**
 * What is done with one copy at one step, by which the works of several plans of a day are told to be the same.
 *
 * @param copy the copy's id
 * @param step the step's id; empty for the way to camera
 */
public record CopyStep(String copy, Optional<String> step) {

    /** A step of the recipe, by its id. */
    public static CopyStep of(String copy, String step) {
        return new CopyStep(copy, Optional.of(step));
    }

    public static CopyStep toCamera(String copy) {
        return new CopyStep(copy, Optional.empty());
    }
}
