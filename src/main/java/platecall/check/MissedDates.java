package platecall.check;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Person;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.units.Moment;
import platecall.units.Span;

/**
 * Hours of the kitchen, of stations and people that begin only after the last call though those of the evening before are
 * meant: on a night shoot a date is missed easily.
 */
final class MissedDates {

    private final Day day;
    private final Optional<Moment> lastCall;
    private final List<Missed> missed = new ArrayList<>();
    private final Day mended;

    /**
     * Hours in a cell.
     *
     * @param meant what is probably meant by them; empty if nobody can tell
     * @param orElse another way out, to be printed after that; may be empty
     */
    private record Missed(
            Sheet sheet, int row, String column, Span written, String what, Optional<Span> meant, String orElse) {}

    MissedDates(Day day) {
        this.day = day;
        lastCall = day.setups().stream().map(Setup::call).max(Moment::compareTo);
        List<Span> kitchen =
                day.facts().kitchenHours().stream().map(this::ofKitchen).toList();
        List<Station> stations = new ArrayList<>();
        for (Station station : day.stations()) {
            stations.add(station.withHours(within(kitchen, station.hours(), Sheet.STATIONS, stations.size())));
        }
        List<Person> people = new ArrayList<>();
        for (Person person : day.people()) {
            people.add(person.withShifts(within(kitchen, person.shifts(), Sheet.PEOPLE, people.size())));
        }
        mended = day.with(day.facts().withKitchenHours(kitchen), stations, people);
    }

    private boolean afterAll(Span span) {
        return lastCall.filter(call -> !span.start().isBefore(call)).isPresent();
    }

    private Span ofKitchen(Span written) {
        List<Span> hours = day.facts().kitchenHours();
        Optional<Span> meant = Stream.concat(Stream.of(dayEarlier(written)), turned(written).stream())
                .filter(span -> day.setups().stream()
                        .map(Setup::call)
                        .anyMatch(
                                call -> span.contains(call) && hours.stream().noneMatch(other -> other.contains(call))))
                .findFirst();
        if (afterAll(written) && (meant.isPresent() || written.equals(hours.get(0)))) {
            String what = "begin only after the last call, at " + Wording.clock(day, lastCall.orElseThrow());
            missed.add(new Missed(Sheet.DAY, -1, "kitchen hours", written, what, meant, orLaterCalls(written)));
            return meant.orElse(written);
        }
        return written;
    }

    /** The other way round: hours that would cover all calls if these were a day later. */
    private String orLaterCalls(Span written) {
        boolean covers = day.setups().stream().allMatch(setup -> written.contains(dayOff(setup.call(), 1)));
        return covers ? ", or calls on " + date(dayOff(lastCall.orElseThrow(), 1)) : "";
    }

    /** Hours past midnight with end and start the other way round. */
    private Optional<Span> turned(Span span) {
        Moment end = dayOff(span.end(), -1);
        boolean pastMidnight = !date(span.start()).equals(date(span.end()));
        return pastMidnight && end.isBefore(span.start()) ? Optional.of(new Span(end, span.start())) : Optional.empty();
    }

    private LocalDate date(Moment moment) {
        return moment.in(day.facts().zone()).toLocalDate();
    }

    private Span dayEarlier(Span span) {
        Moment start = dayOff(span.start(), -1);
        Moment end = dayOff(span.end(), -1);
        // where clocks are put forward the start may be moved past the end
        return end.isAfter(start) ? new Span(start, end) : Span.ofMinutes(start, span.minutes());
    }

    /** The same time of another day. */
    private Moment dayOff(Moment moment, int days) {
        return Moment.of(moment.in(day.facts().zone()).plusDays(days));
    }

    /** Hours of which those that are out of kitchen hours by a day are told and mended. */
    private List<Span> within(List<Span> kitchen, List<Span> hours, Sheet sheet, int row) {
        return hours.stream()
                .map(written -> {
                    Span meant = dayEarlier(written);
                    boolean out = afterAll(written) && !overlaps(kitchen, written) && overlaps(kitchen, meant);
                    if (out) {
                        missed.add(new Missed(
                                sheet, row, "hours", written, "lie outside kitchen hours", Optional.of(meant), ""));
                    }
                    return out ? meant : written;
                })
                .toList();
    }

    private static boolean overlaps(List<Span> kitchen, Span span) {
        return kitchen.stream().anyMatch(span::overlaps);
    }

    boolean any() {
        return !missed.isEmpty();
    }

    /** Whether kitchen hours are among them. */
    boolean ofKitchen() {
        return tells(Sheet.DAY, -1);
    }

    /** Whether anything is known of when the kitchen is open. */
    boolean kitchenIsKnown() {
        return missed.stream().allMatch(hours -> hours.meant().isPresent());
    }

    /** The day with the hours that are meant. */
    Day mended() {
        return mended;
    }

    /** Whether anything is told of the hours in a row. */
    boolean tells(Sheet sheet, int row) {
        return missed.stream().anyMatch(hours -> hours.sheet() == sheet && hours.row() == row);
    }

    void tell(Findings found) {
        missed.forEach(hours -> found.add(
                hours.sheet(),
                hours.row(),
                hours.column(),
                Wording.clock(day, hours.written()),
                hours.what(),
                hours.meant()
                        .map(meant -> "Maybe " + Wording.cell(day, meant) + hours.orElse() + ".")
                        .orElse("Maybe the date or the hours are wrong.")));
    }
}
