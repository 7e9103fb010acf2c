package platecall.looks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import platecall.day.Look.Kind;

/** What more of something does to a look, whatever else holds. */
class LooksOrderTest {

    @Property(tries = 60)
    void hotterFoodStaysWarmAtLeastAsLong(
            @ForAll @IntRange(min = 40, max = 90) int start,
            @ForAll @IntRange(min = 1, max = 10) int hotter,
            @ForAll @DoubleRange(min = -30, max = 45) double celsius,
            @ForAll @IntRange(min = 0, max = 100) int humidity,
            @ForAll @IntRange(min = 0, max = 400) int light,
            @ForAll boolean liquid) {
        LookLife cool = cooling(start, celsius, humidity, light, liquid);
        LookLife hot = cooling(start + hotter, celsius, humidity, light, liquid);

        assertThat(hot.peakToMinutes()).isGreaterThanOrEqualTo(cool.peakToMinutes());
        assertThat(hot.usableToMinutes()).isGreaterThanOrEqualTo(cool.usableToMinutes());
    }

    @Property(tries = 200)
    void moreLightMeltsSooner(
            @ForAll @IntRange(min = 0, max = 1500) int light,
            @ForAll @IntRange(min = 0, max = 500) int more,
            @ForAll @DoubleRange(min = -30, max = 50) double celsius,
            @ForAll @IntRange(min = 0, max = 100) int humidity) {
        LookLife dim = new LooksDay()
                .air(celsius, humidity)
                .light(light)
                .dish("x", Kind.MELTING)
                .life();
        LookLife bright = new LooksDay()
                .air(celsius, humidity)
                .light(light + more)
                .dish("x", Kind.MELTING)
                .life();

        assertThat(bright.usableToMinutes()).isLessThanOrEqualTo(dim.usableToMinutes());
        assertThat(bright.peakToMinutes()).isLessThanOrEqualTo(dim.peakToMinutes());
    }

    @Property(tries = 200)
    void colderGlassBeadsNoLater(
            @ForAll @IntRange(min = -10, max = 25) int start,
            @ForAll @IntRange(min = 0, max = 20) int warmer,
            @ForAll @IntRange(min = 20, max = 100) int humidity) {
        LookLife cold = condensation(start, humidity);
        LookLife warm = condensation(start + warmer, humidity);

        if (warm.peakToMinutes() > 0) {
            assertThat(cold.peakFromMinutes()).isLessThanOrEqualTo(warm.peakFromMinutes());
            assertThat(cold.usableToMinutes()).isGreaterThanOrEqualTo(warm.usableToMinutes());
        }
    }

    @Property(tries = 200)
    void dampAirSparesLeaves(
            @ForAll @DoubleRange(min = -30, max = 60) double celsius,
            @ForAll @IntRange(min = 0, max = 100) int humidity,
            @ForAll @IntRange(min = 0, max = 100) int other) {
        LookLife dry = wilting(celsius, Math.min(humidity, other));
        LookLife damp = wilting(celsius, Math.max(humidity, other));

        assertThat(damp.usableToMinutes()).isGreaterThanOrEqualTo(dry.usableToMinutes());
        assertThat(damp.peakToMinutes()).isBetween(0, damp.usableToMinutes());
    }

    private static LookLife cooling(int start, double celsius, int humidity, int light, boolean liquid) {
        return new LooksDay()
                .air(celsius, humidity)
                .light(light)
                .dish(
                        "x",
                        Kind.COOLING,
                        "start",
                        String.format(Locale.ROOT, "%d", start),
                        "body",
                        liquid ? "liquid" : "solid")
                .life();
    }

    private static LookLife condensation(int start, int humidity) {
        return new LooksDay()
                .air(24, humidity)
                .dish("x", Kind.CONDENSATION, "start", String.format(Locale.ROOT, "%d", start))
                .life();
    }

    private static LookLife wilting(double celsius, int humidity) {
        return new LooksDay()
                .air(celsius, humidity)
                .dish("x", Kind.WILTING, "item", "salad leaves")
                .life();
    }
}
