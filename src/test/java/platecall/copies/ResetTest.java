package platecall.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static platecall.copies.PieDay.FRESH;
import static platecall.copies.PieDay.need;
import static platecall.copies.PieDay.person;
import static platecall.copies.PieDay.pies;
import static platecall.copies.PieDay.setup;
import static platecall.copies.PieDay.span;
import static platecall.copies.PieDay.station;
import static platecall.copies.PieDay.step;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Station;
import platecall.day.Step;
import platecall.day.Use;

/** All expected values are own calculation from the numbers in {@link PieDay}. */
class ResetTest {

    private final PieDay pieDay = new PieDay();

    private Reset reset(int likely, int worst, Need need) {
        pieDay.setups.clear();
        pieDay.with(setup("1", likely, worst));
        return Reset.of(pieDay.day(), pieDay.setups.get(0), need);
    }

    @Test
    void addsUpTheRecipeTheCarryAndTheWalk() {
        // 10 + 5 rest + 30 + 2 for one copy in the oven + 6, carry 2, walk 7
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(10 + 5 + 32 + 6 + 2 + 7);
        assertThat(reset(3, 6, pies(1)).sameDay()).isTrue();
    }

    @Test
    void bakesAWholeSetButNoMoreThanABatchHolds() {
        assertThat(reset(3, 6, pies(3)).minutes()).isEqualTo(10 + 5 + 36 + 6 + 9);
        assertThat(reset(3, 6, pies(9)).minutes()).isEqualTo(10 + 5 + 38 + 6 + 9);
    }

    @Test
    void endsAtTheWantedStage() {
        Need half = need("1", "pie", "bake", 1, FRESH, Part.HERO, 0);
        Reset reset = reset(3, 6, half);
        assertThat(reset.minutes()).isEqualTo(10 + 5 + 32 + 9);
        assertThat(reset.foodCents()).isEqualTo(250 + 40);
        // 10 min at the mean of 30, 60 and 30 an hour, and a quarter of 5 min
        assertThat(reset.handCents()).isCloseTo((10 + 5 / 4.0) * 4_000 / 60, within(1e-9));
    }

    @Test
    void countsFoodAndHandsOfAWholeCopy() {
        Reset reset = reset(3, 6, pies(1));
        assertThat(reset.foodCents()).isEqualTo(250 + 40 + 110);
        assertThat(reset.handCents()).isCloseTo((10 + 5 / 4.0) * 4_000 / 60 + 6 * 6_000 / 60.0, within(1e-9));
    }

    @Test
    void takesTheLongerOfTwoPaths() {
        pieDay.steps.add(step("pie", "sauce", List.of(), 0, 70, Optional.empty(), "", "counter"));
        pieDay.steps.add(step("pie", "pour", List.of("dress", "sauce"), 4, 1, Optional.empty(), "", "counter"));
        Need poured = need("1", "pie", "pour", 1, FRESH, Part.HERO, 0);
        assertThat(reset(3, 6, poured).minutes()).isEqualTo(70 + 4 + 1 + 9);
        pieDay.kitchenHours = List.of(span(0, 231));
        assertThat(reset(3, 6, poured).sameDay()).isFalse();
        assertThat(reset(3, 6, poured).minutes()).isEqualTo(75 + 9);
    }

    @Test
    void countsTheWaitOnlyFromTheStepsItIsTiedTo() {
        Step plain = step("pie", "pour", List.of("mix"), 20, 1, Optional.empty(), "", "counter");
        pieDay.steps.add(new Step(
                "pie",
                "pour",
                List.of("mix"),
                20,
                Optional.empty(),
                1,
                1,
                1,
                0,
                Optional.empty(),
                1,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                plain.stations(),
                Optional.empty(),
                false,
                Optional.empty(),
                false,
                Optional.empty(),
                List.of("bake")));
        Need poured = need("1", "pie", "pour", 1, FRESH, Part.HERO, 0);
        // the bake ends at 47, 20 after the mix would be 30
        assertThat(reset(3, 6, poured).minutes()).isEqualTo(47 + 1 + 9);
        pieDay.kitchenHours = List.of(span(0, 231));
        assertThat(reset(3, 6, poured).minutes()).isEqualTo(47 + 1 + 9);
    }

    @Test
    void startsWhenTakesGoPastTheLikelyNumber() {
        // likely 3: minute 230; the oven opens at 260, so the bake runs 260-292 instead of 245-277
        pieDay.stations.set(1, station("oven", Station.Kind.OVEN, List.of(span(260, 400))));
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(292 - 230 + 6 + 9);
        assertThat(reset(5, 6, pies(1)).minutes()).isEqualTo(10 + 5 + 32 + 6 + 9);
    }

    @Test
    void startsAtOnceWhereOneSetIsEnough() {
        pieDay.stations.set(1, station("oven", Station.Kind.OVEN, List.of(span(260, 400))));
        Need topped = need("1", "pie", "dress", 1, new Use.ToppedUp(2), Part.HERO, 0);
        Need standIn = need("1", "pie", "dress", 1, FRESH, Part.STAND_IN, 0);
        assertThat(reset(3, 6, topped).minutes()).isEqualTo(292 - 200 + 6 + 9);
        assertThat(reset(3, 6, standIn).minutes()).isEqualTo(292 - 170 + 6 + 9);
    }

    @Test
    void usesAnyStationThatServesAsWell() {
        pieDay.steps.set(0, step("pie", "mix", List.of(), 0, 10, Optional.empty(), "", "bench", "counter"));
        pieDay.stations.add(station("bench", Station.Kind.COUNTER, List.of(span(300, 400))));
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(10 + 5 + 32 + 6 + 9);
        pieDay.stations.set(0, station("counter", Station.Kind.COUNTER, List.of(span(310, 400))));
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(300 - 230 + 10 + 5 + 32 + 6 + 9);
    }

    @Test
    void waitsForSomebodyWithTheSkill() {
        pieDay.people.set(1, person("Bo", List.of("styling"), 6_000, span(300, 306)));
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(306 - 230 + 9);
        pieDay.people.set(1, person("Bo", List.of("styling"), 6_000, span(300, 305)));
        assertThat(reset(3, 6, pies(1)).sameDay()).isFalse();
    }

    @Test
    void needsAsManyPeopleAsPairsOfHands() {
        Step mix = pieDay.steps.get(0);
        pieDay.steps.set(
                0,
                new Step(
                        "pie",
                        "mix",
                        List.of(),
                        0,
                        Optional.empty(),
                        10,
                        10,
                        10,
                        0,
                        Optional.empty(),
                        3,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        mix.stations(),
                        Optional.empty(),
                        false,
                        Optional.empty(),
                        false,
                        Optional.empty(),
                        List.of()));
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(62);
        assertThat(reset(3, 6, pies(1)).handCents()).isCloseTo((3 * 10 + 5 / 4.0) * 4_000 / 60 + 600, within(1e-9));
        pieDay.people.set(2, person("Cy", List.of(), 3_000, span(240, 400)));
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(72);
    }

    @Test
    void needsHandsOnlyWhereTheyAreOn() {
        pieDay.people.clear();
        pieDay.people.add(person("Ada", List.of("styling"), 0, span(0, 248), span(275, 400)));
        // mix 230-240, hands on 245-248 and 275-277
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(62);
        pieDay.people.set(0, person("Ada", List.of("styling"), 0, span(0, 247), span(275, 400)));
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(275 + 32 - 230 + 6 + 9);
    }

    @Test
    void letsAStepRunUpToTheHandsItsEndNeeds() {
        pieDay.steps.add(new Step(
                "pie",
                "rest",
                List.of(),
                0,
                Optional.empty(),
                100,
                100,
                100,
                0,
                Optional.empty(),
                1,
                Optional.empty(),
                Optional.empty(),
                Optional.of(4),
                List.of(),
                Optional.empty(),
                false,
                Optional.empty(),
                false,
                Optional.empty(),
                List.of()));
        pieDay.people.clear();
        pieDay.people.add(person("Ada", List.of(), 3_000, span(0, 300), span(350, 400)));
        Need rested = need("1", "pie", "rest", 1, FRESH, Part.HERO, 0);
        // from 230 it would end in 326-330, when nobody is there; the hands are on in 350-354
        assertThat(reset(3, 6, rested).minutes()).isEqualTo(354 - 230 + 9);
        assertThat(reset(3, 6, rested).handCents()).isCloseTo(4 * 3_000 / 60.0, within(1e-9));
    }

    @Test
    void letsAStepRunUpToTheHandsItsEndNeedsThoughItsStartNeedsThemToo() {
        Step plain = step("pie", "rest", List.of(), 0, 120, Optional.empty(), "", "counter");
        pieDay.steps.add(new Step(
                "pie",
                "rest",
                List.of(),
                0,
                Optional.empty(),
                120,
                120,
                120,
                0,
                Optional.empty(),
                1,
                Optional.empty(),
                Optional.of(5),
                Optional.of(5),
                plain.stations(),
                Optional.empty(),
                false,
                Optional.empty(),
                false,
                Optional.empty(),
                List.of()));
        pieDay.people.clear();
        pieDay.people.add(person("Ada", List.of(), 3_000, span(0, 290), span(355, 600)));
        Need rested = need("1", "pie", "rest", 1, FRESH, Part.HERO, 0);
        // from 230 its end falls in 345-350, when nobody is there; from 240 in 355-360
        assertThat(reset(3, 6, rested).minutes()).isEqualTo(360 - 230 + 9);
    }

    @Test
    void waitsUntilTheEndOfTheDayIfNoneCanBeMade() {
        pieDay.kitchenHours = List.of(span(0, 230));
        Reset reset = reset(3, 30, pies(1));
        // the last take at worst ends the day at 200 + 300
        assertThat(reset.minutes()).isEqualTo(500 - 230 + 9);
        assertThat(reset.sameDay()).isFalse();
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(62);
    }

    @Test
    void waitsForTheNextDayOfKitchenHours() {
        pieDay.kitchenHours = List.of(span(0, 230), span(1_640, 2_000));
        assertThat(reset(3, 6, pies(1)).minutes()).isEqualTo(1_640 - 230 + 62);
    }

    @Test
    void takesAMinuteAtLeast() {
        pieDay.dishes.add(new platecall.day.Dish(
                "air",
                "air",
                platecall.day.Look.of(platecall.day.Look.Kind.STEADY),
                true,
                platecall.units.Money.ZERO,
                true,
                0,
                Optional.empty(),
                false,
                0,
                1,
                0,
                0));
        Reset reset = reset(3, 6, need("1", "air", "bought", 1, FRESH, Part.HERO, 0));
        assertThat(reset).isEqualTo(new Reset(1, true, 0, 0));
    }

    @Test
    void paysNothingWhereNobodyHasTheSkill() {
        pieDay.people.remove(1);
        assertThat(reset(3, 6, pies(1)).handCents()).isCloseTo((10 + 5 / 4.0) * 3_000 / 60, within(1e-9));
    }
}
