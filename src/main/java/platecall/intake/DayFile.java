package platecall.intake;

import java.util.List;
import platecall.day.Day;
import platecall.day.Trouble;

/** A day that has been read, and where its records stand in the file. */
public final class DayFile {

    private final Day day;
    private final Whereabouts whereabouts;
    private final List<Trouble> remarks;

    DayFile(Day day, Whereabouts whereabouts, List<Trouble> remarks) {
        this.day = day;
        this.whereabouts = whereabouts;
        this.remarks = List.copyOf(remarks);
    }

    public Day day() {
        return day;
    }

    /** What can be read but may not be meant. */
    public List<Trouble> remarks() {
        return remarks;
    }

    /** The trouble in one line, with its place in this file. */
    public String tell(Trouble trouble) {
        return whereabouts.tell(trouble);
    }

    Whereabouts whereabouts() {
        return whereabouts;
    }
}
