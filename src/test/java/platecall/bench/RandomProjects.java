package platecall.bench;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Random projects whose task numbers are not in the order of precedence. */
final class RandomProjects {

    private RandomProjects() {}

    /** About {@code tasks * links} precedence arcs; durations 0 to 10; requests up to 10 of capacities near {@code slack}. */
    static Project of(long seed, int tasks, int resources, double links, int slack) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] numbers = IntStream.range(0, tasks).toArray();
        for (int i = tasks - 1; i > 0; i--) {
            int other = random.nextInt(i + 1);
            int kept = numbers[i];
            numbers[i] = numbers[other];
            numbers[other] = kept;
        }
        int[] durations = new int[tasks];
        int[][] successors = new int[tasks][];
        int[][] requests = new int[tasks][resources];
        for (int i = 0; i < tasks; i++) {
            durations[numbers[i]] = random.nextInt(11);
            int from = i;
            double chance = Math.min(1, links / Math.max(1, Math.min(12, tasks - 1 - i)));
            successors[numbers[i]] = IntStream.range(i + 1, Math.min(tasks, i + 13))
                    .filter(after -> from < after && random.nextDouble() < chance)
                    .map(after -> numbers[after])
                    .toArray();
            for (int k = 0; k < resources; k++) {
                requests[numbers[i]][k] = random.nextInt(3) == 0 ? 0 : 1 + random.nextInt(10);
            }
        }
        int[] capacities = new int[resources];
        Arrays.setAll(capacities, k -> 10 + random.nextInt(slack));
        return new Project("random" + seed, durations, successors, requests, capacities);
    }

    /** Jobs that visit every machine once in random order. */
    static Project jobShop(long seed, int jobs, int machines) {
        SplittableRandom random = new SplittableRandom(seed);
        int tasks = jobs * machines;
        int[] durations = random.ints(tasks, 1, 20).toArray();
        int[][] successors = new int[tasks][];
        int[][] requests = new int[tasks][machines];
        for (int task = 0; task < tasks; task++) {
            int step = task % machines;
            successors[task] = step + 1 < machines ? new int[] {task + 1} : new int[0];
            int first = task - step;
            int[] left = IntStream.range(0, machines)
                    .filter(k -> IntStream.range(first, first + step).allMatch(done -> requests[done][k] == 0))
                    .toArray();
            requests[task][left[random.nextInt(left.length)]] = 1;
        }
        int[] capacities = new int[machines];
        Arrays.fill(capacities, 1);
        return new Project("shop" + seed, durations, successors, requests, capacities);
    }
}
