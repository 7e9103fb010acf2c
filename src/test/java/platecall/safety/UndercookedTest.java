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

    /** An invented chicken, marinated raw and grilled to 50 °C, plated with a sauce of 90 °C. FDA Food Code 3-401.11(A). */
    private static TestDays chicken(double grill) {
        return new TestDays()
                .setup("S1", "12:00", setup -> {})
                .dish("chicken", dish -> {})
                .need("S1", "chicken", "plate", need -> need.eatenBy = List.of("Guest"))
                .step("chicken", "marinate", 10, step -> step.raw = true)
                .step("chicken", "grill", 10, step -> core(step.after("marinate"), grill))
                .step("chicken", "sauce", 10, step -> core(step, 90))
                .step("chicken", "plate", 2, step -> step.after("grill", "sauce"))
                .diner("Guest");
    }

    @Test
    void heatOfAnotherBranchDoesNotCookIt() {
        Undercooked found = Undercooked.of(chicken(50).build()).get(0);

        assertThat(found.kind()).isEqualTo(FoodKind.POULTRY);
        assertThat(found.coreCelsius()).isEqualTo(50);
        assertThat(found.leastCelsius()).isEqualTo(74);
        assertThat(Undercooked.of(chicken(74).build())).isEmpty();
        assertThat(Undercooked.of(chicken(50)
                        .step("chicken", "plate", 2, step -> core(step.after("grill", "sauce"), 74))
                        .build()))
                .isEmpty();
    }

    @Test
    void theOrderOfNamesInACellMakesNoDifference() {
        for (String[] after : new String[][] {{"grill", "tuna"}, {"tuna", "grill"}}) {
            TestDays days = chicken(50)
                    .step("chicken", "tuna", 10, step -> step.raw = true)
                    .step("chicken", "plate", 2, step -> step.after(after));

            assertThat(Undercooked.of(days.build())).hasSize(1);
            assertThat(Undercooked.of(days.step("chicken", "grill", 10, step -> core(step.after("marinate"), 74))
                            .build()))
                    .isEmpty();
        }
    }

    @Test
    void everyWayOfTheRawFoodIsJudged() {
        TestDays days = chicken(80)
                .step("chicken", "wings", 10, step -> core(step.after("marinate"), 60))
                .step("chicken", "crisp", 10, step -> core(step.after("wings"), 65))
                .step("chicken", "plate", 2, step -> step.after("grill", "crisp"));
        TestDays silent = chicken(80)
                .step("chicken", "wings", 10, step -> step.after("marinate"))
                .step("chicken", "plate", 2, step -> step.after("grill", "wings"));

        assertThat(Undercooked.of(days.build()).get(0).coreCelsius()).isEqualTo(65);
        assertThat(Undercooked.of(silent.build())).isEmpty();
        assertThat(Undercooked.of(silent.step("chicken", "plate", 2, step -> core(step.after("grill", "wings"), 30))
                                .build())
                        .get(0)
                        .coreCelsius())
                .isEqualTo(30);
    }

    private static List<String> gloves(TestDays days) {
        return HandContact.of(days.build()).stream()
                .map(contact -> contact.step().id())
                .toList();
    }

    /** FDA Food Code 3-301.11(D): only what will be cooked through may be touched by bare hands. */
    @Test
    void onlyHeatOnItsOwnWayThatCooksItSparesGloves() {
        TestDays salad = chicken(80).step("chicken", "sauce", 10, step -> step.hands = 1);
        TestDays slice = pie(80).step("pie", "slice", 10, step -> step.after("bake").hands = 1);

        assertThat(gloves(salad)).containsExactly("sauce");
        assertThat(gloves(slice.step("pie", "cut", 10, step -> core(step.after("slice"), 4))))
                .containsExactly("slice");
        assertThat(gloves(slice.step("pie", "cut", 10, step -> core(step.after("slice"), 62))))
                .containsExactly("slice");
        assertThat(gloves(slice.step("pie", "cut", 10, step -> core(step.after("slice"), 63))))
                .isEmpty();
        assertThat(gloves(slice.with(days -> days.profile = "?"))).containsExactly("slice");
    }

    @Test
    void glovesAreWornIfOnlyPartOfItIsHeated() {
        TestDays days = chicken(80)
                .step("chicken", "chop", 5, step -> step.hands = 1)
                .step("chicken", "sauce", 10, step -> core(step.after("chop"), 90))
                .step("chicken", "garnish", 1, step -> step.after("chop"));

        assertThat(gloves(days)).isEmpty();
        assertThat(gloves(days.step("chicken", "plate", 2, step -> step.after("grill", "sauce", "garnish"))))
                .containsExactly("chop");
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
