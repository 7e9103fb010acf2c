package platecall.report;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.Person;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.plan.Plan;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * The sheets that hang in the kitchen, ready for the page: one for each person, then the stations.
 *
 * @param title the day's name
 * @param people each begins on a page of his or her own
 * @param stations one after the other
 * @param caution what every page says at its foot
 * @param print where and when these sheets come from
 * @param paper what they are printed on
 */
public record RunSheet(
        String title, List<Section> people, List<Section> stations, String caution, Imprint print, Paper paper) {

    /**
     * One person's or station's sheet.
     *
     * @param name whose
     * @param about one line on it
     * @param news what must be known of food that has begun and goes on otherwise, one sentence each
     * @param tight how much closer its rows stand than usual, 0 to {@link #TIGHTEST}
     */
    public record Section(String name, String about, List<String> news, List<Line> lines, int tight) {

        /** Millimetres of a page that its heading takes, with space before it, and with a date before the first row. */
        private static final int HEADING_MILLIMETRES = 36;

        /** So many characters of a row's text surely fit in one line, of so many millimetres. */
        private static final int LINE_CHARACTERS = 36;

        private static final int LINE_MILLIMETRES = 6;

        /** Millimetres that must be left on a page for it to begin there: with less its heading would stand there without a row. */
        public int leastMillimetres() {
            Line first = lines.get(0);
            int above = (first.what() + first.dish() + first.copies()).length();
            int below = (String.join("   ", first.notes()) + first.allergens()).length();
            return HEADING_MILLIMETRES + LINE_MILLIMETRES * (2 + above / LINE_CHARACTERS + below / LINE_CHARACTERS);
        }

        private Section tightened(int to) {
            return new Section(name, about, news, lines, to);
        }
    }

    /**
     * One line with a box to tick.
     *
     * @param dateBefore the date if it begins here, and that clocks changed before it; else empty
     * @param time when it starts
     * @param minutes how long it takes, with its unit
     * @param what the deed, in bold
     * @param dish which dish, empty if none
     * @param copies which copies, empty if none
     * @param notes what else must be known, one phrase each
     * @param doNotEat whether it is dressing
     * @param allergens in the food as it is then, in words; empty if none
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
            boolean pause) {

        /** The notes word by word, with their dots; what has a space within belongs on one line. */
        public List<String> words() {
            List<String> words = new ArrayList<>();
            for (int i = 0; i < notes.size(); i++) {
                boolean goesOn = i + 1 < notes.size() || !allergens.isEmpty();
                String[] parts = notes.get(i).split(" (?!(min|h|°[CF])\\b)");
                for (int j = 0; j < parts.length; j++) {
                    words.add(parts[j] + (goesOn && j + 1 == parts.length ? " ·" : ""));
                }
            }
            return words;
        }

        /** Its length, with no number parted from its unit; a space if it has none, so that text keeps its lines. */
        public String length() {
            return minutes.isEmpty() ? "\u00a0" : minutes.replaceAll(" (?=min|h\\b)", "\u00a0");
        }
    }

    /** A line that knows its moment, before the dates are set between lines. */
    private record Entry(Moment at, Line line) {}

    /**
     * @param changes what is done otherwise than on the sheets that people have
     * @param toSettle what is to be settled before anybody eats
     */
    static RunSheet of(Day day, Plan plan, Changes changes, List<String> toSettle, Imprint print, Paper paper) {
        Wording wording = new Wording(day, plan, paper);
        List<String> news = Stream.of(
                        Wording.toSettle(toSettle).stream(), wording.crossContact().stream(), changes.news().stream())
                .flatMap(it -> it)
                .toList();
        Duty duty = new Duty(day, plan);
        return new RunSheet(
                Wording.plain(day.facts().title())
                        + plan.asOf()
                                .map(now -> ", from " + wording.clock.time(now, wording.clock.noon()) + " on")
                                .orElse(""),
                day.people().stream()
                        .flatMap(person -> person(wording, duty, plan, changes, news, person).stream())
                        .toList(),
                day.stations().stream()
                        .flatMap(station -> station(wording, duty, plan, station).stream())
                        .toList(),
                Wording.CAUTION,
                print,
                paper);
    }

    /** Rows stand no closer than this; each step has its style on the page. */
    private static final int TIGHTEST = 3;

    /** Room to write a core temperature down, for those who judge readings later. */
    private static final String FOR_READING = ": ____ °C";

    byte[] html() {
        return Html.of("runsheet.jte", this).getBytes(StandardCharsets.UTF_8);
    }

    /** With the rows of a person, or of the stations, a little closer where that saves a page. */
    byte[] pdf() {
        List<RunSheet> parts = fitted(parts());
        return Pdf.of(Html.of("runsheet.jte", joined(parts)), print).bytes();
    }

    /** What begins on a page of its own: each person, then the stations. */
    private List<RunSheet> parts() {
        Stream<RunSheet> ofPeople = people.stream().map(person -> with(List.of(person), List.of()));
        Stream<RunSheet> ofStations = Stream.of(with(List.of(), stations)).filter(sheet -> !stations.isEmpty());
        return Stream.concat(ofPeople, ofStations).toList();
    }

    private RunSheet joined(List<RunSheet> parts) {
        return with(
                parts.stream().flatMap(part -> part.people.stream()).toList(),
                parts.stream().flatMap(part -> part.stations.stream()).toList());
    }

    private RunSheet with(List<Section> ofPeople, List<Section> ofStations) {
        return new RunSheet(title, ofPeople, ofStations, caution, print, paper);
    }

    /** Parts with their rows moved together as little as saves all the pages that can be saved. */
    private List<RunSheet> fitted(List<RunSheet> parts) {
        List<RunSheet> fitted = new ArrayList<>(parts);
        List<Integer> open =
                new ArrayList<>(IntStream.range(0, parts.size()).boxed().toList());
        Map<Integer, Integer> usual = pages(parts, open, 0);
        open.removeIf(part -> usual.get(part) == 1);
        Map<Integer, Integer> least = pages(parts, open, TIGHTEST);
        open.removeIf(part -> least.get(part).equals(usual.get(part)));
        for (int tight = 1; tight < TIGHTEST; tight++) {
            Map<Integer, Integer> pages = pages(parts, open, tight);
            for (int part : List.copyOf(open)) {
                if (pages.get(part).equals(least.get(part))) {
                    fitted.set(part, parts.get(part).tightened(tight));
                    open.remove((Integer) part);
                }
            }
        }
        open.forEach(part -> fitted.set(part, parts.get(part).tightened(TIGHTEST)));
        return fitted;
    }

    /** How many pages these of the parts fill, all set in one go. */
    private Map<Integer, Integer> pages(List<RunSheet> parts, List<Integer> which, int tight) {
        RunSheet sheet = joined(
                which.stream().map(part -> parts.get(part).tightened(tight)).toList());
        List<Integer> pages = which.isEmpty() ? List.of() : Pdf.pagesOf(Html.of("runsheet.jte", sheet));
        return IntStream.range(0, which.size()).boxed().collect(Collectors.toMap(which::get, pages::get));
    }

    private RunSheet tightened(int to) {
        return with(
                people.stream().map(section -> section.tightened(to)).toList(),
                stations.stream().map(section -> section.tightened(to)).toList());
    }

    private static Optional<Section> person(
            Wording wording, Duty duty, Plan plan, Changes changes, List<String> news, Person person) {
        List<Deed> deeds = new ArrayList<>();
        for (Turn turn : turns(plan, person)) {
            deeds.add(new Deed(
                    turn.span().start(),
                    turn.span().end(),
                    !wording.inedible(turn.work().dish()),
                    wording.isRaw(turn.whole()),
                    notes -> isOver(plan, new Span(turn.span().start(), turn.free(person)))
                            ? Optional.empty()
                            : Optional.of(new Entry(
                                    turn.span().start(), personLine(wording, plan, changes, turn, person, notes)))));
        }
        deeds.addAll(starts(wording, duty, plan, person.id()));
        deeds.addAll(bringsBack(wording, duty, plan, person.id()));
        List<Entry> entries = rows(deeds);
        for (Plan.Break meal : plan.breaks()) {
            if (meal.person().equals(person.id()) && !isOver(plan, meal.span())) {
                String[] notes =
                        changes.noteOfBreak(meal, wording.clock).stream().toArray(String[]::new);
                entries.add(new Entry(meal.span().start(), pause(wording, meal.span(), "Meal break", notes)));
            }
        }
        for (Absence absence : person.away()) {
            wording.day
                    .spanOf(absence)
                    .filter(span -> !isOver(plan, span))
                    .ifPresent(span -> entries.add(new Entry(span.start(), away(wording, plan, absence, span))));
        }
        entries.addAll(ovensSet(wording, duty, plan, changes, person.id()));
        return section(wording, Wording.plain(person.id()), hours(wording, person, entries), news, entries);
    }

    /**
     * One person's turn at a work: as long as these hands stay on.
     *
     * @param begins whether the work begins with it
     */
    private record Turn(List<Stretch> stretches, boolean begins) {

        Work work() {
            return stretches.get(0).work();
        }

        Span span() {
            return new Span(
                    stretches.get(0).span().start(),
                    stretches.get(stretches.size() - 1).span().end());
        }

        /** The turn as one stretch: by its begin and its end. */
        Stretch whole() {
            Stretch first = stretches.get(0);
            Stretch last = stretches.get(stretches.size() - 1);
            return new Stretch(
                    work(), span(), first.who(), last.phase() == Stretch.Phase.LAST ? last.phase() : first.phase());
        }

        /** When these hands are free again: whoever carries has to walk back. */
        Moment free(Person person) {
            Moment end = span().end();
            return work().hands().stream()
                    .filter(hands -> end.equals(work().span().end()))
                    .filter(hands -> hands.person().equals(person.id()))
                    .map(hands -> hands.span().end())
                    .reduce(end, Moment::later);
        }

        /** Who else has hands on it, at {@code now} or later, and when, if not all the time that is left of it. */
        List<String> others(Person person, Optional<Moment> now, Clock clock) {
            List<Stretch> left = stretches.stream()
                    .filter(stretch -> now.map(stretch.span().end()::isAfter).orElse(true))
                    .toList();
            List<String> others = new ArrayList<>();
            for (int from = 0; from < left.size(); from++) {
                for (String who : left.get(from).who()) {
                    if (who.equals(person.id())
                            || from > 0 && left.get(from - 1).who().contains(who)) {
                        continue;
                    }
                    int to = from;
                    while (to + 1 < left.size() && left.get(to + 1).who().contains(who)) {
                        to++;
                    }
                    Moment reader = span().start();
                    others.add(Wording.plain(who)
                            + (from == 0
                                    ? ""
                                    : " from "
                                            + clock.time(left.get(from).span().start(), reader))
                            + (to + 1 == left.size()
                                    ? ""
                                    : " until " + clock.time(left.get(to).span().end(), reader)));
                }
            }
            return others;
        }
    }

    /** All turns of a person, in order of time. */
    private static List<Turn> turns(Plan plan, Person person) {
        List<Turn> turns = new ArrayList<>();
        for (Work work : plan.work()) {
            List<Stretch> stretches = Stretch.of(work);
            int from = 0;
            for (int to = 0; to <= stretches.size(); to++) {
                boolean on = to < stretches.size() && stretches.get(to).who().contains(person.id());
                if (!on && to > from) {
                    turns.add(new Turn(stretches.subList(from, to), from == 0));
                }
                from = on ? from : to + 1;
            }
        }
        turns.sort(Comparator.comparing(turn -> turn.span().start()));
        return turns;
    }

    /**
     * What somebody does with a dish, booked for it or not.
     *
     * @param food whether it may be eaten: what may not neither soils hands nor is spoilt by them
     * @param raw whether raw food is in hand
     * @param row how it stands on the sheet with what must be known of hands; empty if it is over
     */
    private record Deed(
            Moment from, Moment until, boolean food, boolean raw, Function<List<String>, Optional<Entry>> row) {

        boolean goesOnAt(Moment moment) {
            return until.isAfter(moment);
        }
    }

    /** The rows of all deeds in order of time, with what must be known of hands after raw food. */
    private static List<Entry> rows(List<Deed> deeds) {
        List<Entry> rows = new ArrayList<>();
        List<Deed> done = new ArrayList<>();
        boolean rawHands = false;
        // which of two in the same minute comes first nobody knows, so it is taken to be raw food
        deeds.sort(Comparator.comparing(Deed::from).thenComparing(deed -> !deed.raw));
        for (Deed deed : deeds) {
            List<String> hands = new ArrayList<>();
            if (deed.food && rawHands && !deed.raw) {
                hands.add("clean hands and tools first, after raw food");
            }
            if (deed.food && deed.raw && done.stream().anyMatch(it -> !it.raw && it.goesOnAt(deed.from))) {
                hands.add("clean hands and tools before you go on");
            }
            deed.row.apply(hands).ifPresent(rows::add);
            if (deed.food) {
                rawHands = deed.raw || done.stream().anyMatch(it -> it.raw && it.goesOnAt(deed.from));
                done.add(deed);
            }
        }
        return rows;
    }

    /** Ovens that this person sets. */
    private static List<Entry> ovensSet(Wording wording, Duty duty, Plan plan, Changes changes, String person) {
        List<Entry> entries = new ArrayList<>();
        for (Station station : wording.day.stations()) {
            for (OvenChange change : OvenChange.of(wording.day, station, plan)) {
                if (change.who().filter(person::equals).isPresent() && !plan.hasBegun(change.at())) {
                    List<String> notes = new ArrayList<>(beside(duty, person, change.at()));
                    changes.noteOfOven(change, wording.clock).ifPresent(notes::add);
                    entries.add(ovenLine(wording, change, "Set " + station.id() + " to ", notes, station.id()));
                }
            }
        }
        return entries;
    }

    /** What this person starts that needs no hands at first. */
    private static List<Deed> starts(Wording wording, Duty duty, Plan plan, String person) {
        List<Deed> deeds = new ArrayList<>();
        for (Work work : plan.work()) {
            if (duty.starter(work).filter(person::equals).isPresent()) {
                Moment at = work.span().start();
                deeds.add(new Deed(at, at, !wording.inedible(work.dish()), wording.goesInRaw(work), hands -> {
                    List<String> notes = new ArrayList<>(hands);
                    notes.addAll(beside(duty, person, at));
                    work.ovenCelsius().ifPresent(celsius -> notes.add(wording.paper.degrees(celsius)));
                    notes.add("goes on by itself until " + wording.clock.time(firstHands(work), at));
                    notes.addAll(wording.raw(work));
                    return toDo(
                            plan,
                            foodLine(
                                    wording,
                                    at,
                                    "",
                                    wording.start(work),
                                    work.dish(),
                                    work.copies(),
                                    notes,
                                    wording.allergens(work),
                                    wording.where(work)));
                }));
            }
        }
        return deeds;
    }

    /** When hands are wanted first by what starts without; its end if never. */
    private static Moment firstHands(Work work) {
        return work.hands().stream()
                .map(hands -> hands.span().start())
                .reduce(work.span().end(), Moment::earlier);
    }

    /** What this person brings back from set. */
    private static List<Deed> bringsBack(Wording wording, Duty duty, Plan plan, String person) {
        List<Deed> deeds = new ArrayList<>();
        for (List<KeptBack> kept : KeptBack.together(KeptBack.of(wording.day, plan), duty)) {
            KeptBack one = kept.get(0);
            String dish = one.copy().dish();
            String stage = one.copy().stage();
            Moment at = one.span().start();
            if (duty.bringer(one).filter(person::equals).isPresent()) {
                boolean raw = !wording.raw(dish, stage).isEmpty();
                deeds.add(new Deed(at, one.walk().end(), !wording.inedible(dish), raw, hands -> {
                    List<String> notes = new ArrayList<>(hands);
                    notes.addAll(wording.fetch(one));
                    if (!duty.isOn(person, one.walk())) {
                        notes.add(Wording.NOBODY);
                    } else if (!duty.isFree(person, one.walk())) {
                        notes.add("or whoever comes from there");
                    }
                    notes.addAll(wording.keepUntil(kept));
                    return toDo(
                            plan,
                            foodLine(
                                    wording,
                                    at,
                                    "",
                                    "bring back to " + one.station(),
                                    dish,
                                    KeptBack.ids(kept),
                                    notes,
                                    wording.allergens(dish, stage),
                                    one.station()));
                }));
            }
        }
        return deeds;
    }

    /** What is done in a moment, if it isn't done yet. */
    private static Optional<Entry> toDo(Plan plan, Entry entry) {
        return plan.hasBegun(entry.at()) ? Optional.empty() : Optional.of(entry);
    }

    /** What somebody must know who has other work or is off when this is to be done. */
    private static List<String> beside(Duty duty, String person, Moment at) {
        return duty.isFree(person, Duty.minute(at))
                ? List.of()
                : List.of(duty.isOn(person, Duty.minute(at)) ? "beside your other work" : Wording.NOBODY);
    }

    private static Entry ovenLine(Wording wording, OvenChange change, String set, List<String> notes, String where) {
        List<String> all = new ArrayList<>(notes);
        all.add("must be there by " + wording.clock.time(change.by(), change.at()));
        int minutes = change.at().minutesUntil(change.by());
        if (minutes > 0) {
            all.add("takes " + Wording.length(minutes) + " by itself");
        }
        return new Entry(
                change.at(),
                new Line(
                        "",
                        wording.clock.time(change.at()),
                        "",
                        Wording.plain(set + wording.paper.degrees(change.celsius())),
                        "",
                        "",
                        all,
                        false,
                        "",
                        Wording.plain(where),
                        "",
                        false));
    }

    private static Entry foodLine(
            Wording wording,
            Moment at,
            String minutes,
            String what,
            String dish,
            List<String> ids,
            List<String> notes,
            String allergens,
            String where) {
        return new Entry(
                at,
                new Line(
                        "",
                        wording.clock.time(at),
                        minutes,
                        Wording.plain(capital(what)),
                        wording.dish(dish),
                        copies(wording, ids),
                        notes.stream().map(Wording::plain).toList(),
                        wording.inedible(dish),
                        Wording.plain(allergens),
                        Wording.plain(where),
                        Wording.plain(String.join(", ", wording.copies.setups(ids))),
                        false));
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

    /** @param hands what must be known of hands after raw food */
    private static Line personLine(
            Wording wording, Plan plan, Changes changes, Turn turn, Person person, List<String> hands) {
        Stretch stretch = turn.whole();
        Work work = turn.work();
        List<String> notes = new ArrayList<>(wording.notes(stretch, FOR_READING));
        List<String> others = turn.others(person, plan.asOf(), wording.clock);
        notes.addAll(0, hands);
        if (!others.isEmpty()) {
            notes.add(0, "with " + String.join(", ", others));
        }
        Optional<String> change = turn.begins
                ? changes.note(work, wording.clock)
                : changes.noteOfEnd(work, stretch.span().start(), wording.clock);
        change.ifPresent(note -> notes.add(0, note));
        return new Line(
                "",
                wording.clock.time(stretch.span().start()),
                Wording.length(stretch.span().minutes()),
                Wording.plain(capital(wording.what(stretch))),
                wording.dish(work.dish()),
                copies(wording, work.copies()),
                notes.stream().map(Wording::plain).toList(),
                wording.inedible(work.dish()),
                Wording.plain(wording.allergens(work)),
                Wording.plain(wording.where(work)),
                Wording.plain(wording.setups(work)),
                false);
    }

    private static Line away(Wording wording, Plan plan, Absence absence, Span span) {
        if (!(absence instanceof Absence.HandDouble hand)) {
            return pause(wording, span, "Away");
        }
        Setup setup = wording.day.setup(hand.setup()).orElseThrow();
        String what = Wording.plain("Hand double in setup " + hand.setup());
        List<String> notes = new ArrayList<>();
        if (!span.equals(setup.shooting())) {
            notes.add("on set by " + wording.clock.time(setup.call(), span.start()));
        }
        int late = KeptBack.late(plan, setup.id());
        if (late > 0) {
            notes.add("food " + late + " min late: maybe back as much later");
        }
        return pause(wording, span, what, notes.toArray(String[]::new));
    }

    private static Line pause(Wording wording, Span span, String what, String... notes) {
        return new Line(
                "",
                wording.clock.time(span.start()),
                Wording.length(span.minutes()),
                what,
                "",
                "",
                Stream.concat(Stream.of(notes), Stream.of("back at " + wording.clock.time(span.end(), span.start())))
                        .toList(),
                false,
                "",
                "",
                "",
                true);
    }

    /** What the station heats or keeps by itself; work with hands on it throughout is on people's sheets. */
    private static Optional<Section> station(Wording wording, Duty duty, Plan plan, Station station) {
        List<Entry> entries = new ArrayList<>();
        Map<List<Object>, List<Work>> uses = new LinkedHashMap<>();
        Map<List<Object>, List<Storing>> stores = new LinkedHashMap<>();
        for (Work work : plan.work()) {
            boolean holds = !isOver(plan, work.span())
                    && work.stations().stream().anyMatch(hold -> hold.station().equals(station.id()));
            if (holds
                    && (OvenChange.celsius(station, work).isPresent()
                            || !Stretch.of(work).stream().allMatch(Stretch::handsOn))) {
                uses.computeIfAbsent(
                                List.of(work.span(), work.dish(), work.step(), work.ovenCelsius(), people(work)),
                                key -> new ArrayList<>())
                        .add(work);
            }
            for (Storing storing : work.storage()) {
                if (storing.station().equals(station.id()) && !isOver(plan, storing.span())) {
                    stores.computeIfAbsent(
                                    List.of(storing.span().start(), work.dish(), work.step()), key -> new ArrayList<>())
                            .add(storing);
                }
            }
        }
        uses.values().forEach(same -> entries.add(useLine(wording, duty, station, same)));
        stores.forEach(
                (key, same) -> entries.add(storingLine(wording, (String) key.get(1), (String) key.get(2), same)));
        for (OvenChange change : OvenChange.of(wording.day, station, plan)) {
            if (!plan.hasBegun(change.at())) {
                entries.add(ovenLine(
                        wording, change, "Set to ", List.of(), change.who().orElse("")));
            }
        }
        for (List<KeptBack> kept : KeptBack.together(KeptBack.of(wording.day, plan), duty)) {
            KeptBack one = kept.get(0);
            if (one.station().equals(station.id()) && !isOver(plan, one.span())) {
                entries.add(foodLine(
                        wording,
                        one.span().start(),
                        Wording.length(one.span().minutes()),
                        "keep for release",
                        one.copy().dish(),
                        KeptBack.ids(kept),
                        wording.keepUntil(kept),
                        wording.allergens(one.copy().dish(), one.copy().stage()),
                        duty.bringer(one).orElse("")));
            }
        }
        String about = station.kind().word() + ", "
                + (station.unit().isEmpty()
                        ? "capacity " + station.capacity()
                        : station.capacity() + " " + station.unit())
                + ", " + station.place()
                + (station.hours().isEmpty()
                        ? ""
                        : ", open "
                                + wording.day.hoursOf(station).stream()
                                        .map(span -> wording.clock.time(span.start(), wording.clock.noon()) + "\u2013"
                                                + wording.clock.time(span.end(), span.start()))
                                        .collect(Collectors.joining(", ")));
        return section(wording, Wording.plain(station.id()), Wording.plain(about), List.of(), entries);
    }

    /** Whether a span was over when the plan was made. */
    private static boolean isOver(Plan plan, Span span) {
        return plan.asOf().map(now -> !span.end().isAfter(now)).orElse(false);
    }

    private static String people(Work work) {
        return String.join(
                ", ",
                new TreeSet<>(work.hands().stream().map(Plan.Hands::person).toList()));
    }

    /** Works that are the same but for their copies. */
    private static Entry useLine(Wording wording, Duty duty, Station station, List<Work> same) {
        Work work = same.get(0);
        List<String> ids = same.stream().flatMap(each -> each.copies().stream()).toList();
        List<String> notes = new ArrayList<>();
        OvenChange.celsius(station, work).ifPresent(celsius -> notes.add(wording.paper.degrees(celsius)));
        notes.add("until " + wording.clock.time(work.span().end(), work.span().start()));
        notes.addAll(units(
                station,
                same.stream()
                        .flatMap(each -> each.stations().stream())
                        .filter(hold -> hold.station().equals(station.id()))
                        .mapToInt(StationHold::units)
                        .sum()));
        notes.addAll(wording.gone(same, work.span().start()));
        notes.addAll(wording.raw(work));
        return foodLine(
                wording,
                work.span().start(),
                Wording.length(work.span().minutes()),
                work.step(),
                work.dish(),
                ids,
                notes,
                wording.allergens(work),
                work.hands().isEmpty() ? duty.starter(work).orElse("") : people(work));
    }

    private static List<String> units(Station station, int units) {
        return units == 1
                ? List.of()
                : List.of("takes " + units + " of " + station.capacity()
                        + (station.unit().isEmpty() ? "" : " " + Wording.plain(station.unit())));
    }

    /** Copies of a dish that come into a storage in the same minute, from the same step. */
    private static Entry storingLine(Wording wording, String dish, String step, List<Storing> same) {
        List<String> ids = same.stream().map(Storing::copy).toList();
        Moment in = same.get(0).span().start();
        List<Moment> out =
                same.stream().map(storing -> storing.span().end()).sorted().toList();
        Moment firstOut = out.get(0);
        Moment lastOut = out.get(out.size() - 1);
        List<String> notes = new ArrayList<>();
        notes.add("after " + Wording.plain(step));
        notes.add(
                firstOut.equals(lastOut)
                        ? "out at " + wording.clock.time(lastOut, in)
                        : "out from " + wording.clock.time(firstOut, in) + " to "
                                + wording.clock.time(lastOut, firstOut));
        wording.discard(same, in).ifPresent(notes::add);
        notes.addAll(wording.raw(dish, step));
        return foodLine(
                wording,
                in,
                Wording.length(in.minutesUntil(lastOut)),
                "store",
                dish,
                ids,
                notes,
                wording.allergens(dish, step),
                "");
    }

    private static Optional<Section> section(
            Wording wording, String name, String about, List<String> news, List<Entry> entries) {
        if (entries.isEmpty()) {
            return Optional.empty();
        }
        entries.sort(Comparator.comparing(Entry::at));
        List<Line> lines = new ArrayList<>();
        Moment before = null;
        for (Entry entry : entries) {
            boolean newDate = before == null || !wording.clock.sameDate(before, entry.at());
            List<String> heading = new ArrayList<>();
            if (newDate) {
                heading.add(wording.clock.date(entry.at()));
            }
            if (before != null) {
                wording.clock.change(before, entry.at()).ifPresent(heading::add);
            }
            lines.add(heading.isEmpty() ? entry.line() : dated(entry.line(), capital(String.join(", ", heading))));
            before = entry.at();
        }
        return Optional.of(new Section(name, about, news, lines, 0));
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

    /** Names of copies, in which no number or range is parted from its word at the end of a line. */
    private static String copies(Wording wording, List<String> ids) {
        return Wording.plain(wording.copies.names(ids))
                .replaceAll("(?<=\\d)-(?=\\d)", "\u2011")
                .replaceAll(" (?=\\d)", "\u00a0");
    }

    private static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
    }
}
