package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Hours without a date fall on the evening after a night shoot. */
class MissedDatesTest {

    private static Sheets night() {
        return Sheets.toast()
                .fact("kitchen hours", "2026-03-13 22:00 - 2026-03-14 11:00")
                .change("setups", "1", "call=02:00");
    }

    private static final String MEANT = "Maybe 2026-03-13 22:00 - 2026-03-14 11:00.";

    @Test
    void kitchenHoursOnTheEveningAfterTheShootAreToldAloneWithTheirDates() {
        assertThat(night().troubles()).isEmpty();
        assertThat(night().fact("kitchen hours", "22:00-11:00").troubles())
                .containsExactly(
                        "day -1 kitchen hours: [22:00-2026-03-15 11:00] begin only after the last call, at 02:00. "
                                + MEANT.replaceFirst("\\.$", ", or calls on 2026-03-15."));
        assertThat(night().fact("kitchen hours", "2026-03-13 14:00-18:00; 22:00-11:00")
                        .troubles())
                .containsExactly(
                        "day -1 kitchen hours: [22:00-2026-03-15 11:00] begin only after the last call, at 02:00. "
                                + MEANT.replaceFirst("\\.$", ", or calls on 2026-03-15."));
    }

    @Test
    void kitchenHoursOfWhichEndAndStartAreSwappedAreToldAlone() {
        assertThat(Sheets.toast().fact("kitchen hours", "18:00-06:00").troubles())
                .containsExactly("day -1 kitchen hours: [18:00-2026-03-15 06:00] begin only after the last call, at "
                        + "10:00. Maybe 06:00-18:00.");
        assertThat(night().fact("kitchen hours", "22:00-11:00")
                        .change("setups", "1", "call=13:00")
                        .troubles())
                .containsExactly(
                        "day -1 kitchen hours: [22:00-2026-03-15 11:00] begin only after the last call, at 13:00. "
                                + "Maybe 11:00-22:00.");
    }

    @Test
    void whatElseIsWrongIsToldBesideKitchenHoursThatNobodyCanGuess() {
        assertThat(Sheets.toast()
                        .fact("kitchen hours", "11:00-12:00")
                        .change("steps", "plate", "skill=icing")
                        .troubles())
                .containsExactly(
                        "day -1 kitchen hours: [11:00-12:00] begin only after the last call, at 10:00. "
                                + "Maybe the date or the hours are wrong.",
                        "steps 2 skill: [icing] is nobody's skill. Maybe plating.");
    }

    @Test
    void hoursOfSomebodyOnTheEveningAfterTheShootAreTheCauseOfWhatNobodyCanDo() {
        assertThat(night().remarks()).isEmpty();
        String told = "people 0 hours: [23:00-2026-03-15 09:00] lie outside kitchen hours. "
                + "Maybe 2026-03-13 23:00 - 2026-03-14 09:00.";

        assertThat(night().change("people", "Ada", "hours=23:00-09:00").troubles())
                .containsExactly(told);
        assertThat(night().change("people", "Ada", "hours=23:00-09:00")
                        .change("people", "Bo", "skills=plating")
                        .remarks())
                .containsExactly(told);
        assertThat(night().change("people", "Ada", "hours=2026-03-13 22:00-23:00; 23:00-09:00")
                        .change("people", "Bo", "skills=plating")
                        .remarks())
                .containsExactly(told);
    }

    @Test
    void hoursOfAStoreOnTheEveningAfterTheShootAreOfferedWithTheirDates() {
        Sheets sheets = night().change("stations", "fridge", "hours=22:00-11:00");
        String told = "stations 2 hours: [22:00-2026-03-15 11:00] lie outside kitchen hours. " + MEANT;

        assertThat(sheets.change("steps", "cut", "waits in=fridge").troubles()).containsExactly(told);
        assertThat(sheets.change("steps", "cut", "waits in=")
                        .change("dishes", "toast", "held in=fridge", "storage=1")
                        .troubles())
                .containsExactly(told);
        assertThat(sheets.change("dishes", "toast", "held in=").remarks()).containsExactly(told);
    }

    /** In Berlin clocks go from 02:00 to 03:00 on 2026-03-29 (IANA time zones): what is meant by 02:30 isn't on any clock. */
    @Test
    void hoursThatClocksPassOverOnTheEveningBeforeAreNoHindrance() {
        assertThat(night().fact("date", "2026-03-29")
                        .fact("kitchen hours", "2026-03-28 22:00 - 2026-03-29 11:00")
                        .change("people", "Bo", "hours=2026-03-30 02:30 - 2026-03-30 03:10")
                        .change("setups", "1", "call=04:00")
                        .remarks())
                .containsExactly("people 1 hours: [2026-03-30 02:30-2026-03-30 03:10] lie outside kitchen hours. "
                        + "Maybe 03:30-04:10.");
    }
}
