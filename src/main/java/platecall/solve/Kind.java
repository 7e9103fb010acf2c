package platecall.solve;

import java.util.List;
import platecall.tasks.TaskNet;
import platecall.tasks.TaskNet.HandPart;
import platecall.tasks.TaskNet.Task;

/** A task of a recipe with its needs packed for the profile: four lanes of 15 bits to a word. */
final class Kind {

    static final int LANES_A_WORD = 4;
    static final int BITS = 16;

    final Task task;
    final int minutes;
    final int minutesPerCopy;
    final int batchMost;
    final int group;
    final Way[] ways;
    final int celsius;
    final int handsNeeded;
    final long handMask;
    final HandPart partA;
    final HandPart partB;
    final int earliest;
    final int latest;
    /** Whose hands did it, if it has begun. */
    final long begunBy;

    final int waitWord;
    final long waitRequest;
    /** Minute from which on a copy needs its place in the storage afterwards. */
    final int placeFrom;

    final int waitApart;
    final int side;

    /** One mode, packed. */
    static final class Way {
        final int[] words;
        final long[] requests;
        final int oven;
        final boolean noisy;
        final int[] apart;

        Way(TaskNet net, TaskNet.Mode mode, int[] apartOf) {
            long[] packed = new long[net.lanes().size() / LANES_A_WORD + 1];
            for (int i = 0; i < mode.lanes().length; i++) {
                packed[mode.lanes()[i] / LANES_A_WORD] += request(mode.lanes()[i], mode.units()[i]);
            }
            int used = 0;
            for (long word : packed) {
                used += word != 0 ? 1 : 0;
            }
            words = new int[used];
            requests = new long[used];
            for (int w = 0, k = 0; w < packed.length; w++) {
                if (packed[w] != 0) {
                    words[k] = w;
                    requests[k++] = packed[w];
                }
            }
            oven = mode.oven();
            noisy = mode.noisy();
            int[] found = new int[mode.lanes().length];
            int count = 0;
            for (int lane : mode.lanes()) {
                if (apartOf[lane] >= 0) {
                    found[count++] = apartOf[lane];
                }
            }
            apart = java.util.Arrays.copyOf(found, count);
        }
    }

    /**
     * @param apartOf for each lane its number among those that keep raw food apart, or -1
     * @param reorder for each person the bit that the search uses for him or her
     */
    Kind(TaskNet net, Task task, int[] apartOf, int[] reorder) {
        this.task = task;
        minutes = task.minutes();
        minutesPerCopy = task.minutesPerCopy();
        batchMost = task.batchMost();
        group = task.batchGroup();
        ways = task.modes().stream().map(mode -> new Way(net, mode, apartOf)).toArray(Way[]::new);
        celsius = task.ovenCelsius();
        handsNeeded = task.handsNeeded();
        handMask = reordered(task.handMask(), reorder);
        List<HandPart> parts = task.handParts();
        partA = parts.isEmpty() ? null : parts.get(0);
        partB = parts.size() < 2 ? null : parts.get(1);
        earliest = task.earliest();
        latest = task.latest();
        begunBy =
                task.hasBegun() ? reordered(net.past().begun().get(task.begun()).people(), reorder) : 0;
        waitWord = task.waitLane() < 0 ? -1 : task.waitLane() / LANES_A_WORD;
        waitRequest = task.waitLane() < 0 ? 0 : request(task.waitLane(), task.waitUnits());
        placeFrom = net.placeFrom(task);
        waitApart = task.waitLane() < 0 ? -1 : apartOf[task.waitLane()];
        side = task.raw() ? 1 : 0;
    }

    static long request(int lane, int units) {
        return (long) units << (BITS * (lane % LANES_A_WORD));
    }

    static long reordered(long mask, int[] reorder) {
        long out = 0;
        for (int p = 0; p < reorder.length; p++) {
            if ((mask >>> p & 1) != 0) {
                out |= 1L << reorder[p];
            }
        }
        return out;
    }

    /** Minutes of a batch with room for {@code copies}, or of a step per copy. */
    int minutesFor(int copies) {
        return minutes + minutesPerCopy * copies;
    }
}
