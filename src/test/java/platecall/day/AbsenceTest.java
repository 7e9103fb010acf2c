package platecall.day;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.day.TestDays.span;

import java.util.List;
import org.junit.jupiter.api.Test;
import platecall.units.Span;

class AbsenceTest {

    private static final Absence DOUBLE = new Absence.HandDouble("S1");

    /** By hand: called at 10:00 for two takes of ten minutes each, three minutes from the burners, seven from the grill. */
    @Test
    void aHandDoubleWalksToSetAndBack() {
        TestDays days = TestDays.firstEgg()
                .setup("S1", "10:00", setup -> {
                    setup.takes(2);
                    setup.place = "hall";
                })
                .place("kitchen", place -> place.walk.put("hall", 3))
                .place("hall", place -> {})
                .person("Ana", person -> person.away = List.of(DOUBLE));
        Day day = days.build();
        Span shooting = day.setup("S1").orElseThrow().shooting();

        assertThat(day.spanOf(DOUBLE))
                .contains(new Span(shooting.start().plus(-3), shooting.end().plus(3)));
        assertThat(day.hoursOf(day.people().stream()
                        .filter(person -> person.id().equals("Ana"))
                        .findFirst()
                        .orElseThrow()))
                .noneMatch(hours -> hours.overlaps(day.spanOf(DOUBLE).orElseThrow()));

        Day yard = days.place("yard", place -> {
                    place.walk.put("hall", 7);
                    place.hours = List.of(span("09:00-10:05"));
                })
                .station("grill", Station.Kind.OTHER, 1, station -> station.place = "yard")
                .build();
        // the yard is closed by then, so the way back leads to the kitchen
        assertThat(yard.spanOf(DOUBLE))
                .contains(new Span(shooting.start().plus(-7), shooting.end().plus(3)));
        assertThat(day.spanOf(new Absence.HandDouble("S9"))).isEmpty();
    }
}
