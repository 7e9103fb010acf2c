package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.totals;
import static platecall.day.TestDays.at;
import static platecall.day.TestDays.span;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Plan;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;
import platecall.plan.TestPlans;
import platecall.units.Moment;
import platecall.units.Span;

/** Days on which the clocks change, and nights. */
class ClockTest {

    private static TestDays overnight(LocalDate date, Span kitchen, String call) {
        return new TestDays()
                .with(days -> {
                    days.date = date;
                    days.kitchen = List.of(kitchen);
                })
                .place("kitchen", place -> {})
                .setup("S1", call, setup -> {})
                .dish("roast", dish -> {})
                .need("S1", "roast", "roast", need -> {})
                .step("roast", "roast", 90, step -> step.uses("spit", 1))
                .station("spit", Station.Kind.OTHER, 1, station -> {});
    }

    private static Plan roasted(Day day, Moment from, Moment to) {
        return TestPlans.of(day)
                .add(
                        Work.Kind.STEP,
                        "roast",
                        "roast",
                        "S1/roast/roast/hero#1",
                        new Span(from, to),
                        work -> work.on("spit", 1))
                .build();
    }

    @Test
    void theHourThatIsSkippedInSpringIsNoWorkingTime() {
        Day day = overnight(LocalDate.of(2026, 3, 29), span("2026-03-29T00:00", "2026-03-29T12:00"), "2026-03-29T05:00")
                .build();

        // clocks go from 02:00 to 03:00: 01:30 to 04:00 is an hour and a half
        assertThat(totals(day, roasted(day, at("2026-03-29T01:30"), at("2026-03-29T04:00"))))
                .isEmpty();
        assertThat(totals(day, roasted(day, at("2026-03-29T01:30"), at("2026-03-29T03:00"))))
                .isEqualTo(Map.of(Rule.DURATION, 60L));
    }

    @Test
    void theHourThatComesTwiceInAutumnIsNamedWithItsOffset() {
        Day day = overnight(
                        LocalDate.of(2026, 10, 25), span("2026-10-25T00:00", "2026-10-25T12:00"), "2026-10-25T05:00")
                .build();
        Moment firstHalfPastTwo = at("2026-10-25T01:30").plus(60);
        Moment secondHalfPastTwo = at("2026-10-25T01:30").plus(120);

        assertThat(totals(day, roasted(day, firstHalfPastTwo, firstHalfPastTwo.plus(90))))
                .isEmpty();
        assertThat(Audit.of(day, roasted(day, firstHalfPastTwo, secondHalfPastTwo))
                        .breaches()
                        .get(0)
                        .what())
                .isEqualTo("roast of Roast #1 for setup S1 at 02:30 +02 is given 60 minutes, but takes 90 minutes");
        assertThat(Audit.of(day, roasted(day, secondHalfPastTwo, secondHalfPastTwo.plus(60)))
                        .breaches()
                        .get(0)
                        .what())
                .startsWith("roast of Roast #1 for setup S1 at 02:30 +01 is given 60 minutes");
    }

    @Test
    void aNightShootRunsPastMidnight() {
        Day day = overnight(TestDays.DATE, span("2026-03-14T18:00", "2026-03-15T04:00"), "2026-03-15T01:00")
                .build();

        assertThat(totals(day, roasted(day, at("23:20"), at("2026-03-15T00:50"))))
                .isEmpty();
        Plan short10 = roasted(day, at("2026-03-15T00:10"), at("2026-03-15T01:30"));
        assertThat(totals(day, short10)).isEqualTo(Map.of(Rule.DURATION, 10L));
        assertThat(Audit.of(day, short10).breaches().get(0).what())
                .startsWith("roast of Roast #1 for setup S1 at 00:10 on 2026-03-15 is given 80 minutes");
        assertThat(Audit.of(day, short10).setups().get(0).words()).isEqualTo("LATE by 30 min: Roast #1");
    }

    @Test
    void kitchenHoursEndAStationsNight() {
        Day day = overnight(TestDays.DATE, span("2026-03-14T18:00", "2026-03-15T00:30"), "2026-03-15T01:00")
                .build();

        assertThat(totals(day, roasted(day, at("23:20"), at("2026-03-15T00:50"))))
                .isEqualTo(Map.of(Rule.OPEN, 20L));
    }
}
