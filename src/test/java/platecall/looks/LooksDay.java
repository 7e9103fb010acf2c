package platecall.looks;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import platecall.day.Day;
import platecall.day.DayFacts;
import platecall.day.Dish;
import platecall.day.Look;
import platecall.day.LookProperty;
import platecall.day.Prices;
import platecall.day.Silence;
import platecall.units.Moment;
import platecall.units.Money;
import platecall.units.Span;

/** Builds days that are nothing but a set and its dishes. */
final class LooksDay {

    private double celsius = 22;
    private double humidity = 45;
    private double light;
    private final List<Dish> dishes = new ArrayList<>();
    private final List<LookProperty> looks = new ArrayList<>();

    LooksDay air(double celsius, double humidity) {
        this.celsius = celsius;
        this.humidity = humidity;
        return this;
    }

    LooksDay light(double wattsPerM2) {
        light = wattsPerM2;
        return this;
    }

    /** @param properties name, value, name, value ... */
    LooksDay dish(String id, Look look, String... properties) {
        dishes.add(new Dish(id, id, look, true, new Money(0), false, 0, Optional.empty(), false, 0, 1, 0, 0));
        for (int i = 0; i < properties.length; i += 2) {
            looks.add(new LookProperty(id, properties[i], properties[i + 1]));
        }
        return this;
    }

    LooksDay dish(String id, Look.Kind kind, String... properties) {
        return dish(id, Look.of(kind), properties);
    }

    Day day() {
        LocalDate date = LocalDate.of(2026, 3, 14);
        Moment noon = Moment.of(ZonedDateTime.of(date.atTime(12, 0), ZoneOffset.UTC));
        DayFacts facts = new DayFacts(
                "looks",
                date,
                ZoneId.of("UTC"),
                List.of(Span.ofMinutes(noon, 60)),
                "EUR",
                Optional.empty(),
                Optional.empty(),
                0.95,
                "none",
                celsius,
                humidity,
                light,
                Silence.NONE,
                Optional.empty(),
                30,
                Prices.USUAL);
        return new Day(
                facts, List.of(), List.of(), dishes, looks, List.of(), List.of(), List.of(), List.of(), List.of(),
                List.of(), List.of());
    }

    /** The look-life of the only dish. */
    LookLife life() {
        Day day = day();
        return Looks.of(day, day.dishes().get(0));
    }
}
