package platecall.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static platecall.day.TestDays.at;
import static platecall.day.TestDays.span;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Happening;
import platecall.day.Happening.What;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.day.Trouble;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.plan.TestPlans;
import platecall.units.Moment;
import platecall.units.Span;

/** All by hand: Ana shapes two buns, puts them in one after the other and plates them; Ben makes tea in between. */
class SoFarTest {

    private final TestDays parts = new TestDays()
            .place("kitchen", place -> {})
            .person("Ana", person -> {})
            .person("Ben", person -> {})
            .station("oven", Station.Kind.OVEN, 1, station -> {})
            .setup("S1", "11:00", setup -> setup.takes(2))
            .dish("bun", dish -> {})
            .need("S1", "bun", "plate", need -> need.copies(2))
            .step("bun", "shape", 10, step -> step.hands = 1)
            .step("bun", "bake", 20, step -> {
                step.after("shape").uses("oven", 1);
                step.hands = 1;
                step.handsFirst = Optional.of(2);
                step.handsLast = Optional.of(1);
                step.oven = Optional.of(200);
            })
            .step("bun", "plate", 2, step -> step.after("bake").hands = 1)
            .dish("tea", dish -> {})
            .need("S1", "tea", "pour", need -> need.copies(1))
            .step("tea", "pour", 5, step -> step.hands = 1);
    private final Day day = parts.build();
    private final Plan plan = TestPlans.of(day)
            .step("bun", "shape", 1, "10:00-10:10", work -> work.by("Ana"))
            .step(
                    "bun",
                    "bake",
                    1,
                    "10:10-10:30",
                    work -> work.on("oven", 1)
                            .at(200)
                            .hands("Ana", "10:10-10:12")
                            .hands("Ana", "10:29-10:30"))
            .step("bun", "shape", 2, "10:12-10:22", work -> work.by("Ana"))
            .step("tea", "pour", 1, "10:20-10:25", work -> work.by("Ben"))
            .step(
                    "bun",
                    "bake",
                    2,
                    "10:30-10:50",
                    work -> work.on("oven", 1)
                            .at(200)
                            .hands("Ana", "10:30-10:32")
                            .hands("Ana", "10:49-10:50"))
            .step("bun", "plate", 1, "10:32-10:34", work -> work.by("Ana"))
            .step("bun", "plate", 2, "10:50-10:52", work -> work.by("Ana"))
            .meal("Ben", "10:30-11:00")
            .build();

    private final List<Trouble> troubles = new ArrayList<>();

    private SoFar by(String now, Happening... happenings) {
        return SoFar.of(day, plan, at(now), Arrays.asList(happenings), "happenings", troubles);
    }

    private static Happening happening(What what, String dish, Integer number, String step, String time) {
        return new Happening(
                what,
                Optional.empty(),
                Optional.of(dish),
                Optional.empty(),
                Optional.ofNullable(number),
                Optional.ofNullable(step),
                Optional.empty(),
                Optional.ofNullable(time).map(TestDays::at));
    }

    private static Happening meal(What what, String person, String time) {
        return new Happening(
                what,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(person),
                Optional.ofNullable(time).map(TestDays::at));
    }

    private static List<String> told(List<Work> works) {
        return works.stream()
                .map(work -> work.step() + " "
                        + work.copies().stream().map(SoFarTest::number).toList() + " " + clock(work.span()))
                .toList();
    }

    private static String number(String copy) {
        return copy.substring(copy.indexOf('#') + 1);
    }

    private static String clock(Span span) {
        return clock(span.start()) + "-" + clock(span.end());
    }

    private static String clock(Moment moment) {
        return moment.in(TestDays.ZONE).toLocalTime().toString();
    }

    private static String atCamera(SoFar soFar, String copy) {
        return soFar.carriedOn().work().stream()
                .filter(work -> work.copies().contains(copy))
                .map(work -> work.span().end())
                .max(Moment::compareTo)
                .map(SoFarTest::clock)
                .orElse("never");
    }

    @Test
    void withoutAWordAllWentAsPlanned() {
        SoFar soFar = by("10:21");
        assertThat(told(soFar.begun()))
                .containsExactly(
                        "shape [1] 10:00-10:10",
                        "bake [1] 10:10-10:30",
                        "shape [2] 10:12-10:22",
                        "pour [1] 10:20-10:25");
        assertThat(soFar.breaks()).isEmpty();
        assertThat(soFar.carriedOn().work().stream().map(Work::span))
                .containsExactlyInAnyOrderElementsOf(
                        plan.work().stream().map(Work::span).toList());
        assertThat(by("10:00").begun()).isEmpty();
        assertThat(by("12:00").begun()).hasSize(7);
    }

    /** Five minutes more for the first shape: put in at 10:15, so the second is shaped from 10:17 to 10:27, and all else follows. */
    @Test
    void whatTakesLongerHoldsUpWhatComesAfterItInItsRecipeAndWithItsHands() {
        SoFar soFar = by("10:20", happening(What.ENDED, "bun", 1, "shape", "10:15"));
        assertThat(told(soFar.begun()))
                .containsExactly("shape [1] 10:00-10:15", "bake [1] 10:15-10:35", "shape [2] 10:17-10:27");
        assertThat(soFar.begun().get(1).hands())
                .containsExactly(new Hands("Ana", span("10:15-10:17")), new Hands("Ana", span("10:34-10:35")));
        assertThat(atCamera(soFar, "S1/bun/plate/hero#1")).isEqualTo("10:39");
        assertThat(atCamera(soFar, "S1/bun/plate/hero#2")).isEqualTo("10:57");
        assertThat(troubles).isEmpty();
    }

    /**
     * The oven holds one. By hand: only its end is told, so the first may have gone in at 10:35, twenty minutes before; but the second
     * would have been in then, until 10:50, and five minutes aren't left for what bakes twenty: it went in as planned, and the second
     * once it was out.
     */
    @Test
    void whatEndedFarLaterBeganAsPlannedIfItsOvenWasFullLater() {
        SoFar soFar = by("10:58", happening(What.ENDED, "bun", 1, "bake", "10:55"));
        assertThat(told(soFar.begun()))
                .contains("bake [1] 10:10-10:55", "bake [2] 10:55-11:15", "plate [1] 10:57-10:59");
        assertThat(troubles).isEmpty();
    }

    /** By hand: it takes five minutes, and Ben, whose meal waits, is free then, so tea that was ready at 10:45 was begun at 10:40. */
    @Test
    void whatEndedFarLaterBeganLaterIfThereWasTimeForIt() {
        assertThat(told(by("10:50", happening(What.ENDED, "tea", 1, "pour", "10:45"), meal(What.WAITS, "Ben", null))
                        .begun()))
                .contains("pour [1] 10:40-10:45");
        assertThat(troubles).isEmpty();
    }

    /** By hand: the first is in from 10:25 to 10:45, and the oven holds one, so the second, to go in at 10:30, hasn't by 10:40. */
    /** Poured in five minutes from 10:20 on: until 10:32 it was begun at 10:27, but that is still to come at 10:26. */
    @Test
    void whatWillEndFarLaterBeganAsPlannedIfItHadNotBegunByNowElse() {
        Happening poured = happening(What.ENDED, "tea", 1, "pour", "10:32");
        assertThat(told(by("10:28", poured).begun())).contains("pour [1] 10:27-10:32");
        assertThat(told(by("10:26", poured).begun())).contains("pour [1] 10:20-10:32");
        assertThat(troubles).isEmpty();
    }

    @Test
    void whatBeganLateHoldsUpWhatWasToComeAfterItOnItsStation() {
        SoFar soFar = by("10:40", happening(What.BEGAN, "bun", 1, "bake", "10:25"));
        assertThat(told(soFar.begun())).contains("bake [1] 10:25-10:45").noneMatch(work -> work.startsWith("bake [2]"));
        assertThat(told(soFar.carriedOn().work())).contains("bake [2] 10:45-11:05");
    }

    /** By hand: in until 10:45 instead of 10:30, when Ana comes back to take it out; meanwhile she makes tea at 10:32 as planned. */
    @Test
    void nobodyStandsBesideWhatStaysInLonger() {
        Plan alone = TestPlans.of(day)
                .step("bun", "shape", 1, "10:00-10:10", work -> work.by("Ana"))
                .step(
                        "bun",
                        "bake",
                        1,
                        "10:10-10:30",
                        work -> work.on("oven", 1)
                                .at(200)
                                .hands("Ana", "10:10-10:12")
                                .hands("Ana", "10:29-10:30"))
                .step("tea", "pour", 1, "10:32-10:37", work -> work.by("Ana"))
                .build();
        List<Happening> longer = List.of(happening(What.ENDED, "bun", 1, "bake", "10:45"));
        assertThat(told(SoFar.of(day, alone, at("10:40"), longer, "", troubles).begun()))
                .containsExactly("shape [1] 10:00-10:10", "bake [1] 10:10-10:45", "pour [1] 10:32-10:37");
    }

    /** The second bun waits: nobody waits for it, and the first goes on. */
    @Test
    void whatWaitsHasNotBegunAndHoldsUpNobodyElse() {
        SoFar soFar = by("10:26", happening(What.WAITS, "bun", 2, "shape", null));
        assertThat(told(soFar.begun()))
                .containsExactly("shape [1] 10:00-10:10", "bake [1] 10:10-10:30", "pour [1] 10:20-10:25");
        // if nobody plans otherwise she shapes it from 10:26 to 10:36, takes the first out until 10:37, puts the second
        // in
        // until 10:39, and plates
        assertThat(atCamera(soFar, "S1/bun/plate/hero#1")).isEqualTo("10:41");
    }

    /** By hand: setup S0, called at 10:30 for one take of ten minutes, is shot at 10:40 and had its bun; both were shaped together. */
    @Test
    void whatWasDoneTogetherWithFoodOfASetupThatIsShotCannotWait() {
        Day two = parts.setup("S0", "10:30", setup -> {})
                .need("S0", "bun", "plate", need -> need.copies(1))
                .build();
        String shot = "S0/bun/plate/hero#1";
        Plan together = TestPlans.of(two)
                .step("bun", "shape", 1, "10:00-10:05", work -> work.by("Ana").and(shot))
                .add(
                        Work.Kind.STEP,
                        "bun",
                        "bake",
                        shot,
                        span("10:05-10:25"),
                        work -> work.on("oven", 1).at(200))
                .add(Work.Kind.STEP, "bun", "plate", shot, span("10:25-10:27"), work -> work.by("Ana"))
                .step(
                        "bun",
                        "bake",
                        1,
                        "10:30-10:50",
                        work -> work.on("oven", 1).at(200))
                .build();
        List<Happening> waits = List.of(happening(What.WAITS, "bun", null, "shape", null));
        SoFar.of(two, together, at("10:39"), waits, "happenings", troubles);
        assertThat(troubles).isEmpty();
        SoFar.of(two, together, at("10:40"), waits, "happenings", troubles);
        assertThat(troubles)
                .extracting(trouble ->
                        trouble.column() + " [" + trouble.value() + "] " + trouble.what() + ". " + trouble.wayOut())
                .containsExactly(
                        "step [shape] can't wait: it is done together with S0/bun/plate/hero#1, and setup S0 is shot by the sheets."
                                + " Maybe a later step, lost if a copy is to be made anew, or a later call.");
        troubles.clear();
        // of two bakes only that for the setup that isn't shot waits
        SoFar later = SoFar.of(
                two,
                together,
                at("10:40"),
                List.of(happening(What.WAITS, "bun", null, "bake", null)),
                "happenings",
                troubles);
        assertThat(told(later.begun())).contains("bake [1] 10:05-10:25").noneMatch(work -> work.contains("10:30"));
        assertThat(troubles).isEmpty();
    }

    /** By hand: Ben, who eats until 11:00, pours tea that can't be poured before 11:05 from then to 11:10 if nobody plans otherwise. */
    @Test
    void whatWaitsUntilATimeDoesNotBeginBefore() {
        SoFar soFar = by("10:26", happening(What.WAITS, "tea", 1, "pour", "11:05"));
        assertThat(troubles).isEmpty();
        assertThat(told(soFar.carriedOn().work())).contains("pour [1] 11:05-11:10");
        assertThat(soFar.notBefore()).isEqualTo(Map.of(CopyStep.of("S1/tea/pour/hero#1", "pour"), at("11:05")));
        assertThat(by("10:26", happening(What.WAITS, "tea", 1, "pour", "10:26")).notBefore())
                .isEmpty();
        by("10:26", happening(What.WAITS, "tea", 1, "pour", "10:25"));
        assertThat(told()).containsExactly("0 is over by now");
        assertThatThrownBy(() -> meal(What.WAITS, "Ben", "10:40"))
                .hasMessage("time must be blank if a meal break waits or a copy is lost");
    }

    /** The call that was moved to 10:30, the noise and the longer wait were not so when the first bun was plated at 10:32. */
    @Test
    void whatTheSheetsSayNowDoesNotChangeWhatWasDone() {
        Day since = parts.setup("S0", "10:30", setup -> setup.silent = true)
                .step("bun", "plate", 2, step -> {
                    step.after("bake");
                    step.least = 10;
                    step.hands = 1;
                    step.noisy = true;
                })
                .build();
        assertThat(since.quietSpans()).containsExactly(span("10:30-10:35"));
        assertThat(told(SoFar.of(since, plan, at("10:40"), List.of(), "", troubles)
                        .begun()))
                .contains("plate [1] 10:32-10:34");
    }

    /** At 10:31 the tea has waited; Ben, who would pour it then until 10:36, comes late to the meal, but it has not begun either. */
    @Test
    void aMealThatBeganStaysAndOneThatWaitsDoesNot() {
        assertThat(by("10:31").breaks()).extracting(Plan.Break::span).containsExactly(span("10:30-11:00"));
        assertThat(by("10:31", meal(What.WAITS, "Ben", null)).breaks()).isEmpty();
        assertThat(by("10:31", meal(What.BEGAN, "Ben", "10:27")).breaks())
                .extracting(Plan.Break::span)
                .containsExactly(span("10:27-10:57"));
    }

    /** By hand: 10:34 is 33 minutes after one meal begins, but 31 before the other does; nobody begins another while at one. */
    @Test
    void aBreakThatIsUnderWayIsTheOneMeantThoughAnotherBeginsNearer() {
        Plan twoMeals = TestPlans.of(day)
                .step("tea", "pour", 1, "12:40-12:45", work -> work.by("Ben"))
                .meal("Ben", "10:01-10:31")
                .meal("Ben", "11:05-11:35")
                .asOf("10:20")
                .build();
        assertThat(SoFar.of(day, twoMeals, at("10:40"), List.of(meal(What.ENDED, "Ben", "10:34")), "", troubles)
                        .breaks())
                .extracting(Plan.Break::span)
                .containsExactly(span("10:01-10:34"));
        assertThat(told()).isEmpty();
        SoFar.of(day, twoMeals, at("10:40"), List.of(meal(What.BEGAN, "Ben", "10:25")), "", troubles);
        assertThat(told()).containsExactly("0 has begun by the plan in hand");
    }

    /** By hand: tea was to be poured until 10:25, but Ben sat down at 10:24, so it was; from 10:22 on it leaves two of five minutes. */
    @Test
    void whoSatDownHadEndedWhatHeWasAtOrIsAsked() {
        SoFar soFar = by("10:26", meal(What.BEGAN, "Ben", "10:24"));
        assertThat(told(soFar.begun())).contains("pour [1] 10:20-10:24");
        assertThat(soFar.breaks()).extracting(Plan.Break::span).containsExactly(span("10:24-10:54"));
        assertThat(told()).isEmpty();
        by("10:26", meal(What.BEGAN, "Ben", "10:22"));
        assertThat(told()).containsExactly("0 leaves 2 min for pour before it, which takes 5 at least");
        troubles.clear();
        by("10:26", happening(What.ENDED, "tea", 1, "pour", "10:25"), meal(What.BEGAN, "Ben", "10:24"));
        assertThat(told()).containsExactly("1 can't be when it began: Ben was still at pour of tea");
    }

    /** By hand: five minutes to camera and four back, so to sit down at 10:38 she was there by 10:34, a minute sooner than planned. */
    @Test
    void whoSatDownWasBackFromCamera() {
        Plan walk = TestPlans.of(day)
                .step("tea", "pour", 1, "10:20-10:25", work -> work.by("Ben"))
                .carry("tea", 1, "10:30-10:35", work -> work.hands("Ana", "10:30-10:39"))
                .meal("Ana", "11:00-11:30")
                .build();
        SoFar soFar = SoFar.of(day, walk, at("10:40"), List.of(meal(What.BEGAN, "Ana", "10:38")), "", troubles);
        assertThat(told(soFar.begun())).containsExactly("pour [1] 10:20-10:25", "carry [1] 10:30-10:34");
        assertThat(soFar.begun().get(1).hands()).containsExactly(new Hands("Ana", span("10:30-10:38")));
        assertThat(told()).isEmpty();
    }

    /** By hand: Ana has put the bun in when she sits down at 10:11, so it went in a minute ahead, at 10:09, and was shaped by then. */
    @Test
    void whoSatDownHadPutIntoTheOvenWhatWasToGoIn() {
        Plan sits = TestPlans.of(day)
                .step("bun", "shape", 1, "10:00-10:10", work -> work.by("Ana"))
                .step(
                        "bun",
                        "bake",
                        1,
                        "10:10-10:30",
                        work -> work.on("oven", 1)
                                .at(200)
                                .hands("Ana", "10:10-10:12")
                                .hands("Ana", "10:29-10:30"))
                .meal("Ana", "11:00-11:30")
                .build();
        SoFar soFar = SoFar.of(day, sits, at("10:15"), List.of(meal(What.BEGAN, "Ana", "10:11")), "", troubles);
        assertThat(told(soFar.begun())).containsExactly("shape [1] 10:00-10:09", "bake [1] 10:09-10:42");
        assertThat(told()).isEmpty();
    }

    /** The bake of the first began at 10:06, so it was shaped by then, though nobody noted it down. */
    @Test
    void whatMustHaveEndedBeforeHasEndedBefore() {
        SoFar soFar = by("10:11", happening(What.BEGAN, "bun", 1, "bake", "10:06"));
        assertThat(told(soFar.begun())).containsExactly("shape [1] 10:00-10:06", "bake [1] 10:06-10:26");
    }

    @Test
    void whatEndedAheadOfItsPlannedMinuteBeganAheadOfIt() {
        SoFar soFar = by("10:18", happening(What.ENDED, "tea", null, "pour", "10:17"));
        assertThat(told(soFar.begun())).contains("pour [1] 10:12-10:17");
    }

    /** Ana has her hands in the second bun until 10:40, but what has begun ends in its time for the new plan to say by whom. */
    @Test
    void whatIsUnderWayIsNotHeldUpByWhatHasNotBegun() {
        SoFar soFar = by("10:29", happening(What.WAITS, "bun", 2, "shape", null));
        assertThat(told(soFar.begun())).contains("bake [1] 10:10-10:30");
    }

    @Test
    void theNextCopyTakesThePlaceOfOneThatIsLost() {
        SoFar soFar = by("10:26", happening(What.LOST, "bun", 1, null, null));
        assertThat(soFar.lost()).containsExactly("S1/bun/plate/hero#1");
        assertThat(soFar.renamed()).isEqualTo(Map.of("S1/bun/plate/hero#2", "S1/bun/plate/hero#1"));
        assertThat(told(soFar.begun()))
                .containsExactly(
                        "shape [] 10:00-10:10", "bake [] 10:10-10:30", "shape [1] 10:12-10:22", "pour [1] 10:20-10:25");
        assertThat(soFar.inHand().copies().stream().map(PlannedCopy::id))
                .containsExactly("S1/bun/plate/hero#1", "S1/tea/pour/hero#1");
        assertThat(soFar.inHand().work().stream()
                        .filter(work ->
                                work.step().equals("plate") && !work.copies().isEmpty()))
                .singleElement()
                .satisfies(work -> assertThat(work.span()).isEqualTo(span("10:50-10:52")));
    }

    @Test
    void oneOfSeveralThatAreLostIsToldByItsNumber() {
        by("10:21", happening(What.LOST, "bun", null, null, null));
        assertThat(troubles)
                .extracting(trouble -> trouble.column() + " " + trouble.what())
                .containsExactly("number would mean 2 copies: S1/bun/plate/hero#1, S1/bun/plate/hero#2");
        troubles.clear();
        // of the second nothing has begun, so the first is meant
        assertThat(by("10:05", happening(What.LOST, "bun", null, null, null)).lost())
                .containsExactly("S1/bun/plate/hero#1");
        assertThat(troubles).isEmpty();
    }

    /** The take of the first is over at 11:05, that of the second, from 11:10 on, is not. */
    @Test
    void aCopyIsMissedOnlyUntilItsTakeIsOver() {
        assertThat(by("11:04", happening(What.LOST, "bun", 1, null, null)).renamed())
                .isEqualTo(Map.of("S1/bun/plate/hero#2", "S1/bun/plate/hero#1"));
        assertThat(troubles).isEmpty();
        SoFar soFar = by("11:06", happening(What.LOST, "bun", 1, null, null));
        assertThat(soFar.lost()).isEmpty();
        assertThat(troubles)
                .extracting(Trouble::what)
                .containsExactly("is not wanted any more: its takes are over by the sheets");
    }

    /** The second is not begun at 10:05, so it has no place to take, and can't be lost. */
    @Test
    void whatHasNotBegunTakesNoPlaceAndCannotBeLost() {
        assertThat(by("10:05", happening(What.LOST, "bun", 1, null, null)).renamed())
                .isEmpty();
        assertThat(troubles).isEmpty();
        by("10:05", happening(What.LOST, "bun", 2, null, null));
        assertThat(troubles).extracting(Trouble::what).containsExactly("can't be lost: nothing of it has begun");
    }

    @Test
    void whatEndsWithTheDayEndsWithinIt() {
        Moment last = day.horizon().end();
        for (int past = 0; past <= 1; past++) {
            Happening end = new Happening(
                    What.ENDED,
                    Optional.empty(),
                    Optional.of("tea"),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of("pour"),
                    Optional.empty(),
                    Optional.of(last.plus(past)));
            SoFar.of(day, plan, last.plus(-1), List.of(end), "", troubles);
        }
        assertThat(told()).containsExactly("0 lies outside the day");
    }

    @Test
    void whatCannotBeInOneRecipeIsTold() {
        by(
                "10:20",
                happening(What.ENDED, "bun", 1, "shape", "10:15"),
                happening(What.BEGAN, "bun", 1, "bake", "10:12"),
                happening(What.WAITS, "bun", 2, "shape", null),
                happening(What.ENDED, "bun", 2, "bake", "10:19"),
                happening(What.BEGAN, "tea", 1, "pour", "10:20"),
                happening(What.ENDED, "tea", 1, "pour", "23:00"));
        assertThat(troubles)
                .extracting(trouble -> trouble.row() + " " + trouble.what())
                .containsExactly(
                        "4 is not before now, as what began must be",
                        "5 lies outside the day",
                        "1 can't have begun then: shape before it had not ended",
                        "3 can't have begun then: shape before it waits");
    }

    /** A plan made at 10:21 knows that the first bun is in until 10:33; only when it comes out can still be told. */
    @Test
    void whatHadBegunWhenThePlanInHandWasMadeIsFact() {
        Plan again = TestPlans.of(day)
                .step("bun", "shape", 1, "10:00-10:13", work -> work.by("Ana"))
                .step(
                        "bun",
                        "bake",
                        1,
                        "10:13-10:33",
                        work -> work.on("oven", 1)
                                .at(200)
                                .hands("Ana", "10:13-10:15")
                                .hands("Ana", "10:32-10:33"))
                .step("bun", "plate", 1, "10:33-10:35", work -> work.by("Ana"))
                .asOf("10:21")
                .build();
        assertThat(told(SoFar.of(day, again, at("10:34"), List.of(), "", troubles)
                        .begun()))
                .containsExactly("shape [1] 10:00-10:13", "bake [1] 10:13-10:33", "plate [1] 10:33-10:35");
        List<Happening> told = List.of(
                happening(What.ENDED, "bun", 1, "bake", "10:40"),
                happening(What.BEGAN, "bun", 1, "bake", "10:14"),
                happening(What.ENDED, "bun", 1, "shape", "10:14"),
                happening(What.WAITS, "bun", 1, "bake", null));
        assertThat(told(SoFar.of(day, again, at("10:34"), told, "", troubles).begun()))
                .containsExactly("shape [1] 10:00-10:13", "bake [1] 10:13-10:40");
        assertThat(told())
                .containsExactly(
                        "1 has begun by the plan in hand",
                        "2 has ended by the plan in hand",
                        "3 has begun by the plan in hand");
    }

    /** Ben's first break, from 10:30 on, was over when the plan in hand was made, so what began at 11:05 is the second one, planned for 13:00. */
    @Test
    void aBreakThatIsOverByThePlanInHandIsNotMeantAnyMore() {
        Plan again = TestPlans.of(day)
                .step("tea", "pour", 1, "10:20-10:25", work -> work.by("Ben"))
                .meal("Ben", "10:30-11:00")
                .meal("Ben", "13:00-13:30")
                .asOf("11:02")
                .build();
        assertThat(SoFar.of(day, again, at("11:20"), List.of(meal(What.BEGAN, "Ben", "11:05")), "", troubles)
                        .breaks())
                .extracting(Plan.Break::span)
                .containsExactly(span("10:30-11:00"), span("11:05-11:35"));
        assertThat(troubles).isEmpty();
    }

    /** Shaped in four minutes, before the kitchen opens by the sheets of now: it was told once, and isn't asked about again. */
    @Test
    void whatHadBegunWhenThePlanInHandWasMadeIsBelieved() {
        Plan again = TestPlans.of(day)
                .step("bun", "shape", 1, "10:00-10:04", work -> work.by("Ana"))
                .step(
                        "bun",
                        "bake",
                        1,
                        "10:04-10:24",
                        work -> work.on("oven", 1).at(200))
                .asOf("10:21")
                .build();
        Day later = parts.with(it -> it.kitchen = List.of(span("10:10-18:00"))).build();
        SoFar.of(later, again, at("10:34"), List.of(happening(What.ENDED, "bun", 1, "bake", "10:30")), "", troubles);
        assertThat(told()).isEmpty();
    }

    private List<String> told() {
        return troubles.stream()
                .map(trouble -> trouble.row() + " " + trouble.what())
                .toList();
    }

    /** Shaping takes 10 min, baking 20 at least; half of it is believed unasked, the kitchen opens at 06:00. */
    @Test
    void whatLeavesFarTooLittleTimeBeforeItIsTold() {
        by("10:30", happening(What.BEGAN, "bun", 1, "bake", "10:05"));
        assertThat(told()).isEmpty();
        by("10:30", happening(What.BEGAN, "bun", 1, "bake", "10:04"));
        assertThat(told()).containsExactly("0 leaves 4 min for shape before it, which takes 10 at least");
        troubles.clear();
        by(
                "10:30",
                happening(What.BEGAN, "bun", 1, "shape", "10:00"),
                happening(What.ENDED, "bun", 1, "plate", "10:12"));
        assertThat(told()).containsExactly("1 leaves 2 min for bake before it, which takes 20 at least");
        troubles.clear();
        by(
                "10:30",
                happening(What.BEGAN, "bun", 1, "bake", "10:05"),
                happening(What.ENDED, "bun", 1, "bake", "10:15"),
                happening(What.ENDED, "bun", 1, "shape", "10:05"),
                happening(What.ENDED, "bun", 1, "plate", "10:17"));
        assertThat(told()).isEmpty();
        by("10:30", happening(What.ENDED, "bun", 1, "bake", "10:19"));
        assertThat(told()).containsExactly("0 would be after 9 min, and it takes 20 at least");
        troubles.clear();
        by("10:30", happening(What.BEGAN, "bun", 1, "bake", "10:12"), happening(What.ENDED, "bun", 1, "bake", "10:21"));
        assertThat(told()).containsExactly("1 would be after 9 min, and it takes 20 at least");
        troubles.clear();
        by("10:30", happening(What.BEGAN, "bun", 1, "bake", "06:09"));
        assertThat(told()).containsExactly("0 would have shape before it begin while the kitchen was closed");
        troubles.clear();
        by("10:30", happening(What.ENDED, "bun", 1, "shape", "06:09"));
        assertThat(told()).containsExactly("0 would have it begin while the kitchen was closed");
    }

    /** Plated by 10:13 the bun was baked by then, which leaves three minutes since it was shaped by 10:10. */
    @Test
    void whatLiesFurtherBackCannotHaveBeenAtTheSameTime() {
        by("10:30", happening(What.BEGAN, "bun", 1, "plate", "10:13"));
        assertThat(told()).containsExactly("0 leaves 3 min for bake before it, which takes 20 at least");
        troubles.clear();
        // a bun that is plated at 10:08 was shaped before it was baked, though neither was told
        by("10:30", happening(What.BEGAN, "bun", 1, "plate", "10:08"));
        assertThat(told()).singleElement().asString().startsWith("0 leaves 1 min for bake before it");
    }

    /** Shaping takes 10 min and comes before both the glaze and the crumbs: two ways lead back to it from the plate. */
    @Test
    void whatTwoWaysLeadBackToIsToldOnce() {
        Day glazed = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "11:00", setup -> setup.takes(1))
                .dish("bun", dish -> {})
                .need("S1", "bun", "plate", need -> need.copies(1))
                .step("bun", "shape", 10, step -> step.hands = 1)
                .step("bun", "glaze", 1, step -> step.after("shape").hands = 1)
                .step("bun", "crumb", 1, step -> step.after("shape").hands = 1)
                .step("bun", "plate", 2, step -> step.after("glaze", "crumb").hands = 1)
                .build();
        Plan planned = TestPlans.of(glazed)
                .step("bun", "shape", 1, "10:00-10:10", work -> work.by("Ana"))
                .step("bun", "glaze", 1, "10:10-10:11", work -> work.by("Ana"))
                .step("bun", "crumb", 1, "10:11-10:12", work -> work.by("Ana"))
                .step("bun", "plate", 1, "10:12-10:14", work -> work.by("Ana"))
                .build();
        Happening early = happening(What.BEGAN, "bun", 1, "plate", "10:05");
        SoFar.of(glazed, planned, at("10:30"), List.of(early), "happenings", troubles);
        assertThat(told()).containsExactly("0 leaves 4 min for shape before it, which takes 10 at least");
    }

    /** What begins by itself may begin while the kitchen is closed: the dough that is left to rise overnight, the kitchen opens at 06:00. */
    @Test
    void nobodyHasToBeThereWhenWhatNeedsNoHandsBegins() {
        Day rising = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "12:00", setup -> {})
                .dish("loaf", dish -> {})
                .need("S1", "loaf", "bake", need -> need.copies(1))
                .step("loaf", "rise", 480, step -> {})
                .step("loaf", "bake", 20, step -> step.after("rise").hands = 1)
                .build();
        Plan overnight = TestPlans.of(rising)
                .step("loaf", "rise", 1, "00:00-08:00", work -> {})
                .step("loaf", "bake", 1, "09:00-09:20", work -> work.by("Ana"))
                .build();
        for (Happening row : List.of(
                happening(What.BEGAN, "loaf", 1, "bake", "09:05"), happening(What.ENDED, "loaf", 1, "rise", "08:05"))) {
            SoFar soFar = SoFar.of(rising, overnight, at("09:30"), List.of(row), "happenings", troubles);
            assertThat(told()).isEmpty();
            assertThat(told(soFar.begun())).hasSize(2);
        }
    }

    /** The oven is off from 10:25 to 10:35: what really was in it then is lost, whenever it was to be there. */
    @Test
    void whatAnOvenCutsOffIsReckonedByWhenItWasInIt() {
        Day off = parts.station(
                        "oven",
                        Station.Kind.OVEN,
                        1,
                        oven -> oven.hours = List.of(span("06:00-10:25"), span("10:35-18:00")))
                .build();
        Happening late = happening(What.BEGAN, "bun", 2, "bake", "10:36");
        Happening early = happening(What.BEGAN, "bun", 2, "bake", "10:24");
        Happening out = happening(What.ENDED, "bun", 1, "bake", "10:22");
        assertThat(SoFar.of(off, plan, at("10:40"), List.of(out, late), "happenings", troubles)
                        .lost())
                .isEmpty();
        assertThat(SoFar.of(off, plan, at("10:40"), List.of(out, early), "happenings", troubles)
                        .lost())
                .containsExactly("S1/bun/plate/hero#2");
    }

    /** Its end alone is known, six minutes early: it began when it was to, and nothing that was before it in the oven or with its hands is later. */
    @Test
    void whatEndedEarlyHoldsUpNothing() {
        SoFar soFar = by("10:55", happening(What.ENDED, "bun", 2, "bake", "10:44"));
        assertThat(told(soFar.begun()))
                .contains("bake [1] 10:10-10:30", "bake [2] 10:30-10:44", "plate [1] 10:32-10:34");
        assertThat(told()).isEmpty();
    }

    @Test
    void oneWorkCannotWaitAndHaveBegunButOthersCanWait() {
        SoFar soFar = by(
                "10:30",
                happening(What.WAITS, "bun", null, "shape", null),
                happening(What.BEGAN, "bun", 1, "shape", "10:02"),
                happening(What.BEGAN, "bun", 1, "bake", "10:13"));
        assertThat(told(soFar.begun()))
                .containsExactly("shape [1] 10:02-10:12", "bake [1] 10:13-10:33", "pour [1] 10:20-10:25");
        assertThat(troubles).isEmpty();
        by("10:30", happening(What.BEGAN, "bun", 1, "shape", "10:02"), happening(What.WAITS, "bun", 1, "shape", null));
        by("10:30", happening(What.WAITS, "tea", 1, "pour", null), happening(What.ENDED, "tea", 1, "pour", "10:26"));
        assertThat(told())
                .containsExactly(
                        "1 waits, but another row tells when it began or ended",
                        "0 waits, but another row tells when it began or ended");
    }

    @Test
    void tellsAllThatDoesNotFitAtOnce() {
        by(
                "10:20",
                happening(What.ENDED, "bunn", 1, "shape", "10:15"),
                happening(What.ENDED, "bun", 1, "shap", "10:15"),
                happening(What.ENDED, "bun", null, "shape", "10:15"),
                happening(What.BEGAN, "bun", 1, "shape", "10:25"),
                happening(What.ENDED, "bun", 3, "shape", "10:15"),
                happening(What.LOST, "bun", 3, null, null),
                meal(What.BEGAN, "Ana", "10:15"),
                meal(What.BEGAN, "Cid", "10:15"),
                happening(What.BEGAN, "bun", 1, "shape", "10:05"),
                happening(What.ENDED, "bun", 1, "shape", "10:05"),
                happening(What.BEGAN, "bun", 1, "shape", "10:04"));
        assertThat(troubles)
                .extracting(trouble -> trouble.row() + " " + trouble.column() + " " + trouble.value() + " "
                        + trouble.what() + ". " + trouble.wayOut())
                .containsExactly(
                        "0 dish bunn is not known. Did you mean bun?",
                        "1 step shap is not known. Did you mean shape?",
                        "2  bun, shape is done 2 times by the plan. Maybe say which, by setup, part and number:"
                                + " S1/bun/plate/hero#1, S1/bun/plate/hero#2.",
                        "3 time 10:25 is not before now, as what began must be. Maybe it ended then, or hasn't begun.",
                        "4  bun, 3, shape is no work of the plan. Maybe leave setup, part or number blank.",
                        "5  bun, 3 is no copy that the plan makes. Maybe leave part or number blank.",
                        "6 person Ana has no meal break in the plan. ",
                        "7 person Cid is not known. Maybe one of: Ana, Ben.",
                        "9 time 10:05 would have it end before it began. Maybe a time is mistyped.",
                        "10  bun, 1, shape is told twice. Maybe remove one of the two.");
    }

    /** By hand: at 10:20 one bun rises in the fridge, one waits there for the oven, one is in the oven, one has yet to be shaped. */
    @Test
    void whatStandsInAStoreThatIsClosedNowIsTold() {
        TestDays bakery = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .station("oven", Station.Kind.OVEN, 1, station -> {})
                .setup("S1", "11:00", setup -> setup.takes(4))
                .dish("bun", dish -> {})
                .need("S1", "bun", "bake", need -> need.copies(4))
                .step("bun", "shape", 5, step -> step.hands = 1)
                .step("bun", "rise", 5, step -> step.after("shape").uses("fridge", 1))
                .step("bun", "bake", 20, step -> step.after("rise").uses("oven", 1))
                .station(
                        "fridge",
                        Station.Kind.FRIDGE,
                        9,
                        station -> station.hours = List.of(TestDays.span("06:00-10:20")));
        Day now = bakery.build();
        Plan buns = TestPlans.of(now)
                .step("bun", "shape", 1, "09:40-09:45", work -> work.by("Ana"))
                .step(
                        "bun",
                        "rise",
                        1,
                        "09:45-09:50",
                        work -> work.on("fridge", 1).then("fridge", 1, "09:50-10:10"))
                .step("bun", "bake", 1, "10:10-10:30", work -> work.on("oven", 1))
                .step("bun", "shape", 2, "10:00-10:05", work -> work.by("Ana"))
                .step(
                        "bun",
                        "rise",
                        2,
                        "10:05-10:10",
                        work -> work.on("fridge", 1).then("fridge", 1, "10:10-10:30"))
                .step("bun", "bake", 2, "10:30-10:50", work -> work.on("oven", 1))
                .step("bun", "shape", 3, "10:10-10:15", work -> work.by("Ana"))
                .step(
                        "bun",
                        "rise",
                        3,
                        "10:17-10:22",
                        work -> work.on("fridge", 1).then("fridge", 1, "10:22-10:50"))
                .step("bun", "bake", 3, "10:50-11:10", work -> work.on("oven", 1))
                .step("bun", "shape", 4, "10:25-10:30", work -> work.by("Ana"))
                .step(
                        "bun",
                        "rise",
                        4,
                        "10:30-10:35",
                        work -> work.on("fridge", 1).then("fridge", 1, "10:35-11:10"))
                .step("bun", "bake", 4, "11:10-11:30", work -> work.on("oven", 1))
                .build();
        assertThat(SoFar.of(now, buns, at("10:19"), List.of(), "happenings", troubles)
                        .warming())
                .isEmpty();
        assertThat(SoFar.of(now, buns, at("10:20"), List.of(), "happenings", troubles)
                        .warming())
                .containsExactly(
                        Map.entry("fridge", new LinkedHashSet<>(List.of("S1/bun/bake/hero#2", "S1/bun/bake/hero#3"))));
        // with their need gone from the sheets the same two stand there for nothing
        Day other = new Day(
                now.facts(),
                now.setups(),
                List.of(),
                now.dishes(),
                now.looks(),
                now.steps(),
                now.ingredients(),
                now.stations(),
                now.circuits(),
                now.people(),
                now.cast(),
                now.places());
        assertThat(SoFar.of(now, buns, at("10:25"), List.of(), "happenings", troubles)
                        .unwanted())
                .isEmpty();
        assertThat(SoFar.of(other, buns, at("10:25"), List.of(), "happenings", troubles)
                        .unwanted())
                .containsExactly(
                        Map.entry("fridge", new LinkedHashSet<>(List.of("S1/bun/bake/hero#2", "S1/bun/bake/hero#3"))));
        // closed from 10:12 to 10:15: bun 2 stood in it, bun 3 came later
        Day again = bakery.station(
                        "fridge",
                        Station.Kind.FRIDGE,
                        9,
                        fridge -> fridge.hours = List.of(span("06:00-10:12"), span("10:15-18:00")))
                .build();
        assertThat(SoFar.of(again, buns, at("10:25"), List.of(), "happenings", troubles)
                        .warming())
                .containsExactly(Map.entry("fridge", new LinkedHashSet<>(List.of("S1/bun/bake/hero#2"))));
        // sheets without the fridge don't tell what it kept
        Day without = bakery.with(days -> days.remove("fridge"))
                .step("bun", "rise", 5, step -> step.after("shape"))
                .build();
        assertThat(SoFar.of(without, buns, at("10:13"), List.of(), "happenings", troubles)
                        .warming())
                .containsExactly(Map.entry("fridge", new LinkedHashSet<>(List.of("S1/bun/bake/hero#2"))));
    }

    /** Bun 1 went in at 10:10, and Ana is to take it out from 10:29 to 10:30. */
    @Test
    void whoGoesHomeIsRelievedOfTheEndOfWhatIsUnderWay() {
        Day early = parts.person("Ana", ana -> ana.shifts = List.of(span("06:00-10:22")))
                .build();
        assertThat(bakers(early)).containsExactly("Ana", "Ben");
        Day late = parts.person("Ana", ana -> ana.shifts = List.of(span("06:00-10:30")))
                .build();
        assertThat(bakers(late)).containsExactly("Ana", "Ana");
        parts.person("Ana", ana -> ana.shifts = List.of(span("06:00-10:22")));
        Day alone = parts.person("Ben", ben -> ben.shifts = List.of(span("06:00-10:29")))
                .build();
        assertThat(bakers(alone)).as("nobody else is there").containsExactly("Ana", "Ana");
        Day unskilled = parts.person("Ben", ben -> {})
                .step("bun", "bake", 20, bake -> {
                    bake.after("shape").uses("oven", 1);
                    bake.hands = 1;
                    bake.handsFirst = Optional.of(2);
                    bake.handsLast = Optional.of(1);
                    bake.skill = Optional.of("baking");
                })
                .build();
        assertThat(bakers(unskilled)).as("Ben can't").containsExactly("Ana", "Ana");
    }

    /** Who has hands on the first bun in the oven, in order of time, as it is known at 10:23. */
    private List<String> bakers(Day now) {
        return SoFar.of(now, plan, at("10:23"), List.of(), "happenings", troubles).begun().stream()
                .filter(work -> work.step().equals("bake"))
                .findFirst()
                .orElseThrow()
                .hands()
                .stream()
                .map(Hands::person)
                .toList();
    }

    /** Bun 1 has waited too long, bun 2 is shaped: it takes the first place. */
    @Test
    void whatCantGoOnLeavesItsPlaceToAnother() {
        SoFar soFar =
                SoFar.of(day, plan, at("10:25"), List.of(), Set.of("S1/bun/plate/hero#1"), "happenings", troubles);
        assertThat(troubles).isEmpty();
        assertThat(soFar.lost()).containsExactly("S1/bun/plate/hero#1");
        assertThat(soFar.renamed()).containsExactly(Map.entry("S1/bun/plate/hero#2", "S1/bun/plate/hero#1"));
        assertThat(soFar.begun().stream()
                        .filter(work -> work.step().equals("shape"))
                        .flatMap(work -> work.copies().stream()))
                .containsExactly("S1/bun/plate/hero#1");
    }

    /** The setup has a bun shaped and one plated, both heroes with number 1: which is lost must be said. */
    @Test
    void twoCopiesAreNotLostByOneRow() {
        Day two = parts.need("S1", "bun", "shape", need -> need.copies(1)).build();
        Plan both = TestPlans.of(two)
                .step("bun", "shape", 1, "10:00-10:10", work -> work.by("Ana"))
                .add(Work.Kind.STEP, "bun", "shape", "S1/bun/shape/hero#1", span("10:10-10:20"), work -> work.by("Ana"))
                .step(
                        "bun",
                        "bake",
                        1,
                        "10:22-10:42",
                        work -> work.on("oven", 1).at(200))
                .step("bun", "plate", 1, "10:42-10:44", work -> work.by("Ana"))
                .copies("S1/bun/plate/hero", 1)
                .build();
        SoFar.of(two, both, at("10:30"), List.of(happening(What.LOST, "bun", 1, null, null)), "happenings", troubles);
        assertThat(troubles)
                .extracting(trouble -> trouble.column() + ": " + trouble.what())
                .containsExactly("step: would mean 2 copies: S1/bun/plate/hero#1, S1/bun/shape/hero#1");
        troubles.clear();
        assertThat(SoFar.of(
                                two,
                                both,
                                at("10:30"),
                                List.of(happening(What.LOST, "bun", 1, "shape", null)),
                                "happenings",
                                troubles)
                        .lost())
                .containsExactly("S1/bun/shape/hero#1");
        assertThat(troubles).isEmpty();
    }

    @Test
    void whatIsInAnOvenThatTheSheetsDontHaveAnyMoreIsLost() {
        Day without = parts.with(days -> days.remove("oven"))
                .step("bun", "bake", 20, bake -> bake.after("shape").hands = 1)
                .build();
        assertThat(SoFar.of(without, plan, at("10:15"), List.of(), "happenings", troubles)
                        .lost())
                .containsExactly("S1/bun/plate/hero#1");
        assertThat(by("10:15").lost()).isEmpty();
    }

    /** What is of no use any more, and what is on its way to camera, needs nobody else, and the first keeps nobody from being of use. */
    @Test
    void onlyWhatIsStillOfUseInTheKitchenIsHandedOver() {
        Day now = parts.person("Ana", ana -> ana.shifts = List.of(span("06:00-10:22")))
                .build();
        assertThat(SoFar.of(
                                now,
                                plan,
                                at("10:23"),
                                List.of(
                                        happening(What.LOST, "bun", 1, null, null),
                                        happening(What.LOST, "bun", 2, null, null)),
                                "happenings",
                                troubles)
                        .begun()
                        .stream()
                        .filter(work -> work.step().equals("bake"))
                        .flatMap(work -> work.hands().stream().map(Hands::person)))
                .containsOnly("Ana");
        Plan carried = TestPlans.of(day)
                .carry("bun", 1, "10:20-10:30", work -> work.by("Ana"))
                .build();
        assertThat(SoFar.of(now, carried, at("10:23"), List.of(), "happenings", troubles).begun().stream()
                        .flatMap(work -> work.hands().stream().map(Hands::person)))
                .containsExactly("Ana");
    }

    /** Ben has taken bun 2 over from Ana at 10:15, in the plan in hand; then it takes until 10:30. */
    @Test
    void whoRelievedSomebodyStaysUntilTheEnd() {
        Plan handedOver = TestPlans.of(day)
                .step(
                        "bun",
                        "shape",
                        2,
                        "10:12-10:22",
                        work -> work.hands("Ana", "10:12-10:15").hands("Ben", "10:15-10:22"))
                .asOf("10:15")
                .build();
        assertThat(SoFar.of(
                                day,
                                handedOver,
                                at("10:17"),
                                List.of(happening(What.ENDED, "bun", 2, "shape", "10:30")),
                                "happenings",
                                troubles)
                        .begun()
                        .get(0)
                        .hands())
                .containsExactly(new Hands("Ana", span("10:12-10:15")), new Hands("Ben", span("10:15-10:30")));
    }

    /** Ana shapes bun 2 from 10:12 to 10:22 and has to go at 10:15. */
    @Test
    void whoGoesInTheMiddleOfSomethingIsRelievedFromThenOn() {
        Day now = parts.person("Ana", ana -> ana.shifts = List.of(span("06:00-10:15")))
                .build();
        assertThat(SoFar.of(now, plan, at("10:14"), List.of(), "happenings", troubles).begun().stream()
                        .filter(work -> work.copies().equals(List.of("S1/bun/plate/hero#2")))
                        .flatMap(work -> work.hands().stream()))
                .containsExactly(new Hands("Ana", span("10:12-10:15")), new Hands("Ben", span("10:15-10:22")));
    }

    @Test
    void whatIsToldForAnotherSetupThanThePlanHasItForIsToldWhere() {
        Day two = parts.setup("S2", "12:00", setup -> {})
                .need("S2", "tea", "pour", need -> need.copies(1))
                .build();
        Happening lost = new Happening(
                What.LOST,
                Optional.of("S2"),
                Optional.of("bun"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        SoFar.of(two, plan, at("10:20"), List.of(lost), "happenings", troubles);
        assertThat(troubles)
                .extracting(trouble -> trouble.what() + ". " + trouble.wayOut())
                .containsExactly("is no copy that the plan makes. Maybe for setup S1.");
    }

    @Test
    void theStepOfALostCopyIsTheStageInWhichItIsWanted() {
        Happening lost = new Happening(
                What.LOST,
                Optional.of("S1"),
                Optional.of("bun"),
                Optional.empty(),
                Optional.of(1),
                Optional.of("shape"),
                Optional.empty(),
                Optional.empty());
        SoFar.of(day, plan, at("10:20"), List.of(lost), "happenings", troubles);
        assertThat(troubles)
                .extracting(trouble ->
                        trouble.column() + " " + trouble.value() + " " + trouble.what() + ". " + trouble.wayOut())
                .containsExactly(
                        "step shape is no stage in which it is wanted, and that is what the step of a lost copy says."
                                + " Maybe plate, or blank.");
    }
}
