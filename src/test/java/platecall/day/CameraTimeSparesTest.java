package platecall.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.units.Moment;

class CameraTimeSparesTest {

    private static final Moment CALL = new Moment(600);

    private final Setup fourTakes = new Setup(
            "s", "", "", "set", CALL, Optional.of(new Moment(570)), 3, 4, 10, 3, false, new Release.AtEnd(), 1);

    private static Need need(Use use, Part part, int plates) {
        return new Need("s", "pie", "plate", plates, use, part, List.of(), Optional.empty(), 1);
    }

    @Test
    void sparesOfFreshPlatesAreDueWithTheLastTake() {
        Need two = need(new Use.FreshEachTake(), Part.HERO, 2);
        assertThat(CameraTime.of(fourTakes, two, 2)).isEqualTo(new CameraTime(CALL, 3));
        assertThat(CameraTime.of(fourTakes, two, 3)).isEqualTo(new CameraTime(CALL.plus(10), 3));
        assertThat(CameraTime.of(fourTakes, two, 8)).isEqualTo(new CameraTime(CALL.plus(30), 3));
        assertThat(CameraTime.of(fourTakes, two, 9)).isEqualTo(new CameraTime(CALL.plus(30), 3));
        assertThat(CameraTime.takeOf(fourTakes, two, 100)).isEqualTo(3);
    }

    @Test
    void aPlateThatLastsShowsNoLongerThanTakesAtWorst() {
        Need lasting = need(new Use.LastsTakes(3), Part.HERO, 1);
        assertThat(CameraTime.of(fourTakes, lasting, 1)).isEqualTo(new CameraTime(CALL, 23));
        assertThat(CameraTime.of(fourTakes, lasting, 2)).isEqualTo(new CameraTime(CALL.plus(30), 3));
        assertThat(CameraTime.of(fourTakes, lasting, 3)).isEqualTo(new CameraTime(CALL.plus(30), 3));
    }

    @Test
    void sparesOfOneSetStandReadyFromTheStart() {
        // a plate that is topped up is seen from the first roll to the last cut: 3 x 10 + 3 min
        assertThat(CameraTime.of(fourTakes, need(new Use.ToppedUp(2), Part.HERO, 1), 2))
                .isEqualTo(new CameraTime(CALL, 33));
        assertThat(CameraTime.of(fourTakes, need(new Use.LastsTakes(3), Part.STAND_IN, 1), 2))
                .isEqualTo(new CameraTime(new Moment(570), 0));
        assertThat(CameraTime.takeOf(fourTakes, need(new Use.LastsTakes(3), Part.STAND_IN, 1), 2))
                .isZero();
    }

    @Test
    void aNeedHasNoExtraLooksUnlessTold() {
        assertThat(need(new Use.FreshEachTake(), Part.HERO, 1).extraLooks()).isZero();
        assertThatThrownBy(() -> new Need(
                        "s",
                        "pie",
                        "plate",
                        1,
                        new Use.FreshEachTake(),
                        Part.HERO,
                        List.of(),
                        Optional.empty(),
                        1,
                        101))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("extra looks must be from 0 to 100, but it is [101]");
    }

    @Test
    void aStandInIsLitUntilTheCallAndAPlateStaysForItsLastTake() {
        Need standIn = need(new Use.FreshEachTake(), Part.STAND_IN, 1);
        assertThat(CameraTime.leaves(fourTakes, standIn, 1)).isEqualTo(CALL);
        assertThat(CameraTime.leaves(fourTakes, need(new Use.FreshEachTake(), Part.HERO, 1), 2))
                .isEqualTo(CALL.plus(10 + 3));
        assertThat(CameraTime.leaves(fourTakes, need(new Use.LastsTakes(3), Part.HERO, 1), 1))
                .isEqualTo(CALL.plus(23));
    }
}
