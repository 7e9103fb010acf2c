package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.check.DayCheck;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Person;
import platecall.day.Place;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.intake.DayFiles;

class WhatIfCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(Object... args) {
        String[] words = Stream.of(args).map(Object::toString).toArray(String[]::new);
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    }

    /**
     * By hand: Ana makes a bun and a roll in 8 minutes each, both at their peak for five minutes and shown from 10:00 to 10:01. The one
     * that is ready at 9:52 is 4 minutes past its peak by then, 10 points each, and the kitchen is open from 9:44 to 18:00, a point a
     * minute: 536 points. With another Ana both are ready at ten, and the kitchen opens at 9:52: 488. A larger table helps nobody.
     */
    @Test
    void tellsThatAnotherPairOfHandsHelpsWhereHandsAreShort() {
        TestDays day = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .station("table", Station.Kind.COUNTER, 3, station -> {})
                .setup("S1", "10:00", setup -> setup.rolling = 1);
        for (String dish : List.of("bun", "roll")) {
            day.dish(dish, part -> part.look = Look.table(0, 5, 30))
                    .need("S1", dish, "shape", need -> need.copies(1))
                    .step(dish, "shape", 8, step -> step.uses("table", 1).hands = 1);
        }
        Path sheets = folder.resolve("day.json");
        DayFiles.write(day.build(), sheets);
        List<String> lines = whatIf(sheets, 500);
        assertThat(lines.get(1)).matches("another pair of hands like Ana +0 +0 min +0 min +488 +48");
        assertThat(lines.get(2)).matches("setup S1 is called 10 min later +0 +0 min +4 min +526 +10");
        assertThat(lines.get(3)).matches("the day as it is +0 +0 min +4 min +536 +");
        assertThat(lines).anyMatch(line -> line.matches("one more of table +0 +0 min +4 min +536 +0"));
        assertThat(lines).hasSize(8);
        assertThat(lines.get(7))
                .startsWith("Each searched for as long, without time to spare, from the same plan with 536 points.");
    }

    /** Whatever is added, the day can be planned: the checks find nothing wrong, and no station or person is there twice. */
    @Test
    void everyVariantOfEveryDemoDayIsADay() {
        for (String name : List.of("first-egg", "lantern-supper", "two-kitchens", "night-ferry", "overbooked")) {
            Day day = DayFiles.read(Path.of("problems", name)).day();
            List<OneMore> all = OneMore.of(day);
            assertThat(all).extracting(OneMore::what).doesNotHaveDuplicates();
            for (OneMore more : all) {
                assertThat(more.day()).isNotEqualTo(day);
                assertThat(DayCheck.namesAndOrder(more.day())).as(more.what()).isEmpty();
            }
        }
    }

    @Test
    void anotherOvenServesWhereTheFirstDoes() {
        Day day = DayFiles.read(Path.of("problems/overbooked")).day();
        Day more = OneMore.of(day).stream()
                .filter(it -> it.what().equals("another oven"))
                .findFirst()
                .orElseThrow()
                .day();
        assertThat(more.station("another oven").orElseThrow().circuit()).isEqualTo(Optional.empty());
        assertThat(more.step("fillet", "roast").orElseThrow().stations().get(0).anyOf())
                .containsExactly("oven", "another oven");
    }

    @Test
    void refusesThePlanOfAnotherDayAndNoTime() {
        Path plan = Path.of("reports/lantern-supper/plan.json");
        assertThat(run("whatif", "problems/first-egg", plan)).isEqualTo(Main.BAD_INPUT);
        assertThat(err.toString()).contains("is a plan of another day");
        assertThat(run("whatif", "problems/lantern-supper", plan, "--seconds", 0))
                .isEqualTo(Main.BAD_INPUT);
        assertThat(err.toString()).contains("must be above 0");
    }

    /** What opens again after lunch opens anyway, and an afternoon before is over: the morning of the shooting date begins earlier. */
    @Test
    void theKitchenOpensEarlierOnTheMorningOfTheDay() {
        Day day = TestDays.firstEgg()
                .with(days -> days.kitchen = List.of(
                        TestDays.span("2026-03-13T14:00", "2026-03-13T18:00"),
                        TestDays.span("08:00-12:00"),
                        TestDays.span("13:00-18:00")))
                .build();
        assertThat(OneMore.of(day).stream()
                        .filter(more -> more.what().contains("opens"))
                        .map(more -> more.day().facts().kitchenHours()))
                .containsExactly(List.of(
                        TestDays.span("2026-03-13T14:00", "2026-03-13T18:00"),
                        TestDays.span("07:30-12:00"),
                        TestDays.span("13:00-18:00")));
    }

    /** What has hours of its own and begins with the kitchen would stay shut, and an earlier opening would be of no use. */
    @Test
    void whatBeginsWhenTheKitchenOpensBeginsEarlierToo() {
        Day day = OneMore.of(TestDays.firstEgg()
                        .with(days -> days.kitchen = List.of(TestDays.span("06:00-18:00")))
                        .place("kitchen", place -> place.hours = List.of(TestDays.span("06:00-12:30")))
                        .place("barn", place -> place.hours = List.of(TestDays.span("13:00-18:00")))
                        .station(
                                "burners",
                                Station.Kind.BURNERS,
                                2,
                                station -> station.hours =
                                        List.of(TestDays.span("06:00-10:00"), TestDays.span("11:00-18:00")))
                        .person("Ana", person -> person.shifts = List.of(TestDays.span("06:00-14:00")))
                        .person("Ben", person -> person.shifts = List.of(TestDays.span("07:00-14:00")))
                        .build())
                .stream()
                .filter(more -> more.what().equals("the kitchen opens 30 min earlier"))
                .findFirst()
                .orElseThrow()
                .day();
        assertThat(day.places())
                .extracting(Place::hours)
                .containsExactly(List.of(TestDays.span("05:30-12:30")), List.of(TestDays.span("13:00-18:00")));
        assertThat(day.stations().get(0).hours())
                .containsExactly(TestDays.span("05:30-10:00"), TestDays.span("11:00-18:00"));
        assertThat(day.people())
                .extracting(Person::shifts)
                .containsExactly(List.of(TestDays.span("05:30-14:00")), List.of(TestDays.span("07:00-14:00")));
    }

    private static List<String> hands(TestDays day) {
        return OneMore.of(day.build()).stream()
                .map(OneMore::what)
                .filter(what -> what.startsWith("another pair of hands like "))
                .map(what -> what.substring("another pair of hands like ".length()))
                .toList();
    }

    /** Who is there for half an hour only is another help than who comes then and stays. */
    @Test
    void triesAnotherOfWhoeverDiffersInSkillsOrHours() {
        TestDays day = TestDays.firstEgg()
                .person("Ben", person -> person.away = List.of(new Absence.HandDouble("S1")))
                .person("Petra", person -> {
                    person.skills = List.of("cook", "plate");
                    person.shifts = List.of(TestDays.span("08:00-08:30"));
                })
                .person("Paul", person -> {
                    person.skills = List.of("plate", "cook");
                    person.shifts = List.of(
                            TestDays.span("2026-03-13T23:00", "2026-03-14T07:00"), TestDays.span("08:30-16:00"));
                })
                .person("Pia", person -> {
                    person.skills = List.of("cook", "plate");
                    person.shifts = List.of(TestDays.span("05:00-07:00"), TestDays.span("08:30-16:00"));
                });
        assertThat(hands(day))
                .containsExactly(
                        "Ana", "Petra (cook, plate), 08:00-08:30", "Paul (plate, cook), 06:00-07:00; 08:30-16:00");
    }

    /** With so many who each come at another minute, one for each set of skills: who stays longest. */
    @Test
    void ofVeryManyDifferentHandsThoseAreTriedThatAreThereLongest() {
        TestDays day = TestDays.firstEgg();
        for (int i = 0; i < 12; i++) {
            String from = String.format(Locale.ROOT, "07:%02d", (i + 5) % 12);
            day.person("C" + i, person -> {
                person.skills = List.of("cook");
                person.shifts = List.of(TestDays.span(from + "-16:00"));
            });
        }
        assertThat(hands(day)).containsExactly("Ana", "C7 (cook), 07:00-16:00");
    }

    /** A circuit may have no power left for a unit more, which then could never be used; storage needs none for more room. */
    @Test
    void oneMoreOfWhatDrawsPowerHasPowerOfItsOwn() {
        Day day = DayFiles.read(Path.of("problems/night-ferry")).day();
        assertThat(OneMore.of(day))
                .extracting(OneMore::what)
                .contains(
                        "one more of hob (rings), on power of its own",
                        "one more of iron (iron), on power of its own",
                        "one more of bench (places)",
                        "one more of warm drawer (plates)");
        Day more = OneMore.of(day).stream()
                .filter(it -> it.what().startsWith("one more of hob"))
                .findFirst()
                .orElseThrow()
                .day();
        Station another = more.station("another hob").orElseThrow();
        assertThat(another.capacity()).isEqualTo(1);
        assertThat(another.circuit()).isEmpty();
        assertThat(more.station("hob")).isEqualTo(day.station("hob"));
        assertThat(more.step("cocoa", "heat").orElseThrow().stations().get(0).anyOf())
                .containsExactly("hob", "another hob");
    }

    /** Two burners that are used at once stand side by side: a single one elsewhere wouldn't do. */
    @Test
    void oneMoreOfWhatIsUsedByTwosStaysOnItsCircuit() {
        Day day = TestDays.firstEgg()
                .circuit("wall", 20, 1)
                .station("burners", Station.Kind.BURNERS, 2, station -> {
                    station.amps = 5;
                    station.circuit = Optional.of("wall");
                })
                .step("egg", "fry", 4, step -> step.after("crack").uses("burners", 2).hands = 1)
                .build();
        OneMore more = OneMore.of(day).get(0);
        assertThat(more.what()).isEqualTo("one more of burners, on circuit wall");
        assertThat(more.day().station("burners").orElseThrow().capacity()).isEqualTo(3);
    }

    private List<String> whatIf(Path day, int steps) {
        Path plan = folder.resolve("plan");
        assertThat(run("plan", day, "--threads", 1, "--steps", steps, "--out", plan))
                .isNotEqualTo(Main.BAD_INPUT);
        out.getBuffer().setLength(0);
        assertThat(run("whatif", day, plan.resolve("plan.json"), "--steps", steps))
                .as(err.toString())
                .isEqualTo(Main.FINE);
        return out.toString().lines().toList();
    }

    /** On a day so full four short searches come to very different plans; one more of anything never costs what luck brought the best. */
    @Test
    void oneMoreOfAnythingIsNoWorseThanTheDayAsItIs() {
        List<String> lines = whatIf(Path.of("problems/overbooked"), 300);
        assertThat(lines)
                .filteredOn(line -> line.matches("(one more|another|the kitchen opens) .*"))
                .hasSize(7)
                .noneMatch(line -> line.matches(".* -\\d+"));
        assertThat(lines.get(lines.size() - 1))
                .contains("the best of these plans counts for the others too where it holds");
    }

    /**
     * By hand: Ana has 20 minutes in the kitchen for a bun and a roll of 12 minutes each, so one is left out, and a plan with less in
     * it is no cheaper plan. With another Ana, or half an hour more, both are made.
     */
    @Test
    void pointsOfPlansThatLeaveCopiesOutAreNotCompared() {
        TestDays day = new TestDays()
                .with(days -> days.kitchen = List.of(TestDays.span("09:50-10:10")))
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .station("table", Station.Kind.COUNTER, 3, station -> {})
                .setup("S1", "10:05", setup -> {});
        for (String dish : List.of("bun", "roll")) {
            day.dish(dish, part -> {})
                    .need("S1", dish, "shape", need -> need.copies(1))
                    .step(dish, "shape", 12, step -> step.uses("table", 1).hands = 1);
        }
        Path sheets = folder.resolve("day.json");
        DayFiles.write(day.build(), sheets);
        List<String> lines = whatIf(sheets, 300);
        assertThat(lines.subList(1, 3)).allMatch(line -> line.matches(".* +0 +0 min +0 min +\\d+ *"));
        assertThat(lines).anyMatch(line -> line.matches("the day as it is +1 +0 min +0 min *"));
        assertThat(lines).anyMatch(line -> line.matches("one more of table +1 +0 min +0 min +0"));
        assertThat(lines.get(lines.size() - 1))
                .contains("from the same plan with 1 not made. As it is, the day came to 1 to 1 not made so");
    }
}
