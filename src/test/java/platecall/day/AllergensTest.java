package platecall.day;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AllergensTest {

    @ParameterizedTest
    @CsvSource({
        // Regulation (EU) No 1169/2011, Annex II: kinds of nuts and of cereals containing gluten
        "nuts, almonds",
        "nuts, macadamia nut",
        "gluten, barley",
        "gluten, spelt",
        "milk, lactose",
        // 21 USC 321(qq): crab, lobster and shrimp are crustacean shellfish, walnuts are tree nuts
        "shellfish, crab",
        "crustacean shellfish, shrimp",
        "tree nuts, walnuts",
        // common usage, no source
        "Dairy, milk",
        "anchovy, anchovies",
        "soy, soya"
    })
    void anAllergenMeetsItsGroupAndItsOtherNamesBothWays(String one, String other) {
        assertThat(Allergens.meet(one, other)).isTrue();
        assertThat(Allergens.meet(other, one)).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"almonds, walnuts", "nuts, peanuts", "crab, mussels", "fish, shellfish", "milk, eggs", "rye, oats"})
    void differentAllergensDoNotMeet(String one, String other) {
        assertThat(Allergens.meet(one, other)).isFalse();
        assertThat(Allergens.meet(other, one)).isFalse();
    }

    @Test
    void aWordThatIsNotInTheListMeetsItselfOnly() {
        assertThat(Allergens.meet("Kiwis", " kiwi ")).isTrue();
        assertThat(Allergens.meet("kiwi", "milk")).isFalse();
    }

    @Test
    void aKindIsAGroupButAGroupIsNotAKind() {
        assertThat(Allergens.isA("cod", "fish")).isTrue();
        assertThat(Allergens.isA("fish", "cod")).isFalse();
    }
}
