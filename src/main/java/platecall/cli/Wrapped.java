package platecall.cli;

import java.util.ArrayList;
import java.util.List;

/** Sentences on lines that are not too long for a terminal. */
final class Wrapped {

    private static final int LINE_WIDTH = 98;

    private Wrapped() {}

    /**
     * The words of a sentence, as many on a line as it holds; a longer word has a line of its own.
     *
     * @param first what the first line begins with
     * @param later what the others begin with
     */
    static List<String> lines(String first, String later, String sentence) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : sentence.split(" ")) {
            if (!empty && line.length() + 1 + word.length() > LINE_WIDTH) {
                lines.add(line.toString());
                line = new StringBuilder(later);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }
}
