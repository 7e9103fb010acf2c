package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SafetyProfileTest {

    @ParameterizedTest
    @ValueSource(strings = {"food code 2022", "fda-2022", "FDA-2013", "uk", "US", "U.S.A.", "australia", "france"})
    void aKnownProfileIsFine(String name) {
        assertThat(Sheets.toast().fact("safety profile", name).troubles()).isEmpty();
    }

    @Test
    void aMisspeltProfileIsTold() {
        assertThat(Sheets.toast().fact("safety profile", "food cod 2022").troubles())
                .containsExactly("day -1 safety profile: [food cod 2022] is no food-safety profile that is known. "
                        + "Did you mean food code 2022?");
    }

    /** There are no numbers for all of the EU, nor for Scotland, which has others than England. */
    @ParameterizedTest
    @ValueSource(strings = {"grandmother's", "EU", "UA", "Germany", "Scotland", "New Zealand"})
    void anUnknownProfileIsToldWithThoseThereAre(String name) {
        assertThat(Sheets.toast().fact("safety profile", name).troubles())
                .containsExactly("day -1 safety profile: [" + name + "] is no food-safety profile that is known. "
                        + "Maybe one of fda-2022, fda-2013, uk, australia, france.");
    }
}
