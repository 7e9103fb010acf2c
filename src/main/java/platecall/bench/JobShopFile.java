package platecall.bench;

import java.nio.file.Path;
import java.util.Arrays;

/**
 * Reads job shops in the layout of the OR-Library (Beasley, Journal of the Operational Research Society 41, 1990,
 * 1069-1072): lines that begin with {@code #} or {@code +} are remarks; then a line with jobs and machines, then a line
 * a job with pairs of machine (from 0) and processing time. The operations of the first job become tasks 1 to
 * machines, and so on.
 */
final class JobShopFile {

    private JobShopFile() {}

    /** @throws BadFileException if the file is no sound job shop; it says everything that is wrong */
    static Project read(Path file) throws BadFileException {
        NumberedLines in = new NumberedLines(file);
        in.lines.removeIf(
                line -> line.text().isEmpty() || "#+".indexOf(line.text().charAt(0)) >= 0);
        if (in.lines.isEmpty()) {
            throw new BadFileException(file, "there is no line with the number of jobs and machines");
        }
        NumberedLines.Line head = in.lines.remove(0);
        int[] size = in.numbers(head);
        if (size.length != 2 || size[0] < 1 || size[1] < 1 || (long) size[0] * size[1] > 10_000) {
            in.problem(head, "expected jobs and machines, two numbers from 1 with at most 10000 operations");
            in.refuseProblems();
        }
        int jobs = size[0];
        int machines = size[1];
        if (in.lines.size() != jobs) {
            in.problem(in.lines.size() + " job lines where " + jobs + " are announced");
            in.refuseProblems();
        }
        int[] durations = new int[jobs * machines];
        int[][] successors = new int[jobs * machines][];
        int[][] requests = new int[jobs * machines][machines];
        for (int job = 0; job < jobs; job++) {
            NumberedLines.Line line = in.lines.get(job);
            int[] pairs = in.numbers(line);
            if (pairs.length != 2 * machines) {
                in.problem(line, pairs.length + " numbers where " + machines + " pairs of machine and time are due");
                continue;
            }
            for (int step = 0; step < machines; step++) {
                int task = job * machines + step;
                int machine = pairs[2 * step];
                durations[task] = pairs[2 * step + 1];
                successors[task] = step + 1 < machines ? new int[] {task + 1} : new int[0];
                if (machine < 0 || machine >= machines) {
                    in.problem(line, "machine " + machine + " is not one of 0 to " + (machines - 1));
                } else {
                    requests[task][machine] = 1;
                }
            }
        }
        in.refuseProblems();
        int[] capacities = new int[machines];
        Arrays.fill(capacities, 1);
        try {
            return new Project(file.getFileName().toString(), durations, successors, requests, capacities);
        } catch (IllegalArgumentException e) {
            throw new BadFileException(file, e.getMessage());
        }
    }
}
