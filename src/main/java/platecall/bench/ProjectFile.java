package platecall.bench;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

/**
 * Reads single-mode projects in the {@code .sm} layout of PSPLIB (Kolisch and Sprecher, European Journal of Operational
 * Research 96, 1997, 205-216): a head with counts, then the tables of precedence, requests and availabilities.
 */
final class ProjectFile {

    private enum Table {
        NONE,
        PRECEDENCE,
        REQUESTS,
        AVAILABILITIES
    }

    private final NumberedLines in;
    private final int tasks;
    private final int resources;
    private final int[][] successors;
    private final int[] durations;
    private final int[][] requests;
    private int[] capacities;

    private ProjectFile(NumberedLines in) throws BadFileException {
        this.in = in;
        tasks = count(in, "jobs");
        resources = count(in, "- renewable");
        if (count(in, "- nonrenewable") > 0 || count(in, "- doubly constrained") > 0) {
            in.problem("only renewable resources can be planned");
        }
        in.refuseProblems();
        successors = new int[tasks][];
        durations = new int[tasks];
        requests = new int[tasks][];
    }

    /** @throws BadFileException if the file is no sound single-mode project; it says everything that is wrong */
    static Project read(Path file) throws BadFileException {
        ProjectFile project = new ProjectFile(new NumberedLines(file));
        project.readTables();
        project.refuseMissing();
        try {
            return new Project(
                    file.getFileName().toString(),
                    project.durations,
                    project.successors,
                    project.requests,
                    project.capacities);
        } catch (IllegalArgumentException e) {
            throw new BadFileException(file, e.getMessage());
        }
    }

    private void readTables() {
        Table table = Table.NONE;
        for (NumberedLines.Line line : in.lines) {
            String text = line.text();
            if (text.startsWith("PRECEDENCE RELATIONS")) {
                table = Table.PRECEDENCE;
            } else if (text.startsWith("REQUESTS/DURATIONS")) {
                table = Table.REQUESTS;
            } else if (text.startsWith("RESOURCEAVAILABILITIES")) {
                table = Table.AVAILABILITIES;
            } else if (table != Table.NONE && !text.isEmpty() && "*-jR".indexOf(text.charAt(0)) < 0) {
                readRow(table, line);
            }
        }
    }

    private void readRow(Table table, NumberedLines.Line line) {
        int[] row = in.numbers(line);
        if (table == Table.AVAILABILITIES) {
            capacities = row;
            if (row.length != resources) {
                in.problem(line, row.length + " capacities for " + resources + " resources");
            }
        } else if (row[0] < 1 || row[0] > tasks || row.length < 3) {
            in.problem(line, "a row begins with a job from 1 to " + tasks + " and has at least 3 numbers");
        } else if (table == Table.PRECEDENCE) {
            readSuccessors(line, row);
        } else {
            if (row.length != 3 + resources) {
                in.problem(line, (row.length - 3) + " requests for " + resources + " resources");
            }
            durations[row[0] - 1] = row[2];
            requests[row[0] - 1] = Arrays.copyOfRange(row, 3, row.length);
        }
    }

    private void readSuccessors(NumberedLines.Line line, int[] row) {
        if (row[1] != 1) {
            in.problem(line, "job " + row[0] + " has " + row[1] + " modes; only 1 can be planned");
        }
        if (row.length != 3 + row[2]) {
            in.problem(line, (row.length - 3) + " successors where " + row[2] + " are announced");
        }
        successors[row[0] - 1] = Arrays.stream(row, 3, row.length)
                .map(after -> after - 1)
                .distinct()
                .toArray();
    }

    private void refuseMissing() throws BadFileException {
        if (capacities == null) {
            in.problem("there are no resource availabilities");
        }
        for (int task = 0; task < tasks; task++) {
            if (successors[task] == null) {
                in.problem("job " + (task + 1) + " is missing from the precedence relations");
            }
            if (requests[task] == null) {
                in.problem("job " + (task + 1) + " is missing from the requests");
            }
        }
        in.refuseProblems();
    }

    /** The number behind the colon of a head line, such as {@code - renewable : 4 R}. */
    private static int count(NumberedLines in, String label) {
        for (NumberedLines.Line line : in.lines) {
            int colon = line.text().indexOf(':');
            if (colon > 0 && line.text().toLowerCase(Locale.ROOT).startsWith(label)) {
                int count =
                        in.number(line, line.text().substring(colon + 1).strip().split("\\s+")[0]);
                if (count < 0 || count > 10_000) {
                    in.problem(line, count + " is out of range; at most 10000");
                }
                return count;
            }
        }
        in.problem("there is no line '" + label + " ... : number'");
        return 0;
    }
}
