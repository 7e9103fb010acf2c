package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.day.TestDays.at;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.safety.TimeMark.Food;

class TimeMarkTest {

    private static final Profile FDA = Profile.named("fda-2022").orElseThrow();

    /** FDA Food Code 3-501.19(B): held cold or hot at the start; cut produce and opened packs may start at 21 °C. */
    @ParameterizedTest
    @CsvSource({
        "fda-2022, HELD, 5, true",
        "fda-2022, HELD, 5.1, false",
        "fda-2022, HELD, 57, true",
        "fda-2022, HELD, 56.9, false",
        "fda-2022, HELD, 20, false",
        "fda-2022, CUT_OR_OPENED, 20, true",
        "fda-2022, CUT_OR_OPENED, 21, true",
        "fda-2022, CUT_OR_OPENED, 21.1, false",
        "fda-2013, CUT_OR_OPENED, 20, false",
        "fda-2013, CUT_OR_OPENED, 5, true"
    })
    void foodIsMarkedFourHoursAfterItIsTakenOut(String profile, Food food, double celsius, boolean may) {
        assertThat(TimeMark.discardBy(Profile.named(profile).orElseThrow(), food, celsius, at("10:00")))
                .isEqualTo(may ? Optional.of(at("14:00")) : Optional.empty());
    }

    /** SI 2013/2996 Sch. 4: less than two hours when hot, less than four when cold. */
    @Test
    void theBritishMarkIsAMinuteEarlier() {
        Profile uk = Profile.named("uk").orElseThrow();

        assertThat(TimeMark.discardBy(uk, Food.HELD, 63, at("10:00"))).contains(at("11:59"));
        assertThat(TimeMark.discardBy(uk, Food.HELD, 8, at("10:00"))).contains(at("13:59"));
        assertThat(TimeMark.discardBySixHours(uk, 5, at("10:00"))).isEmpty();
        assertThat(TimeMark.tooWarmForSixHours(uk, 3)).isTrue();
    }

    @Test
    void unmarkedOvermarkedAndOldFoodIsThrownAway() {
        Optional<platecall.units.Moment> two = Optional.of(at("14:00"));

        assertThat(TimeMark.mustDiscard(two, two, at("14:00"))).isFalse();
        assertThat(TimeMark.mustDiscard(two, two, at("14:01"))).isTrue();
        assertThat(TimeMark.mustDiscard(two, Optional.empty(), at("10:01"))).isTrue();
        assertThat(TimeMark.mustDiscard(two, Optional.of(at("14:01")), at("10:01")))
                .isTrue();
        assertThat(TimeMark.mustDiscard(two, Optional.of(at("13:00")), at("13:01")))
                .isTrue();
        assertThat(TimeMark.mustDiscard(Optional.empty(), two, at("10:01"))).isTrue();
    }

    /** FDA Food Code 3-501.19(C). */
    @Test
    void coldFoodMayStandSixHoursIfItStaysCool() {
        assertThat(TimeMark.discardBySixHours(FDA, 5, at("10:00"))).contains(at("16:00"));
        assertThat(TimeMark.discardBySixHours(FDA, 5.1, at("10:00"))).isEmpty();
        assertThat(TimeMark.tooWarmForSixHours(FDA, 21.0)).isFalse();
        assertThat(TimeMark.tooWarmForSixHours(FDA, 21.1)).isTrue();
    }
}
