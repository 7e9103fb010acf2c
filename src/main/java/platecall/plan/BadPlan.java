package platecall.plan;

/** A plan file that can't be read, written or used for this day; its message is the whole report, for the user. */
@SuppressWarnings("serial")
public final class BadPlan extends RuntimeException {

    BadPlan(String file, String what, String wayOut) {
        super(file + ": " + what + (wayOut.isEmpty() ? "" : "\n  " + wayOut));
    }
}
