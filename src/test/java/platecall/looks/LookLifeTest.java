package platecall.looks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static platecall.looks.CoolingTest.refused;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class LookLifeTest {

    private static final LookLife LIFE = new LookLife(2, 7, 12, 1, "why", Optional.empty());

    @Test
    void theCameraShouldRollInTheMiddleOfThePeak() {
        assertThat(LIFE.aimMinutes()).isEqualTo(4);
        assertThat(new LookLife(0, 0, 5, 0, "why", Optional.empty()).aimMinutes())
                .isZero();
        assertThat(new LookLife(3, 9, 9, 0, "why", Optional.empty()).aimMinutes())
                .isEqualTo(6);
    }

    @Test
    void peakAndUsabilityAreHalfOpen() {
        assertThat(LIFE.isAtPeak(1)).isFalse();
        assertThat(LIFE.isAtPeak(2)).isTrue();
        assertThat(LIFE.isAtPeak(6)).isTrue();
        assertThat(LIFE.isAtPeak(7)).isFalse();
        assertThat(LIFE.isUsable(-1)).isFalse();
        assertThat(LIFE.isUsable(0)).isTrue();
        assertThat(LIFE.isUsable(11)).isTrue();
        assertThat(LIFE.isUsable(12)).isFalse();
    }

    @Test
    void looksRiseToThePeakStayAndFall() {
        assertThat(LIFE.scoreAt(0)).isZero();
        assertThat(LIFE.scoreAt(1)).isCloseTo(0.5, within(1e-12));
        assertThat(LIFE.scoreAt(2)).isEqualTo(1);
        assertThat(LIFE.scoreAt(6.9)).isEqualTo(1);
        assertThat(LIFE.scoreAt(7)).isEqualTo(1);
        assertThat(LIFE.scoreAt(8)).isCloseTo(0.8, within(1e-12));
        assertThat(LIFE.scoreAt(11)).isCloseTo(0.2, within(1e-12));
        assertThat(LIFE.scoreAt(12)).isZero();
        assertThat(LIFE.scoreAt(500)).isZero();
    }

    @Test
    void anEndWithoutADeclineDropsAtOnce() {
        LookLife life = new LookLife(0, 5, 5, 0, "why", Optional.empty());

        assertThat(life.scoreAt(0)).isEqualTo(1);
        assertThat(life.scoreAt(4.9)).isEqualTo(1);
        assertThat(life.scoreAt(5)).isZero();
    }

    @Test
    void secondsAreCutToTheCautiousSide() {
        LookLife life = LookLife.ofSeconds(61, 299, 659, 61, "because", Optional.of("mind"));

        assertThat(life)
                .isEqualTo(new LookLife(2, 4, 10, 2, "peak 2-4 min, usable to 10 min: because", Optional.of("mind")));
        assertThat(LookLife.ofSeconds(60, 300, 660, 60, "", Optional.empty()))
                .extracting(
                        LookLife::peakFromMinutes,
                        LookLife::peakToMinutes,
                        LookLife::usableToMinutes,
                        LookLife::bandMinutes)
                .containsExactly(1, 5, 11, 1);
    }

    @Test
    void thePeakIsSureBesideItsBandButForItsMiddle() {
        LookLife life = new LookLife(4, 20, 40, 3, "why", Optional.empty());
        LookLife vague = new LookLife(4, 20, 40, 30, "why", Optional.empty());

        assertThat(life.surelyFromMinutes()).isEqualTo(7);
        assertThat(life.surelyToMinutes()).isEqualTo(17);
        assertThat(vague.surelyFromMinutes()).isEqualTo(12);
        assertThat(vague.surelyToMinutes()).isEqualTo(12);
        assertThat(new LookLife(0, 20, 40, 3, "why", Optional.empty()).surelyFromMinutes())
                .isZero();
    }

    @Test
    void nothingComputedLastsLongerThanADayAndAPeakNeverEndsBeforeItBegins() {
        assertThat(LookLife.ofSeconds(0, 1e9, 1e9, 1e9, "", Optional.empty()))
                .extracting(LookLife::peakToMinutes, LookLife::usableToMinutes, LookLife::bandMinutes)
                .containsExactly(1440, 1440, 1440);
        assertThat(LookLife.ofSeconds(1e9, 1e9, 1e9, 0, "", Optional.empty()).peakFromMinutes())
                .isEqualTo(1440);
        assertThat(LookLife.ofSeconds(70, 90, 30, 0, "", Optional.empty()))
                .extracting(LookLife::peakFromMinutes, LookLife::peakToMinutes, LookLife::usableToMinutes)
                .containsExactly(1, 1, 1);
    }

    @Test
    void valuesOutsideTheirRangeAreNamedWithTheirValue() {
        refused(
                () -> new LookLife(-1, 1, 1, 0, "", Optional.empty()),
                "peak from must be from 0 to 86400 minutes, but it is [-1]");
        refused(
                () -> new LookLife(2, 1, 1, 0, "", Optional.empty()),
                "peak to must be from 2 to 86400 minutes, but it is [1]");
        refused(
                () -> new LookLife(0, 2, 1, 0, "", Optional.empty()),
                "usable to must be from 2 to 86400 minutes, but it is [1]");
        refused(
                () -> new LookLife(0, 2, 2, -1, "", Optional.empty()),
                "band must be from 0 to 86400 minutes, but it is [-1]");
        refused(() -> LIFE.scoreAt(-0.5), "time after plate-up must be from 0");
    }
}
