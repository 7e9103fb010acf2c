package platecall.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;

/** How long a search may run: CPU seconds of its own thread, schedules built, or both. Starts when it is made. */
final class Budget {

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final double seconds;
    private final long schedules;
    private final long startNanos = THREADS.getCurrentThreadCpuTime();
    private long built;

    Budget(double seconds, long schedules) {
        this.seconds = seconds;
        this.schedules = schedules;
    }

    void count(long more) {
        built += more;
    }

    /** The most schedules that may be built. */
    long schedules() {
        return schedules;
    }

    long built() {
        return built;
    }

    double cpuSeconds() {
        return (THREADS.getCurrentThreadCpuTime() - startNanos) / 1e9;
    }

    /** Share of the budget that is gone, 0 to 1; of two limits the one that is nearer. */
    double share() {
        double share = (double) built / schedules;
        if (seconds < Double.POSITIVE_INFINITY) {
            share = Math.max(share, cpuSeconds() / seconds);
        }
        return Math.min(1, share);
    }

    boolean spent() {
        return built >= schedules || (seconds < Double.POSITIVE_INFINITY && cpuSeconds() >= seconds);
    }
}
