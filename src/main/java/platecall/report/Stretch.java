package platecall.report;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * A part of one work in which the same people have their hands on it, or nobody.
 *
 * @param work the whole work
 * @param span this part of it
 * @param who people whose hands are on, in the plan's order; empty if the work goes on by itself
 * @param phase which part it is
 */
record Stretch(Work work, Span span, List<String> who, Phase phase) {

    enum Phase {
        /** The work is one stretch. */
        WHOLE,
        /** Hands at the beginning of something that then goes on by itself. */
        FIRST,
        /** No hands, after or before hands. */
        ALONE,
        /** Hands between two other stretches, or beside others that come and go. */
        BETWEEN,
        /** Hands at the end. */
        LAST
    }

    boolean handsOn() {
        return !who.isEmpty();
    }

    /** The stretches of a work in order of time; they cover it without gaps. */
    static List<Stretch> of(Work work) {
        TreeSet<Moment> cuts =
                new TreeSet<>(List.of(work.span().start(), work.span().end()));
        for (Hands hands : work.hands()) {
            cuts.add(hands.span().start());
            cuts.add(hands.span().end());
        }
        cuts.removeIf(cut ->
                cut.isBefore(work.span().start()) || cut.isAfter(work.span().end()));
        List<Span> spans = new ArrayList<>();
        List<List<String>> people = new ArrayList<>();
        Moment from = null;
        for (Moment cut : cuts) {
            if (from != null) {
                Moment start = from;
                List<String> who = work.hands().stream()
                        .filter(hands -> hands.span().contains(start))
                        .map(Hands::person)
                        .distinct()
                        .toList();
                int last = spans.size() - 1;
                if (last >= 0 && people.get(last).equals(who)) {
                    spans.set(last, new Span(spans.get(last).start(), cut));
                } else {
                    spans.add(new Span(start, cut));
                    people.add(who);
                }
            }
            from = cut;
        }
        boolean unattended = people.stream().anyMatch(List::isEmpty);
        List<Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < spans.size(); i++) {
            Phase phase = spans.size() == 1
                    ? Phase.WHOLE
                    : people.get(i).isEmpty()
                            ? Phase.ALONE
                            : unattended && i == 0
                                    ? Phase.FIRST
                                    : unattended && i == spans.size() - 1 ? Phase.LAST : Phase.BETWEEN;
            stretches.add(new Stretch(work, spans.get(i), people.get(i), phase));
        }
        return stretches;
    }
}
