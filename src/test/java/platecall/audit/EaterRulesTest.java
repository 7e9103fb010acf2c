package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.eggs;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.TestDays;
import platecall.plan.Rule;

class EaterRulesTest {

    private static TestDays eatenBy(String... eaters) {
        return TestDays.firstEgg()
                .need("S1", "egg", "plate", need -> need.eatenBy = List.of(eaters))
                .diner("Innkeeper", "Milk")
                .diner("Guest");
    }

    @Test
    void nobodyEatsWhatHeIsAllergicTo() {
        Day day = eatenBy("Innkeeper", "Guest")
                .ingredient("egg", "butter", ingredient -> ingredient.allergens = List.of("milk"))
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.ALLERGEN, 2L));
        assertThat(sentences(day, eggs(day)))
                .containsExactly("Egg for setup S1 has milk, which Innkeeper must not eat");
    }

    /** Regulation (EU) No 1169/2011, Annex II: almonds are nuts, rye is a cereal that contains gluten. */
    @Test
    void aKindOfWhatHeIsAllergicToIsNotEatenEither() {
        Day day = eatenBy("Nora", "Baker")
                .diner("Nora", "nuts")
                .diner("Baker", "gluten")
                .ingredient("egg", "crumbs", ingredient -> ingredient.allergens = List.of("almonds", "rye"))
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.ALLERGEN, 4L));
        assertThat(sentences(day, eggs(day)))
                .contains(
                        "Egg for setup S1 has almonds, which Nora must not eat",
                        "Egg for setup S1 has rye, which Baker must not eat");
    }

    @Test
    void aWordOfWhatIsInItIsEnough() {
        Day day = eatenBy("Innkeeper")
                .ingredient(
                        "egg",
                        "sauce",
                        ingredient -> ingredient.allergens = List.of("milk powder", "coconut milk", "egg white"))
                .build();

        assertThat(sentences(day, eggs(day)))
                .containsExactly("Egg for setup S1 has milk powder, which Innkeeper must not eat");
    }

    @Test
    void anIngredientThatIsTheAllergenNeedsNoLabel() {
        Day day = eatenBy("Innkeeper", "Guest")
                .ingredient("egg", "Milk", ingredient -> {})
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.ALLERGEN, 2L));
        assertThat(sentences(day, eggs(day)))
                .containsExactly("Egg for setup S1 has Milk, which Innkeeper must not eat");
    }

    @Test
    void whoHasNoSuchAllergyMayEatIt() {
        Day day = eatenBy("Guest")
                .ingredient("egg", "butter", ingredient -> ingredient.allergens = List.of("milk"))
                .build();

        assertThat(totals(day, eggs(day))).isEmpty();
    }

    @Test
    void whatIsAddedAfterTheWantedStageIsNotInIt() {
        Day day = eatenBy("Innkeeper")
                .step("egg", "garnish", 1, step -> step.after("plate"))
                .ingredient("egg", "cream", ingredient -> {
                    ingredient.allergens = List.of("milk");
                    ingredient.step = Optional.of("garnish");
                })
                .build();

        assertThat(totals(day, eggs(day))).isEmpty();
    }

    @Test
    void whatIsOnlyForLooksIsNotEaten() {
        Day day = eatenBy("Guest")
                .dish("egg", dish -> {
                    dish.look = Look.table(0, 15, 20);
                    dish.edible = false;
                })
                .build();

        assertThat(totals(day, eggs(day))).isEqualTo(Map.of(Rule.INEDIBLE, 2L));
        assertThat(sentences(day, eggs(day))).containsExactly("Egg for setup S1 is only for looks, but eaten by Guest");
    }
}
