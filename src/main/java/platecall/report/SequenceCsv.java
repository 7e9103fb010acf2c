package platecall.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/** The cook and plate-up list, minute by minute, as comma-separated values. */
final class SequenceCsv {

    /** @param over when all of it is, with the way back of whoever carries */
    private record Line(Moment from, Moment over, Object[] cells) {}

    private final Day day;
    private final Plan plan;
    private final Wording wording;
    private final Duty duty;
    private final List<Line> lines = new ArrayList<>();

    private SequenceCsv(Day day, Plan plan) {
        this.day = day;
        this.plan = plan;
        wording = new Wording(day, plan);
        duty = new Duty(day, plan);
    }

    static byte[] of(Day day, Plan plan) {
        SequenceCsv list = new SequenceCsv(day, plan);
        plan.work().forEach(list::addWork);
        for (Plan.Break meal : plan.breaks()) {
            list.add(meal.span(), "meal break", "", "", "", "", meal.person(), "no", "");
        }
        list.addOvenChanges();
        list.addKeptBack();
        plan.asOf().ifPresent(now -> list.lines.removeIf(line -> !line.over().isAfter(now)));
        list.lines.sort(Comparator.comparing(Line::from));
        Rows rows = new Rows("start", "end", "what", "dish", "copy", "setup", "station", "who", "hands-on", "note");
        list.lines.forEach(line -> rows.add(line.cells()));
        return rows.bytes();
    }

    private void add(Span span, String... cells) {
        add(span, span.end(), cells);
    }

    private void add(Span span, Moment over, String... cells) {
        Stream<String> times = Stream.of(span.start(), span.end()).map(wording.clock::stamp);
        lines.add(new Line(
                span.start(), over, Stream.concat(times, Stream.of(cells)).toArray()));
    }

    private void addWork(Work work) {
        for (Stretch stretch : Stretch.of(work)) {
            Span span = stretch.span();
            Moment over = work.hands().stream()
                    .filter(hands -> span.end().equals(work.span().end()))
                    .map(hands -> hands.span().end())
                    .reduce(span.end(), Moment::later);
            Optional<String> starter = span.start().equals(work.span().start()) ? duty.starter(work) : Optional.empty();
            add(
                    span,
                    over,
                    wording.what(stretch),
                    wording.dish(work.dish()),
                    wording.copies.names(work.copies()),
                    wording.setups(work),
                    wording.where(work),
                    starter.orElse(String.join(", ", stretch.who())),
                    stretch.handsOn() ? "yes" : "no",
                    notes(
                            starter.stream()
                                    .flatMap(who -> nobody(who, Duty.minute(span.start())).stream())
                                    .toList(),
                            wording.notes(stretch, ""),
                            wording.warnings(work.dish(), wording.allergens(work))));
        }
    }

    private void addOvenChanges() {
        for (Station station : day.stations()) {
            for (OvenChange change : OvenChange.of(day, station, plan)) {
                add(
                        new Span(change.at(), change.by()),
                        "set oven to " + change.celsius() + " °C",
                        "",
                        "",
                        "",
                        change.oven(),
                        change.who().orElse(""),
                        "no",
                        notes(
                                nobody(change.who().orElse(""), Duty.minute(change.at())),
                                List.of("must be there by " + wording.clock.time(change.by()))));
            }
        }
    }

    private void addKeptBack() {
        for (List<KeptBack> kept : KeptBack.together(KeptBack.of(day, plan), duty)) {
            KeptBack one = kept.get(0);
            String dish = one.copy().dish();
            String who = duty.bringer(one).orElse("");
            add(
                    one.span(),
                    "bring back to " + one.station(),
                    wording.dish(dish),
                    wording.copies.names(KeptBack.ids(kept)),
                    one.copy().setup(),
                    one.station(),
                    who,
                    "no",
                    notes(
                            nobody(who, one.walk()),
                            wording.fetch(one),
                            wording.keepUntil(kept),
                            wording.warnings(
                                    dish, wording.allergens(dish, one.copy().stage()))));
        }
    }

    /** What must be known if who is named isn't on duty. */
    private List<String> nobody(String who, Span time) {
        return duty.isOn(who, time) ? List.of() : List.of(Wording.NOBODY);
    }

    @SafeVarargs
    private static String notes(List<String>... some) {
        return Stream.of(some).flatMap(List::stream).collect(Collectors.joining("; "));
    }
}
