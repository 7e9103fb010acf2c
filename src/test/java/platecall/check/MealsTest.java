package platecall.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MealsTest {

    private static final String NO_ROOM = "-1 meal minutes: [";

    @Test
    void workLongerThanAnybodyMayBeOnWithoutABreakIsTold() {
        // own calculation: cutting takes 10 minutes, carrying 5 and as many back
        assertThat(Sheets.toast()
                        .fact("meal after", "10")
                        .fact("meal minutes", "1")
                        .troubles())
                .isEmpty();
        assertThat(Sheets.toast()
                        .fact("meal after", "9")
                        .fact("meal minutes", "1")
                        .troubles())
                .containsExactly(
                        "day -1 meal after: [9] leaves no time for step cut of toast, which keeps hands on for "
                                + "10 minutes without a pause. Maybe 360, or a shorter step.");
        assertThat(Sheets.toast()
                        .fact("meal after", "9")
                        .fact("meal minutes", "1")
                        .change("steps", "cut", "minutes likely=9")
                        .troubles())
                .containsExactly(
                        "day -1 meal after: [9] leaves no time for carrying toast to setup 1, which keeps hands "
                                + "on for 10 minutes without a pause. Maybe 360, or a shorter step.");
    }

    @Test
    void aBreakThatFitsIntoNobodysShiftIsTold() {
        // the shifts last 720 minutes
        assertThat(Sheets.toast()
                        .fact("meal after", "300")
                        .fact("meal minutes", "720")
                        .troubles())
                .noneMatch(trouble -> trouble.contains(NO_ROOM));
        assertThat(Sheets.toast()
                        .fact("meal after", "300")
                        .fact("meal minutes", "721")
                        .troubles())
                .contains(
                        "day -1 meal minutes: [721] do not fit into the shifts of Ada and Bo so that nobody works longer "
                                + "than 300 minutes without a break. Maybe a shorter break, or other shifts and absences.");
    }

    @Test
    void anAbsenceMayLeaveNoRoomForABreak() {
        Sheets sheets = Sheets.toast().fact("meal after", "360").fact("meal minutes", "30");

        assertThat(sheets.change("people", "Bo", "away=06:20-12:20").troubles())
                .contains("day -1 meal minutes: [30] do not fit into the shifts of Bo so that nobody works longer than "
                        + "360 minutes without a break. Maybe a shorter break, or other shifts and absences.");
        // a first break fits from 06:00 on, and a second one from 12:20 or a little later
        assertThat(sheets.change("people", "Bo", "away=06:30-12:20").troubles())
                .noneMatch(trouble -> trouble.contains(NO_ROOM));
    }
}
