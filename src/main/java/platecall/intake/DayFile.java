package platecall.intake;

import platecall.day.Day;
import platecall.day.Trouble;

/** A day that has been read, and where its records stand in the file. */
public final class DayFile {

    private final Day day;
    private final Whereabouts whereabouts;

    DayFile(Day day, Whereabouts whereabouts) {
        this.day = day;
        this.whereabouts = whereabouts;
    }

    public Day day() {
        return day;
    }

    /** The trouble in one line, with its place in this file. */
    public String tell(Trouble trouble) {
        return whereabouts.tell(trouble);
    }

    Whereabouts whereabouts() {
        return whereabouts;
    }
}
