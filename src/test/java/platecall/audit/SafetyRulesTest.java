package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Plan.Verdict;
import platecall.plan.Rule;
import platecall.plan.TestPlans;

class SafetyRulesTest {

    /** Soup for S1 at 14:00, seen for 5 minutes and eaten: cut raw, cooked on the hob, no hands needed. */
    private static TestDays soup(double core) {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "14:00", setup -> {})
                .dish("soup", dish -> dish.controlled = true)
                .dish("salad", dish -> {})
                .need("S1", "soup", "cook", need -> need.eatenBy = List.of("Guest"))
                .step("soup", "cut", 10, step -> step.raw = true)
                .step("soup", "cook", 30, step -> step.after("cut").uses("hob", 1).core = Optional.of(core))
                .station("hob", Station.Kind.BURNERS, 2, station -> {})
                .station("fridge", Station.Kind.FRIDGE, 9, station -> {})
                .station("rack", Station.Kind.RACK, 9, station -> {})
                .person("Ana", person -> {})
                .diner("Guest");
    }

    private static TestPlans cookedAt(Day day, String cut, String cook) {
        return TestPlans.of(day)
                .step("soup", "cut", 1, cut, work -> {})
                .step("soup", "cook", 1, cook, work -> work.on("hob", 1));
    }

    /** FDA Food Code 3-501.19(B): four hours. */
    @ParameterizedTest
    @CsvSource({"09:35-10:05, 0", "09:34-10:04, 1", "09:31-10:01, 4"})
    void theClockCountsEveryMinuteBeyondFourHours(String cook, long over) {
        Day day = soup(74).build();

        assertThat(totals(day, cookedAt(day, "09:20-09:30", cook)))
                .isEqualTo(over == 0 ? Map.of() : Map.of(Rule.CLOCK, over));
    }

    @Test
    void theClockSaysHowLongItStood() {
        Day day = soup(74).build();

        assertThat(sentences(day, cookedAt(day, "09:20-09:30", "09:34-10:04")))
                .containsExactly(
                        "Soup #1 for setup S1: 241 min out since it was cooked through or begun, at most 240 after hot");
    }

    @Test
    void whatHadToBeThrownAwayIsNotEaten() {
        Day day = soup(74).build();
        TestPlans plan = cookedAt(day, "09:00-09:10", "09:29-09:59");

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.CLOCK, 6L, Rule.DISCARDED, 1L));
        assertThat(sentences(day, plan))
                .contains("Soup #1 for setup S1 is eaten from 14:00, but had to be thrown away by 13:59");
    }

    /** Its takes are shot by 15:00: what was wrong with it is told, but the rest of the day is none the worse for it. */
    @Test
    void whatWasEatenBeforeNowIsOver() {
        Day day = soup(74).build();
        TestPlans plan = cookedAt(day, "09:00-09:10", "09:29-09:59");
        Verdict before = Audit.of(day, plan.asOf("13:00").build());
        assertThat(before.breaches())
                .hasSize(2)
                .noneMatch(breach -> breach.over().isPresent());
        assertThat(before.unsettling()).hasSize(2);
        Verdict after = Audit.of(day, plan.asOf("23:00").build());
        assertThat(after.breaches())
                .hasSize(2)
                .allMatch(breach -> breach.over().equals(Optional.of(TestDays.at("23:00"))));
        assertThat(after.unsettling()).isEmpty();
    }

    /** FDA Food Code 3-401.11(A)(1): 63 °C. */
    @Test
    void whatIsEatenCookedGetsHotEnough() {
        TestPlans enough = cookedAt(soup(63).build(), "13:10-13:20", "13:30-14:00");

        assertThat(totals(soup(63).build(), enough)).isEmpty();
        assertThat(totals(soup(62.5).build(), enough)).isEqualTo(Map.of(Rule.COOKING, 1L));
        assertThat(sentences(soup(62.5).build(), enough))
                .containsExactly("Soup for setup S1 reaches 62.5 °C inside, but needs 63 °C");
    }

    @Test
    void onlyTheCopiesThatAreMadeAreUndercooked() {
        Day day = soup(50).setup("S1", "14:00", setup -> setup.takes(3)).build();
        TestPlans plan = cookedAt(day, "13:10-13:20", "13:30-14:00")
                .step("soup", "cut", 2, "13:10-13:20", work -> {})
                .step("soup", "cook", 2, "13:30-14:00", work -> work.on("hob", 1));

        assertThat(totals(day, plan)).containsEntry(Rule.COOKING, 2L).containsEntry(Rule.COPIES, 1L);
    }

    @Test
    void whatIsNotEatenMayBeUndercooked() {
        Day day = soup(50).need("S1", "soup", "cook", need -> {}).build();

        assertThat(totals(day, cookedAt(day, "13:10-13:20", "13:30-14:00"))).isEmpty();
    }

    /** The same soup, which waits in the fridge raw, and a salad that is washed, waits in a store and is dressed. */
    private static TestDays soupAndSalad(String saladIn) {
        return soup(74).need("S1", "salad", "dress", need -> {})
                .step("salad", "wash", 10, step -> step.waitsIn = Optional.of(saladIn))
                .step("salad", "dress", 5, step -> step.after("wash"))
                .step("soup", "cut", 10, step -> {
                    step.raw = true;
                    step.waitsIn = Optional.of("fridge");
                });
    }

    private static TestPlans stored(Day day, String saladIn, String wash, String salad) {
        return TestPlans.of(day)
                .step("soup", "cut", 1, "09:00-09:10", work -> work.then("fridge", 1, "09:10-13:30"))
                .step("soup", "cook", 1, "13:30-14:00", work -> work.on("hob", 1))
                .step("salad", "wash", 1, wash, work -> work.then(saladIn, 1, salad))
                .step("salad", "dress", 1, "13:50-13:55", work -> {});
    }

    /** FDA Food Code 3-302.11. */
    @Test
    void rawFoodIsNotStoredBesideFoodThatIsReady() {
        Day day = soupAndSalad("fridge").build();
        Day racked = soupAndSalad("rack").build();

        assertThat(totals(day, stored(day, "fridge", "13:00-13:10", "13:10-13:50")))
                .isEqualTo(Map.of(Rule.RAW_APART, 20L));
        assertThat(sentences(day, stored(day, "fridge", "13:00-13:10", "13:10-13:50")))
                .containsExactly("fridge holds Soup raw beside Salad from 13:10 to 13:30");
        assertThat(totals(day, stored(day, "fridge", "13:20-13:30", "13:30-13:50")))
                .isEmpty();
        assertThat(totals(racked, stored(racked, "rack", "13:00-13:10", "13:10-13:50")))
                .isEmpty();
    }

    @Test
    void aStepDoneInAStoreIsOnItsOwnSide() {
        Day day = soupAndSalad("rack")
                .step("salad", "wash", 10, step -> step.uses("fridge", 1).waitsIn = Optional.of("rack"))
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("soup", "cut", 1, "09:00-09:10", work -> work.then("fridge", 1, "09:10-13:30"))
                .step("soup", "cook", 1, "13:30-14:00", work -> work.on("hob", 1))
                .step(
                        "salad",
                        "wash",
                        1,
                        "09:05-09:15",
                        work -> work.on("fridge", 1).then("rack", 1, "09:15-13:50"))
                .step("salad", "dress", 1, "13:50-13:55", work -> {});

        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.RAW_APART, 5L));
    }

    @Test
    void twoOfASideMayShareAStore() {
        Day day = soupAndSalad("fridge")
                .step("salad", "wash", 10, step -> {
                    step.raw = true;
                    step.waitsIn = Optional.of("fridge");
                })
                .build();

        assertThat(totals(day, stored(day, "fridge", "13:00-13:10", "13:10-13:50")))
                .isEmpty();
    }
}
