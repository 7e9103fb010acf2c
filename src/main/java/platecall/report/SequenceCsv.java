package platecall.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.Work;
import platecall.units.Moment;

/** The cook and plate-up list, minute by minute, as comma-separated values. */
final class SequenceCsv {

    private record Line(Moment at, Object[] cells) {}

    private SequenceCsv() {}

    static byte[] of(Day day, Plan plan) {
        Wording wording = new Wording(day, plan);
        Clock clock = wording.clock;
        Duty duty = new Duty(day, plan);
        List<Line> lines = new ArrayList<>();
        for (Work work : plan.work()) {
            for (Stretch stretch : Stretch.of(work)) {
                List<String> notes = Stream.concat(
                                wording.notes(stretch).stream(),
                                wording.warnings(work.dish(), wording.allergens(work)).stream())
                        .toList();
                lines.add(new Line(stretch.span().start(), new Object[] {
                    clock.stamp(stretch.span().start()),
                    clock.stamp(stretch.span().end()),
                    wording.what(stretch),
                    wording.dish(work.dish()),
                    wording.copies.names(work.copies()),
                    wording.setups(work),
                    wording.where(work),
                    stretch.phase() == Stretch.Phase.WHOLE && !stretch.handsOn()
                            ? duty.starter(work).orElse("")
                            : String.join(", ", stretch.who()),
                    stretch.handsOn() ? "yes" : "no",
                    String.join("; ", notes)
                }));
            }
        }
        for (Plan.Break meal : plan.breaks()) {
            lines.add(new Line(meal.span().start(), new Object[] {
                clock.stamp(meal.span().start()),
                clock.stamp(meal.span().end()),
                "meal break",
                "",
                "",
                "",
                "",
                meal.person(),
                "no",
                ""
            }));
        }
        for (Station station : day.stations()) {
            for (OvenChange change : OvenChange.of(day, station, plan)) {
                lines.add(new Line(change.at(), new Object[] {
                    clock.stamp(change.at()),
                    clock.stamp(change.by()),
                    "set oven to " + change.celsius() + " °C",
                    "",
                    "",
                    "",
                    change.oven(),
                    change.who().orElse(""),
                    "no",
                    "must be hot by " + clock.time(change.by())
                }));
            }
        }
        for (List<KeptBack> kept : KeptBack.together(KeptBack.of(day, plan), duty)) {
            KeptBack one = kept.get(0);
            String dish = one.copy().dish();
            List<String> notes = new ArrayList<>(wording.keepUntil(kept));
            notes.addAll(
                    wording.warnings(dish, wording.allergens(dish, one.copy().stage())));
            lines.add(new Line(one.span().start(), new Object[] {
                clock.stamp(one.span().start()),
                clock.stamp(one.span().end()),
                "bring back to " + one.station(),
                wording.dish(dish),
                wording.copies.names(KeptBack.ids(kept)),
                one.copy().setup(),
                one.station(),
                duty.bringer(one).orElse(""),
                "no",
                String.join("; ", notes)
            }));
        }
        lines.sort(Comparator.comparing(Line::at));
        Rows rows = new Rows("start", "end", "what", "dish", "copy", "setup", "station", "who", "hands-on", "note");
        lines.forEach(line -> rows.add(line.cells()));
        return rows.bytes();
    }
}
