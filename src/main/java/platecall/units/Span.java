package platecall.units;

import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of time {@code [start, end)}: the start minute belongs to it, the end minute does not.
 *
 * @param start first minute inside
 * @param end first minute after; later than {@code start}
 */
public record Span(Moment start, Moment end) implements Comparable<Span> {

    /** @throws IllegalArgumentException if {@code end} is not after {@code start} */
    public Span {
        if (!end.isAfter(start)) {
            throw new IllegalArgumentException("a span must end after it starts");
        }
    }

    public static Span ofMinutes(Moment start, int minutes) {
        return new Span(start, start.plus(minutes));
    }

    public int minutes() {
        return start.minutesUntil(end);
    }

    public boolean contains(Moment moment) {
        return !moment.isBefore(start) && moment.isBefore(end);
    }

    public boolean contains(Span other) {
        return !other.start.isBefore(start) && !other.end.isAfter(end);
    }

    public boolean overlaps(Span other) {
        return start.isBefore(other.end) && other.start.isBefore(end);
    }

    /** Minutes that this span and {@code other} share; 0 if none. */
    public int sharedMinutes(Span other) {
        return Math.max(0, Moment.later(start, other.start).minutesUntil(Moment.earlier(end, other.end)));
    }

    /** The same time as sorted spans that neither touch nor overlap. */
    public static List<Span> union(List<Span> spans) {
        List<Span> merged = new ArrayList<>();
        for (Span span : spans.stream().sorted().toList()) {
            Span last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
            if (last != null && !span.start.isAfter(last.end)) {
                merged.set(merged.size() - 1, new Span(last.start, Moment.later(last.end, span.end)));
            } else {
                merged.add(span);
            }
        }
        return List.copyOf(merged);
    }

    /** The time that both lists cover, as sorted spans that neither touch nor overlap. */
    public static List<Span> intersection(List<Span> one, List<Span> other) {
        List<Span> both = new ArrayList<>();
        for (Span a : one) {
            for (Span b : other) {
                if (a.overlaps(b)) {
                    both.add(new Span(Moment.later(a.start, b.start), Moment.earlier(a.end, b.end)));
                }
            }
        }
        return union(both);
    }

    @Override
    public int compareTo(Span other) {
        int byStart = start.compareTo(other.start);
        return byStart != 0 ? byStart : end.compareTo(other.end);
    }
}
