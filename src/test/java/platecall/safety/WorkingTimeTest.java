package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.day.TestDays.at;
import static platecall.day.TestDays.span;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.TestDays;
import platecall.plan.TestPlans;
import platecall.units.Span;

class WorkingTimeTest {

    private static WorkingTime of(Day day, String first, String last, String... meals) {
        TestPlans plan = TestPlans.of(day)
                .step("egg", "crack", 1, first, work -> work.by("Ana"))
                .step("egg", "fry", 1, last, work -> work.by("Ana"));
        for (String meal : meals) {
            plan.meal("Ana", meal);
        }
        List<WorkingTime> times = WorkingTime.of(day, plan.build());
        assertThat(times).hasSize(1);
        return times.get(0);
    }

    private static Day day(Span... kitchen) {
        TestDays days = TestDays.firstEgg();
        days.kitchen = List.of(kitchen);
        return days.build();
    }

    private static Day longDay() {
        return day(span("05:00-23:00"));
    }

    /** Ana stays from one shift to the next on the day itself, but goes home after the evening before. */
    @Test
    void shiftsThatAreHoursApartAreDifferentDaysOfWork() {
        Day day = day(span("2026-03-13T14:00", "2026-03-13T20:00"), span("05:00-12:00"), span("15:00-23:00"));
        var plan = TestPlans.of(day)
                .add(
                        platecall.plan.Plan.Work.Kind.STEP,
                        "egg",
                        "crack",
                        "S1/egg/plate/hero#1",
                        span("2026-03-13T18:00", "2026-03-13T19:00"),
                        work -> work.by("Ana"))
                .step("egg", "crack", 2, "05:30-05:32", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:40-09:44", work -> work.by("Ana", "Ben"))
                .step("egg", "fry", 2, "15:10-15:14", work -> work.by("Ana"))
                .meal("Ana", "11:00-11:30")
                .meal("Ben", "08:00-08:30")
                .build();

        assertThat(WorkingTime.of(day, plan))
                .containsExactly(
                        new WorkingTime("Ana", span("2026-03-13T18:00", "2026-03-13T19:00"), List.of()),
                        new WorkingTime("Ana", span("05:30-15:14"), List.of(span("11:00-11:30"), span("12:00-15:00"))),
                        new WorkingTime("Ben", span("09:40-09:44"), List.of()));
        assertThat(WorkingTime.of(day, plan).get(1).minutes()).isEqualTo(374);
    }

    /** The sheets now have Ben from 15:00 on, and nobody of Dora's name; what both did stands in the plan. */
    @Test
    void workOutsideTodaysHoursOrByOthersCounts() {
        Day day = TestDays.firstEgg()
                .person("Ben", ben -> {
                    ben.shifts = List.of(span("15:00-18:00"));
                    ben.away = List.of(new Absence.During(span("16:00-16:45")));
                })
                .build();
        var plan = TestPlans.of(day)
                .step("egg", "crack", 1, "09:00-09:02", work -> work.by("Dora"))
                .step("egg", "crack", 2, "08:30-08:32", work -> work.by("Ben"))
                .step("egg", "fry", 1, "12:00-12:04", work -> work.by("Ben"))
                .step("egg", "fry", 2, "17:00-17:04", work -> work.by("Ben"))
                .build();

        assertThat(WorkingTime.of(day, plan))
                .containsExactly(
                        new WorkingTime("Ben", span("08:30-17:04"), List.of(span("16:00-16:45"))),
                        new WorkingTime("Dora", span("09:00-09:02"), List.of()));
    }

    @Test
    void aHandDoubleWorksOnSet() {
        Day day = TestDays.firstEgg()
                .person("Cora", person -> person.away = List.of(new Absence.HandDouble("S1")))
                .build();

        assertThat(WorkingTime.of(day, TestPlans.of(day).build()))
                .containsExactly(
                        new WorkingTime("Cora", day.setup("S1").orElseThrow().shooting(), List.of()));
    }

    /** California Labor Code 512(a): a meal for more than five hours, dropped by agreement up to six; a second for more than ten, up to twelve. */
    @ParameterizedTest
    @CsvSource({
        "05:00-05:10, 09:50-10:00, , 0, true",
        "05:00-05:10, 09:51-10:01, , 1, true",
        "05:00-05:10, 10:50-11:00, , 1, true",
        "05:00-05:10, 10:51-11:01, , 1, false",
        "05:00-05:10, 15:20-15:30, 10:00-10:30, 0, true",
        "05:00-05:10, 15:20-15:31, 10:00-10:30, 1, true",
        "05:00-05:10, 17:20-17:30, 10:00-10:30, 1, true",
        "05:00-05:10, 17:20-17:31, 10:00-10:30, 1, false",
        "05:00-05:10, 15:20-15:30, , 2, false"
    })
    void mealsAreOwedInCalifornia(String first, String last, String meal, int missing, boolean dropped) {
        WorkingTime time = meal == null ? of(longDay(), first, last) : of(longDay(), first, last, meal);

        assertThat(time.mealsMissingInCalifornia()).isEqualTo(missing);
        assertThat(time.missingMealsMayBeDropped()).isEqualTo(dropped);
    }

    /** IWC Wage Order 12-2001: six hours after the call, and after the end of each meal. */
    @Test
    void filmCrewsEatEverySixHours() {
        assertThat(of(longDay(), "05:00-05:10", "10:50-11:00").filmCrewMealMissedBy())
                .isEmpty();
        assertThat(of(longDay(), "05:00-05:10", "10:50-11:01").filmCrewMealMissedBy())
                .contains(at("11:00"));
        assertThat(of(longDay(), "05:00-05:10", "17:20-17:30", "11:00-11:30").filmCrewMealMissedBy())
                .isEmpty();
        assertThat(of(longDay(), "05:00-05:10", "17:20-17:30", "10:59-11:29").filmCrewMealMissedBy())
                .contains(at("17:29"));
        assertThat(of(longDay(), "05:00-05:10", "17:20-17:30", "11:01-11:31").filmCrewMealMissedBy())
                .contains(at("11:00"));
    }

    /** Working Time Regulations 1998 (SI 1998/1833), reg. 12: 20 minutes for more than six hours. */
    @Test
    void britonsTakeABreak() {
        assertThat(of(longDay(), "05:00-05:10", "10:50-11:00").breakMinutesMissingInBritain())
                .isZero();
        assertThat(of(longDay(), "05:00-05:10", "10:50-11:01").breakMinutesMissingInBritain())
                .isEqualTo(20);
        assertThat(of(longDay(), "05:00-05:10", "11:50-12:00", "09:00-09:15").breakMinutesMissingInBritain())
                .isEqualTo(5);
        assertThat(of(longDay(), "05:00-05:10", "11:50-12:00", "09:00-09:30").breakMinutesMissingInBritain())
                .isZero();
    }
}
