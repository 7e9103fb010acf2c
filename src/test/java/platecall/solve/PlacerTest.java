package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.tasks.Breakdown;

class PlacerTest {

    /** Reckoned by hand: only Ada can plate, so that Ben cuts; only for the sake of one pair of hands Ada does both now and then. */
    @Test
    void scarceHandsAreSparedUnlessHandsCount() {
        TestDays days = new TestDays().place("kitchen", place -> {});
        days.station("counter", Station.Kind.COUNTER, 9, station -> {});
        days.person("Ada", hands -> {
            hands.skills = List.of("styling");
            hands.shifts = List.of(TestDays.span("06:00-18:00"));
        });
        days.person("Ben", hands -> hands.shifts = List.of(TestDays.span("06:00-18:00")));
        days.dish("plate", part -> part.look = Look.table(0, 5, 600));
        days.setup("one", "10:00", part -> {});
        days.need("one", "plate", "plate", need -> need.copies(1));
        days.step("plate", "cut", 10, step -> step.hands = 1);
        days.step("plate", "plate", 4, step -> {
            step.after("cut").hands = 1;
            step.skill = Optional.of("styling");
        });
        Day day = days.build();
        Kitchen kitchen = new Kitchen(Breakdown.of(day, dish -> Looks.of(day, dish), need -> 1));
        assertThat(cutByAda(kitchen, false)).isZero();
        assertThat(cutByAda(kitchen, true)).isBetween(25L, 75L);
    }

    /** In how many of a hundred tries Ada cuts. */
    private static long cutByAda(Kitchen kitchen, boolean handsCount) {
        return IntStream.range(0, 100)
                .filter(seed -> {
                    Placer placer = new Placer(kitchen, new Dice(seed));
                    placer.letHandsCount(handsCount);
                    assertThat(placer.placeCopy(0, true, 1_000_000, true)).isTrue();
                    long cutter = kitchen.people(kitchen.handsA[0]);
                    kitchen.removeCopy(0);
                    return cutter == 1;
                })
                .count();
    }
}
