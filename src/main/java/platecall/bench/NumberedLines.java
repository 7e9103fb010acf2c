package platecall.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The lines of a text file, and the problems found in them so far, by line. */
final class NumberedLines {

    /** @param number counted from 1 */
    record Line(int number, String text) {}

    final Path file;
    final List<Line> lines = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();

    NumberedLines(Path file) throws BadFileException {
        this.file = file;
        try {
            for (String text : Files.readAllLines(file, StandardCharsets.UTF_8)) {
                lines.add(new Line(lines.size() + 1, text.strip()));
            }
        } catch (IOException e) {
            throw new BadFileException(file, "cannot be read as UTF-8 text (" + e.getMessage() + ")");
        }
    }

    /** Reads the whole numbers of a line; a word that is none is a problem and reads as 0. */
    int[] numbers(Line line) {
        String[] words = line.text.split("\\s+");
        int[] numbers = new int[words.length];
        for (int i = 0; i < words.length; i++) {
            numbers[i] = number(line, words[i]);
        }
        return numbers;
    }

    int number(Line line, String word) {
        try {
            return Integer.parseInt(word);
        } catch (NumberFormatException e) {
            problem(line, "'" + word + "' is not a whole number");
            return 0;
        }
    }

    void problem(Line line, String text) {
        problems.add(file + ":" + line.number + ": " + text);
    }

    void problem(String text) {
        problems.add(file + ": " + text);
    }

    void refuseProblems() throws BadFileException {
        if (!problems.isEmpty()) {
            throw new BadFileException(problems);
        }
    }
}
