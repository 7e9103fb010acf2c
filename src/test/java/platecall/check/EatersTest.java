package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class EatersTest {

    @Test
    void whoIsAllergicToWhatIsEatenIsNamed() {
        Sheets sheets =
                Sheets.toast().change("needs", "1", "eaten by=Mina; Theo").change("cast", "Theo", "allergies=Milk");

        assertThat(sheets.troubles())
                .containsExactly("needs 0 eaten by: [Theo] is allergic to Milk, and toast has butter in it (milk). "
                        + "Maybe another dish or eater.");
    }

    @Test
    void anAllergyToAGroupCoversItsKinds() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Theo")
                .change("ingredients", "butter", "allergens=hazelnut");

        assertThat(sheets.troubles())
                .containsExactly("needs 0 eaten by: [Theo] is allergic to nuts, and toast has butter in it (hazelnut). "
                        + "Maybe another dish or eater.");
    }

    @Test
    void anIngredientThatIsTheAllergenNeedsNoLabel() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Theo")
                .add("ingredients", "ingredient=Walnuts", "dish=toast");

        assertThat(sheets.troubles())
                .containsExactly("needs 0 eaten by: [Theo] is allergic to nuts, and toast has Walnuts in it. "
                        + "Maybe another dish or eater.");
    }

    @Test
    void aWordOfWhatItContainsIsEnough() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Theo")
                .change("ingredients", "butter", "allergens=mixed nuts");

        assertThat(sheets.troubles())
                .containsExactly(
                        "needs 0 eaten by: [Theo] is allergic to nuts, and toast has butter in it (mixed nuts). "
                                + "Maybe another dish or eater.");
        assertThat(sheets.change("ingredients", "butter", "allergens=nutmeg").troubles())
                .isEmpty();
    }

    /** FDA Food Code 3-401.11(A)(3): poultry at 74 degrees Celsius; what no sheet states nobody can check. */
    @Test
    void poultryWithoutACoreTemperatureIsRemarked() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Mina")
                .add("ingredients", "ingredient=chicken leg", "dish=toast");
        String remark = "needs 0 eaten by: [Mina] eats toast, and no step says how hot it gets inside. "
                + "Maybe fill in raw and core temperature in sheet steps.";

        assertThat(sheets.remarks()).contains(remark);
        assertThat(sheets.change("steps", "bake", "core temperature=74").remarks())
                .doesNotContain(remark);
        assertThat(Sheets.toast().change("needs", "1", "eaten by=Mina").remarks())
                .doesNotContain(remark);
    }

    /** FDA Food Code 3-401.11(A)(3): poultry at 74 degrees Celsius. */
    @Test
    void poultryThatStaysTooCoolIsRemarkedBeforeAnythingIsPlanned() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Mina")
                .add("ingredients", "ingredient=chicken leg", "dish=toast")
                .change("steps", "cut", "raw=yes");

        assertThat(sheets.change("steps", "bake", "core temperature=63").remarks())
                .contains(
                        "needs 0 eaten by: [Mina] eats toast, which gets to 63 °C inside by its steps, but needs 74 °C. "
                                + "Maybe another core temperature in sheet steps, or nobody who eats it.");
        assertThat(sheets.change("steps", "bake", "core temperature=74").remarks())
                .noneMatch(remark -> remark.contains("inside"));
    }

    @Test
    void aDietWithoutAnAllergenIsCheckedLikeAnAllergy() {
        Sheets sheets = Sheets.toast().change("needs", "1", "eaten by=Mina");
        String trouble = " and toast has bread in it (wheat). Maybe another dish or eater.";

        assertThat(sheets.change("cast", "Mina", "diet=gluten-free").troubles())
                .containsExactly("needs 0 eaten by: [Mina] eats gluten-free," + trouble);
        assertThat(sheets.change("cast", "Mina", "diet=coeliac").troubles())
                .containsExactly("needs 0 eaten by: [Mina] eats coeliac," + trouble);
        assertThat(sheets.change("cast", "Mina", "diet=nut free").troubles()).isEmpty();
        assertThat(sheets.remarks()).isEmpty();
        for (String other : new String[] {"care-free", "wheat"}) {
            assertThat(sheets.change("cast", "Mina", "diet=" + other).troubles())
                    .isEmpty();
            assertThat(sheets.remarks()).anyMatch(remark -> remark.contains("is not a diet that can be checked"));
        }
    }

    @Test
    void vegetariansEatNoSeafoodWhateverItIsCalled() {
        Sheets sheets = Sheets.toast().change("needs", "1", "eaten by=Mina").change("cast", "Mina", "diet=vegetarian");

        assertThat(sheets.change("ingredients", "butter", "allergens=shellfish").troubles())
                .containsExactly("needs 0 eaten by: [Mina] eats vegetarian, and toast has butter in it (shellfish). "
                        + "Maybe another dish or eater.");
        assertThat(sheets.change("ingredients", "butter", "allergens=milk")
                        .add("ingredients", "ingredient=anchovy paste", "dish=toast")
                        .remarks())
                .containsExactly("ingredients 2 ingredient: [anchovy paste] is eaten by Mina, who eats vegetarian. "
                        + "Maybe another dish or eater.");
    }

    @Test
    void whatIsAddedAfterTheStageIsNotEaten() {
        Sheets sheets = Sheets.toast().change("needs", "1", "stage=bake").change("cast", "Mina", "allergies=milk");

        assertThat(sheets.troubles()).isEmpty();
    }

    @Test
    void whoDoesNotEatMayBeAllergic() {
        assertThat(Sheets.toast().change("cast", "Theo", "allergies=milk").troubles())
                .isEmpty();
    }

    @Test
    void aDietThatAllergensTellIsMinded() {
        assertThat(Sheets.toast().change("cast", "Mina", "diet=Vegan").troubles())
                .containsExactly("needs 0 eaten by: [Mina] eats vegan, and toast has butter in it (milk). "
                        + "Maybe another dish or eater.");
        assertThat(Sheets.toast().change("cast", "Mina", "diet=vegetarian").troubles())
                .isEmpty();
        assertThat(Sheets.toast()
                        .change("cast", "Mina", "diet=vegetarian")
                        .change("ingredients", "butter", "allergens=anchovies")
                        .troubles())
                .containsExactly("needs 0 eaten by: [Mina] eats vegetarian, and toast has butter in it (anchovies). "
                        + "Maybe another dish or eater.");
    }

    @Test
    void dressingIsNeverEaten() {
        assertThat(Sheets.toast()
                        .change("dishes", "toast", "edible=no")
                        .change("needs", "1", "eaten by=Mina; Theo")
                        .troubles())
                .containsExactly("needs 0 eaten by: [Mina; Theo] must not eat toast: it is not edible. "
                        + "Maybe an edible dish for those who eat, or clear the cell.");
    }
}
