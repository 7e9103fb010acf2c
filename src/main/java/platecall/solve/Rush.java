package platecall.solve;

import java.util.Arrays;
import platecall.tasks.TaskNet.HandPart;

/**
 * Tells good times for meal breaks from bad ones long before a search could. What is bound to camera asks for hands at certain
 * minutes if nothing is in its way; where a set of people has too few of them, the work that is left over is done before. The
 * minutes of work that are so put forward by more than looks bear, added up over all minutes, are a guide to the points that
 * breaks will cost, not a bound.
 */
final class Rush {

    /** Parts of a hand that are counted: riders of a batch ask for a part each. */
    private static final int PARTS = 60;
    /** Minutes of work for each pair of hands that may be put forward for nothing: few dishes are at their peak for less. */
    private static final int FREE_MINUTES = 2;

    private final Kitchen kitchen;
    /** Sets of people that some work is for, as the day numbers them. */
    private final long[] sets;
    /** For each set and minute, hands that are asked for less those that are there, in parts. */
    private final int[][] excess;
    /** For each set and minute, work that is due then or later and has to be done before, in parts of a minute. */
    private final int[][] forward;

    private final int[] breakStart;
    private final int[] before;
    private final int[] changed;
    private long sum;

    /** With no breaks at first. */
    Rush(Kitchen kitchen) {
        this.kitchen = kitchen;
        sets = Arrays.stream(kitchen.kind)
                .filter(kind -> kind.partA != null)
                .mapToLong(kind -> kind.task.handMask())
                .distinct()
                .toArray();
        int horizon = kitchen.breaks.length == 0 ? 0 : kitchen.horizon;
        excess = new int[sets.length][horizon];
        forward = new int[sets.length][horizon + 1];
        breakStart = new int[kitchen.breaks.length];
        before = new int[kitchen.breaks.length];
        changed = new int[kitchen.breaks.length];
        Arrays.fill(breakStart, Kitchen.NONE);
        for (int c = 0; c < kitchen.copies; c++) {
            ask(c, horizon);
        }
        for (int s = 0; s < sets.length; s++) {
            for (int t = 0; t < horizon; t++) {
                excess[s][t] -= PARTS * Long.bitCount(kitchen.net.handsFree()[t] & sets[s]);
            }
            count(s, 0, horizon);
        }
    }

    /** Asks for the hands of a copy's tail, each task as late as the call lets it be. */
    private void ask(int c, int horizon) {
        int[] toGo = Bound.minutesToGo(kitchen.recipe[c]);
        for (int g : kitchen.tail[c]) {
            Kind kind = kitchen.kind[g];
            int start = kitchen.due[c] - toGo[g - kitchen.base[c]];
            int minutes = kind.task.leastMinutes();
            int parts = PARTS * kind.handsNeeded / Math.max(1, kind.batchMost);
            for (HandPart part : kind.task.handParts()) {
                int from = start + part.offset(minutes);
                int to = Math.min(horizon, from + part.lengthIn(minutes));
                for (int s = 0; s < sets.length; s++) {
                    for (int t = Math.max(0, from); t < to && (kind.task.handMask() & ~sets[s]) == 0; t++) {
                        excess[s][t] += parts;
                    }
                }
            }
        }
    }

    /** Counts anew what a set puts forward between two minutes, and before them as far as that changes. */
    private void count(int s, int from, int to) {
        int[] row = forward[s];
        int free = PARTS * FREE_MINUTES * Long.bitCount(sets[s]);
        int now = row[to];
        for (int t = to - 1; t >= 0; t--) {
            now = Math.max(0, now + excess[s][t]);
            if (t < from && now == row[t]) {
                return;
            }
            sum += Math.max(0, now - free) - Math.max(0, row[t] - free);
            row[t] = now;
        }
    }

    /** Tells when each break starts; {@link Kitchen#NONE}: it has no place. */
    void tell(int[] starts) {
        int count = 0;
        for (int i = 0; i < starts.length; i++) {
            if (starts[i] != breakStart[i]) {
                changed[count++] = i;
            }
        }
        for (int s = 0; s < sets.length; s++) {
            int from = Integer.MAX_VALUE;
            int to = 0;
            for (int n = 0; n < count; n++) {
                int i = changed[n];
                if ((sets[s] >>> kitchen.breaks[i].person() & 1) != 0) {
                    for (int start : new int[] {starts[i], breakStart[i]}) {
                        if (start != Kitchen.NONE) {
                            from = Math.min(from, start);
                            to = Math.max(to, start + kitchen.breaks[i].minutes());
                        }
                    }
                    take(s, i, starts[i], PARTS);
                    take(s, i, breakStart[i], -PARTS);
                }
            }
            if (to > 0) {
                count(s, from, to);
            }
        }
        System.arraycopy(starts, 0, breakStart, 0, starts.length);
    }

    private void take(int s, int i, int start, int parts) {
        for (int t = start; start != Kitchen.NONE && t < start + kitchen.breaks[i].minutes(); t++) {
            excess[s][t] += parts;
        }
    }

    /** Minutes of work that are put too far forward, added up over all minutes, with the breaks that were told last. */
    double minutes() {
        return sum / (double) PARTS;
    }

    /** How much that would grow with breaks at other times. */
    double growth(int[] starts) {
        double now = minutes();
        System.arraycopy(breakStart, 0, before, 0, before.length);
        tell(starts);
        double then = minutes();
        tell(before);
        return then - now;
    }
}
