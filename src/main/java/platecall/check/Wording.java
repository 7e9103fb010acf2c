package platecall.check;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import platecall.day.Day;
import platecall.day.Person;
import platecall.day.Spelling;
import platecall.day.StationUse;
import platecall.day.Step;
import platecall.units.Moment;
import platecall.units.Span;

/** Puts names, times and numbers into words as the sheets have them. */
final class Wording {

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DATE_AND_CLOCK =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final int MOST_NAMES = 6;
    /** A line's worth: the numbers of 14 setups are told, as many long names aren't. */
    private static final int MOST_LETTERS = 50;

    private Wording() {}

    /** Local clock time, with its date unless it is the day's. */
    static String clock(Day day, Moment moment) {
        return clock(day, moment, isToday(day, moment) ? CLOCK : DATE_AND_CLOCK);
    }

    private static boolean isToday(Day day, Moment moment) {
        return moment.in(day.facts().zone()).toLocalDate().equals(day.facts().date());
    }

    private static String clock(Day day, Moment moment, DateTimeFormatter format) {
        ZonedDateTime local = moment.in(day.facts().zone());
        return local.format(format)
                + (moment.comesTwice(day.facts().zone()) ? local.getOffset().getId() : "");
    }

    /** A span as a cell takes it: with both dates unless both are the day's. */
    static String cell(Day day, Span span) {
        return isToday(day, span.start()) && isToday(day, span.end())
                ? clock(day, span)
                : clock(day, span.start(), DATE_AND_CLOCK) + " - " + clock(day, span.end(), DATE_AND_CLOCK);
    }

    static String cell(Day day, List<Span> spans) {
        return spans.stream().map(span -> cell(day, span)).collect(Collectors.joining("; "));
    }

    static String clock(Day day, Span span) {
        return clock(day, span.start()) + "-" + clock(day, span.end());
    }

    static String clock(Day day, List<Span> spans) {
        return spans.stream().map(span -> clock(day, span)).collect(Collectors.joining("; "));
    }

    /** The name that was probably meant, or all there are, or {@code otherwise} if they are many. */
    static String maybe(String word, Collection<String> known, String otherwise) {
        return Spelling.nearest(word, known)
                .map(near -> "Did you mean " + near + "?")
                .orElse(known.isEmpty() || areMany(known) ? otherwise : maybeOneOf(known));
    }

    private static boolean areMany(Collection<String> names) {
        return names.size() > MOST_NAMES && String.join(", ", names).length() > MOST_LETTERS;
    }

    static String maybeOneOf(Collection<String> known) {
        return "Maybe " + (known.size() == 1 ? "" : "one of ") + String.join(", ", known) + ".";
    }

    /** A cell in which names stand with commas between them, as a list: {@code grill; plating}. */
    static String withSemicolons(String cell) {
        return String.join("; ", cell.split(",\\s*"));
    }

    /** {@code Ada, Ben and Cleo}. */
    static String list(List<String> names) {
        int last = names.size() - 1;
        return last < 1
                ? String.join("", names)
                : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    /** Who can do a step and when: {@code takes 1 pair of hands with skill plating, and there is only Ada (06:00-10:00)}. */
    static String hands(Day day, Step step) {
        List<Person> able = day.people().stream()
                .filter(person -> step.skill().map(person.skills()::contains).orElse(true))
                .toList();
        List<String> there = able.stream()
                .map(person -> person.id() + " ("
                        + (day.hoursOf(person).isEmpty() ? "never" : clock(day, day.hoursOf(person))) + ")")
                .toList();
        return "takes " + step.hands() + (step.hands() == 1 ? " pair" : " pairs") + " of hands"
                + step.skill().map(skill -> " with skill " + skill).orElse("") + ", and there "
                + (able.size() == 1 ? "is" : "are") + " only "
                + (able.size() > MOST_NAMES ? able.size() + " people" : list(there));
    }

    /** The way out if those who can do a step are not there. */
    static String longerHours(Day day, Step step) {
        return step.skill()
                .flatMap(skill -> semicolonsFor(day, skill))
                .orElseGet(() -> "longer hours in sheet people"
                        + step.skill()
                                .map(skill -> " or skill " + skill + " for somebody else")
                                .orElse(""));
    }

    /** The way out if a skill stands in somebody's cell with others, commas in between instead of semicolons. */
    static Optional<String> semicolonsFor(Day day, String skill) {
        return day.people().stream()
                .flatMap(person -> person.skills().stream())
                .filter(cell -> cell.indexOf(',') >= 0
                        && List.of(withSemicolons(cell).split("; ")).contains(skill))
                .findFirst()
                .map(cell -> withSemicolons(cell) + " instead of [" + cell + "] in sheet people");
    }

    static String minutes(long count) {
        return count + (count == 1 ? " minute" : " minutes");
    }

    static String copies(long count) {
        return count + (count == 1 ? " copy" : " copies");
    }

    /** At most two decimals, none if it is whole. */
    static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.replaceAll("\\.?0+$", "");
    }

    static String use(StationUse use) {
        return String.join("|", use.anyOf()) + ":" + use.units();
    }

    static String uses(List<StationUse> uses) {
        return uses.stream().map(Wording::use).collect(Collectors.joining("; "));
    }
}
