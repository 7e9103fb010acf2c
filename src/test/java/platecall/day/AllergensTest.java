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

    // what these are made of: common usage, no source
    @ParameterizedTest
    @CsvSource({
        "celiac disease, wheat flour",
        "coeliac, rye",
        "seafood, oysters",
        "shell fish, prawns",
        "shell-fish, crustaceans",
        "pea nuts, peanuts",
        "peanuts, pea-nut butter",
        "sea food, squid",
        "seafood, shrimp",
        "nuts, marzipan",
        "nuts, frangipane tart",
        "hazelnuts, gianduja",
        "sesame, tahini",
        "sesame, hummus",
        "milk, pesto",
        "nuts, basil pesto",
        "soy, tofu",
        "gluten, soy sauce",
        "gluten, couscous",
        "gluten, malt vinegar",
        "eggs, mayonnaise",
        "fish, Worcestershire sauce",
        "dairy, crème fraîche"
    })
    void madeUpFoodMeetsWhatIsHiddenInIt(String allergy, String contained) {
        assertThat(Allergens.meet(allergy, contained)).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "eggs, vegan mayonnaise",
        "milk, vegan cheese",
        "almonds, walnuts",
        "nuts, peanuts",
        "crab, mussels",
        "fish, shellfish",
        "fish, shell fish",
        "nuts, pea nuts",
        "milk, eggs",
        "rye, oats"
    })
    void differentAllergensDoNotMeet(String one, String other) {
        assertThat(Allergens.meet(one, other)).isFalse();
        assertThat(Allergens.meet(other, one)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "eggs, egg white",
        "wheat, wheat flour",
        "gluten, wheat flour",
        "nuts, mixed nuts",
        "nuts, almond flour",
        "almonds, mixed nuts",
        "soya, soy lecithin",
        "milk, cow's milk",
        "cow's milk, milk powder",
        "tree nut allergy, almonds",
        "egg yolk, egg-white",
        "crab, shellfish stock",
        "milk, 'coconut, milk'",
        "milk, coconut and milk",
        "coconut, coconut milk",
        "nuts, almond milk",
        "soy, soya milk powder",
        "kiwi, kiwi juice",
        "sweet corn, creamed sweet corn"
    })
    void aWordOfALongerNameMeets(String allergy, String contained) {
        assertThat(Allergens.meet(allergy, contained)).isTrue();
        assertThat(Allergens.meet(contained, allergy)).isTrue();
        assertThat(Allergens.meetAsAWhole(allergy, contained)).isEqualTo(contained.equals("almond milk"));
    }

    @ParameterizedTest
    @CsvSource({
        "nuts, nutmeg",
        "nuts, coconut",
        "nuts, doughnuts",
        "nuts, butternut squash",
        "milk, butternut squash",
        "milk, coconut milk",
        "milk, coconut milk powder",
        "milk, almond milk",
        "milk, peanut butter",
        "nuts, peanut butter",
        "milk, cocoa butter",
        "eggs, eggplant",
        "wheat, buckwheat flour",
        "wheat flour, rice flour",
        "molluscs, oyster mushrooms",
        "crab, crab apples",
        "fish, shell fish"
    })
    void aPartOfAWordAndWhatIsOnlyCalledSoDoNotMeet(String allergy, String contained) {
        assertThat(Allergens.meet(allergy, contained)).isFalse();
        assertThat(Allergens.meet(contained, allergy)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "peach, peaches",
        "radish, radishes",
        "octopus, octopuses",
        "cookie, cookies",
        "anchovy, anchovies",
        "cheese, cheeses",
        "quiche, quiches",
        "box, boxes",
        "sea bass, sea basses",
        "tomato, tomatoes",
        "pie, pies",
        "bus, buses",
        "nut, Nuts"
    })
    void pluralsMeetTheirSingulars(String one, String many) {
        assertThat(Allergens.meetAsAWhole(one, many)).isTrue();
        assertThat(Allergens.words(one)).isEqualTo(Allergens.words(many));
    }

    @Test
    void aLongerNameIsKnownByAWordOfIt() {
        assertThat(Allergens.knows("almond flour")).isTrue();
        assertThat(Allergens.knows("coconut milk")).isTrue();
        assertThat(Allergens.knows("kiwi juice")).isFalse();
        assertThat(Allergens.names()).contains("almond milk").doesNotContain("coconut milk");
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
        assertThat(Allergens.isA("wheat flour", "gluten")).isTrue();
        assertThat(Allergens.isA("gluten", "wheat flour")).isFalse();
    }
}
