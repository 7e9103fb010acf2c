package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Plan.Work.Kind;
import platecall.plan.Rule;
import platecall.plan.TestPlans;
import platecall.units.Moment;
import platecall.units.Span;

class SafetyPageTest {

    @Test
    void oneOfAThingIsNotSeveral() {
        Day day = TestDays.firstEgg().build();
        List<Breach> broken = List.of(
                new Breach(Rule.ALLERGEN, 1, "Egg has milk"),
                new Breach(Rule.CLOCK, 1, "Egg stands"),
                new Breach(Rule.COOKING, 2, "Egg is raw"));

        assertThat(new SafetyPage(day, TestPlans.of(day).build(), broken, List.of(), List.of()).lines())
                .contains(
                        "  BROKEN  nobody eats what he or she must not: 1 copy. Egg has milk",
                        "    minute. Egg stands",
                        "  BROKEN  what was raw and is eaten cooked gets hot enough inside: 2 copies. Egg is raw");
    }

    /** FDA Food Code 3-401.11(B)(2): 60.0 °C held for 12 minutes. */
    @Test
    void aCoreThatIsTooLowMayBeThatOfARoast() {
        assertThat(SafetyPageTest.page("beef", 60))
                .contains("Joint: a whole roast of beef, pork, lamb or ham is done at 60 °C, held for 12 min"
                        + " (FDA Food Code 3-401.11(B)(2), 2013 and 2022).");
        assertThat(SafetyPageTest.page("beef", 54)).doesNotContain("whole roast of beef");
        assertThat(SafetyPageTest.page("chicken", 60)).doesNotContain("whole roast of beef");
    }

    private static String page(String ingredient, double core) {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "10:00", setup -> {})
                .dish("joint", dish -> {})
                .ingredient("joint", ingredient, part -> {})
                .diner("Mina")
                .need("S1", "joint", "roast", need -> need.eatenBy = List.of("Mina"))
                .step("joint", "trim", 5, step -> step.raw = true)
                .step("joint", "roast", 60, step -> {
                    step.after = List.of("trim");
                    step.core = Optional.of(core);
                })
                .build();
        return String.join(" ", new SafetyPage(day, TestPlans.of(day).build(), List.of(), List.of(), List.of()).lines())
                .replaceAll("\\s+", " ");
    }

    /** Directive 2003/88/EC, Art. 3; California Labor Code 512(a); IWC Wage Order 12-2001; SI 1998/1833, reg. 12. */
    @Test
    void hoursOfWorkAreToldWithWhatTheyOwe() {
        TestDays days = TestDays.firstEgg();
        days.kitchen = List.of(
                TestDays.span("2026-03-13T14:00", "2026-03-13T20:00"), TestDays.span("05:00", "2026-03-14T18:00"));
        Day day = days.build();
        Plan plan = TestPlans.of(day)
                .add(
                        Kind.STEP,
                        "egg",
                        "crack",
                        "S1/egg/plate/hero#1",
                        TestDays.span("2026-03-13T18:00", "2026-03-13T19:30"),
                        work -> work.by("Ana"))
                .step("egg", "crack", 2, "06:29-06:31", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:00-09:10", work -> work.by("Ana", "Ben"))
                .step("egg", "fry", 2, "13:30-13:34", work -> work.by("Ana"))
                .meal("Ben", "09:02-09:08")
                .build();

        assertThat(String.join("\n", new SafetyPage(day, plan, List.of(), List.of(), List.of()).lines())
                        .replaceAll("\n    +(?!Cal|film|UK)", " "))
                .contains(
                        "  Ana: 03-13 18:00 to 03-13 19:30, 1 h 30 min without a break; next call from 06:30, but he or she is"
                                + " busy again before that\n",
                        "  Ana: 06:29 to 13:34, 7 h 5 min without a break; pauses 20 min; next call from 03-15 00:34\n",
                        "    California Labor Code 512(a): one meal more\n",
                        "    film crews in California, IWC Wage Order 12-2001: a meal by 12:29\n",
                        "    UK Working Time Regulations 1998, reg. 12: a break of 20 min\n",
                        "  Ben: 09:00 to 09:10, 4 min besides breaks at 09:02 to 09:08; next call from 20:10\n");
    }

    @Test
    void whoMustNotEatAnIngredientIsToldWhetherItsAllergenIsNamedOrNot() {
        Day day = TestDays.firstEgg()
                .diner("Nora", "peanuts")
                .diner("Mina", "milk")
                .ingredient("egg", "peanuts", part -> {})
                .need("S1", "egg", "plate", need -> need.eatenBy = List.of("Nora", "Mina"))
                .build();
        assertThat(String.join(
                                " ",
                                new SafetyPage(day, TestPlans.of(day).build(), List.of(), List.of(), List.of()).lines())
                        .replaceAll("\\s+", " "))
                .contains("Nora (allergic to peanuts) MUST NOT EAT IT, Mina (allergic to milk)")
                .doesNotContain("Mina (allergic to milk) MUST NOT");
    }

    /** Europe/Vienna, 25 October 2026: 03:00 CEST is 02:00 CET (IANA time zone database). */
    @ParameterizedTest
    @CsvSource({"90, 01:30", "150, 02:30 +02", "210, 02:30 +01", "270, 03:30", "-60, 10-24 23:00"})
    void aTimeThatComesTwiceInANightHasItsOffset(int minutesAfterMidnight, String clock) {
        LocalDate date = LocalDate.of(2026, 10, 25);
        Day day = new TestDays()
                .with(days -> days.date = date)
                .with(days -> days.kitchen = List.of(TestDays.span("2026-10-24T20:00", "2026-10-25T18:00")))
                .place("kitchen", place -> {})
                .circuit("wall", 16, 1)
                .station("kettle", Station.Kind.BURNERS, 1, station -> {
                    station.circuit = Optional.of("wall");
                    station.amps = 10;
                })
                .setup("S1", "2026-10-25T10:00", setup -> {})
                .dish("tea", dish -> {})
                .need("S1", "tea", "boil", need -> {})
                .step("tea", "boil", 5, step -> step.uses("kettle", 1))
                .build();
        Moment start = Moment.of(date.atStartOfDay(TestDays.ZONE)).plus(minutesAfterMidnight);
        Plan plan = TestPlans.of(day)
                .add(
                        Kind.STEP,
                        "tea",
                        "boil",
                        "S1/tea/boil/hero#1",
                        Span.ofMinutes(start, 5),
                        work -> work.on("kettle", 1))
                .build();

        assertThat(new SafetyPage(day, plan, List.of(), List.of(), List.of()).lines())
                .contains("  wall: 10 A at most, from " + clock
                        + "; carries 16 A, 3680 W, for hours (16 A breaker over 1)")
                .noneMatch(line -> line.contains("NEC"));
    }
}
