package platecall.intake;

/** A cell that can't be read; {@link DayDecoder} turns it into a trouble with its place. */
@SuppressWarnings("serial")
final class Unreadable extends RuntimeException {

    private final String wayOut;

    /**
     * @param what continues a sentence that begins with the cell's text: {@code is not a time}
     * @param wayOut begins with "Maybe"; may be empty
     */
    Unreadable(String what, String wayOut) {
        super(what, null, false, false);
        this.wayOut = wayOut;
    }

    String wayOut() {
        return wayOut;
    }
}
