package platecall.intake;

import java.util.ArrayList;
import java.util.List;
import platecall.day.Trouble;

/** Collects all that is wrong, so that one report tells it. */
final class Troubles {

    /** More than anybody reads; the rest is only counted. */
    private static final int MOST_KEPT = 1000;

    private final List<Trouble> list = new ArrayList<>();
    private int count;
    private Throwable cause;

    void add(Trouble trouble) {
        count++;
        if (list.size() < MOST_KEPT) {
            list.add(trouble);
        }
    }

    void aboutFile(String what, String wayOut) {
        add(new Trouble("", -1, "", "", what, wayOut));
    }

    void aboutSheet(String sheet, String what, String wayOut) {
        add(new Trouble(sheet, -1, "", "", what, wayOut));
    }

    /** What went wrong inside, for those who look for the cause. */
    void causedBy(Throwable failure) {
        cause = failure;
    }

    /** Null if nothing went wrong inside. */
    Throwable cause() {
        return cause;
    }

    int count() {
        return count;
    }

    boolean none() {
        return count == 0;
    }

    List<Trouble> list() {
        return List.copyOf(list);
    }
}
