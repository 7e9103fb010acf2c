package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.day.TestDays.span;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Plan;
import platecall.plan.Plan.Work;
import platecall.plan.TestPlans;

/** What people read on their sheets of a plan that takes the place of another. */
class ChangesTest {

    /** A pie bakes at 200 °C, in an oven that takes 18 minutes from 20 °C at 10 °C a minute. */
    private final TestDays parts = new TestDays()
            .with(days -> days.kitchen = List.of(span("08:00-18:00")))
            .place("kitchen", place -> {})
            .person("Ana", person -> {})
            .station("oven", Station.Kind.OVEN, 2, station -> station.heat = 10)
            .setup("S1", "11:00", setup -> setup.takes(2))
            .dish("pie", dish -> {})
            .need("S1", "pie", "bake", need -> {})
            .step("pie", "bake", 30, step -> {
                step.uses("oven", 1);
                step.oven = Optional.of(200);
            });

    private final Day day = parts.build();

    private Plan baked(String... fromTo) {
        TestPlans plan = TestPlans.of(day);
        for (int i = 0; i < fromTo.length; i++) {
            plan.step(
                    "pie", "bake", i + 1, fromTo[i], work -> work.on("oven", 1).at(200));
        }
        return plan.asOf("09:00").build();
    }

    private Optional<String> noteOfOven(Plan before, Plan after) {
        List<OvenChange> settings = OvenChange.of(day, day.station("oven").orElseThrow(), after);
        assertThat(settings).hasSize(1);
        return Changes.of(day, before, after, before, Map.of()).noteOfOven(settings.get(0), Clock.of(day, after));
    }

    @Test
    void anOvenThatIsSetLaterMayBeOnAlready() {
        Plan before = baked("09:10-09:40", "10:00-10:30");
        assertThat(noteOfOven(before, before)).isEmpty();
        assertThat(noteOfOven(before, baked("09:30-10:00", "10:00-10:30")))
                .contains("was 08:52, so it may be on already");
        assertThat(noteOfOven(baked("09:30-10:00", "10:00-10:30"), baked("09:40-10:10", "10:10-10:40")))
                .contains("was 09:12");
    }

    /** Ana has gone at 09:35 and is the only one who was there for the pie until 09:40. */
    @Test
    void whatNobodyIsThereForIsTold() {
        for (String until : List.of("09:40", "09:35")) {
            Day day = TestDays.firstEgg()
                    .person("Ana", ana -> ana.shifts = List.of(TestDays.span("06:00-" + until)))
                    .build();
            Plan plan = TestPlans.of(day)
                    .step("egg", "crack", 1, "09:30-09:40", crack -> crack.by("Ana"))
                    .asOf("09:36")
                    .build();
            assertThat(Changes.none(day, plan)
                            .telling(List.of(), Map.of(), List.of(), Map.of(), Map.of())
                            .news())
                    .isEqualTo(
                            until.equals("09:40")
                                    ? List.of()
                                    : List.of("Nobody is there for Egg, crack of hero 1, from 09:36 to 09:40: find"
                                            + " somebody."));
        }
    }

    /** Ana sat down at 08:44 instead of 09:45; the break that she gets for the rest of the day wasn't on her sheet. */
    @Test
    void aMealBreakThatIsMoreIsSaidToBeNew() {
        Plan before = TestPlans.of(day).meal("Ana", "09:45-10:15").build();
        Plan after = TestPlans.of(day)
                .meal("Ana", "08:44-09:14")
                .meal("Ana", "13:00-13:30")
                .asOf("09:00")
                .build();
        Changes changes = Changes.of(day, before, after, before, Map.of());
        assertThat(changes.line()).isEqualTo("Jobs that change: 1 more meal break; see changes.csv.");
        assertThat(changes.noteOfBreak(after.breaks().get(1), Clock.of(day, after)))
                .contains("new");
        assertThat(new String(changes.csv(), StandardCharsets.UTF_8).lines().skip(1))
                .containsExactly("\"\",2026-03-14 13:00,new,meal break,,,,Ana,Ana,,");
    }

    /** Ana cracks the egg until 09:35 and Ben from then on; it was to be Ana's until 09:40. */
    @Test
    void whoTakesOverWhatIsUnderWayIsToldInsteadOfWhom() {
        Day day = TestDays.firstEgg().build();
        Plan before = TestPlans.of(day)
                .step("egg", "crack", 1, "09:30-09:40", crack -> crack.by("Ana"))
                .build();
        Plan after = TestPlans.of(day)
                .step(
                        "egg",
                        "crack",
                        1,
                        "09:30-09:40",
                        crack -> crack.hands("Ana", "09:30-09:35").hands("Ben", "09:35-09:40"))
                .asOf("09:35")
                .build();
        Changes changes = Changes.of(day, TestPlans.of(day).build(), after, before, Map.of());
        assertThat(changes.line()).isEqualTo("Jobs that change: 1 under way by other hands; see changes.csv.");
        assertThat(changes.noteOfEnd(after.work().get(0), TestDays.at("09:35"), Clock.of(day, after)))
                .contains("instead of Ana");
        assertThat(new String(changes.csv(), StandardCharsets.UTF_8).lines().skip(1))
                .containsExactly(
                        "2026-03-14 09:40,2026-03-14 09:40,other hands,\"crack, end\",Egg,hero 1,S1,Ana,Ben,,");
    }

    /** By hand: Ana goes when the plan is made, at 09:35, at 09:38, or went at 09:33. */
    @Test
    void whoTakesOverIsToldTheEnd() {
        Day day = TestDays.firstEgg().build();
        Plan before = TestPlans.of(day)
                .step("egg", "crack", 1, "09:30-09:40", crack -> crack.by("Ana"))
                .build();
        for (String at : List.of("09:33", "09:35", "09:38")) {
            Plan after = TestPlans.of(day)
                    .step(
                            "egg",
                            "crack",
                            1,
                            "09:30-09:44",
                            crack -> crack.hands("Ana", "09:30-" + at).hands("Ben", at + "-09:44"))
                    .asOf("09:35")
                    .build();
            assertThat(Changes.of(day, TestPlans.of(day).build(), after, before, Map.of())
                            .noteOfEnd(after.work().get(0), TestDays.at(at), Clock.of(day, after))
                            .orElseThrow())
                    .startsWith("ends 09:44, was 09:40");
        }
    }

    /** The first pie is lost and the second takes its place, so another one gets its number. */
    @Test
    void whatIsGoneIsToldByTheNumbersUntilNow() {
        Plan before = baked("09:10-09:40", "10:00-10:30");
        Plan after = baked("10:00-10:30", "10:30-11:00");
        Changes both = Changes.of(day, before, after, before, Map.of("S1/pie/bake/hero#2", "S1/pie/bake/hero#1"));
        assertThat(both.telling(
                                List.of("S1/pie/bake/hero#1"),
                                Map.of("S1/pie/bake/hero#2", "S1/pie/bake/hero#1"),
                                List.of(),
                                Map.of("fridge", List.of("S1/pie/bake/hero#2")),
                                Map.of())
                        .news())
                .containsExactly(
                        "In fridge, which is or was closed: Pie for setup S1, hero 2. Take its temperature at once: what is cold or hot enough"
                                + " by your local code goes into a store that is on, nobody eats what isn't: note it as lost.",
                        "Not to be used any more: Pie for setup S1, hero 1, as numbered until now; others get these numbers.",
                        "Numbered anew: Pie for setup S1, hero 2 is now 1.");
        Plan one = TestPlans.of(day)
                .step(
                        "pie",
                        "bake",
                        1,
                        "10:00-10:30",
                        work -> work.on("oven", 1).at(200))
                .asOf("09:00")
                .build();
        assertThat(Changes.of(day, before, one, before, Map.of())
                        .telling(List.of("S1/pie/bake/hero#2"), Map.of(), List.of(), Map.of(), Map.of())
                        .news())
                .containsExactly("Not to be used any more: Pie for setup S1, hero 2.");
    }

    /** Mixed and in the fridge, raw, when its setup is struck from the sheets; another stands on the rack, baked. */
    @Test
    void whatNobodyAsksForAnyMoreIsToBeTakenOut() {
        TestDays two = parts.station("fridge", Station.Kind.FRIDGE, 2, station -> {})
                .setup("S2", "12:00", setup -> {})
                .need("S2", "pie", "bake", need -> {})
                .step("pie", "mix", 5, step -> {
                    step.raw = true;
                    step.waitsIn = Optional.of("fridge");
                })
                .step("pie", "bake", 30, step -> step.after("mix").waitsIn = Optional.of("rack"));
        Day all = two.build();
        Plan paper = TestPlans.of(all)
                .step("pie", "bake", 1, "10:00-10:30", work -> {})
                .build();
        Plan after = TestPlans.of(all).asOf("09:00").build();
        assertThat(Changes.of(all, paper, after, paper, Map.of())
                        .telling(
                                List.of(),
                                Map.of(),
                                List.of(),
                                Map.of(),
                                new TreeMap<>(Map.of(
                                        "fridge",
                                        List.of("S1/pie/bake/hero#1"),
                                        "rack",
                                        List.of("S2/pie/bake/hero#1"))))
                        .news())
                .containsExactly(
                        "Not wanted any more: Pie for setup S1, hero 1, raw, in fridge: take it out.",
                        "Not wanted any more: Pie for setup S2, hero 1, in rack: take it out.");
    }

    /** Two pies for two setups, one after the other, now bake together, and one of them is to be taken out. */
    @Test
    void whoHasABatchForSeveralSetupsReadsOfWhichSetupAChangeIs() {
        Day two = parts.setup("S2", "12:00", setup -> {})
                .need("S2", "pie", "bake", need -> {})
                .build();
        String other = "S2/pie/bake/hero#1";
        Plan before = TestPlans.of(two)
                .step("pie", "bake", 1, "09:10-09:40", work -> work.on("oven", 1))
                .add(Work.Kind.STEP, "pie", "bake", other, span("09:40-10:10"), work -> work.on("oven", 1))
                .build();
        Plan after = TestPlans.of(two)
                .step(
                        "pie",
                        "bake",
                        1,
                        "10:00-10:30",
                        work -> work.on("oven", 1).and(other))
                .asOf("09:00")
                .build();
        Changes changes = Changes.of(two, before, after, before, Map.of());
        assertThat(changes.note(after.work().get(0), Clock.of(two, after)))
                .contains("setup S1 hero 1 was 09:10; setup S2 hero 1 was 09:40");
        assertThat(changes.telling(List.of(), Map.of(), before.work().subList(1, 2), Map.of(), Map.of())
                        .news())
                .containsExactly("To be stopped: Pie, bake of setup S2 hero 1 in oven.");
    }
}
