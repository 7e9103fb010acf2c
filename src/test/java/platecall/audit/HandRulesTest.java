package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.eggs;
import static platecall.audit.Audited.oneDish;
import static platecall.audit.Audited.secondEgg;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;
import static platecall.day.TestDays.span;

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

class HandRulesTest {

    private static TestPlans cooked(Day day, String fromTo, TestPlans.WorkChange how) {
        return TestPlans.of(day).step("stew", "cook", 1, fromTo, how);
    }

    // ---- one thing at a time ----------------------------------------------------------------------------------

    @Test
    void aPairOfHandsDoesOneThingAtATime() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = secondEgg(TestPlans.of(day)
                .step("egg", "crack", 1, "09:53-09:55", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:55-09:59", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "10:00-10:01", work -> work.by("Ana")));

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.HANDS, 1L));
        assertThat(sentences(day, plan))
                .containsExactly("Ana is still at plate of Egg #1 for setup S1 when crack of Egg #2 for setup S1"
                        + " starts at 10:00, for 1 minute");
    }

    @Test
    void oneThingBesideTwoOthersCountsTwice() {
        TestDays days = oneDish(10, step -> step.hands = 1)
                .need("S1", "stew", "cook", need -> need.copies(3))
                .setup("S1", "10:00", setup -> setup.takes(3));
        Day day = days.build();
        TestPlans plan = cooked(day, "09:00-09:10", work -> work.by("Ana"))
                .step("stew", "cook", 2, "09:04-09:14", work -> work.by("Ana"))
                .step("stew", "cook", 3, "09:08-09:18", work -> work.by("Ana"));

        // the second shares 6 minutes with the first, the third 6 with those before it
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.HANDS, 12L));
    }

    @Test
    void nobodyWorksInAMealBreak() {
        Day day = oneDish(10, step -> step.hands = 1).build();
        TestPlans plan = cooked(day, "09:00-09:10", work -> work.by("Ana")).meal("Ana", "09:06-09:36");

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.HANDS, 4L));
    }

    // ---- enough hands, with the skill -------------------------------------------------------------------------

    @Test
    void aStepWithoutHandsLacksThemThroughout() {
        Day day = oneDish(10, step -> step.hands = 2).build();

        assertThat(totals(day, cooked(day, "09:00-09:10", work -> work.by("Ana", "Ben"))))
                .isEmpty();
        assertThat(totals(day, cooked(day, "09:00-09:10", work -> work.by("Ana"))))
                .isEqualTo(Map.of(Rule.SKILL, 10L));
        assertThat(totals(day, cooked(day, "09:00-09:10", work -> {}))).isEqualTo(Map.of(Rule.SKILL, 20L));
    }

    @Test
    void handsThatLeaveEarlyLackTheRest() {
        Day day = oneDish(10, step -> step.hands = 1).build();

        assertThat(totals(day, cooked(day, "09:00-09:10", work -> work.hands("Ana", "09:00-09:07"))))
                .isEqualTo(Map.of(Rule.SKILL, 3L));
    }

    @Test
    void theSameHandsStayThroughout() {
        Day day = oneDish(10, step -> step.hands = 1).build();
        TestPlans handedOver = cooked(
                day, "09:00-09:10", work -> work.hands("Ana", "09:00-09:07").hands("Ben", "09:07-09:10"));

        assertThat(totals(day, handedOver)).isEqualTo(Map.of(Rule.SKILL, 3L));
    }

    @Test
    void handsNeedTheSkill() {
        Day day = oneDish(10, step -> {
                    step.hands = 1;
                    step.skill = Optional.of("sugar work");
                })
                .person("Ana", person -> person.skills = List.of("sugar work"))
                .build();

        assertThat(totals(day, cooked(day, "09:00-09:10", work -> work.by("Ana"))))
                .isEmpty();
        assertThat(totals(day, cooked(day, "09:00-09:10", work -> work.by("Ben"))))
                .isEqualTo(Map.of(Rule.SKILL, 10L));
        assertThat(sentences(day, cooked(day, "09:00-09:10", work -> work.by("Ben"))))
                .containsExactly("cook of Stew #1 for setup S1 needs 1 pair of hands that can sugar work from 09:00 to"
                        + " 09:10 and lacks 10 minutes of them");
    }

    @Test
    void handsMayBeOnOnlyAtTheStartAndTheEnd() {
        Day day = oneDish(20, step -> {
                    step.hands = 1;
                    step.handsFirst = Optional.of(3);
                    step.handsLast = Optional.of(2);
                })
                .build();

        assertThat(totals(
                        day,
                        cooked(
                                day,
                                "09:00-09:20",
                                work -> work.hands("Ana", "09:00-09:03").hands("Ben", "09:18-09:20"))))
                .isEmpty();
        assertThat(totals(day, cooked(day, "09:00-09:20", work -> work.hands("Ana", "09:00-09:03"))))
                .isEqualTo(Map.of(Rule.SKILL, 2L));
        assertThat(totals(
                        day,
                        cooked(
                                day,
                                "09:00-09:20",
                                work -> work.hands("Ana", "09:01-09:03").hands("Ben", "09:18-09:20"))))
                .isEqualTo(Map.of(Rule.SKILL, 1L));
    }

    @Test
    void startAndEndThatMeetAreOnePart() {
        Day day = oneDish(5, step -> {
                    step.hands = 1;
                    step.handsFirst = Optional.of(3);
                    step.handsLast = Optional.of(2);
                })
                .build();

        assertThat(totals(
                        day,
                        cooked(
                                day,
                                "09:00-09:05",
                                work -> work.hands("Ana", "09:00-09:03").hands("Ben", "09:03-09:05"))))
                .isEqualTo(Map.of(Rule.SKILL, 2L));
    }

    /** A set two minutes away from the kitchen, and three minutes of handling on the way. */
    private static Day farSet() {
        return oneDish(10, step -> step.hands = 1)
                .dish("stew", dish -> dish.carry = 3)
                .place("kitchen", place -> place.walk.put("set", 2))
                .place("set", place -> {})
                .setup("S1", "10:00", setup -> setup.place = "set")
                .station("counter", Station.Kind.COUNTER, 1, station -> {})
                .build();
    }

    @Test
    void whoCarriesIsAwayUntilBackFromTheSet() {
        Day day = farSet();
        TestPlans cooked = cooked(day, "09:30-09:40", work -> work.by("Ana"));

        assertThat(totals(day, cooked.carry("stew", 1, "09:45-09:50", work -> work.hands("Ana", "09:45-09:52"))))
                .isEmpty();
    }

    @Test
    void theWayBackCounts() {
        Day day = farSet();
        TestPlans cooked = cooked(day, "09:30-09:40", work -> work.by("Ana"));

        assertThat(totals(day, cooked.carry("stew", 1, "09:45-09:50", work -> work.by("Ana"))))
                .isEqualTo(Map.of(Rule.SKILL, 2L));
    }

    // ---- on shift ---------------------------------------------------------------------------------------------

    @Test
    void handsWorkOnlyOnShift() {
        Day day = TestDays.firstEgg()
                .person("Ana", person -> person.shifts = List.of(span("09:51-18:00")))
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.SHIFT, 1L));
        assertThat(sentences(day, eggs(day)))
                .containsExactly("Ana is at crack of Egg #1 for setup S1 from 09:50 to 09:52,"
                        + " 1 minute of it off shift or away");
    }

    @Test
    void aHandDoubleIsNotInTheKitchen() {
        Day day = TestDays.firstEgg()
                .person("Ana", person -> person.away = List.of(new Absence.HandDouble("S1")))
                .build();

        // the second egg is made in the 7 minutes after the call
        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.SHIFT, 7L));
    }

    @Test
    void aMealBreakIsTakenOnShift() {
        Day day = oneDish(10, step -> step.hands = 1)
                .person("Ana", person -> person.shifts = List.of(span("08:00-12:00")))
                .build();

        assertThat(totals(
                        day, cooked(day, "09:00-09:10", work -> work.by("Ana")).meal("Ana", "11:40-12:10")))
                .isEqualTo(Map.of(Rule.SHIFT, 10L));
    }

    // ---- meals ------------------------------------------------------------------------------------------------

    /** A shift from 06:00 to 14:00 with a half-hour break after at most five hours; only Ana. */
    private static Day mealDay() {
        return new TestDays()
                .with(days -> {
                    days.mealAfter = Optional.of(300);
                    days.meal = 30;
                })
                .place("kitchen", place -> {})
                .setup("S1", "10:00", setup -> {})
                .dish("stew", dish -> {})
                .need("S1", "stew", "cook", need -> {})
                .step("stew", "cook", 10, step -> step.hands = 1)
                .person("Ana", person -> person.shifts = List.of(span("06:00-14:00")))
                .build();
    }

    private static TestPlans worked(Day day) {
        return cooked(day, "08:00-08:10", work -> work.by("Ana"));
    }

    @Test
    void aBreakInTimeKeepsTheMealRule() {
        Day day = mealDay();

        assertThat(totals(day, worked(day).meal("Ana", "09:00-09:30"))).isEmpty();
    }

    @Test
    void aLongShiftWithoutABreakIsTooLong() {
        Day day = mealDay();

        // 8 hours on, 5 allowed
        assertThat(totals(day, worked(day))).isEqualTo(Map.of(Rule.MEAL, 180L));
        assertThat(sentences(day, worked(day)))
                .containsExactly("Ana is on from 06:00 to 14:00 without a meal break, 180 minutes too long");
    }

    @Test
    void aBreakTooLateOrTooEarlyIsCountedInMinutes() {
        Day day = mealDay();

        assertThat(totals(day, worked(day).meal("Ana", "11:10-11:40"))).isEqualTo(Map.of(Rule.MEAL, 10L));
        assertThat(totals(day, worked(day).meal("Ana", "08:15-08:45"))).isEqualTo(Map.of(Rule.MEAL, 15L));
    }

    @Test
    void aShortBreakLacksTheRest() {
        Day day = mealDay();

        assertThat(totals(day, worked(day).meal("Ana", "09:30-09:55"))).isEqualTo(Map.of(Rule.MEAL, 5L));
    }

    @Test
    void aShiftWithinTheLimitNeedsNoBreak() {
        Day day = new TestDays()
                .with(days -> days.mealAfter = Optional.of(300))
                .place("kitchen", place -> {})
                .setup("S1", "10:00", setup -> {})
                .dish("stew", dish -> {})
                .need("S1", "stew", "cook", need -> {})
                .step("stew", "cook", 10, step -> step.hands = 1)
                .person("Ana", person -> person.shifts = List.of(span("06:00-11:00"), span("12:00-17:00")))
                .build();

        assertThat(totals(day, worked(day))).isEmpty();
    }
}
