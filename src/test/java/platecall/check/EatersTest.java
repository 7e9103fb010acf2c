package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    private static Sheets oysters() {
        return Sheets.toast()
                .change("dishes", "toast", "time-temperature controlled=yes")
                .add("ingredients", "ingredient=native oyster", "dish=toast", "step=plate", "allergens=molluscs");
    }

    @Test
    void shellfishThatNoStepCooksMayBeRawAndAtRisk() {
        Sheets sheets = oysters();
        String raw = "steps 2 raw: [no] but native oyster goes in, and no step cooks it before Mina eats it. "
                + "Maybe yes, unless it has been cooked or cured before.";

        assertThat(sheets.remarks()).containsExactly(raw);
        // the step before the oysters go in cooks none of them
        assertThat(sheets.change("steps", "bake", "core temperature=90").remarks())
                .containsExactly(raw);
        assertThat(sheets.change("steps", "plate", "raw=yes").remarks())
                .containsExactly(
                        "needs 0 eaten by: [Mina] eats toast at stage plate, which is raw. Maybe a later stage.");
        assertThat(oysters()
                        .change("dishes", "toast", "time-temperature controlled=no")
                        .remarks())
                .containsExactly(
                        "dishes 0 time-temperature controlled: [no] but native oyster is in it, and without yes no clock"
                                + " runs for how long it may stand. Maybe yes.",
                        raw);
        assertThat(sheets.change("needs", "1", "eaten by=").remarks()).isEmpty();
    }

    @Test
    void shellfishIsRemarkedThoughAnotherStepOfItsDishLeavesOtherFoodRaw() {
        String raw = "steps 2 raw: [no] but native oyster goes in, and no step cooks it before Mina eats it. "
                + "Maybe yes, unless it has been cooked or cured before.";
        Sheets sheets = oysters().change("steps", "cut", "raw=yes").change("steps", "bake", "core temperature=90");

        assertThat(sheets.remarks()).containsExactly(raw);
        // what is said to be raw as soon as they are in it, and cooked later, is judged by its core temperature
        assertThat(sheets.change("ingredients", "native oyster", "step=cut").remarks())
                .isEmpty();
    }

    /** FDA Food Code 3-401.11(A)(1): fish at 63 degrees Celsius. */
    @Test
    void fishThatIsCookedTooCoolIsRemarkedThoughNothingSaysThatItWasRaw() {
        Sheets sheets = Sheets.toast()
                .change("dishes", "toast", "time-temperature controlled=yes")
                .add("ingredients", "ingredient=crab", "dish=toast", "allergens=crustaceans")
                .add("ingredients", "ingredient=herring", "dish=toast", "step=bake", "allergens=fish");

        assertThat(sheets.change("steps", "bake", "core temperature=55").remarks())
                .containsExactly(
                        "steps 1 core temperature: [55] is less than crab needs if it was raw: fish and shellfish "
                                + "63 °C, by FDA Food Code (2022). Maybe 63, or yes in column raw of a step before.");
        assertThat(sheets.change("steps", "bake", "core temperature=63").remarks())
                .isEmpty();
    }

    @Test
    void rawFoodThatWaitsInAHotHoldIsRemarked() {
        Sheets sheets = Sheets.toast()
                .add("stations", "station=hot box", "kind=hot hold", "capacity=9", "place=kitchen")
                .change("steps", "cut", "raw=yes", "waits in=hot box")
                .change("steps", "bake", "core temperature=63");
        String remark = "steps 0 waits in: [hot box] is a hot hold, but toast is raw after cut. Maybe a fridge.";

        assertThat(sheets.remarks()).contains(remark);
        assertThat(sheets.change("steps", "cut", "raw=no").remarks()).doesNotContain(remark);
        assertThat(sheets.change("steps", "cut", "raw=yes", "waits in=fridge").remarks())
                .doesNotContain(remark);
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

    @ParameterizedTest
    @ValueSource(
            strings = {
                "no milk",
                "No dairy",
                "without milk",
                "non-dairy",
                "free from milk",
                "lactose free",
                "vegetarian, no milk",
                "no nuts or milk",
                "nut and dairy free",
                "Vegan (no nuts)"
            })
    void aDietWithoutMilkIsReadHoweverItIsWritten(String diet) {
        Sheets sheets = Sheets.toast().change("needs", "1", "eaten by=Mina").change("cast", "Mina", "diet=" + diet);

        assertThat(sheets.troubles()).singleElement().asString().contains("[Mina] eats ", "has butter in it (milk)");
        assertThat(sheets.remarks()).isEmpty();
    }

    /** Run sheets and the audit know no diets. */
    @ParameterizedTest
    @ValueSource(strings = {"milk allergy", "allergic to milk", "Allergies: milk", "milk intolerant"})
    void anAllergyInTheColumnOfDietsIsMindedAndItsOwnColumnIsNamed(String diet) {
        Sheets sheets = Sheets.toast().change("needs", "1", "eaten by=Mina").change("cast", "Mina", "diet=" + diet);

        assertThat(sheets.troubles())
                .containsExactly("needs 0 eaten by: [Mina] eats no milk, and toast has butter in it (milk). "
                        + "Maybe another dish or eater.");
        assertThat(sheets.remarks())
                .containsExactly("cast 0 diet: [" + diet + "] is an allergy, and run sheets and the audit name only"
                        + " those in column allergies. Maybe milk in column allergies.");
    }

    @Test
    void whatOfADietCannotBeReadIsToldAndTheRestIsMinded() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Mina")
                .change("cast", "Mina", "diet=vegan, no soft cheese");

        assertThat(sheets.troubles()).singleElement().asString().contains("[Mina] eats vegan, and toast has butter");
        assertThat(sheets.remarks())
                .containsExactly("cast 0 diet: [no soft cheese] is not a diet that can be checked. "
                        + "Maybe soft cheese in column allergies, if that is what to avoid.");
        assertThat(sheets.change("cast", "Mina", "diet=no known allergies").remarks())
                .containsExactly("cast 0 diet: [no known allergies] is not a diet that can be checked. "
                        + "Maybe one of vegetarian, vegan, pescatarian.");
        assertThat(sheets.change("cast", "Mina", "diet=kosher").remarks())
                .containsExactly("cast 0 diet: [kosher] is not a diet that can be checked. "
                        + "Maybe one of vegetarian, vegan, pescatarian.");
    }

    @Test
    void vegetariansEatNoSeafoodWhateverItIsCalled() {
        Sheets sheets = Sheets.toast().change("needs", "1", "eaten by=Mina").change("cast", "Mina", "diet=vegetarian");

        assertThat(sheets.change("ingredients", "butter", "allergens=shellfish").troubles())
                .containsExactly("needs 0 eaten by: [Mina] eats vegetarian, and toast has butter in it (shellfish). "
                        + "Maybe another dish or eater.");
        assertThat(sheets.change("ingredients", "butter", "allergens=milk")
                        .add("ingredients", "ingredient=anchovy paste", "dish=toast")
                        .add("ingredients", "ingredient=cubes of speck", "dish=toast")
                        .remarks())
                .containsExactly(
                        "ingredients 2 ingredient: [anchovy paste] is eaten by Mina, who eats vegetarian. "
                                + "Maybe another dish or eater.",
                        "ingredients 3 ingredient: [cubes of speck] is eaten by Mina, who eats vegetarian. "
                                + "Maybe another dish or eater.");
    }

    @Test
    void whatNoIngredientIsToldOfIsRemarkedWhereSomebodyAvoidsAnything() {
        Sheets sheets = Sheets.toast().change("needs", "1", "eaten by=Mina").empty("ingredients");
        assertThat(sheets.change("cast", "Mina", "allergies=hazelnuts").remarks())
                .contains(
                        "needs 0 eaten by: [Mina] is allergic to hazelnuts, and sheet ingredients has nothing for toast at"
                                + " stage plate. Maybe a row for each thing that is in it, with its allergens.");
        assertThat(sheets.change("cast", "Mina", "allergies=", "diet=vegan").remarks())
                .anyMatch(remark -> remark.startsWith("needs 0 eaten by: [Mina] eats vegan, and sheet"));
        assertThat(sheets.change("cast", "Mina", "diet=").remarks())
                .noneMatch(remark -> remark.contains("sheet ingredients has nothing"));
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

    /** FDA Food Code 3-501.14(A): from 57 to 21 °C in two hours, to 5 °C in four more. */
    @Test
    void hotFoodThatGoesStraightIntoAFridgeIsRemarked() {
        Sheets sheets = Sheets.toast()
                .change("dishes", "toast", "time-temperature controlled=yes")
                .change("steps", "bake", "waits in=fridge");
        String remark =
                "steps 1 waits in: [fridge] is cold and gets hot food from bake, which counts as cold at once though"
                        + " it is not; it must cool from 57 to 21 °C within 120 minutes (FDA Food Code 3-501.14(A)(1)), from 57 to"
                        + " 5 °C within 360 minutes (FDA Food Code 3-501.14(A)(2)). Maybe a step between in which it cools, in an"
                        + " ice bath or shallow pans.";

        assertThat(sheets.remarks()).containsExactly(remark);
        assertThat(sheets.change("dishes", "toast", "time-temperature controlled=no")
                        .remarks())
                .isEmpty();
        sheets.change("dishes", "toast", "time-temperature controlled=yes");
        assertThat(sheets.change("needs", "1", "eaten by=").remarks()).isEmpty();
        sheets.change("needs", "1", "eaten by=Mina");
        assertThat(sheets.remarks()).containsExactly(remark);
        // the step before the oven is not hot
        sheets.change("steps", "bake", "waits in=").change("steps", "cut", "waits in=fridge");
        assertThat(sheets.remarks()).isEmpty();
    }

    /** Regulation (EU) No 1169/2011, Annex II: peanuts and nuts are two; people who write nuts may mean both. */
    @Test
    void nutsThatMayMeanPeanutsAreRemarked() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Theo")
                .change("ingredients", "butter", "allergens=peanuts");
        assertThat(sheets.troubles()).isEmpty();
        assertThat(sheets.remarks())
                .contains("cast 1 allergies: [nuts] is read as tree nuts, and Theo eats toast, which has butter in it"
                        + " (peanuts). Maybe nuts; peanuts.");
        assertThat(sheets.change("cast", "Theo", "allergies=tree nuts").remarks())
                .noneMatch(remark -> remark.contains("is read as tree nuts"));
    }
}
