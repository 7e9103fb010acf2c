package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Calls, suppliers and releases against the clock; the earliest minutes are own calculations, said beside each. */
class CallsTest {

    @Test
    void aCallPastMidnightWithoutItsDateIsOfferedWithIt() {
        Sheets sheets = twoSetups().fact("kitchen hours", "06:00-04:00");

        assertThat(sheets.change("setups", "1", "call=00:30").troubles())
                .contains("setups 0 call: [00:30] is too early: toast can be ready at 06:41 at the earliest. "
                        + "Maybe 2026-03-15 00:30.");
    }

    @Test
    void aNextTakeComesAfterTakesThatAreShotAndAfterTheCall() {
        assertThat(twoSetups().change("setups", "2", "next take=12:30").troubles())
                .containsExactly(
                        "setups 1 next take: [12:30] comes after takes that are shot, but none is by column takes"
                                + " shot. Maybe say how many are, or move the call.");
        assertThat(twoSetups()
                        .change("setups", "2", "takes shot=1", "next take=11:50")
                        .troubles())
                .containsExactly(
                        "setups 1 next take: [11:50] is before the call at 12:00. Maybe another date or call.");
        assertThat(twoSetups()
                        .change("setups", "2", "takes shot=1", "next take=06:00")
                        .troubles())
                .containsExactly(
                        "setups 1 next take: [06:00] is before the call at 12:00. Maybe another date or call.");
        assertThat(twoSetups()
                        .change("setups", "2", "takes shot=3", "next take=12:40")
                        .troubles())
                .containsExactly(
                        "setups 1 next take: [12:40] is one more than the 3 takes at worst, and all of those are"
                                + " shot. Maybe more takes at worst, or no next take.");
        assertThat(twoSetups()
                        .change("setups", "2", "takes shot=2", "next take=12:30")
                        .troubles())
                .isEmpty();
    }

    private static Sheets twoSetups() {
        return Sheets.toast()
                .add(
                        "setups",
                        "setup=2",
                        "place=set",
                        "call=12:00",
                        "takes likely=2",
                        "takes at worst=3",
                        "take cycle=10",
                        "rolling minutes=2")
                .add("needs", "setup=2", "dish=toast", "stage=plate");
    }

    @Test
    void aCallBeforeTheKitchenCanBeReadyIsToldWithTheEarliestMinute() {
        // cut 06:00-06:10, oven hot at 06:18, baked 06:33, plated 06:36, carried 5 minutes
        assertThat(Sheets.toast().change("setups", "1", "call=06:40").troubles())
                .containsExactly("setups 0 call: [06:40] is too early: toast can be ready at 06:41 at the earliest. "
                        + "Maybe 06:41, or an earlier start of the kitchen.");
        assertThat(Sheets.toast().change("setups", "1", "call=06:41").troubles())
                .isEmpty();
    }

    @Test
    void leastWaitsAndShiftsPutOffTheEarliestMinute() {
        // baked 06:33, 20 minutes of waiting, then Ada comes at 07:30: plated 07:33, at camera 07:38
        Sheets sheets = Sheets.toast()
                .change("steps", "plate", "least wait=20")
                .change("people", "Ada", "hours=07:30-18:00")
                .change("setups", "1", "call=07:37");

        assertThat(sheets.troubles())
                .containsExactly(
                        "setups 0 call: [07:37] is too early: toast can be ready at 07:38 at the earliest: step "
                                + "plate takes 1 pair of hands with skill plating, and there is only Ada (07:30-18:00). Maybe "
                                + "07:38, or longer hours in sheet people or skill plating for somebody else.");
    }

    /** Only Ada plates. The bearer must be back by 09:00: away at 08:50. */
    @Test
    void handsThatAreGoneTooSoonAreNamedInsteadOfTheKitchen() {
        Sheets sheets = Sheets.toast().change("people", "Ada", "hours=06:00-09:00");
        String plate =
                "step plate takes 1 pair of hands with skill plating, and there is only Ada (06:00-09:00). Maybe ";
        String wayOut = "longer hours in sheet people or skill plating for somebody else, ";

        assertThat(sheets.troubles())
                .containsExactly(
                        "needs 0 dish: [toast] is past usable at 10:00: it can't be plated after 09:00, and is "
                                + "usable for 20 minutes: " + plate + wayOut + "or an earlier call.");
        assertThat(sheets.change("ingredients", "butter", "arrives=09:05").troubles())
                .containsExactly(
                        "ingredients 1 arrives: [09:05] is too late for setup 1 at 10:00: with butter from then "
                                + "on, toast can't be ready: " + plate + "an earlier delivery, " + wayOut
                                + "or a later call.");
        assertThat(Sheets.toast()
                        .change("people", "Ada", "hours=06:00-09:00")
                        .change("people", "Bo", "hours=06:00-09:00")
                        .troubles())
                .containsExactly(
                        "needs 0 dish: [toast] is past usable at 10:00: it can't be plated after 08:50, and is "
                                + "usable for 20 minutes: nobody is there to carry it. Maybe longer hours in sheet people, or an "
                                + "earlier call.");
        assertThat(Sheets.toast()
                        .change("ingredients", "bread", "arrives=09:00")
                        .change("people", "Ada", "hours=06:00-09:10")
                        .troubles())
                .anyMatch(trouble -> trouble.contains("toast can't be ready: step plate takes 1 pair of hands"));
    }

    @Test
    void standInsAreMeasuredByTheLightingCall() {
        Sheets sheets = Sheets.toast()
                .change("setups", "1", "call=07:00", "lighting=06:20")
                .change("needs", "1", "part=stand-in");

        assertThat(sheets.troubles())
                .containsExactly("setups 0 lighting: [06:20] is too early: toast can be ready at 06:41 at the "
                        + "earliest. Maybe 06:41, or an earlier start of the kitchen.");
    }

    @Test
    void ofSeveralLateDishesTheLatestSpeaksForTheSetup() {
        Sheets sheets = Sheets.toast()
                .change("setups", "1", "call=06:30")
                .add("dishes", "dish=stew", "look=steady")
                .add("steps", "step=cook", "dish=stew", "minutes likely=90")
                .add("needs", "setup=1", "dish=stew", "stage=cook");

        assertThat(sheets.troubles())
                .containsExactly("setups 0 call: [06:30] is too early: stew can be ready at 07:35 at the earliest. "
                        + "Maybe 07:35, or an earlier start of the kitchen.");
    }

    @Test
    void aDishForWhichTheKitchenClosesTooSoonCanNeverBeReady() {
        Sheets sheets = Sheets.toast()
                .fact("kitchen hours", "06:00-06:30; 08:00-08:12")
                .change("stations", "oven", "hours=08:00-09:00")
                .change("setups", "1", "call=08:30");

        assertThat(sheets.troubles())
                .containsExactly("setups 0 call: [08:30] is too early: toast can't be ready within the hours of the "
                        + "kitchen. Maybe longer kitchen hours.");
    }

    @Test
    void anIngredientThatComesTooLateIsToldWhereItIsBought() {
        // plated 09:58, carried 5 minutes
        assertThat(Sheets.toast()
                        .change("ingredients", "butter", "arrives=09:55")
                        .troubles())
                .containsExactly("ingredients 1 arrives: [09:55] is too late for setup 1 at 10:00: with butter from "
                        + "then on, toast can be ready at 10:03 at the earliest. "
                        + "Maybe an earlier delivery, or a later call.");
        assertThat(Sheets.toast()
                        .change("ingredients", "butter", "arrives=09:52")
                        .troubles())
                .isEmpty();
    }

    @Test
    void anIngredientAfterTheCallIsToldForItsFirstSetupOnly() {
        Sheets sheets = twoSetups().change("ingredients", "bread", "arrives=13:00");

        assertThat(sheets.troubles())
                .containsExactly("ingredients 0 arrives: [13:00] is too late for setup 1 at 10:00: with bread from "
                        + "then on, toast can be ready at 13:33 at the earliest. "
                        + "Maybe an earlier delivery, or a later call.");
    }

    @Test
    void foodThatIsPastUsableBecauseTheKitchenHasClosedIsTold() {
        // the bearer must be back by 09:00: away at 08:50
        assertThat(Sheets.toast().fact("kitchen hours", "06:00-09:00").troubles())
                .containsExactly("needs 0 dish: [toast] is past usable at 10:00: it can't be plated after 08:50, and "
                        + "is usable for 20 minutes. Maybe longer hours for the kitchen, or an earlier call.");
    }

    /** Baked by 09:00 at the latest, plated at once; for the only copy at the call 09:40 would do. */
    @Test
    void foodThatMayNotWaitIsPastUsableBecauseOfAnEarlierStep() {
        Sheets oven = Sheets.toast()
                .change("needs", "1", "copies=1")
                .change("stations", "oven", "hours=06:00-09:00")
                .change("steps", "plate", "most wait=0");
        assertThat(oven.troubles())
                .containsExactly("stations 1 hours: [06:00-09:00] are not enough for setup 1 at 10:00: toast is past "
                        + "usable by then: it can't be plated after 09:03, and is usable for 20 minutes. "
                        + "Maybe 06:00-18:00, or another call.");
        assertThat(oven.change("steps", "plate", "most wait=37").troubles()).isEmpty();
        assertThat(oven.change("steps", "plate", "most wait=36").troubles()).hasSize(1);

        assertThat(Sheets.toast()
                        .change("people", "Bo", "skills=baking", "hours=06:00-09:00")
                        .change("steps", "bake", "hands=1", "skill=baking")
                        .change("steps", "plate", "most wait=5", "least wait=2")
                        .troubles())
                .containsExactly("needs 0 dish: [toast] is past usable at 10:00: it can't be plated after 09:08, and "
                        + "is usable for 20 minutes: step bake takes 1 pair of hands with skill baking, and there is only Bo "
                        + "(06:00-09:00). Maybe longer hours in sheet people or skill baking for somebody else, or an earlier "
                        + "call.");
    }

    /** Bo puts one to three pieces in until 09:00; they take 25, 40 or 55 minutes, and are plated at once. */
    @Test
    void aBatchOfMoreCopiesEndsInTimeThoughOneCopyWouldNot() {
        Sheets sheets = Sheets.toast()
                .change("setups", "1", "takes at worst=3", "take cycle=1", "rolling minutes=1")
                .change("dishes", "toast", "usable to=25")
                .change("people", "Bo", "skills=baking", "hours=06:00-09:00")
                .change(
                        "steps",
                        "bake",
                        "minutes likely=10",
                        "minutes per copy=15",
                        "batch=8",
                        "hands=1",
                        "hands first=5",
                        "skill=baking")
                .change("steps", "plate", "most wait=0")
                .change("needs", "1", "copies=3");
        assertThat(sheets.change("setups", "1", "call=10:15").troubles()).isEmpty();
        assertThat(sheets.change("needs", "1", "copies=2").troubles())
                .containsExactly("needs 0 dish: [toast] is past usable at 10:15: it can't be plated after 09:38, and "
                        + "is usable for 25 minutes: step bake takes 1 pair of hands with skill baking, and there is only Bo "
                        + "(06:00-09:00). Maybe longer hours in sheet people or skill baking for somebody else, or an earlier "
                        + "call.");
    }

    /** Ada comes back just when a batch of two ends; one copy would end while she is away. */
    @Test
    void handsThatComeBackForTheEndOfALargerBatchAreEnough() {
        Sheets sheets = Sheets.toast()
                .change("setups", "1", "call=06:50")
                .change("people", "Ada", "skills=plating; baking", "hours=06:00-06:20; 06:40-18:00")
                .change(
                        "steps",
                        "bake",
                        "minutes likely=10",
                        "minutes per copy=7",
                        "batch=2",
                        "hands=1",
                        "hands first=2",
                        "hands last=2",
                        "skill=baking");
        assertThat(sheets.troubles()).isEmpty();
    }

    /** Carried for 5 minutes. */
    @Test
    void aLookThatIsShorterThanTheWalkIsNotBlamedOnHours() {
        assertThat(Sheets.toast()
                        .change("dishes", "toast", "peak to=0", "usable to=4")
                        .troubles())
                .containsExactly(
                        "needs 0 dish: [toast] is past usable before it is at camera: it is carried for 5 "
                                + "minutes, and is usable for 4 minutes. Maybe a longer usable to in sheet dishes, or a shorter walk.");
        assertThat(Sheets.toast()
                        .change("dishes", "toast", "peak to=0", "usable to=5")
                        .troubles())
                .isEmpty();
    }

    /** Cut 09:50-10:00, baked 10:15, plated 10:18, carried 5 minutes; at 12:00 the counter is closed. */
    @Test
    void aStationThatIsClosedTooLongIsToldOnceInsteadOfKitchenAndCalls() {
        assertThat(twoSetups()
                        .change("stations", "counter", "hours=09:50-10:30")
                        .troubles())
                .containsExactly("stations 0 hours: [09:50-10:30] are not enough for setup 1 at 10:00: toast can be "
                        + "ready at 10:23 at the earliest. Maybe 06:00-18:00, or another call.");
        assertThat(twoSetups()
                        .change("stations", "oven", "hours=17:00-18:00")
                        .change("stations", "counter", "hours=06:00-12:00")
                        .troubles())
                .containsExactly("stations 1 hours: [17:00-18:00] are not enough for setup 1 at 10:00: toast can't be "
                        + "ready. Maybe 06:00-18:00.");
    }

    @Test
    void ofTwoStationsOfWhichEitherWillDoOneIsTold() {
        assertThat(Sheets.toast()
                        .add(
                                "stations",
                                "station=grill",
                                "kind=oven",
                                "capacity=1",
                                "place=kitchen",
                                "hours=11:00-18:00")
                        .change("stations", "oven", "hours=11:00-18:00")
                        .change("steps", "bake", "station=oven|grill:1")
                        .troubles())
                .hasSize(1)
                .allMatch(trouble -> trouble.startsWith("stations 3 hours: [11:00-18:00] are not enough for setup 1"));
    }

    @Test
    void anIngredientIsNotBlamedForAStationThatIsClosedWhenItIsThere() {
        assertThat(Sheets.toast()
                        .change("ingredients", "butter", "arrives=09:30")
                        .change("stations", "counter", "hours=06:00-09:30; 17:00-18:00")
                        .change("dishes", "toast", "usable to=60")
                        .troubles())
                .containsExactly("stations 0 hours: [06:00-09:30; 17:00-18:00] are not enough for setup 1 at 10:00: "
                        + "with butter from 09:30 on, toast can be ready at 17:08 at the earliest. Maybe 06:00-18:00, or "
                        + "another call.");
    }

    /** Cut at 17:50, so that the bread can't be baked any more, for which no hands are needed. */
    @Test
    void theStepThatWaitedForItsHandsIsNamedNotTheOneThatComesTooLate() {
        assertThat(Sheets.toast()
                        .change("people", "Bo", "skills=knife", "hours=17:50-18:00")
                        .change("steps", "cut", "skill=knife")
                        .troubles())
                .containsExactly("setups 0 call: [10:00] is too early: toast can't be ready: step cut takes 1 pair of "
                        + "hands with skill knife, and there is only Bo (17:50-18:00). Maybe longer hours in sheet people or "
                        + "skill knife for somebody else.");
    }

    @Test
    void commasBetweenSkillsAreNamedIfTheyKeepADishWaiting() {
        assertThat(Sheets.toast()
                        .change("people", "Ada", "skills=plating, carving")
                        .add("people", "person=Cleo", "skills=plating", "hours=12:00-18:00")
                        .troubles())
                .containsExactly("setups 0 call: [10:00] is too early: toast can be ready at 12:08 at the earliest: "
                        + "step plate takes 1 pair of hands with skill plating, and there is only Cleo (12:00-18:00). Maybe "
                        + "12:08, or plating; carving instead of [plating, carving] in sheet people.");
    }

    @Test
    void lightingAfterTheCallIsTold() {
        assertThat(Sheets.toast().change("setups", "1", "lighting=10:10").troubles())
                .containsExactly("setups 0 lighting: [10:10] is after the call at 10:00. "
                        + "Maybe clear it: then stand-ins come at the call.");
    }

    @Test
    void aCallWhileItsPlaceIsClosedIsTold() {
        assertThat(Sheets.toast().change("places", "set", "hours=10:01-17:00").troubles())
                .containsExactly("setups 0 call: [10:00] is outside the hours of place set: 10:01-17:00. "
                        + "Maybe longer hours for the place, or another place.");
    }

    @Test
    void aReleaseBeforeTheCallIsTold() {
        assertThat(Sheets.toast().change("setups", "1", "release=09:00").troubles())
                .containsExactly("setups 0 release: [09:00] is before its call at 10:00. Maybe at end, or 10:30.");
    }

    @Test
    void aReleaseAfterTheSetupItselfIsTold() {
        assertThat(Sheets.toast().change("setups", "1", "release=after setup 1").troubles())
                .containsExactly("setups 0 release: [after setup 1] is the setup itself. Maybe at end.");
    }

    @Test
    void releasesThatWaitForEachOtherArePrintedAsTheChain() {
        Sheets sheets = twoSetups()
                .change("setups", "1", "release=after setup 2")
                .change("setups", "2", "release=after setup 1");

        assertThat(sheets.troubles())
                .containsExactly("setups 0 release: [after setup 2] closes a circle: 1 -> 2 -> 1. Maybe at end.");
    }

    @Test
    void aCallWeeksFromKitchenHoursIsTold() {
        assertThat(Sheets.toast().change("setups", "1", "call=2026-04-02 10:00").troubles())
                .containsExactly("setups 0 call: [2026-04-02 10:00] lies more than 14 days from kitchen hours "
                        + "06:00-18:00. Maybe the year or the month is wrong.");
    }

    @Test
    void aNextTakeWeeksAfterKitchenHoursIsTold() {
        assertThat(Sheets.toast()
                        .change("setups", "1", "takes shot=1", "next take=2026-04-02 10:00")
                        .troubles())
                .containsExactly("setups 0 next take: [2026-04-02 10:00] lies more than 14 days from kitchen hours "
                        + "06:00-18:00. Maybe the year or the month is wrong.");
    }

    @Test
    void aReleaseWeeksAfterKitchenHoursIsTold() {
        assertThat(Sheets.toast()
                        .change("setups", "1", "release=2026-04-02 10:00")
                        .troubles())
                .containsExactly("setups 0 release: [2026-04-02 10:00] lies more than 14 days from kitchen hours "
                        + "06:00-18:00. Maybe the year or the month is wrong.");
    }

    @Test
    void kitchenHoursOverWeeksAreTold() {
        assertThat(Sheets.toast()
                        .fact("kitchen hours", "2026-02-27 06:00 - 2026-02-27 18:00; 06:00-18:00")
                        .troubles())
                .containsExactly("day -1 kitchen hours: [2026-02-27 06:00-2026-02-27 18:00; 06:00-18:00] reach over "
                        + "more than 14 days with the calls and releases. "
                        + "Maybe the year or the month is wrong, or it is more than one day.");
    }
}
