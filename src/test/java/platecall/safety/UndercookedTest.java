package platecall.safety;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.TestDays;
import platecall.day.TestDays.StepPart;

class UndercookedTest {

    private static TestDays pie(double core) {
        return new TestDays()
                .setup("S1", "12:00", setup -> {})
                .dish("pie", dish -> {})
                .need("S1", "pie", "cut", need -> need.eatenBy = List.of("Guest"))
                .step("pie", "fill", 10, step -> step.raw = true)
                .step("pie", "bake", 30, step -> core(step.after("fill"), core))
                .step("pie", "cut", 2, step -> step.after("bake"))
                .diner("Guest");
    }

    private static void core(StepPart step, double celsius) {
        step.core = Optional.of(celsius);
    }

    /** FDA Food Code 3-401.11(A)(1) to (3). */
    @Test
    void theLeastTemperatureFollowsTheFood() {
        assertThat(Undercooked.of(pie(63).build())).isEmpty();
        assertThat(Undercooked.of(pie(62).build()).get(0).leastCelsius()).isEqualTo(63);
        Undercooked goose = Undercooked.of(
                        pie(70).ingredient("pie", "goose", part -> {}).build())
                .get(0);
        assertThat(goose.kind()).isEqualTo(FoodKind.POULTRY);
        assertThat(goose.coreCelsius()).isEqualTo(70);
        assertThat(goose.leastCelsius()).isEqualTo(74);
        assertThat(goose.need().dish()).isEqualTo("pie");
        assertThat(Undercooked.of(
                        pie(66).ingredient("pie", "sausage", part -> {}).build()))
                .isEmpty();
        assertThat(Undercooked.of(
                                pie(62).ingredient("pie", "sausage", part -> {}).build())
                        .get(0)
                        .leastCelsius())
                .isEqualTo(68);
    }

    /** FDA Food Code 3-401.11(A)(2): ground meat at 63 °C is held for 3 minutes. */
    @Test
    void aStepIsLongEnoughForItsHoldingTime() {
        TestDays shorter = pie(63).ingredient("pie", "sausage", part -> {})
                .step("pie", "bake", 2, step -> core(step.after("fill"), 63));
        TestDays longer = pie(63).ingredient("pie", "sausage", part -> {})
                .step("pie", "bake", 3, step -> core(step.after("fill"), 63));

        assertThat(Undercooked.of(shorter.build())).hasSize(1);
        assertThat(Undercooked.of(longer.build())).isEmpty();
    }

    @Test
    void anIngredientThatIsAddedLaterDoesNotCount() {
        TestDays days = pie(63).step("pie", "serve", 1, step -> step.after("cut"))
                .ingredient("pie", "duck", part -> part.step = Optional.of("serve"));

        assertThat(Undercooked.of(days.build())).isEmpty();
        assertThat(Undercooked.of(days.need("S1", "pie", "serve", need -> need.eatenBy = List.of("Guest"))
                        .build()))
                .hasSize(1);
    }

    @Test
    void aLaterStepMayCookIt() {
        assertThat(Undercooked.of(pie(50).step("pie", "cut", 2, step -> core(step.after("bake"), 80))
                        .build()))
                .isEmpty();
    }

    @Test
    void heatBeforeTheLastRawStepDoesNotCount() {
        TestDays days = pie(62).step("pie", "boil", 5, step -> core(step, 90))
                .step("pie", "fill", 10, step -> step.after("boil").raw = true);

        assertThat(Undercooked.of(days.build())).hasSize(1);
    }

    @Test
    void whatIsEatenRawOrNeverWasOrStatesNothingIsNotJudged() {
        assertThat(Undercooked.of(pie(50).need("S1", "pie", "cut", need -> {}).build()))
                .isEmpty();
        assertThat(Undercooked.of(pie(50).step("pie", "fill", 10, step -> {}).build()))
                .isEmpty();
        assertThat(Undercooked.of(pie(50).step("pie", "bake", 30, step -> step.after("fill"))
                        .build()))
                .isEmpty();
        assertThat(Undercooked.of(pie(50).step("pie", "cut", 2, step -> step.after("bake").raw = true)
                        .build()))
                .isEmpty();
        assertThat(Undercooked.of(pie(50).with(days -> days.profile = "?").build()))
                .isEmpty();
    }

    /** FDA Food Code 3-301.11. */
    @Test
    void handsOnFoodThatIsEatenAsItIsWearGloves() {
        TestDays days = pie(80).step("pie", "fill", 10, step -> {
                    step.raw = true;
                    step.hands = 1;
                })
                .step("pie", "bake", 30, step -> {
                    core(step.after("fill"), 80);
                    step.hands = 1;
                })
                .step("pie", "cut", 2, step -> step.after("bake").hands = 1)
                .need("S1", "pie", "bake", need -> need.eatenBy = List.of("Guest"));

        assertThat(HandContact.of(days.build()))
                .extracting(contact -> contact.step().id())
                .containsExactly("cut");
        assertThat(HandContact.of(days.need("S1", "pie", "cut", need -> {}).build()))
                .isEmpty();
    }
}
