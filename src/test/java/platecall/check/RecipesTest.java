package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RecipesTest {

    @Test
    void aCircleOfStepsIsPrintedAsTheChain() {
        assertThat(Sheets.toast().change("steps", "cut", "after=plate").troubles())
                .containsExactly("steps 0 after: [plate] closes a circle: cut -> bake -> plate -> cut. "
                        + "Maybe cut need not wait for plate.");
    }

    @Test
    void aStepAfterItselfIsACircleOfOne() {
        assertThat(Sheets.toast().change("steps", "bake", "after=cut; bake").troubles())
                .containsExactly("steps 1 after: [bake] closes a circle: bake -> bake. Maybe leave it out.");
    }

    @Test
    void aCircleThroughAnyTimeAfterIsFoundToo() {
        assertThat(Sheets.toast()
                        .change("steps", "bake", "any time after=plate")
                        .troubles())
                .containsExactly("steps 1 any time after: [plate] closes a circle: bake -> plate -> bake. "
                        + "Maybe bake need not wait for plate.");
    }

    @Test
    void twoCirclesApartAreTwoTroubles() {
        Sheets sheets = Sheets.toast()
                .change("steps", "cut", "after=bake")
                .add("steps", "step=whip", "dish=toast", "minutes likely=2", "after=chill")
                .add("steps", "step=chill", "dish=toast", "minutes likely=2", "after=whip");

        assertThat(sheets.troubles())
                .containsExactly(
                        "steps 0 after: [bake] closes a circle: cut -> bake -> cut. Maybe cut need not wait for bake.",
                        "steps 3 after: [chill] closes a circle: whip -> chill -> whip. "
                                + "Maybe whip need not wait for chill.");
    }

    @Test
    void aWantedDishWithoutStepsIsToldOnce() {
        Sheets sheets = Sheets.toast()
                .add("dishes", "dish=egg", "look=steady")
                .add("needs", "setup=1", "dish=egg", "stage=boiled");

        assertThat(sheets.troubles())
                .containsExactly("dishes 1 dish: [egg] has no steps. "
                        + "Maybe add a step to sheet steps that plates it, with its minutes.");
    }

    @Test
    void aMostWaitShorterThanTheStepsBetweenCantBeKept() {
        Sheets sheets = Sheets.toast()
                .add("steps", "step=rest", "dish=toast", "after=bake", "minutes likely=30")
                .change("steps", "plate", "after=bake; rest", "most wait=5");

        assertThat(sheets.troubles())
                .containsExactly(
                        "steps 2 most wait: [5] can't be kept: between bake and plate lie 30 minutes of other steps "
                                + "and waits. Maybe 30, or put the other step before bake.");
    }

    @Test
    void aMostWaitOfExactlyTheStepsBetweenCanBeKept() {
        Sheets sheets = Sheets.toast()
                .add("steps", "step=rest", "dish=toast", "after=bake", "minutes likely=30")
                .change("steps", "plate", "after=bake; rest", "most wait=30");

        assertThat(sheets.troubles()).isEmpty();
    }

    @Test
    void mostWaitsThatContradictEachOtherAreToldWithTheMissingMinutes() {
        Sheets sheets = Sheets.toast()
                .add("steps", "step=rest", "dish=toast", "after=cut", "minutes likely=30")
                .change("steps", "plate", "after=bake; rest", "most wait=5")
                .change("steps", "bake", "most wait=5");

        assertThat(sheets.troubles())
                .containsExactly("steps 1 most wait: [5] can't be kept beside the other most waits of dish toast: "
                        + "5 minutes are missing. Maybe 10.");
    }

    /** Cut for 10 minutes, then baked for 15, 25 or 35 while the rest takes 30, and plated at most 5 later. */
    @Test
    void aLargerBatchMayFillTheTimeThatAMostWaitDoesNotAllow() {
        Sheets sheets = Sheets.toast()
                .add("steps", "step=rest", "dish=toast", "after=cut", "minutes likely=30")
                .change("steps", "bake", "minutes likely=5", "minutes per copy=10", "batch=3", "most wait=0")
                .change("steps", "plate", "after=bake; rest", "most wait=5");

        assertThat(sheets.troubles()).isEmpty();
        assertThat(sheets.change("steps", "bake", "batch=1").troubles())
                .containsExactly("steps 1 most wait: [0] can't be kept beside the other most waits of dish toast: "
                        + "10 minutes are missing. Maybe 10.");
    }

    @Test
    void waitsThatNoSingleCopyMeetsTogetherDoNotContradictEachOther() {
        Sheets sheets = Sheets.toast()
                .add("steps", "step=rest", "dish=toast", "after=bake", "minutes likely=30")
                .add("needs", "setup=1", "dish=toast", "stage=rest", "part=insert")
                .change("steps", "plate", "most wait=5");

        assertThat(sheets.troubles()).isEmpty();
    }
}
