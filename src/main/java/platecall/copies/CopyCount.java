package platecall.copies;

import java.util.List;
import java.util.Optional;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.units.Money;

/**
 * How many copies of one need are made, and what speaks for it.
 *
 * @param setup the setup that wants it
 * @param need what is wanted
 * @param chosen copies to make, 1 or more
 * @param basis where the number comes from
 * @param why the same in one sentence
 * @param table the choices, one more copy a row, {@code chosen} among them
 */
public record CopyCount(Setup setup, Need need, int chosen, Basis basis, String why, List<Row> table) {

    /** Where a number comes from. */
    public enum Basis {
        FIXED_BY_HAND,
        TAKES_AT_WORST,
        CRITICAL_RATIO,
        FOOD_BUDGET
    }

    /**
     * One choice.
     *
     * @param copies copies to make
     * @param chanceOfRunningOut chance that more are needed, 0 to 1
     * @param waitingMinutes minutes that the crew waits on average for copies made late
     * @param food food money of so many copies
     * @param expectedCost these copies, and for each missing one on average its waiting crew, food and hands; empty if the
     *     day gives no crew cost
     */
    public record Row(
            int copies, double chanceOfRunningOut, double waitingMinutes, Money food, Optional<Money> expectedCost) {}

    public CopyCount {
        table = List.copyOf(table);
    }

    /** Food money of the chosen number. */
    public Money food() {
        return chosenRow().food();
    }

    /** The row of the chosen number. */
    public Row chosenRow() {
        return table.stream().filter(row -> row.copies() == chosen).findFirst().orElseThrow();
    }
}
