package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReferencesTest {

    @Test
    void aGoodDayHasNoTroublesAndNoRemarks() {
        assertThat(Sheets.toast().troubles()).isEmpty();
        assertThat(Sheets.toast().remarks()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '!', quoteCharacter = '~', textBlock = """
            setups  ! 1       ! place=sett              ! setups 0 place: [sett] is not in sheet places. Did you mean set?
            setups  ! 1       ! release=after setup 9   ! setups 0 release: [9] is not in sheet setups. Maybe 1.
            needs   ! 1       ! setup=12                ! needs 0 setup: [12] is not in sheet setups. Maybe 1.
            needs   ! 1       ! dish=tosat              ! needs 0 dish: [tosat] is not in sheet dishes. Did you mean toast?
            needs   ! 1       ! stage=plat              ! needs 0 stage: [plat] is not a step of dish toast. Did you mean plate?
            needs   ! 1       ! stage=fry               ! needs 0 stage: [fry] is not a step of dish toast. Maybe one of cut, bake, plate.
            needs   ! 1       ! eaten by=Mia            ! needs 0 eaten by: [Mia] is not in sheet cast. Did you mean Mina?
            needs   ! 1       ! dish=Buttered Toast     ! needs 0 dish: [Buttered Toast] is not in sheet dishes. Maybe toast.
            needs   ! 1       ! eaten by=Mina, Mina     ! needs 0 eaten by: [Mina, Mina] is not in sheet cast. Maybe Mina; Mina.
            needs   ! 1       ! stage=bake, plate       ! needs 0 stage: [bake, plate] is not a step of dish toast. Maybe one of cut, bake, plate.
            steps   ! cut     ! station=counter/oven:1  ! steps 0 station: [counter/oven] is not in sheet stations. Maybe counter|oven.
            steps   ! plate   ! after=cut and bake      ! steps 2 after: [cut and bake] is not a step of dish toast. Maybe cut; bake.
            dishes  ! toast   ! held in=frige           ! dishes 0 held in: [frige] is not in sheet stations. Did you mean fridge?
            dishes  ! toast   ! held in=oven            ! dishes 0 held in: [oven] is of kind oven, where food can't be kept. Maybe fridge.
            steps   ! cut     ! station=conter:1        ! steps 0 station: [conter] is not in sheet stations. Did you mean counter?
            steps   ! cut     ! station=counter|bord:1  ! steps 0 station: [bord] is not in sheet stations. Maybe one of counter, oven, fridge.
            steps   ! cut     ! waits in=frige          ! steps 0 waits in: [frige] is not in sheet stations. Did you mean fridge?
            steps   ! cut     ! waits in=counter        ! steps 0 waits in: [counter] is of kind counter, where food can't be kept. Maybe fridge.
            steps   ! bake    ! after=cutt              ! steps 1 after: [cutt] is not a step of dish toast. Did you mean cut?
            steps   ! plate   ! any time after=bkae     ! steps 2 any time after: [bkae] is not a step of dish toast. Did you mean bake?
            ingredients ! bread ! dish=tost             ! ingredients 0 dish: [tost] is not in sheet dishes. Did you mean toast?
            ingredients ! butter ! step=plates          ! ingredients 1 step: [plates] is not a step of dish toast. Did you mean plate?
            stations ! oven   ! circuit=wal             ! stations 1 circuit: [wal] is not in sheet circuits. Did you mean wall?
            stations ! oven   ! place=cellar            ! stations 1 place: [cellar] is not in sheet places. Maybe one of kitchen, set.
            people  ! Ada     ! away=setup 7            ! people 0 away: [7] is not in sheet setups. Maybe 1.
            places  ! kitchen ! walk=sat:5              ! places 0 walk: [sat] is not in sheet places. Did you mean set?
            """)
    void aNameThatNothingBearsIsToldWithTheOneThatWasMeant(String sheet, String row, String cell, String trouble) {
        assertThat(Sheets.toast()
                        .change("dishes", "toast", "name=Buttered toast")
                        .change(sheet, row, cell)
                        .troubles())
                .containsExactly(trouble);
    }

    @Test
    void aLookOfAnUnknownDishIsTold() {
        Sheets sheets = Sheets.toast().add("looks", "dish=tost", "property=thickness", "value=10");

        assertThat(sheets.troubles())
                .containsExactly("looks 0 dish: [tost] is not in sheet dishes. Did you mean toast?");
    }

    @Test
    void aNameMisspeltWhereItIsDefinedIsToldOnceHoweverOftenItIsUsed() {
        assertThat(Sheets.toast().change("dishes", "toast", "dish=tost").troubles())
                .containsExactly(
                        "needs 0 dish: [toast] is not in sheet dishes, here and in 5 more rows. Did you mean tost?");
    }

    @Test
    void aNameFarFromAllOthersIsToBeAdded() {
        Sheets sheets = Sheets.toast();
        for (int n = 0; n < 6; n++) {
            sheets.add("places", "place=yard " + n);
        }

        assertThat(sheets.change("setups", "1", "place=lighthouse").troubles())
                .containsExactly("setups 0 place: [lighthouse] is not in sheet places. Maybe add it.");
    }

    @Test
    void shortNamesAreAllToldEvenIfTheyAreMany() {
        Sheets sheets = Sheets.toast();
        for (int n = 2; n <= 9; n++) {
            sheets.add("circuits", "circuit=" + n, "volts=230", "amps=10");
        }

        assertThat(sheets.change("stations", "oven", "circuit=10").troubles())
                .containsExactly("stations 1 circuit: [10] is not in sheet circuits. "
                        + "Maybe one of wall, 2, 3, 4, 5, 6, 7, 8, 9.");
    }

    @Test
    void twoThingsOfOneNameAreToldInEverySheet() {
        Sheets sheets = Sheets.toast()
                .add(
                        "setups",
                        "setup=1",
                        "place=set",
                        "call=11:00",
                        "takes likely=1",
                        "takes at worst=1",
                        "take cycle=5")
                .add("needs", "setup=1", "dish=toast", "stage=plate", "plates per take=2")
                .add("dishes", "dish=toast", "look=steady")
                .add("steps", "step=cut", "dish=toast", "minutes likely=4")
                .add("stations", "station=oven", "kind=oven", "place=kitchen")
                .add("circuits", "circuit=wall", "volts=230", "amps=10")
                .add("people", "person=Bo")
                .add("cast", "who=Theo")
                .add("places", "place=set");

        String wayOut = ". Maybe give it a name of its own, or delete a row.";
        assertThat(sheets.troubles())
                .containsExactly(
                        "setups 1 setup: [1] stands in an earlier row already" + wayOut,
                        "needs 1 : [1/toast/plate/hero] is wanted by an earlier row already. "
                                + "Maybe one row with more plates per take.",
                        "dishes 1 dish: [toast] stands in an earlier row already" + wayOut,
                        "steps 3 step: [cut] is a step of dish toast in an earlier row already" + wayOut,
                        "stations 3 station: [oven] stands in an earlier row already" + wayOut,
                        "circuits 1 circuit: [wall] stands in an earlier row already" + wayOut,
                        "people 2 person: [Bo] stands in an earlier row already" + wayOut,
                        "cast 2 who: [Theo] stands in an earlier row already" + wayOut,
                        "places 2 place: [set] stands in an earlier row already" + wayOut);
    }

    @Test
    void theSameStepOfAnotherDishIsNoDuplicate() {
        Sheets sheets = Sheets.toast()
                .add("dishes", "dish=roll", "look=steady")
                .add("needs", "setup=1", "dish=roll", "stage=cut")
                .add("steps", "step=cut", "dish=roll", "minutes likely=4");

        assertThat(sheets.troubles()).isEmpty();
    }

    @Test
    void moreThanSixtyPeopleAreTooMany() {
        Sheets sheets = Sheets.toast();
        for (int n = 3; n <= 62; n++) {
            sheets.add("people", "person=Helper " + n);
        }

        assertThat(sheets.troubles())
                .containsExactly("people 60 person: [Helper 61] is one too many: at most 60 people can be planned. "
                        + "Maybe leave out those who don't touch food.");
    }
}
