package platecall.solve;

import java.time.ZoneId;
import java.util.Arrays;
import platecall.tasks.TaskNet.Recipe;
import platecall.tasks.TaskNet.Window;

/** Where everything stands in a {@link Kitchen}: an immutable copy to go back to. */
final class Arrangement {

    private final int[] start;
    private final int[] duration;
    private final int[] way;
    private final long[] handsA;
    private final long[] handsB;
    private final int[] batch;
    private final int[] batchRoom;
    private final int[] breakStart;

    private Arrangement(Kitchen kitchen) {
        start = kitchen.start.clone();
        duration = kitchen.duration.clone();
        way = kitchen.way.clone();
        handsA = kitchen.handsA.clone();
        handsB = kitchen.handsB.clone();
        batch = kitchen.batch.clone();
        batchRoom = kitchen.batchRoom.clone();
        breakStart = kitchen.breakStart.clone();
    }

    static Arrangement of(Kitchen kitchen) {
        return new Arrangement(kitchen);
    }

    /** Puts everything back into an empty kitchen. */
    void into(Kitchen kitchen) {
        for (int i = 0; i < breakStart.length; i++) {
            if (breakStart[i] != Kitchen.NONE) {
                kitchen.placeBreak(i, breakStart[i]);
            }
        }
        for (int c = kitchen.copies - 1; c >= 0; c--) {
            for (int g = kitchen.base[c + 1] - 1; g >= kitchen.base[c]; g--) {
                if (start[g] != Kitchen.NONE) {
                    if (batch[g] >= 0) {
                        kitchen.batchRoom[batch[g]] = batchRoom[batch[g]];
                    }
                    kitchen.place(g, start[g], duration[g], way[g], handsA[g], handsB[g], batch[g]);
                }
            }
        }
    }

    /** The placement of block {@code index}: copies first, then breaks. */
    Placement placementOf(Kitchen kitchen, int index) {
        if (index >= kitchen.copies) {
            int i = index - kitchen.copies;
            return breakStart[i] == Kitchen.NONE
                    ? Placement.NOWHERE
                    : Placement.ofBreak(breakStart[i], kitchen.breaks[i].minutes());
        }
        int from = kitchen.base[index];
        int to = kitchen.base[index + 1];
        if (start[to - 1] == Kitchen.NONE) {
            return Placement.NOWHERE;
        }
        int[] room = new int[to - from];
        long[] a = new long[to - from];
        long[] b = new long[to - from];
        for (int g = from; g < to; g++) {
            room[g - from] = batch[g] < 0 ? 0 : batchRoom[batch[g]];
            a[g - from] = kitchen.people(handsA[g]);
            b[g - from] = kitchen.people(handsB[g]);
        }
        return new Placement(
                Arrays.copyOfRange(start, from, to),
                Arrays.copyOfRange(duration, from, to),
                Arrays.copyOfRange(way, from, to),
                a,
                b,
                Arrays.copyOfRange(batch, from, to),
                room);
    }

    /** What is to be told of it while the search goes on. */
    Planner.Progress progress(Kitchen kitchen, double seconds, long moves, ZoneId zone) {
        long missing =
                Arrays.stream(breakStart).filter(at -> at == Kitchen.NONE).count();
        int late = 0;
        int offPeak = 0;
        int first = Integer.MAX_VALUE;
        Window span = kitchen.net.kitchenSpans().get(kitchen.net.kitchenSpans().size() - 1);
        for (int c = 0; c < kitchen.copies; c++) {
            int last = kitchen.base[c + 1] - 1;
            if (start[last] == Kitchen.NONE) {
                missing++;
                continue;
            }
            Recipe recipe = kitchen.recipe[c];
            int plated = kitchen.base[c] + recipe.plated();
            int platedAt = start[plated] + duration[plated];
            int ready = start[last] + duration[last];
            late += recipe.lateMinutes(kitchen.due[c], kitchen.show[c], platedAt, ready);
            offPeak += recipe.offPeakMinutes(kitchen.due[c], kitchen.show[c], platedAt, ready);
            for (int g = kitchen.base[c]; g <= last; g++) {
                if (start[g] >= span.start()) {
                    first = Math.min(first, start[g]);
                }
            }
        }
        String call = first == Integer.MAX_VALUE
                ? "-"
                : kitchen.net.momentOf(first).in(zone).toLocalTime().toString();
        return new Planner.Progress(seconds, missing, late, offPeak, call, moves);
    }
}
