package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorkTest {

    @ParameterizedTest
    @CsvSource(delimiter = '!', quoteCharacter = '~', textBlock = """
            bake  ! station=oven:2                ! steps 1 station: [oven:2] is more than there is: oven has 1. Maybe oven:1.
            cut   ! station=counter:2; counter:1  ! steps 0 station: [counter:2; counter:1] is more than there is: together 3 of counter, which has 2. Maybe less of it, or another station.
            cut   ! oven temperature=90           ! steps 0 oven temperature: [90] is given, but the step uses no oven. Maybe oven:1 in column station.
            bake  ! oven temperature=             ! steps 1 oven temperature: [] step bake uses oven:1 without a temperature. Maybe 180.
            plate ! skill=platting                ! steps 2 skill: [platting] is nobody's skill. Did you mean plating?
            plate ! skill=carving                 ! steps 2 skill: [carving] is nobody's skill. Maybe plating.
            plate ! hands=2                       ! steps 2 hands: [2] pairs of hands are needed, but only Ada is there with skill plating. Maybe 1, or another pair of hands.
            cut   ! hands=3                       ! steps 0 hands: [3] pairs of hands are needed, but only Ada and Bo are there. Maybe 2, or another pair of hands.
            plate ! hands=0                       ! steps 2 skill: [plating] is asked for, but the step takes no hands. Maybe 1 in column hands.
            bake  ! hands last=2                  ! steps 1 hands last: [2] is given, but the step takes no hands. Maybe 1 in column hands.
            cut   ! hands first=11                ! steps 0 hands first: [11] is longer than the step, which takes 10 minutes. Maybe 10, or clear it: then hands are on all the time.
            """)
    void aStepThatTheKitchenCantDoIsTold(String step, String cell, String trouble) {
        assertThat(Sheets.toast().change("steps", step, cell).troubles()).containsExactly(trouble);
    }

    @Test
    void noneOfSeveralStationsThatIsLargeEnoughIsToldWithAll() {
        Sheets sheets = Sheets.toast()
                .add("stations", "station=board", "kind=counter", "place=kitchen")
                .change("steps", "cut", "station=board|counter:3");

        assertThat(sheets.troubles())
                .containsExactly(
                        "steps 0 station: [board|counter:3] is more than there is: board has 1, counter has 2. "
                                + "Maybe counter:2.");
    }

    @Test
    void aStepLongerThanItsStationIsOpenAndAnyShiftIsToldForBoth() {
        assertThat(Sheets.toast().change("steps", "cut", "minutes likely=721").troubles())
                .containsExactly(
                        "steps 0 station: [counter:1] is open for 720 minutes at most, but the step takes 721. "
                                + "Maybe longer hours for it, or a shorter step.",
                        "steps 0 hands: [1] pair of hands is needed for 721 minutes without a break, but Ada and Bo "
                                + "are never there for more than 720. "
                                + "Maybe longer hours in sheet people, or a shorter step.");
    }

    @Test
    void oneStationThatIsLargeEnoughSuffices() {
        assertThat(Sheets.toast()
                        .change("steps", "cut", "station=oven|counter:2", "oven temperature=100")
                        .troubles())
                .isEmpty();
    }

    @Test
    void aStepThatNoSetupWantsMayBeImpossible() {
        Sheets sheets = Sheets.toast()
                .add("dishes", "dish=cake", "look=steady")
                .add("steps", "step=ice", "dish=cake", "minutes likely=20", "hands=4", "skill=pastry");

        assertThat(sheets.troubles()).isEmpty();
    }

    @Test
    void aMisspeltDishDoesNotHideWhatElseIsWrongWithItsSteps() {
        Sheets sheets = Sheets.toast().change("needs", "1", "dish=tosat").change("steps", "plate", "skill=platting");

        assertThat(sheets.troubles())
                .containsExactly(
                        "needs 0 dish: [tosat] is not in sheet dishes. Did you mean toast?",
                        "steps 2 skill: [platting] is nobody's skill. Did you mean plating?");
    }

    @Test
    void aSkillInACellWithCommasIsTold() {
        assertThat(Sheets.toast()
                        .change("people", "Ada", "skills=bake, plating")
                        .troubles())
                .containsExactly(
                        "steps 2 skill: [plating] is nobody's skill. Maybe bake; plating instead of [bake, plating]"
                                + " in sheet people.");
    }

    @Test
    void twoOvensInOneStepAreTold() {
        Sheets sheets = Sheets.toast()
                .add("stations", "station=small oven", "kind=oven", "place=kitchen")
                .change("steps", "bake", "station=oven:1; small oven:1");

        assertThat(sheets.troubles())
                .containsExactly("steps 1 station: [oven:1; small oven:1] uses two ovens at a time. "
                        + "Maybe a bar between them if either will do, or a step for each.");
    }

    @Test
    void aStationThatIsNeverOpenLongEnoughIsToldWithItsHeatingTakenOff() {
        // own calculation: from 20 to 200 degrees C at 10 a minute takes 18 of the 30 minutes
        assertThat(Sheets.toast()
                        .change("stations", "oven", "hours=08:00-08:30")
                        .troubles())
                .containsExactly("steps 1 station: [oven:1] is open for 12 minutes at most once it is hot, "
                        + "but the step takes 15. Maybe longer hours for it, or a shorter step.");
    }

    @Test
    void anOvenThatIsOpenJustLongEnoughServes() {
        assertThat(Sheets.toast()
                        .change("stations", "oven", "hours=08:00-08:33")
                        .troubles())
                .isEmpty();
    }

    @Test
    void aStationWhosePlaceIsClosedIsNeverOpen() {
        assertThat(Sheets.toast()
                        .change("places", "kitchen", "hours=19:00-22:00")
                        .troubles())
                .contains("steps 0 station: [counter:1] is never open, but the step takes 10. "
                        + "Maybe longer hours for it, or a shorter step.");
    }

    @Test
    void handsThatAreNeverThereLongEnoughTogetherAreTold() {
        Sheets sheets = Sheets.toast()
                .change("people", "Ada", "hours=06:00-10:00")
                .change("people", "Bo", "hours=09:55-18:00")
                .change("steps", "cut", "hands=2");

        assertThat(sheets.troubles())
                .containsExactly("steps 0 hands: [2] pairs of hands are needed for 10 minutes without a break, "
                        + "but Ada and Bo are never there together for more than 5. "
                        + "Maybe longer hours in sheet people, or a shorter step.");
    }

    @Test
    void onlyTheMinutesWithHandsOnMustFitAShift() {
        Sheets sheets = Sheets.toast()
                .change("people", "Ada", "hours=06:00-10:00")
                .change("people", "Bo", "hours=09:55-18:00")
                .change("steps", "cut", "hands=2", "hands first=5")
                .change("setups", "1", "call=11:00");

        assertThat(sheets.troubles()).noneMatch(trouble -> trouble.startsWith("steps"));
    }

    @Test
    void aHandDoubleIsNotInTheKitchen() {
        assertThat(Sheets.toast()
                        .change("people", "Ada", "hours=06:00-06:02; 10:00-10:30", "away=setup 1")
                        .troubles())
                .containsExactly("steps 2 hands: [1] pair of hands is needed for 3 minutes without a break, "
                        + "but Ada (skill plating) is never there for more than 2. "
                        + "Maybe longer hours in sheet people or skill plating for somebody else, or a shorter step.");
    }

    @Test
    void aNoisyStepLongerThanTheSetIsEverLoudIsTold() {
        // own calculation: from the last take's end at 10:30 to 18:00 there are 450 minutes
        Sheets sheets = Sheets.toast()
                .fact("silence", "setup")
                .change("setups", "1", "silent=yes")
                .change("steps", "cut", "noisy=yes", "minutes likely=451");

        assertThat(sheets.troubles())
                .contains("steps 0 noisy: [yes] can't be: the step takes 451 minutes, but noise is allowed for 450 at "
                        + "most. Maybe a station out of earshot, or a shorter step.");
    }

    @Test
    void whatIsNeverThereTogetherIsTold() {
        Sheets sheets = Sheets.toast()
                .change("stations", "oven", "hours=06:00-08:00")
                .change("people", "Ada", "hours=10:00-18:00")
                .change("people", "Bo", "hours=10:00-18:00")
                .change("steps", "bake", "hands=1");

        assertThat(sheets.troubles())
                .containsExactly(
                        "steps 1 step: [bake] never finds its hands for 15 minutes while all else that it needs "
                                + "is there: it takes 1 pair of hands, and there are only Ada (10:00-18:00) and Bo "
                                + "(10:00-18:00). Maybe longer hours in sheet people, or longer hours for its stations.");
    }

    @Test
    void aCircuitTooWeakForAStepBesideWhatIsAlwaysOnIsNamed() {
        // own calculation: of 16 A over 1.25 the oven leaves 2.8 A
        Sheets sheets = Sheets.toast()
                .change("stations", "oven", "amps=10", "circuit=wall")
                .change("stations", "counter", "amps=2.9", "circuit=wall")
                .change("steps", "plate", "station=");

        assertThat(sheets.troubles())
                .containsExactly("steps 0 station: [counter:1] never has power for 10 minutes from circuit wall, which "
                        + "allows 12.8 A for long, beside what is always on there. Maybe another circuit: ask the "
                        + "electrician.");
        assertThat(sheets.change("stations", "counter", "amps=2.8").troubles()).isEmpty();
        assertThat(sheets.change("stations", "fridge", "amps=2.9", "circuit=wall")
                        .troubles())
                .containsExactly(
                        "circuits 0 amps: [16] allows 12.8 A for long, but at 06:00 oven (10 A) and fridge (2.9 A) "
                                + "are on together. Maybe another circuit for one of them: ask the electrician.");
    }

    @Test
    void tooManyChoicesOfStationsAreTold() {
        Sheets sheets = Sheets.toast();
        StringBuilder any = new StringBuilder("counter");
        for (int n = 0; n < 10; n++) {
            sheets.add("stations", "station=board " + n, "kind=counter", "place=kitchen");
            any.append("|board ").append(n);
        }
        String uses = any + ":1; " + any + ":1; " + any + ":1";

        assertThat(sheets.change("steps", "cut", "station=" + uses).troubles())
                .containsExactly("steps 0 station: [" + uses + "] leaves more than 1000 choices of stations. "
                        + "Maybe one station with a larger capacity for several that are alike.");
    }

    @Test
    void aStepDrawsNoMoreThanItsCircuitAllows() {
        // own calculation: 16 A over the continuous factor 1.25 is 12.8 A
        assertThat(Sheets.toast()
                        .change("stations", "counter", "amps=7", "circuit=wall")
                        .change("steps", "cut", "station=counter:2")
                        .troubles())
                .containsExactly("steps 0 station: [counter:2] draws 14 A from circuit wall, which allows 12.8 A for "
                        + "long. Maybe fewer at a time, or another circuit: ask the electrician.");
    }

    @Test
    void aStoreThatIsNeverOpenInKitchenHoursIsToldOnceIfFoodIsToWaitThere() {
        Sheets sheets = Sheets.toast()
                .fact("kitchen hours", "06:00-11:00; 12:00-18:00")
                .change("stations", "fridge", "hours=11:00-12:00")
                .change("steps", "cut", "waits in=fridge")
                .change("steps", "bake", "waits in=fridge");
        String told = "stations 2 hours: [11:00-12:00] lie outside kitchen hours, so nothing can wait there. "
                + "Maybe 06:00-11:00; 12:00-18:00.";

        assertThat(sheets.troubles()).containsExactly(told);
        assertThat(sheets.change("steps", "cut", "waits in=")
                        .change("steps", "bake", "waits in=")
                        .troubles())
                .isEmpty();
        assertThat(sheets.change("dishes", "toast", "held in=fridge").troubles())
                .containsExactly(told);
        assertThat(sheets.change("stations", "fridge", "hours=11:00-12:01").troubles())
                .isEmpty();
    }

    @Test
    void aStoreWhosePlaceIsNeverOpenInKitchenHoursIsTold() {
        assertThat(Sheets.toast()
                        .add("places", "place=cellar", "walk=set:5", "hours=18:00-20:00")
                        .change("stations", "fridge", "place=cellar")
                        .change("steps", "cut", "waits in=fridge")
                        .troubles())
                .containsExactly("stations 2 station: [fridge] is never open in kitchen hours, so nothing can wait "
                        + "there. Maybe longer hours for its place.");
    }

    /** The oven bakes on for 100 minutes while the kitchen is closed. */
    @Test
    void noiseWithoutHandsMayGoOnOutsideKitchenHours() {
        assertThat(Sheets.toast()
                        .fact("kitchen hours", "06:00-07:00; 09:30-10:40")
                        .change("stations", "oven", "hours=06:00-10:40")
                        .change("steps", "bake", "minutes likely=100", "noisy=yes")
                        .troubles())
                .isEmpty();
    }
}
