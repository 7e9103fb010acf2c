package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProfileTest {

    private static final Profile FDA = Profile.named("fda-2022").orElseThrow();
    private static final Profile UK = Profile.named("uk").orElseThrow();

    @Test
    void aProfileHasSeveralNames() {
        assertThat(Profile.named("food code 2022")).contains(FDA);
        assertThat(Profile.named(" FDA-2022 ")).contains(FDA);
        assertThat(Profile.named("England")).contains(UK);
        assertThat(Profile.named("food code 2013").orElseThrow().name()).isEqualTo("fda-2013");
        assertThat(Profile.named("")).isEmpty();
        assertThat(Profile.named("food")).isEmpty();
        assertThat(Profile.mainNames()).containsExactly("fda-2022", "fda-2013", "uk", "australia", "france");
        assertThat(Profile.names())
                .contains("fda-2022", "food code 2022", "uk", "france")
                .doesNotHaveDuplicates();
        assertThat(FDA.title()).isEqualTo("FDA Food Code (2022)");
    }

    @ParameterizedTest
    @CsvSource({
        "US,fda-2022",
        "U.S.,fda-2022",
        "USA,fda-2022",
        "United States,fda-2022",
        "usda,fda-2022",
        "FDA,fda-2022",
        "Great Britain,uk",
        "GB,uk",
        "Wales,uk",
        "AU,australia",
        "FR,france"
    })
    void aCountryNamesItsProfile(String country, String profile) {
        assertThat(Profile.named(country)).contains(Profile.named(profile).orElseThrow());
    }

    @Test
    void everyProfileHasTheLimitsThatTheClockNeeds() {
        for (String name : Profile.names()) {
            Profile profile = Profile.named(name).orElseThrow();
            assertThat(profile.hot().value()).isGreaterThan(profile.cold().value());
            assertThat(profile.outHot().mostWhole())
                    .isBetween(1, profile.outCold().mostWhole());
            assertThat(profile.reheats(100, 3600)).isTrue();
            for (FoodKind kind : FoodKind.values()) {
                assertThat(profile.cooks(kind, 100, 3600)).isTrue();
                assertThat(profile.cooks(kind, 20, 3600)).isFalse();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "profiles.csv",
                "limits.csv",
                "cooking.csv",
                "roast.csv",
                "oven.csv",
                "appendix-a.csv",
                "cooling.csv",
                "declared.csv"
            })
    void everyLineOfTheDataNamesItsEditionAndSource(String file) {
        for (CSVRecord row : SourcedCsv.rows(file)) {
            assertThat(row.isConsistent()).as(file + " " + row).isTrue();
            assertThat(row.get("edition")).as(file + " " + row).isNotEmpty();
            assertThat(row.get("source")).as(file + " " + row).isNotEmpty();
        }
        assertThat(SourcedCsv.rows(file)).hasSizeGreaterThan(4);
    }

    /** FDA Food Code 3-501.16: 57 °C, roasts from the table 54 °C, cold 5 °C, air around raw shell eggs 7 °C. */
    @Test
    void theFoodCodeHoldsFoodHotOrCold() {
        assertThat(FDA.holdsHot(57.0, false)).isTrue();
        assertThat(FDA.holdsHot(56.9, false)).isFalse();
        assertThat(FDA.holdsHot(54.0, true)).isTrue();
        assertThat(FDA.holdsHot(53.9, true)).isFalse();
        assertThat(FDA.holdsCold(5.0)).isTrue();
        assertThat(FDA.holdsCold(5.1)).isFalse();
        assertThat(FDA.holdsShellEggs(7)).isTrue();
        assertThat(FDA.holdsShellEggs(7.1)).isFalse();
        assertThat(UK.holdsShellEggs(8)).isTrue();
        assertThat(UK.holdsHot(62.9, true)).isFalse();
    }

    /** SI 2013/2996 Sch. 4, as WSI 2006/31: hot below 63 °C for less than two hours, cold above 8 °C for less than four. */
    @ParameterizedTest
    @CsvSource({
        "true, 119, 0, true",
        "true, 120, 0, false",
        "true, 10, 1, false",
        "false, 239, 0, true",
        "false, 240, 0, false",
        "false, 239, 1, false"
    })
    void theBritishRulesForgiveOneShortTime(boolean warm, double minutes, int earlierTimes, boolean may) {
        assertThat(UK.mayStandOut(warm, minutes, earlierTimes)).isEqualTo(may);
        assertThat(UK.holdsHot(62.9, false)).isFalse();
        assertThat(UK.holdsHot(63, false)).isTrue();
        assertThat(UK.holdsCold(8)).isTrue();
        assertThat(UK.holdsCold(8.1)).isFalse();
    }

    /** FDA Food Code 3-501.19(B) counts to four hours and has no word on occasions. */
    @Test
    void theFoodCodeAllowsFourHours() {
        assertThat(FDA.mayStandOut(true, 240, 3)).isTrue();
        assertThat(FDA.mayStandOut(true, 241, 0)).isFalse();
        assertThat(FDA.mayStandOut(false, 241, 0)).isFalse();
    }

    /** Regulation (EC) 852/2004, Annex II, Ch. IX, point 5 has no numbers, so none may name it as its source. */
    @Test
    void noNumberClaimsToBeFromTheRegulationWithoutNumbers() {
        for (String file : new String[] {"limits.csv", "cooking.csv", "cooling.csv"}) {
            assertThat(SourcedCsv.rows(file)).noneMatch(row -> row.get("source").contains("852/2004"));
        }
    }

    @Test
    void aLimitKnowsItsSide() {
        assertThat(FDA.outHot().mostWhole()).isEqualTo(240);
        assertThat(UK.outHot().mostWhole()).isEqualTo(119);
        assertThat(FDA.hot().allows(57 - 1e-12)).isTrue();
        assertThat(UK.outHot().allows(120 - 1e-12)).isFalse();
        assertThat(FDA.limit("occasions")).isEmpty();
        assertThat(UK.limit("occasions").orElseThrow().value()).isEqualTo(1);
        assertThat(FDA.hot().unit()).isEqualTo("celsius");
        assertThat(FDA.hot().source()).isEqualTo("FDA Food Code 3-501.16(A)(1)");
    }

    /** FDA Food Code 3-403.11. */
    @ParameterizedTest
    @CsvSource({
        "false, 74, 15, 120, true",
        "false, 74, 15, 121, false",
        "false, 74, 14, 60, false",
        "false, 73.9, 60, 60, false",
        "true, 57, 0, 60, true",
        "true, 56.9, 600, 60, false",
        "true, 57, 0, 121, false"
    })
    void foodIsHeatedUpAgainHotEnoughAndSoon(
            boolean pack, double celsius, double seconds, double minutes, boolean right) {
        assertThat(Reheating.right(FDA, pack, celsius, seconds, minutes)).isEqualTo(right);
    }

    /** UK guidance of 70 °C for two minutes sets no time to get there. */
    @Test
    void theBritishProfileHeatsUpToSeventy() {
        assertThat(Reheating.right(UK, false, 70, 120, 500)).isTrue();
        assertThat(Reheating.right(UK, false, 70, 119, 5)).isFalse();
        assertThat(Reheating.right(UK, false, 80, 6, 5)).isTrue();
        assertThat(Reheating.right(UK, false, 80, 5, 5)).isFalse();
        assertThat(Reheating.right(UK, false, 65, 600, 5)).isTrue();
        assertThat(Reheating.right(UK, true, 63, 0, 5)).isTrue();
        assertThat(Reheating.right(UK, true, 62, 0, 5)).isFalse();
    }

    /** FDA Food Code 3-501.13. */
    @Test
    void foodThawsColdOrUnderColdWater() {
        assertThat(Thawing.fridge(FDA, 5)).isTrue();
        assertThat(Thawing.fridge(FDA, 5.1)).isFalse();
        assertThat(Thawing.aboveCold(FDA, true, 10, 240)).isTrue();
        assertThat(Thawing.aboveCold(FDA, true, 10, 241)).isFalse();
        assertThat(Thawing.aboveCold(FDA, true, 21, 1)).isTrue();
        assertThat(Thawing.aboveCold(FDA, true, 21.1, 1)).isFalse();
        assertThat(Thawing.aboveCold(FDA, false, 5, 0)).isTrue();
        assertThat(Thawing.aboveCold(FDA, false, 5.1, 1)).isFalse();
        assertThat(Thawing.aboveCold(UK, true, 10, 240)).isTrue();
        assertThat(Thawing.water(FDA).allows(21)).isTrue();
        assertThat(Thawing.water(FDA).allows(21.1)).isFalse();
        assertThat(Thawing.water(UK).allows(22)).isFalse();
    }

    @Test
    void anUnknownLimitIsNoNumber() {
        assertThat(FDA.limit("nonsense")).isEmpty();
    }
}
