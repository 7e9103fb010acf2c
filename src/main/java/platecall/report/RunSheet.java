package platecall.report;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.Person;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * The sheets that hang in the kitchen, ready for the page: one for each person, then one for each station.
 *
 * @param title the day's name
 * @param sections at least a page each
 * @param caution what every page says at its foot
 * @param print where and when these sheets come from
 * @param paper {@code A4} or {@code letter}
 */
public record RunSheet(String title, List<Section> sections, String caution, Imprint print, String paper) {

    /**
     * One person's or station's sheet.
     *
     * @param name whose
     * @param about one line on it
     * @param lastHeading heading of the last column but one: where for people, who for stations
     */
    public record Section(String name, String about, String lastHeading, List<Line> lines) {}

    /**
     * One line with a box to tick.
     *
     * @param dateBefore the date if it begins here, else empty
     * @param time when it starts
     * @param minutes how long it takes, with its unit
     * @param what the deed, in bold
     * @param dish which dish, empty if none
     * @param copies which copies, empty if none
     * @param notes what else must be known, one phrase each
     * @param doNotEat whether it is dressing
     * @param allergens in words, empty if none
     * @param where place or people
     * @param setup for which setups
     * @param pause whether it is a break, set apart from work
     */
    public record Line(
            String dateBefore,
            String time,
            String minutes,
            String what,
            String dish,
            String copies,
            List<String> notes,
            boolean doNotEat,
            String allergens,
            String where,
            String setup,
            boolean pause) {}

    /** A line that knows its moment, before the dates are set between lines. */
    private record Entry(Moment at, Line line) {}

    static RunSheet of(Day day, Plan plan, Imprint print, String paper) {
        Wording wording = new Wording(day, plan);
        List<Section> sections = new ArrayList<>();
        for (Person person : day.people()) {
            people(wording, plan, person).ifPresent(sections::add);
        }
        for (Station station : day.stations()) {
            stations(wording, plan, station).ifPresent(sections::add);
        }
        return new RunSheet(Wording.plain(day.facts().title()), sections, Wording.CAUTION, print, paper);
    }

    byte[] html() {
        return Html.of("runsheet.jte", this).getBytes(StandardCharsets.UTF_8);
    }

    byte[] pdf() {
        return Pdf.of(Html.of("runsheet.jte", this), print).bytes();
    }

    private static Optional<Section> people(Wording wording, Plan plan, Person person) {
        List<Entry> entries = new ArrayList<>();
        for (Work work : plan.work()) {
            List<Stretch> stretches = Stretch.of(work);
            for (int i = 0; i < stretches.size(); i++) {
                Stretch stretch = stretches.get(i);
                boolean goesOn = i > 0 && stretches.get(i - 1).who().contains(person.id());
                if (stretch.who().contains(person.id()) && !goesOn) {
                    entries.add(new Entry(stretch.span().start(), personLine(wording, stretch, stretches, i, person)));
                }
            }
        }
        for (Plan.Break meal : plan.breaks()) {
            if (meal.person().equals(person.id())) {
                entries.add(new Entry(meal.span().start(), pause(wording, meal.span(), "Meal break")));
            }
        }
        for (Absence absence : person.away()) {
            Optional<Span> gone = absence instanceof Absence.During during
                    ? Optional.of(during.span())
                    : wording.day.setup(((Absence.HandDouble) absence).setup()).map(setup -> setup.shooting());
            String what = absence instanceof Absence.HandDouble hand ? "Hand double on " + hand.setup() : "Away";
            gone.ifPresent(span -> entries.add(new Entry(span.start(), pause(wording, span, Wording.plain(what)))));
        }
        return section(wording, Wording.plain(person.id()), hours(wording, person, entries), "where", entries);
    }

    /** The shifts that these entries fall in. */
    private static String hours(Wording wording, Person person, List<Entry> entries) {
        List<Span> shifts = person.shifts().isEmpty() ? wording.day.facts().kitchenHours() : person.shifts();
        List<String> spans = shifts.stream()
                .filter(span -> entries.stream().anyMatch(entry -> span.contains(entry.at())))
                .map(span -> wording.clock.time(span.start(), wording.clock.noon()) + "\u2013"
                        + wording.clock.time(span.end()))
                .toList();
        return spans.isEmpty() ? "" : "on " + String.join(", ", spans);
    }

    /** One person's part of a work: from {@code stretch} on as long as these hands stay on. */
    private static Line personLine(Wording wording, Stretch stretch, List<Stretch> all, int index, Person person) {
        Moment end = stretch.span().end();
        for (int i = index + 1; i < all.size() && all.get(i).who().contains(person.id()); i++) {
            end = all.get(i).span().end();
        }
        List<String> notes = new ArrayList<>(wording.notes(stretch));
        List<String> others = stretch.who().stream()
                .filter(who -> !who.equals(person.id()))
                .map(Wording::plain)
                .toList();
        if (!others.isEmpty()) {
            notes.add(0, "with " + String.join(", ", others));
        }
        Work work = stretch.work();
        return new Line(
                "",
                wording.clock.time(stretch.span().start()),
                length(stretch.span().start().minutesUntil(end)),
                Wording.plain(capital(wording.what(stretch))),
                wording.dish(work.dish()),
                copies(wording, work.copies()),
                notes.stream().map(Wording::plain).toList(),
                wording.inedible(work.dish()),
                Wording.plain(wording.allergens(work.dish())),
                Wording.plain(wording.where(work)),
                Wording.plain(wording.setups(work)),
                false);
    }

    private static Line pause(Wording wording, Span span, String what) {
        return new Line(
                "",
                wording.clock.time(span.start()),
                length(span.minutes()),
                what,
                "",
                "",
                List.of("back at " + wording.clock.time(span.end())),
                false,
                "",
                "",
                "",
                true);
    }

    private static Optional<Section> stations(Wording wording, Plan plan, Station station) {
        List<Entry> entries = new ArrayList<>();
        for (Work work : plan.work()) {
            for (StationHold hold : work.stations()) {
                if (hold.station().equals(station.id())) {
                    entries.add(new Entry(work.span().start(), useLine(wording, station, work, hold)));
                }
            }
            storingLine(wording, station, work).ifPresent(entries::add);
        }
        for (OvenChange change : OvenChange.of(wording.day, station, plan)) {
            entries.add(new Entry(
                    change.at(),
                    new Line(
                            "",
                            wording.clock.time(change.at()),
                            length(change.at().minutesUntil(change.by())),
                            "Set to " + change.celsius() + " °C",
                            "",
                            "",
                            List.of("must be there by " + wording.clock.time(change.by())),
                            false,
                            "",
                            "",
                            "",
                            false)));
        }
        String about = station.kind().word() + ", "
                + (station.unit().isEmpty()
                        ? "capacity " + station.capacity()
                        : station.capacity() + " " + station.unit())
                + ", " + station.place();
        return section(wording, Wording.plain(station.id()), Wording.plain(about), "who", entries);
    }

    private static Line useLine(Wording wording, Station station, Work work, StationHold hold) {
        List<String> notes = new ArrayList<>();
        work.ovenCelsius().ifPresent(celsius -> notes.add(celsius + " °C"));
        notes.add("until " + wording.clock.time(work.span().end(), work.span().start()));
        notes.addAll(units(station, hold.units()));
        return new Line(
                "",
                wording.clock.time(work.span().start()),
                work.span().minutes() + " min",
                Wording.plain(capital(work.step())),
                wording.dish(work.dish()),
                copies(wording, work.copies()),
                notes.stream().map(Wording::plain).toList(),
                wording.inedible(work.dish()),
                Wording.plain(wording.allergens(work.dish())),
                Wording.plain(String.join(
                        ", ",
                        new TreeSet<>(
                                work.hands().stream().map(Plan.Hands::person).toList()))),
                Wording.plain(wording.setups(work)),
                false);
    }

    private static List<String> units(Station station, int units) {
        return units == 1
                ? List.of()
                : List.of("takes " + units + " of " + station.capacity()
                        + (station.unit().isEmpty() ? "" : " " + Wording.plain(station.unit())));
    }

    /** What comes out of {@code work} into this storage. */
    private static Optional<Entry> storingLine(Wording wording, Station station, Work work) {
        List<Storing> storings = work.storage().stream()
                .filter(storing -> storing.station().equals(station.id()))
                .sorted(Comparator.comparing(Storing::span))
                .toList();
        if (storings.isEmpty()) {
            return Optional.empty();
        }
        List<String> ids = storings.stream().map(Storing::copy).toList();
        Moment in = storings.get(0).span().start();
        Moment firstOut = storings.get(0).span().end();
        Moment lastOut = storings.stream()
                .map(storing -> storing.span().end())
                .max(Moment::compareTo)
                .orElseThrow();
        List<String> notes = new ArrayList<>();
        notes.add("after " + Wording.plain(work.step()));
        notes.add(
                firstOut.equals(lastOut)
                        ? "out at " + wording.clock.time(lastOut, in)
                        : "out from " + wording.clock.time(firstOut, in) + " to " + wording.clock.time(lastOut, in));
        notes.addAll(units(station, storings.stream().mapToInt(Storing::units).sum()));
        return Optional.of(new Entry(
                in,
                new Line(
                        "",
                        wording.clock.time(in),
                        length(in.minutesUntil(lastOut)),
                        "Store",
                        wording.dish(work.dish()),
                        copies(wording, ids),
                        notes,
                        wording.inedible(work.dish()),
                        Wording.plain(wording.allergens(work.dish())),
                        "",
                        Wording.plain(String.join(", ", wording.copies.setups(ids))),
                        false)));
    }

    private static Optional<Section> section(
            Wording wording, String name, String about, String lastHeading, List<Entry> entries) {
        if (entries.isEmpty()) {
            return Optional.empty();
        }
        entries.sort(Comparator.comparing(Entry::at));
        List<Line> lines = new ArrayList<>();
        Moment before = null;
        for (Entry entry : entries) {
            boolean newDate = before == null || !wording.clock.sameDate(before, entry.at());
            lines.add(newDate ? dated(entry.line(), wording.clock.date(entry.at())) : entry.line());
            before = entry.at();
        }
        return Optional.of(new Section(name, about, lastHeading, lines));
    }

    private static Line dated(Line line, String date) {
        return new Line(
                date,
                line.time(),
                line.minutes(),
                line.what(),
                line.dish(),
                line.copies(),
                line.notes(),
                line.doNotEat(),
                line.allergens(),
                line.where(),
                line.setup(),
                line.pause());
    }

    /** Names of copies, in which no range is broken at the end of a line. */
    private static String copies(Wording wording, List<String> ids) {
        return Wording.plain(wording.copies.names(ids)).replaceAll("(?<=\\d)-(?=\\d)", "\u2011");
    }

    /** {@code 45 min}, {@code 2 h 5 min}. */
    private static String length(int minutes) {
        return minutes <= 120
                ? minutes + " min"
                : minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }

    private static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
    }
}
