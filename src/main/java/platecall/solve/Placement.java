package platecall.solve;

import platecall.tasks.TaskNet.Window;

/**
 * Where a block stands: for each task of a copy its start, minutes, way, hands and batch; for a meal break its start.
 * Immutable, so that plans can share it.
 *
 * @param start minute of each task
 * @param duration minutes of each task
 * @param way index of the mode of each task
 * @param handsA people of the first hand part of each task, one bit each
 * @param handsB people of the second hand part
 * @param batch number of the batch each task rides in, or -1
 * @param batchRoom copies that batch has room for
 */
record Placement(int[] start, int[] duration, int[] way, long[] handsA, long[] handsB, int[] batch, int[] batchRoom) {

    /** A block that has no place in the plan. */
    static final Placement NOWHERE =
            new Placement(new int[0], new int[0], new int[0], new long[0], new long[0], new int[0], new int[0]);

    static Placement ofBreak(int start, int minutes) {
        return new Placement(
                new int[] {start},
                new int[] {minutes},
                new int[1],
                new long[1],
                new long[1],
                new int[] {-1},
                new int[1]);
    }

    boolean nowhere() {
        return start.length == 0;
    }

    int end(int task) {
        return start[task] + duration[task];
    }

    /** First start within a span of kitchen hours, or {@link Integer#MAX_VALUE}. */
    int firstIn(Window span) {
        int first = Integer.MAX_VALUE;
        for (int at : start) {
            if (at >= span.start() && at < span.end()) {
                first = Math.min(first, at);
            }
        }
        return first;
    }

    /** Pairs of hands beyond the first. */
    int handChanges() {
        long all = 0;
        for (int i = 0; i < start.length; i++) {
            all |= handsA[i] | handsB[i];
        }
        return Math.max(0, Long.bitCount(all) - 1);
    }
}
