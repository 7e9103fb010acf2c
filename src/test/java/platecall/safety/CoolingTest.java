package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoolingTest {

    private static final double K = Math.log(3) / 2;

    private static List<Cooling.Stage> stages(String profile) {
        return Profile.named(profile).orElseThrow().cooling();
    }

    /** FDA Food Code 3-501.14(A); the curve that hits both limits exactly is an own calculation. */
    @Test
    void aCurveThatJustReachesBothLimitsPassesAndASlowerOneFails() {
        assertThat(Cooling.newtonCelsius(3, 57, K, 1)).isCloseTo(34.177, within(1e-3));
        assertThat(Cooling.newtonCelsius(3, 57, K, 2)).isCloseTo(21, within(1e-9));
        assertThat(Cooling.newtonCelsius(3, 57, K, 4)).isCloseTo(9, within(1e-9));
        assertThat(Cooling.newtonCelsius(3, 57, K, 6)).isCloseTo(5, within(1e-9));
        for (int stage = 0; stage < 2; stage++) {
            Cooling.Stage limit = stages("fda-2022").get(stage);
            assertThat(limit.minutes().allows(minutes(limit, 1))).isTrue();
            assertThat(limit.minutes().allows(minutes(limit, 0.999))).isFalse();
            assertThat(limit.minutes().allows(minutes(limit, 1.001))).isTrue();
        }
    }

    private static double minutes(Cooling.Stage stage, double factor) {
        return Cooling.newtonMinutes(3, stage.fromCelsius(), stage.toCelsius(), factor * K)
                .orElseThrow();
    }

    @Test
    void coolingEndsWhereTheSurroundingsAre() {
        assertThat(Cooling.newtonMinutes(3, 57, 3, K)).isEmpty();
        assertThat(Cooling.newtonMinutes(3, 57, 2, K)).isEmpty();
        assertThat(Cooling.newtonMinutes(3, 57, 57, K)).hasValue(0);
        assertThat(Cooling.newtonMinutes(3, 57, 60, K)).hasValue(0);
        assertThat(Cooling.newtonMinutes(3, 57, 30, K).orElseThrow())
                .isCloseTo(60 * Math.log(54.0 / 27) / K, within(1e-9));
    }

    private static OptionalDouble minutesBetween(List<Reading> log, double fromCelsius, double toCelsius) {
        return new Cooling.Stage(
                        "any", fromCelsius, toCelsius, stages("fda-2022").get(0).minutes())
                .taken(log);
    }

    @Test
    void aLogIsReadOnStraightLinesBetweenItsReadings() {
        List<Reading> log = List.of(new Reading(0, 70), new Reading(26, 57), new Reading(98, 21), new Reading(386, 5));

        assertThat(minutesBetween(log, 57, 21)).hasValue(72);
        assertThat(minutesBetween(log, 57, 39)).hasValue(36);
        assertThat(minutesBetween(log, 57, 5)).hasValue(360);
        assertThat(minutesBetween(log, 80, 70)).hasValue(0);
        assertThat(minutesBetween(log, 57, 4)).isEmpty();
        assertThat(minutesBetween(List.of(new Reading(0, 57), new Reading(36, 21), new Reading(40, 30)), 57, 21))
                .isEmpty();
        assertThat(minutesBetween(
                        List.of(new Reading(0, 57), new Reading(36, 21), new Reading(40, 30), new Reading(49, 21)),
                        57,
                        21))
                .hasValue(49);
        assertThat(minutesBetween(List.of(new Reading(0, 70)), 57, 4)).isEmpty();
        assertThat(stages("fda-2022").get(0).kept(log)).isTrue();
        assertThat(stages("fda-2022").get(1).kept(log)).isTrue();
        assertThat(new Cooling.Stage("to 4", 57, 4, stages("fda-2022").get(1).minutes()).kept(log))
                .isFalse();
    }

    /** FDA Food Code 3-501.14; Standard 3.2.2; arrete of 21 December 2009: less than two hours. */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, 0, 57, 21, 120, true",
        "fda-2022, 0, 57, 21, 121, false",
        "fda-2022, 1, 57, 5, 360, true",
        "fda-2022, 1, 57, 5, 361, false",
        "fda-2013, 0, 57, 21, 120, true",
        "fda-2022, 2, 21, 5, 240, true",
        "fda-2022, 2, 21, 5, 241, false",
        "australia, 0, 60, 21, 120, true",
        "australia, 0, 60, 21, 121, false",
        "australia, 1, 21, 5, 240, true",
        "australia, 1, 21, 5, 241, false",
        "france, 0, 63, 10, 119, true",
        "france, 0, 63, 10, 120, false"
    })
    void eachStageHasItsMinutes(String profile, int stage, double from, double to, double minutes, boolean kept) {
        Cooling.Stage limit = stages(profile).get(stage);

        assertThat(limit.fromCelsius()).isEqualTo(from);
        assertThat(limit.toCelsius()).isEqualTo(to);
        assertThat(limit.kept(List.of(new Reading(5, from), new Reading(5 + minutes, to))))
                .isEqualTo(kept);
    }

    /** 3-501.14(B) is of food made of what was at room temperature; Standard 3.2.2 has no such stage. */
    @Test
    void oneStageIsForFoodThatWasNeverHot() {
        assertThat(stages("fda-2022").stream().map(Cooling.Stage::fromAmbient)).containsExactly(false, false, true);
        assertThat(stages("australia").stream().map(Cooling.Stage::fromAmbient)).containsExactly(false, false);
    }

    @Test
    void theBritishRulesHaveNoCoolingMinutes() {
        assertThat(stages("uk")).isEmpty();
    }

    /** USDA FSIS Appendix B: 130 to 80 °F in 1.5 h, 80 to 40 °F in 5 h; option 2 and 3 likewise. */
    @Test
    void fsisHasThreeWaysToCool() {
        List<String> limits = new ArrayList<>();
        for (String option : List.of("fsis-1", "fsis-2", "fsis-3")) {
            for (Cooling.Stage stage : Cooling.stagesOf(option)) {
                limits.add(
                        Math.round(stage.fromCelsius() * 1.8 + 32) + " to " + Math.round(stage.toCelsius() * 1.8 + 32)
                                + " in " + stage.minutes().mostWhole());
            }
        }
        assertThat(limits)
                .containsExactly(
                        "130 to 80 in 90",
                        "80 to 40 in 300",
                        "120 to 80 in 60",
                        "120 to 55 in 360",
                        "130 to 80 in 300",
                        "80 to 45 in 600");
        Cooling.Stage first = Cooling.stagesOf("fsis-1").get(0);
        assertThat(first.minutes().allows(90)).isTrue();
        assertThat(first.minutes().allows(91)).isFalse();
    }
}
