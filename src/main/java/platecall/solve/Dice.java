package platecall.solve;

/** Fast repeatable random numbers (xorshift64*, Vigna 2016). */
final class Dice {

    private long state;

    Dice(long seed) {
        state = seed * 0x9E3779B97F4A7C15L + 0x632BE59BD9B4E019L;
        if (state == 0) {
            state = 1;
        }
        for (int i = 0; i < 8; i++) {
            next();
        }
    }

    private long next() {
        state ^= state >>> 12;
        state ^= state << 25;
        state ^= state >>> 27;
        return state * 0x2545F4914F6CDD1DL;
    }

    /** Uniform in {@code [0, bound)}; 0 if {@code bound} is 1 or less. */
    int below(int bound) {
        return bound <= 1 ? 0 : (int) ((next() >>> 33) * bound >>> 31);
    }

    /** Uniform in {@code [0, 1)}. */
    double unit() {
        return (next() >>> 11) * 0x1.0p-53;
    }

    boolean chance(double probability) {
        return unit() < probability;
    }

    void shuffle(int[] items, int count) {
        for (int i = count - 1; i > 0; i--) {
            int j = below(i + 1);
            int swap = items[i];
            items[i] = items[j];
            items[j] = swap;
        }
    }
}
