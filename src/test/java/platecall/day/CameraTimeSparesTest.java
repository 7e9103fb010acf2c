package platecall.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import platecall.units.Moment;
import platecall.units.Span;

class CameraTimeSparesTest {

    private static final Moment CALL = new Moment(600);

    private final Setup fourTakes = setup(Optional.empty());

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
        assertThat(CameraTime.isSpare(fourTakes, two, 8)).isFalse();
        assertThat(CameraTime.isSpare(fourTakes, two, 9)).isTrue();
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

    /** Called at 600, four takes, ten minutes apart; two are shot and the third rolls at 632 instead of 620. */
    @Test
    void whatIsShotRolledAsCalledAndAllElseFollowsTheNextTake() {
        Setup two = shot(2, 632);
        assertThat(IntStream.range(0, 4).mapToObj(two::rollOf))
                .containsExactly(CALL, CALL.plus(10), CALL.plus(32), CALL.plus(42));
        assertThat(two.nextRoll()).isEqualTo(CALL.plus(32));
        assertThat(two.shooting()).isEqualTo(new Span(CALL, CALL.plus(52)));
        assertThat(two.isOver(CALL.plus(51))).isFalse();
        assertThat(two.isOver(CALL.plus(52))).isTrue();
        // all are shot: it is over, whenever that was
        assertThat(shot(4, 632).isOver(CALL)).isTrue();

        Need fresh = need(new Use.FreshEachTake(), Part.HERO, 1);
        assertThat(CameraTime.of(two, fresh, 2)).isEqualTo(new CameraTime(CALL.plus(10), 3));
        assertThat(CameraTime.of(two, fresh, 3)).isEqualTo(new CameraTime(CALL.plus(32), 3));
        assertThat(IntStream.rangeClosed(1, 4).filter(number -> CameraTime.isShot(two, fresh, number)))
                .containsExactly(1, 2);
        assertThat(IntStream.rangeClosed(1, 4).filter(number -> CameraTime.isOfNextSet(two, fresh, number)))
                .containsExactly(3);
        // the first of three takes each has one to serve: from 632 on; what is topped up serves to the last cut at 645
        Need lasting = need(new Use.LastsTakes(3), Part.HERO, 1);
        assertThat(CameraTime.of(two, lasting, 1)).isEqualTo(new CameraTime(CALL.plus(32), 3));
        assertThat(CameraTime.isOfNextSet(two, lasting, 1)).isTrue();
        assertThat(CameraTime.of(two, need(new Use.ToppedUp(2), Part.HERO, 1), 1))
                .isEqualTo(new CameraTime(CALL.plus(32), 13));
        // stand-ins are lit before the first take
        Need standIn = need(new Use.FreshEachTake(), Part.STAND_IN, 1);
        assertThat(CameraTime.isShot(two, standIn, 1)).isTrue();
        assertThat(CameraTime.isOfNextSet(two, standIn, 1)).isFalse();
    }

    private static Setup shot(int takes, long next) {
        return setup(Optional.of(new Setup.TakesShot(takes, Optional.of(new Moment(next)))));
    }

    private static Setup setup(Optional<Setup.TakesShot> takesShot) {
        return new Setup(
                "s",
                "",
                "",
                "set",
                CALL,
                Optional.of(new Moment(570)),
                3,
                4,
                10,
                3,
                false,
                new Release.AtEnd(),
                1,
                takesShot);
    }

    /** Two plates a take and three extra looks: of nine six serve takes, of four the first two. */
    @Test
    void theLastCopiesAreTheExtraLooksButNeverTheFirstSet() {
        Need pairs =
                new Need("s", "pie", "plate", 2, new Use.FreshEachTake(), Part.HERO, List.of(), Optional.empty(), 1, 3);
        assertThat(IntStream.of(0, 1, 2, 4, 5, 6, 9).map(copies -> CameraTime.forTakes(pairs, copies)))
                .containsExactly(0, 1, 2, 2, 2, 3, 6);
        assertThat(CameraTime.copiesFor(pairs, 4)).isEqualTo(11);
        assertThat(CameraTime.copiesFor(need(new Use.LastsTakes(3), Part.HERO, 2), 4))
                .isEqualTo(4);
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
