package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.oneDish;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Rule;
import platecall.plan.TestPlans;

/** A plan of a day under way answers for what was still to come when it was made, not for what had happened. */
class UnderWayRulesTest {

    private static TestPlans cooked(Day day, String fromTo) {
        return TestPlans.of(day).step("stew", "cook", 1, fromTo, work -> work.by("Ana"));
    }

    @Test
    void whatHasBegunTakesTheMinutesThatItTakes() {
        Day day = oneDish(10, step -> step.hands = 1).build();
        assertThat(totals(day, cooked(day, "09:00-09:25"))).isEqualTo(Map.of(Rule.DURATION, 15L));
        assertThat(totals(day, cooked(day, "09:00-09:25").asOf("09:01"))).isEmpty();
        assertThat(totals(day, cooked(day, "09:00-09:25").asOf("09:00"))).isEqualTo(Map.of(Rule.DURATION, 15L));
    }

    /** Three stews by Ana from 9:00, 9:05 and 9:08, ten minutes each. */
    @Test
    void handsDoOneThingAtATimeFromNowOn() {
        Day day = oneDish(10, step -> step.hands = 1)
                .setup("S1", "10:00", setup -> setup.takes(3))
                .need("S1", "stew", "cook", need -> need.copies(3))
                .build();
        TestPlans plan = cooked(day, "09:00-09:10")
                .step("stew", "cook", 2, "09:05-09:15", work -> work.by("Ana"))
                .step("stew", "cook", 3, "09:08-09:18", work -> work.by("Ana"));
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.HANDS, 12L));
        // of the first and second, at once from 9:05 to 9:10, one minute is left, then the third is added
        assertThat(totals(day, plan.asOf("09:07"))).isEqualTo(Map.of(Rule.HANDS, 10L));
        assertThat(totals(day, plan.asOf("09:15"))).isEmpty();
    }

    @Test
    void stationsServeWhatTheyCanFromNowOn() {
        Day day = oneDish(10, step -> step.uses("hob", 1))
                .station("hob", Station.Kind.BURNERS, 1, station -> {})
                .setup("S1", "10:00", setup -> setup.takes(2))
                .need("S1", "stew", "cook", need -> need.copies(2))
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("stew", "cook", 1, "09:00-09:10", work -> work.on("hob", 1))
                .step("stew", "cook", 2, "09:04-09:14", work -> work.on("hob", 1));
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.CAPACITY, 6L));
        assertThat(totals(day, plan.asOf("09:08"))).isEqualTo(Map.of(Rule.CAPACITY, 2L));
    }

    /** Mixed by 9:05 and cooked at 9:30; the fridge is off from 9:10 to 9:20, or from 9:10 on for good. */
    @Test
    void whatStoodInAStoreThatIsClosedNowStaysThereUntilItOpens() {
        TestDays days = oneDish(10, step -> step.after("mix"))
                .step("stew", "mix", 5, step -> step.waitsIn = Optional.of("fridge"))
                .dish("stew", dish -> dish.storage = 1);
        Day off = days.station(
                        "fridge",
                        Station.Kind.FRIDGE,
                        1,
                        station -> station.hours = List.of(TestDays.span("06:00-09:10"), TestDays.span("09:20-18:00")))
                .build();
        Day broken = days.station(
                        "fridge",
                        Station.Kind.FRIDGE,
                        1,
                        station -> station.hours = List.of(TestDays.span("06:00-09:10")))
                .build();
        TestPlans plan = mixed(off, "09:00-09:05", "09:05-09:30");
        assertThat(totals(off, plan)).isEqualTo(Map.of(Rule.OPEN, 10L));
        assertThat(totals(off, plan.asOf("09:09"))).isEqualTo(Map.of(Rule.OPEN, 10L));
        assertThat(totals(off, plan.asOf("09:12"))).isEmpty();
        assertThat(totals(broken, plan.asOf("09:12"))).isEmpty();
        // put in while it is closed
        assertThat(totals(off, mixed(off, "09:09-09:14", "09:14-09:30").asOf("09:12")))
                .isEqualTo(Map.of(Rule.OPEN, 6L));
    }

    private static TestPlans mixed(Day day, String mixed, String waits) {
        return TestPlans.of(day)
                .step("stew", "mix", 1, mixed, work -> work.then("fridge", 1, waits))
                .step("stew", "cook", 1, "09:30-09:40", work -> {});
    }

    /** Six amps each on a circuit of ten: two more than there are while both are on. */
    @Test
    void circuitsCarryWhatTheyCanFromNowOn() {
        Day day = oneDish(10, step -> step.uses("hob", 1))
                .circuit("A", 10, 1)
                .station("hob", Station.Kind.BURNERS, 2, station -> {
                    station.amps = 6;
                    station.circuit = Optional.of("A");
                })
                .setup("S1", "10:00", setup -> setup.takes(2))
                .need("S1", "stew", "cook", need -> need.copies(2))
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("stew", "cook", 1, "09:00-09:10", work -> work.on("hob", 1))
                .step("stew", "cook", 2, "09:04-09:14", work -> work.on("hob", 1));
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.CIRCUIT, 12L));
        assertThat(totals(day, plan.asOf("09:08"))).isEqualTo(Map.of(Rule.CIRCUIT, 4L));
    }

    @Test
    void aBreakIsKeptFreeFromNowOn() {
        Day day = oneDish(10, step -> step.hands = 1).build();
        TestPlans plan = cooked(day, "09:00-09:10").meal("Ana", "09:04-09:34");
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.HANDS, 6L));
        assertThat(totals(day, plan.asOf("09:08"))).isEqualTo(Map.of(Rule.HANDS, 2L));
        assertThat(totals(day, plan.asOf("09:10"))).isEmpty();
    }

    /** Away from 9:20 on, in a break until 9:34; a work from 9:30 on would be while she is away, too. */
    @Test
    void aBreakThatHasBegunMayGoOnOffShift() {
        Day day = oneDish(10, step -> step.hands = 1)
                .person("Ana", person -> person.away = List.of(new Absence.During(TestDays.span("09:20-12:00"))))
                .build();
        TestPlans plan = cooked(day, "08:50-09:00").meal("Ana", "09:04-09:34");
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.SHIFT, 14L));
        assertThat(totals(day, plan.asOf("09:04"))).isEqualTo(Map.of(Rule.SHIFT, 14L));
        assertThat(totals(day, plan.asOf("09:05"))).isEmpty();
        assertThat(totals(day, cooked(day, "09:15-09:25").asOf("09:16"))).isEqualTo(Map.of(Rule.SHIFT, 5L));
    }

    @Test
    void anOvenHasTheTemperatureForWhatIsStillToCome() {
        Day day = oneDish(10, step -> {
                    step.uses("oven", 1);
                    step.oven = Optional.of(200);
                })
                .with(it -> it.kitchen = List.of(TestDays.span("08:50-18:00")))
                .station("oven", Station.Kind.OVEN, 1, station -> {})
                .build();
        TestPlans plan = TestPlans.of(day)
                .step(
                        "stew",
                        "cook",
                        1,
                        "09:00-09:10",
                        work -> work.on("oven", 1).at(200));
        assertThat(totals(day, plan)).containsOnlyKeys(Rule.OVEN);
        assertThat(totals(day, plan.asOf("09:00"))).containsOnlyKeys(Rule.OVEN);
        assertThat(totals(day, plan.asOf("09:01"))).isEmpty();
    }

    @Test
    void noiseIsHeardFromNowOn() {
        Day day = oneDish(10, step -> step.noisy = true)
                .setup("S2", "09:00", setup -> setup.silent = true)
                .build();
        TestPlans plan = TestPlans.of(day).step("stew", "cook", 1, "09:00-09:10", work -> {});
        // the set rolls for five minutes
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.SILENCE, 5L));
        assertThat(totals(day, plan.asOf("09:02"))).isEqualTo(Map.of(Rule.SILENCE, 3L));
        assertThat(totals(day, plan.asOf("09:05"))).isEmpty();
    }

    @Test
    void aCopyIsMissedOnlyUntilItsSetupIsShot() {
        Day day = oneDish(10, step -> step.hands = 1).build();
        TestPlans none = TestPlans.of(day);
        assertThat(totals(day, none.asOf("10:09"))).isEqualTo(Map.of(Rule.COPIES, 1L));
        assertThat(totals(day, none.asOf("10:10"))).isEmpty();
        assertThat(Audit.of(day, none.asOf("10:09").build()).setups()).hasSize(1);
        assertThat(Audit.of(day, none.asOf("10:10").build()).setups()).isEmpty();
    }

    /** A meal is due after 300 minutes; Ana works from 06:00, Ben from 11:00 on. */
    @Test
    void aStretchWithoutAMealIsOverOnceTheShiftIs() {
        Day day = oneDish(10, step -> step.hands = 1)
                .with(days -> days.mealAfter = Optional.of(300))
                .person("Ana", person -> person.shifts = List.of(TestDays.span("06:00-11:30")))
                .person("Ben", person -> person.shifts = List.of(TestDays.span("11:00-12:00")))
                .build();
        TestPlans plan = cooked(day, "09:00-09:10");
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.MEAL, 30L));
        assertThat(totals(day, plan.asOf("11:29"))).isEqualTo(Map.of(Rule.MEAL, 30L));
        assertThat(totals(day, plan.asOf("11:30"))).isEmpty();
    }

    /** Prepared by Cid, who has gone home for good since, finished by Ana. */
    @Test
    void whoHasGoneHomeDoesNotCountAsOtherHands() {
        Day day = oneDish(10, step -> {
                    step.hands = 1;
                    step.after("trim");
                })
                .step("stew", "trim", 5, step -> step.hands = 1)
                .build();
        assertThat(totals(day, trimmedBy(day, "Ben"))).isEmpty();
        assertThat(totals(day, trimmedBy(day, "Cid"))).isEqualTo(Map.of(Rule.STATEMENT, 2L));
    }

    /** The plan says that there is one change of hands, in the points of the copy and of all. */
    private static TestPlans trimmedBy(Day day, String person) {
        return TestPlans.of(day)
                .step("stew", "trim", 1, "08:50-08:55", work -> work.by(person))
                .step("stew", "cook", 1, "09:00-09:10", work -> work.by("Ana"))
                .asOf("08:56");
    }

    /** Which of a plan's copies were counted before is known only for needs that it has. */
    @Test
    void aNeedThatCameLaterWantsAsManyCopiesAsReckoned() {
        Day day = oneDish(10, step -> step.hands = 1)
                .setup("S1", "10:00", setup -> setup.takes(3))
                .build();
        TestPlans one =
                cooked(day, "09:00-09:10").copies("S1/stew/cook/hero", 1).asOf("08:00");
        assertThat(totals(day, one)).isEmpty();
        TestPlans none = TestPlans.of(day).copies("S1/stew/cook/hero", 0).asOf("08:00");
        assertThat(totals(day, none)).isEqualTo(Map.of(Rule.COPIES, 3L));
    }

    /** What was eaten too late, or by whom it must not be, is told whenever it was: it may still help. */
    @Test
    void foodSafetyKnowsNoPast() {
        Day day = oneDish(10, step -> step.hands = 1)
                .ingredient("stew", "celery", ingredient -> ingredient.allergens = List.of("celery"))
                .diner("Cid", "celery")
                .need("S1", "stew", "cook", need -> need.eatenBy = List.of("Cid"))
                .build();
        TestPlans plan = cooked(day, "09:50-10:00");
        assertThat(totals(day, plan)).containsKey(Rule.ALLERGEN);
        assertThat(totals(day, plan.asOf("10:05"))).isEqualTo(totals(day, plan));
        assertThat(sentences(day, plan)).isNotEmpty();
    }
}
