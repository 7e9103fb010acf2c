package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RemarksTest {

    /** Toast and a second setup with one take at the same place. */
    private static Sheets withSetup2(String call) {
        return Sheets.toast()
                .add(
                        "setups",
                        "setup=2",
                        "place=set",
                        "call=" + call,
                        "takes likely=1",
                        "takes at worst=1",
                        "take cycle=10");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            needs  | 1    | use=lasts 3 takes      | needs 0 use: [lasts 3 takes] keeps it before the camera for 22 minutes, but it is usable for 20. Maybe fewer takes a copy.
            setups | 1    | release=10:20          | setups 0 release: [10:20] is before its last take at worst has ended, at 10:30. Maybe at end.
            steps  | bake | after=                 | steps 0 step: [cut] leads to no stage of toast that is wanted, so it is left out. Maybe name it in column after of a later step.
            steps  | cut  | minutes per copy=2     | steps 0 minutes per copy: [2] counts only in a batch. Maybe fill in column batch, or add it to minutes likely.
            people | Bo   | hours=19:00-22:00      | people 1 person: [Bo] is never in the kitchen in kitchen hours. Maybe check the hours and absences.
            places | set  | walk=kitchen:7         | places 1 walk: [kitchen:7] is 5 in the row of kitchen. Maybe the same both ways.
            cast   | Mina | diet=vegatarian        | cast 0 diet: [vegatarian] is not a diet that can be checked. Did you mean vegetarian?
            cast   | Mina | allergies=mlik         | cast 0 allergies: [mlik] is an allergen of no ingredient and not a common one. Did you mean milk?
            ingredients | butter | allergens=mlik  | ingredients 1 allergens: [mlik] is nobody's allergy and not a common allergen. Did you mean milk?
            ingredients | butter | allergens=saffron | ingredients 1 allergens: [saffron] is nobody's allergy and not a common allergen. Maybe name the common one that it has in it, if any.
            steps  | plate | raw=yes               | needs 0 eaten by: [Mina] eats toast at stage plate, which is raw. Maybe a later stage.
            steps  | bake | core temperature=145   | steps 1 core temperature: [145] is hotter than food with water in it gets inside; in degrees Fahrenheit it would be 63 °C. Maybe 63.
            steps  | bake | oven temperature=390   | steps 1 oven temperature: [390] is hotter than most ovens get; in degrees Fahrenheit it would be 199 °C. Maybe 199.
            dishes | toast | name=Varnished toast  | dishes 0 edible: [yes] but [Varnished toast] sounds like nothing to eat, and only what is not edible is marked so. Maybe no.
            people | Bo   | skills=bake, plate     | people 1 skills: [bake, plate] is a skill that no step asks for. Maybe bake; plate.
            needs  | 1    | copies=7               | needs 0 copies: [7] is far more than the 3 that the takes at worst of setup 1 use up. Maybe 3, or blank.
            needs  | 1    | copies=1               | needs 0 copies: [1] is fewer than the 2 that the 2 likely takes of setup 1 use up. Maybe 2, or blank.
            """)
    void whatMayNotBeMeantIsRemarkedButNoTrouble(String sheet, String row, String cell, String remark) {
        Sheets sheets = Sheets.toast().change(sheet, row, cell);

        assertThat(sheets.remarks()).containsExactly(remark);
        assertThat(sheets.troubles()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            promise | 0.95 % | day -1 promise: [0.95 %] promises that a setup is late more often than not. Maybe 95 %.
            promise | 49 % | day -1 promise: [49 %] promises that a setup is late more often than not. Maybe 95 %.
            promise | 0 | day -1 promise: [0 %] promises that a setup is late more often than not. Maybe 95 %.
            promise | 0.5 |
            humidity | 0.45 | day -1 humidity: [0.45] is less than 1 %, drier than any air. Maybe 45.
            humidity | 0 |
            humidity | 1 |
            """)
    void sharesThatCanHardlyBeMeantAreRemarked(String key, String value, String remark) {
        Sheets sheets = Sheets.toast().fact(key, value);
        assertThat(sheets.remarks()).isEqualTo(remark == null ? List.of() : List.of(remark));
        assertThat(sheets.troubles()).isEmpty();
    }

    @Test
    void whatNobodyMakesOrFinishesIsRemarked() {
        Sheets sheets = Sheets.toast().change("steps", "plate", "hands=", "skill=");
        assertThat(sheets.remarks()).isEmpty();
        assertThat(sheets.change("steps", "plate", "station=").remarks())
                .containsExactly(
                        "steps 2 step: [plate] is the last of toast, but takes no hands and no station: nobody "
                                + "is planned to do it. Maybe 1 in column hands.");
        assertThat(sheets.change("steps", "cut", "hands=0").remarks())
                .containsExactly("steps 2 step: [plate] is the last of toast, of which no step takes any hands: nobody "
                        + "makes it. Maybe 1 in column hands.");
    }

    /** Bread that bakes or rests by itself. */
    @Test
    void aStepThatNeedsNobodyIsNoneToRemark() {
        assertThat(Sheets.toast().change("needs", "1", "stage=bake").remarks())
                .noneMatch(remark -> remark.contains("hands"));
        assertThat(Sheets.toast()
                        .add("steps", "step=rest", "dish=toast", "after=bake", "minutes likely=5")
                        .change("steps", "plate", "after=rest")
                        .remarks())
                .isEmpty();
    }

    /** Two takes are likely and three at worst: with two extra looks four plates and five. */
    @Test
    void extraLooksAreCountedBesideWhatTakesUseUp() {
        Sheets sheets = Sheets.toast().change("needs", "1", "extra looks=2");
        assertThat(sheets.change("needs", "1", "copies=4").remarks()).isEmpty();
        assertThat(sheets.change("needs", "1", "copies=10").remarks()).isEmpty();
        assertThat(sheets.change("needs", "1", "copies=3").remarks())
                .containsExactly(
                        "needs 0 copies: [3] is fewer than the 4 that the 2 likely takes of setup 1 and extra looks"
                                + " use up. Maybe 4, or blank.");
        assertThat(sheets.change("needs", "1", "copies=11").remarks())
                .containsExactly(
                        "needs 0 copies: [11] is far more than the 5 that the takes at worst of setup 1 and extra"
                                + " looks use up. Maybe 5, or blank.");
    }

    @Test
    void asManySparesAsTheTakesAtWorstUseUpAreNotRemarked() {
        assertThat(Sheets.toast().change("needs", "1", "copies=6").remarks()).isEmpty();
    }

    /** USDA FSIS: no longer than an hour above 90 °F, 32.2 °C (value from memory). */
    @ParameterizedTest
    @CsvSource({"32.2,yes,Mina,0", "32.3,yes,Mina,1", "40,no,Mina,0", "40,yes,,0"})
    void heatInWhichFoodAtRiskMayStandForAnHourIsRemarked(String celsius, String clocked, String eater, int remarks) {
        Sheets sheets = Sheets.toast()
                .add("day", "key=set temperature", "value=" + celsius)
                .change("dishes", "toast", "time-temperature controlled=" + clocked)
                .change("needs", "1", "eaten by=" + (eater == null ? "" : eater));
        assertThat(sheets.remarks().stream().filter(it -> it.contains("USDA"))).hasSize(remarks);
        assertThat(sheets.remarksOnEaters().stream().filter(it -> it.contains("USDA")))
                .hasSize(remarks);
    }

    @Test
    void aStageThatIsNotTheLastHasTheLookOfItsDish() {
        assertThat(Sheets.toast()
                        .change("needs", "1", "stage=bake")
                        .change("needs", "1", "use=lasts 3 takes")
                        .remarks())
                .anyMatch(remark ->
                        remark.endsWith("but it is usable for 20. Maybe a dish of its own for stage bake, with its"
                                + " own look: the look of toast counts for every stage."));
    }

    /** From a roast that is held longest (54.4 °C, FDA Food Code 3-401.11(B)) to what is no bread yet. */
    @ParameterizedTest
    @CsvSource({"54.3,false", "54.4,true", "74,true", "85,true", "85.5,false"})
    void foodThatIsCookedAsMeatIsButHasNoClockIsRemarked(String celsius, boolean remarked) {
        Sheets sheets = Sheets.toast()
                .change("dishes", "toast", "time-temperature controlled=no")
                .change("steps", "bake", "core temperature=" + celsius);
        assertThat(sheets.remarks())
                .isEqualTo(
                        remarked
                                ? List.of("dishes 0 time-temperature controlled: [no] but its step bake has a core "
                                        + "temperature as meat, fish and eggs have it, and without yes no clock runs for "
                                        + "how long it may stand. Maybe yes.")
                                : List.of());
        assertThat(sheets.change("needs", "1", "eaten by=").remarks()).noneMatch(remark -> remark.contains("core"));
    }

    @Test
    void toppingUpMustFitBetweenTakesAndMakesNoLookLast() {
        assertThat(Sheets.toast().change("needs", "1", "use=topped up in 9 min").remarks())
                .containsExactly(
                        "needs 0 use: [topped up in 9 min] is longer than the 8 minutes between two takes of setup 1. "
                                + "Maybe a fresh plate each take, or a longer take cycle.",
                        "needs 0 use: [topped up] keeps it before the camera for 22 minutes, but it is usable for 20. "
                                + "Maybe lasts some takes: topping up gives back what was eaten, not the look.");
    }

    @Test
    void takesThatRunIntoTheNextSetupAtTheSamePlaceAreRemarked() {
        Sheets sheets = withSetup2("10:25").add("needs", "setup=2", "dish=toast", "stage=plate");

        assertThat(sheets.troubles()).isEmpty();
        assertThat(sheets.remarks())
                .containsExactly("setups 0 call: [10:00] lasts until 10:30 at worst, but setup 2 is called to the same "
                        + "place at 10:25. Maybe fine if the takes go well.");
    }

    /** Setup 1 is shot from 10:00 to 10:20 as is likely, to 10:30 at worst. */
    @ParameterizedTest
    @CsvSource({"10:25,Maybe fine if the takes go well or", "10:15,Maybe"})
    void whoIsWantedAtTwoPlacesAtATimeIsNamed(String call, String wayOut) {
        Sheets sheets = withSetup2(call)
                .change("setups", "2", "place=roof")
                .add("places", "place=roof", "walk=kitchen:5; set:5")
                .add("needs", "setup=2", "dish=toast", "stage=plate", "eaten by=Mina; Theo")
                .add("cast", "who=Bo")
                .change("people", "Bo", "away=setup 1; setup 2");
        String end = call.equals("10:25") ? "10:35" : "10:25";
        String setups =
                " setup 1 (set, 10:00-10:30) and %s setup 2 (roof, " + call + "-" + end + "), which overlap at worst. "
                        + wayOut.replace("well or", "well, or") + " somebody else in one of them.";

        assertThat(sheets.remarks())
                .containsExactly(
                        "needs 1 eaten by: [Mina] eats in" + setups.formatted("eats in"),
                        "people 1 away: [Bo] is hand double in" + setups.formatted("is hand double in"));
        assertThat(sheets.change("people", "Bo", "away=setup 1")
                        .change("needs", "2", "eaten by=Bo")
                        .remarks())
                .containsExactly("needs 1 eaten by: [Bo] is hand double in" + setups.formatted("eats in"));
        assertThat(sheets.change("setups", "2", "call=10:30").remarks()).isEmpty();
    }

    @Test
    void aReleaseAfterWhatIsShotBeforeIsRemarked() {
        Sheets sheets = withSetup2("12:00")
                .change("setups", "2", "release=after setup 1")
                .add("needs", "setup=2", "dish=toast", "stage=plate");

        assertThat(sheets.remarks())
                .containsExactly("setups 1 release: [after setup 1] is over before this setup is, at 10:30. "
                        + "Maybe a later setup, or at end.");
        assertThat(sheets.change("setups", "2", "release=at end")
                        .change("setups", "1", "release=after setup 2")
                        .remarks())
                .isEmpty();
    }

    /** FDA Food Code 3-302.11: raw animal food is kept apart from food that is ready to eat. */
    @Test
    void rawFoodKeptForReleaseBesideReadyFoodIsRemarked() {
        Sheets sheets = Sheets.toast()
                .add("stations", "station=fridge", "kind=fridge", "capacity=9", "place=kitchen")
                .change("dishes", "toast", "held in=fridge", "time-temperature controlled=yes")
                .change("steps", "cut", "raw=yes")
                .add("needs", "setup=1", "dish=toast", "stage=cut", "part=background");
        String remark = "needs 1 stage: [cut] is raw, and toast is kept for release in fridge, where food that is ready"
                + " is as well. Maybe cover it and keep it lowest, or a dish of its own that is held elsewhere.";

        assertThat(sheets.remarks()).contains(remark);
        assertThat(sheets.change("steps", "cut", "raw=no").remarks()).doesNotContain(remark);
    }

    @Test
    void aSetupWithoutFoodAndADishThatNobodyWantsAreRemarked() {
        Sheets sheets = withSetup2("12:00").add("dishes", "dish=cake", "look=steady");

        assertThat(sheets.remarks())
                .containsExactly(
                        "setups 1 setup: [2] wants no food. Maybe add it to sheet needs.",
                        "dishes 1 dish: [cake] is wanted by no setup. Maybe add it to sheet needs.");
    }

    @Test
    void anIngredientWhoseNameTellsMoreThanItsRowIsRemarked() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Theo")
                .change("cast", "Theo", "diet=vegetarian")
                .add("ingredients", "ingredient=beef stock", "dish=toast")
                .add("ingredients", "ingredient=almond flour", "dish=toast");

        assertThat(sheets.troubles()).isEmpty();
        assertThat(sheets.remarks())
                .containsExactly(
                        "ingredients 2 ingredient: [beef stock] is eaten by Theo, who eats vegetarian. "
                                + "Maybe another dish or eater.",
                        "ingredients 3 ingredient: [almond flour] is eaten by Theo, who is allergic to nuts. "
                                + "Maybe fill in its allergens.");
    }

    @Test
    void anAllergenThatSomebodyIsAllergicToOrAWordOfWhichIsCommonIsKnown() {
        Sheets sheets = Sheets.toast()
                .change("cast", "Theo", "allergies=kiwi")
                .change("ingredients", "bread", "allergens=wheat flour; coconut milk")
                .change("ingredients", "butter", "allergens=kiwi juice");

        assertThat(sheets.remarks()).isEmpty();
    }

    @Test
    void wordsOfANameCountInThePluralAndAsWholeWordsOnly() {
        Sheets sheets = Sheets.toast()
                .change("needs", "1", "eaten by=Theo")
                .change("cast", "Theo", "allergies=nuts; milk", "diet=vegetarian")
                .change("ingredients", "butter", "step=", "allergens=", "ingredient=fat")
                .add("ingredients", "ingredient=Hams and sausages", "dish=toast")
                .add("ingredients", "ingredient=coconut milk with nutmeg", "dish=toast");

        assertThat(sheets.remarks())
                .containsExactly(
                        "needs 0 eaten by: [Theo] eats toast, and no step says how hot it gets inside. Maybe fill in raw and"
                                + " core temperature in sheet steps.",
                        "ingredients 2 ingredient: [Hams and sausages] is eaten by Theo, who eats vegetarian. "
                                + "Maybe another dish or eater.");
    }

    /** FDA Food Code 3-401.11(A)(2): ground meat gets hotter than whole cuts; steak may be meant rare. */
    @Test
    void groundMeatOfWhichNoStepSaysHowHotItGetsIsRemarked() {
        for (String meat : List.of("minced beef", "ground beef", "pork sausage", "chicken")) {
            assertThat(eatenWith(meat))
                    .as(meat)
                    .anyMatch(remark -> remark.contains("no step says how hot it gets inside"));
        }
        assertThat(eatenWith("beef steak")).isEmpty();
    }

    private static List<String> eatenWith(String ingredient) {
        return Sheets.toast()
                .change("needs", "1", "eaten by=Mina")
                .add("ingredients", "ingredient=" + ingredient, "dish=toast")
                .remarks();
    }

    @Test
    void aWalkThatIsNotGivenIsToldOnce() {
        assertThat(Sheets.toast().change("places", "kitchen", "walk=kitchen:3").remarks())
                .containsExactlyInAnyOrder(
                        "places 0 walk: [] no walk is given between kitchen and set, so it counts as 0 minutes. "
                                + "Maybe set:4.",
                        "places 0 walk: [kitchen:3] leads to the place itself, so it plays no part. "
                                + "Maybe another place is meant.");
    }

    @Test
    void whatStandsTwiceIsTold() {
        assertThat(Sheets.toast()
                        .add("ingredients", "ingredient=bread", "dish=toast", "cost=0.20")
                        .change("needs", "1", "eaten by=Mina; Mina")
                        .change("steps", "bake", "after=cut; cut", "station=oven|oven:1")
                        .remarks())
                .containsExactly(
                        "needs 0 eaten by: [Mina] is named twice, which means no more than once. Maybe remove one.",
                        "steps 1 after: [cut] is named twice, which means no more than once. Maybe remove one.",
                        "steps 1 station: [oven] is named twice, which means no more than once. Maybe remove one.",
                        "ingredients 2 ingredient: [bread] is there twice for dish toast, and both count. "
                                + "Maybe remove one of the two.");
    }
}
