package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.oneDish;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;
import static platecall.day.TestDays.span;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Rule;
import platecall.plan.TestPlans;

class CircuitRuleTest {

    /** Two plates of 4.5 A each and a fridge of 2 A on one circuit. */
    private static TestDays kitchen(double amps, double continuousFactor) {
        return oneDish(10, step -> step.uses("hotplate", 2))
                .circuit("A", amps, continuousFactor)
                .station("hotplate", Station.Kind.BURNERS, 2, station -> {
                    station.amps = 4.5;
                    station.circuit = Optional.of("A");
                })
                .station("fridge", Station.Kind.FRIDGE, 2, station -> {
                    station.amps = 2;
                    station.circuit = Optional.of("A");
                });
    }

    private static TestPlans cooked(Day day) {
        return TestPlans.of(day).step("stew", "cook", 1, "09:00-09:10", work -> work.on("hotplate", 2));
    }

    @Test
    void stationsInUseAndThoseAlwaysOnAddUp() {
        Day enough = kitchen(11, 1).build();
        Day tooWeak = kitchen(10, 1).build();

        // 2 x 4.5 A + 2 A = 11 A
        assertThat(totals(enough, cooked(enough))).isEmpty();
        assertThat(totals(tooWeak, cooked(tooWeak))).isEqualTo(Map.of(Rule.CIRCUIT, 10L));
        assertThat(sentences(tooWeak, cooked(tooWeak)))
                .containsExactly("circuit A carries up to 11 of 10 A from 09:00 to 09:10");
    }

    @Test
    void aLastingLoadMayTakeOnlyAPartOfTheBreaker() {
        Day day = kitchen(13, 1.25).build();

        // 13 A / 1.25 = 10.4 A: 0.6 A too much for 10 minutes
        assertThat(totals(day, cooked(day))).isEqualTo(Map.of(Rule.CIRCUIT, 6L));
    }

    @Test
    void partsOfAnAmpMinuteCountAsOne() {
        Day day = kitchen(10.97, 1).build();

        // 0.03 A too much for 10 minutes
        assertThat(totals(day, cooked(day))).isEqualTo(Map.of(Rule.CIRCUIT, 1L));
    }

    @Test
    void aClosedFridgeDrawsNothing() {
        Day day = kitchen(10, 1)
                .station("fridge", Station.Kind.FRIDGE, 2, station -> {
                    station.amps = 2;
                    station.circuit = Optional.of("A");
                    station.hours = List.of(span("09:07-18:00"));
                })
                .build();

        assertThat(totals(day, cooked(day))).isEqualTo(Map.of(Rule.CIRCUIT, 3L));
    }
}
