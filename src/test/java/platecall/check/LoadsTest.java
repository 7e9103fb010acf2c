package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LoadsTest {

    @Test
    void aStorageSmallerThanOneCopyIsToldOnceForEachColumn() {
        assertThat(Sheets.toast()
                        .change("dishes", "toast", "storage=5")
                        .change("steps", "cut", "waits in=fridge")
                        .change("steps", "bake", "waits in=fridge")
                        .troubles())
                .containsExactly("steps 0 waits in: [fridge] has room for 4, but a copy of toast takes 5. "
                        + "Maybe a larger storage, or less room for a copy.");
        assertThat(Sheets.toast()
                        .change("dishes", "toast", "storage=5", "held in=fridge")
                        .change("steps", "cut", "waits in=fridge")
                        .troubles())
                .containsExactly("dishes 0 held in: [fridge] has room for 4, but a copy of toast takes 5. "
                        + "Maybe a larger storage, or less room for a copy.");
    }

    @Test
    void foodHeldUntilReleaseMustFitItsStorage() {
        // the third take's copy is used at 10:22: three copies of two units each
        Sheets sheets = Sheets.toast()
                .change("dishes", "toast", "storage=2", "held in=fridge")
                .change("setups", "1", "release=12:00");

        assertThat(sheets.troubles())
                .containsExactly("stations 2 capacity: [4] is too little: at 10:22 6 are taken by what waits for "
                        + "release: 3 copies of toast. Maybe an earlier release, or fewer copies.");
        assertThat(sheets.change("needs", "1", "copies=2").troubles()).isEmpty();
    }

    @Test
    void aStandInWaitsForItsReleaseOnlyOnceTheHeroIsCalled() {
        // it is lit from 09:00 to 10:00: by then the two copies of setup 0, two units each, are struck
        Sheets sheets = Sheets.toast()
                .change("dishes", "toast", "storage=2", "held in=fridge")
                .add(
                        "setups",
                        "setup=0",
                        "place=set",
                        "call=08:00",
                        "takes likely=1",
                        "takes at worst=1",
                        "take cycle=10",
                        "rolling minutes=2",
                        "release=10:00")
                .add("needs", "setup=0", "dish=toast", "stage=plate", "plates per take=2")
                .change("setups", "1", "lighting=09:00", "release=12:00")
                .change("needs", "1", "copies=1")
                .add("needs", "setup=1", "dish=toast", "stage=plate", "part=stand-in");

        assertThat(sheets.troubles()).isEmpty();
        assertThat(sheets.change("setups", "0", "release=10:01").troubles())
                .containsExactly("stations 2 capacity: [4] is too little: at 10:00 6 are taken by what waits for "
                        + "release: 3 copies of toast. Maybe an earlier release, or fewer copies.");
    }

    @Test
    void aStationStrongerThanItsCircuitIsToldAtTheStationOnly() {
        assertThat(Sheets.toast()
                        .change("stations", "oven", "amps=14", "circuit=wall")
                        .troubles())
                .containsExactly("stations 1 amps: [14] is more than circuit wall allows for long: 12.8 A of its 16 A. "
                        + "Maybe another circuit: ask the electrician.");
        assertThat(Sheets.toast()
                        .change("stations", "counter", "amps=14", "circuit=wall")
                        .troubles())
                .containsExactly("stations 0 amps: [14] is more than circuit wall allows for long: 12.8 A of its 16 A. "
                        + "Maybe another circuit: ask the electrician.");
    }

    @Test
    void whatIsAlwaysOnTogetherMustNotOverloadItsCircuit() {
        Sheets sheets = Sheets.toast()
                .change("stations", "oven", "amps=10", "circuit=wall")
                .change("stations", "fridge", "amps=2.9", "circuit=wall");

        assertThat(sheets.troubles())
                .containsExactly("circuits 0 amps: [16] allows 12.8 A for long, but at 06:00 oven (10 A) and fridge "
                        + "(2.9 A) are on together. Maybe another circuit for one of them: ask the electrician.");
        assertThat(sheets.change("stations", "fridge", "amps=2.8").troubles()).isEmpty();
    }

    @Test
    void aBudgetBelowOneHeroEachIsToldWithTheCheapestSum() {
        // own calculation: 1.50 for the dish, 0.20 bread, 0.10 butter
        assertThat(Sheets.toast().fact("food budget", "1.79").troubles())
                .containsExactly("day -1 food budget: [1.79] can't buy one hero of each need (numbers fixed by hand as "
                        + "fixed): the cheapest is EUR 1.80. "
                        + "Maybe raise the food budget by EUR 0.01, or let plates last more takes.");
        assertThat(Sheets.toast().fact("food budget", "1.80").troubles()).isEmpty();
    }
}
