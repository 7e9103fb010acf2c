package platecall.solve;

import java.util.Arrays;
import java.util.Comparator;
import platecall.tasks.TaskNet.Window;

/** Fills an empty {@link Kitchen}: builds plans copy by copy, from which a search may start, or puts a plan back. */
final class Builder {

    /** Tries for each break to find quiet times for all, and the minutes that such a try may put forward. */
    private static final int QUIET_TRIES = 300;

    private static final double QUIET_WARM = 100;
    private static final double QUIET_COOL = 0.5;

    private static final long ENDLESS = Long.MAX_VALUE / 4;

    private final Kitchen kitchen;
    private final Dice dice;
    private final Placer placer;
    private final Rush rush;
    private final Score score;
    private final Published published;
    /** When breaks start in plans to start from; {@link Kitchen#NONE}: in the middle of their time. */
    private final int[] quiet;

    /** @param published the plan to stay close to, or null */
    Builder(Kitchen kitchen, Dice dice, Placer placer, Rush rush, Score score, Published published) {
        this.kitchen = kitchen;
        this.dice = dice;
        this.placer = placer;
        this.rush = rush;
        this.score = score;
        this.published = published;
        quiet = new int[kitchen.breaks.length];
        Arrays.fill(quiet, Kitchen.NONE);
    }

    /** Builds a plan copy by copy: tails, then heads by deadline; whatever has no place stays out and counts as missing. */
    void build(int[] sequence) {
        clear();
        placeAllBreaks();
        for (int c : sequence) {
            placer.placeCopy(c, false, ENDLESS, false);
        }
        int[] deadlines = Arrays.stream(sequence)
                .filter(kitchen::placed)
                .boxed()
                .sorted(Comparator.comparingInt((Integer c) -> -kitchen.tailStart(c)))
                .mapToInt(Integer::intValue)
                .toArray();
        for (int c : deadlines) {
            if (!placer.placeHead(c)) {
                kitchen.removeCopy(c);
                placer.placeCopy(c, true, ENDLESS, false);
            }
        }
        placeMissing(sequence);
    }

    /** Every task where the published plan has it, as far as it fits; copies that don't fit are placed anew. */
    void buildPublished(int[] sequence) {
        clear();
        placeAllBreaks();
        for (int c : sequence) {
            placer.placeAsPublished(c);
        }
        placeMissing(sequence);
    }

    /** Gives those of some copies a place that have none, if they have one that costs no more than they may. */
    void placeMissing(int[] copies) {
        for (int c : copies) {
            if (!kitchen.placed(c)) {
                placer.placeCopy(c, true, score.aside() ? score.mostOf(c) : ENDLESS, false);
            }
        }
        kitchen.commit();
        recount();
    }

    /** Puts a plan back. */
    void restore(Arrangement arrangement) {
        clear();
        arrangement.into(kitchen);
        kitchen.commit();
        recount();
    }

    private void recount() {
        score.recount();
        rush.tell(kitchen.breakStart);
    }

    private void clear() {
        for (int c = 0; c < kitchen.copies; c++) {
            kitchen.removeCopy(c);
        }
        for (int i = 0; i < kitchen.breaks.length; i++) {
            if (kitchen.breakStart[i] != Kitchen.NONE) {
                kitchen.removeBreak(i);
            }
        }
        kitchen.commit();
    }

    private void placeAllBreaks() {
        for (int i = 0; i < kitchen.breaks.length; i++) {
            Window window = kitchen.breakWindow(i);
            int wanted = published == null ? quiet[i] : published.breakStart(i);
            int middle = (window.start() + window.end()) / 2;
            int at = kitchen.findBreak(i, window.start(), window.end(), wanted == Kitchen.NONE ? middle : wanted);
            if (at != Kitchen.NONE) {
                kitchen.placeBreak(i, at);
            }
        }
    }

    /** Finds times for breaks at which they put little work forward, by a short search with nothing else in the kitchen. */
    void quietBreaks(Move move) {
        clear();
        placeAllBreaks();
        recount();
        int tries = QUIET_TRIES * kitchen.breaks.length;
        for (int i = 0; i < tries; i++) {
            int index = dice.below(kitchen.breaks.length);
            double temperature = Search.between(QUIET_WARM, QUIET_COOL, (double) i / tries);
            move.moveBreakAlone(index, temperature);
        }
        System.arraycopy(kitchen.breakStart, 0, quiet, 0, quiet.length);
    }
}
