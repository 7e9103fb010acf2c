package platecall.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Best makespans known for the files of a folder, from its {@code best-known.csv}; none if it has no such sheet. */
final class BestKnown {

    static final String SHEET = "best-known.csv";
    static final BestKnown NONE = new BestKnown(Map.of());

    private final Map<String, Integer> makespans;

    private BestKnown(Map<String, Integer> makespans) {
        this.makespans = makespans;
    }

    /** @throws BadFileException if the sheet lacks the columns {@code file} or {@code best_known_makespan}, or a number */
    static BestKnown of(Path folder) throws BadFileException {
        Path sheet = folder.resolve(SHEET);
        if (!Files.exists(sheet)) {
            return NONE;
        }
        NumberedLines in = new NumberedLines(sheet);
        in.lines.removeIf(line -> line.text().isEmpty());
        List<String> header = in.lines.isEmpty()
                ? List.of()
                : Arrays.asList(in.lines.remove(0).text().split(","));
        int file = header.indexOf("file");
        int makespan = header.indexOf("best_known_makespan");
        if (file < 0 || makespan < 0) {
            throw new BadFileException(sheet, "the first line must name the columns file and best_known_makespan");
        }
        Map<String, Integer> makespans = new HashMap<>();
        for (NumberedLines.Line line : in.lines) {
            String[] cells = line.text().split(",", -1);
            if (cells.length != header.size()) {
                in.problem(line, cells.length + " cells where " + header.size() + " are due");
            } else if (!cells[makespan].isEmpty()) {
                makespans.put(cells[file], in.number(line, cells[makespan]));
            }
        }
        in.refuseProblems();
        return new BestKnown(makespans);
    }

    OptionalInt makespan(String file) {
        Integer makespan = makespans.get(file);
        return makespan == null ? OptionalInt.empty() : OptionalInt.of(makespan);
    }
}
