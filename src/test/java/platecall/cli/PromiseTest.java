package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.intake.DayFiles;
import platecall.looks.Looks;
import platecall.plan.Plan;
import platecall.solve.Planner;
import platecall.tasks.Breakdown;
import platecall.tasks.SpareTime;
import platecall.tasks.TaskNet;

class PromiseTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int plan(String day, String to, String... more) {
        String[] words = Stream.concat(
                        Stream.of(
                                "plan",
                                "problems/" + day,
                                "--out",
                                folder.resolve(to).toString()),
                        Stream.of(more))
                .toArray(String[]::new);
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    }

    /** By hand: the egg's last two steps may take minutes longer than likely, so a plan that ends at the call is late then. */
    @Test
    void timeToSpareKeepsThePromiseThatAPlanWithoutItDoesNot() {
        assertThat(plan("first-egg", "plain", "--steps", "4000", "--no-promise"))
                .as(err.toString())
                .isEqualTo(Main.FINE);
        assertThat(out.toString()).contains("0 of 1 setups keep the promise of 95 %.");
        assertThat(plan("first-egg", "sure", "--steps", "4000")).isEqualTo(Main.FINE);
        assertThat(out.toString()).contains("1 of 1 setups keep the promise of 95 %.");
    }

    /** A bun that takes 5 to 17 minutes, 8 likely, for a call at ten by a kitchen that opens at some time. */
    private static Day bun(String opens) {
        return bun(opens, 5, 17);
    }

    private static Day bun(String opens, int low, int high) {
        return new TestDays()
                .with(it -> it.kitchen = List.of(TestDays.span(opens + "-18:00")))
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .station("table", Station.Kind.COUNTER, 1, station -> {})
                .setup("S1", "10:00", setup -> {})
                .dish("bun", dish -> {})
                .need("S1", "bun", "shape", need -> need.copies(1))
                .step("bun", "shape", 8, step -> step.from(low, high).hands = 1)
                .build();
    }

    /** The kitchen opens eleven minutes before the call: enough for 86 % of cases, 1 - 0.458^4 * 3.167. */
    @Test
    void aPromiseThatCannotBeKeptIsToldAndOddsTellsItByItsExitCode() {
        DayFiles.write(bun("09:49"), folder.resolve("day.json"));
        String day = folder.resolve("day.json").toString();
        assertThat(run("plan", day, "--out", folder.resolve("short").toString(), "--steps", "4000"))
                .as(err.toString())
                .isEqualTo(Main.FINE);
        assertThat(out.toString())
                .contains("0 of 1 setups keep the promise of 95 %. All are ready at their calls with 8")
                .contains("Ready 3 min before call");
        assertThat(run("odds", day, folder.resolve("short/plan.json").toString()))
                .isEqualTo(Main.NOT_READY);
    }

    private int run(String... words) {
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    }

    private static TaskNet netOf(Day day) {
        return Breakdown.of(
                day, dish -> Looks.of(day, dish), need -> need.copies().orElse(2));
    }

    private static Plan planned(Day day, TaskNet aim, Planner.Limits limits) {
        return Planner.plan(day, netOf(day), aim, "digest", "test", limits, Optional.empty(), Planner.Watcher.NONE)
                .plan();
    }

    private static final Planner.Limits LIMITS = new Planner.Limits(600, Optional.of(5_000L), 1, 1);

    private static Plan promised(Day day, Optional<Plan> held, Promise.Search search) {
        return Promise.plan(day, netOf(day), LIMITS, held, search, plan -> {}, () -> false);
    }

    /**
     * By hand, of beta-PERT (5, 8, 17) to the nearest minute: 12 minutes are enough for 93.1 % of cases, 1 - 0.375^4 * 3.5, 13 for
     * 97.2 %, 1 - 0.2917^4 * 3.833, 14 for 99.2 %, 1 - 0.2083^4 * 4.167. So the step has 6 minutes to spare for 99 %, and a plan
     * that ends at the call falls 5 short of 95 %.
     */
    @Test
    void whatIsAimedAtIsAsMuchEarlierAsTheFirstPlanWithTimeToSpareFellShort() {
        Day day = bun("06:00");
        List<Integer> dues = new ArrayList<>();
        promised(day, Optional.empty(), (aim, limits, from) -> {
            dues.add(aim.copies().get(0).due());
            // whatever is aimed at, it is ready at its call
            return planned(day, netOf(day), limits);
        });
        int call = dues.get(0);
        assertThat(dues).hasSize(5);
        assertThat(dues.subList(1, 5)).containsExactly(call - 6, call - 11, call - 16, call - 21);
    }

    @Test
    void theCheapestOfItsPlansAsRehearsedIsTaken() {
        Day day = bun("06:00");
        TaskNet net = netOf(day);
        int[] early = {0, 2, 9, 4, 1};
        List<Plan> made = new ArrayList<>();
        Plan taken = promised(day, Optional.empty(), (aim, limits, from) -> {
            int minutes = early[made.size()];
            made.add(planned(day, SpareTime.in(net, (need, step) -> minutes, step -> 0, need -> 0), limits));
            return made.get(made.size() - 1);
        });
        // a bun never fades, so the earliest is late least often and costs nothing else
        assertThat(taken).isSameAs(made.get(2));
        assertThat(made).hasSize(3);
    }

    /** A bun that takes 8 minutes for certain needs no time to spare: the first plan, 5 minutes early, opens the kitchen so much too early. */
    @Test
    void aDayThatKeepsThePromiseAsItIsGetsTheWholeEffortAsItIs() {
        Day day = bun("06:00", 8, 8);
        TaskNet net = netOf(day);
        List<Long> steps = new ArrayList<>();
        List<Optional<Plan>> begun = new ArrayList<>();
        List<Plan> made = new ArrayList<>();
        Promise.Search search = (aim, limits, from) -> {
            assertThat(aim.copies().get(0).due()).isEqualTo(net.copies().get(0).due());
            steps.add(limits.steps().orElseThrow());
            begun.add(from);
            int early = made.isEmpty() ? 5 : 0;
            made.add(planned(day, SpareTime.in(net, (need, step) -> early, step -> 0, need -> 0), limits));
            return made.get(made.size() - 1);
        };
        assertThat(promised(day, Optional.empty(), search)).isSameAs(made.get(1));
        assertThat(steps).containsExactly(1000L, 4000L);
        assertThat(begun).containsExactly(Optional.empty(), Optional.of(made.get(0)));
        assertThat(made.get(1).points().total()).isLessThan(made.get(0).points().total());

        // the best plan there is isn't searched for again
        promised(day, Optional.empty(), search);
        assertThat(steps).containsExactly(1000L, 4000L, 1000L);
    }

    /** What is late costs more than time to spare buys: the day as it is gets more effort, and what is late has no minute to spare. */
    @Test
    void whatIsLateIsPlannedAgainAsItIsAndHasNoTimeToSpare() {
        Day day = bun("09:55");
        TaskNet net = netOf(day);
        List<TaskNet> aims = new ArrayList<>();
        List<Long> steps = new ArrayList<>();
        Plan taken = promised(day, Optional.empty(), (aim, limits, from) -> {
            aims.add(aim);
            steps.add(limits.steps().orElseThrow());
            return planned(day, aim, limits);
        });
        assertThat(steps).containsExactly(1000L, 2000L, 1000L, 1000L);
        assertThat(aims)
                .allMatch(
                        aim -> aim.copies().get(0).due() == net.copies().get(0).due());
        assertThat(taken.copies().get(0).lateMinutes()).isEqualTo(3);
    }

    @Test
    void thePlanInHandKeepsTheTimeToSpareThatItHas() {
        Day day = bun("06:00");
        TaskNet net = netOf(day);
        Plan held = planned(day, SpareTime.in(net, (need, step) -> 11, step -> 0, need -> 0), LIMITS);
        List<Integer> dues = new ArrayList<>();
        promised(day, Optional.of(held), (aim, limits, from) -> {
            dues.add(aim.copies().get(0).due());
            return planned(day, netOf(day), limits);
        });
        // and no more: a plan that has less than the promise asks for is left alone
        int call = netOf(day).copies().get(0).due();
        assertThat(dues).containsExactly(call, call, call - 11);
        List<Long> steps = new ArrayList<>();
        Plan same = promised(day, Optional.of(held), (aim, limits, from) -> {
            steps.add(limits.steps().orElseThrow());
            return held;
        });
        assertThat(same).as("what can go on as planned isn't searched anew").isSameAs(held);
        assertThat(steps).containsExactly(1L);
    }

    @Test
    void theSameSeedAndStepsGiveTheSamePlan() throws IOException {
        plan("two-kitchens", "one", "--steps", "4000");
        plan("two-kitchens", "other", "--steps", "4000");
        for (String file : new String[] {"plan.json", "readiness.csv", "readiness.pdf"}) {
            assertThat(Files.readAllBytes(folder.resolve("one").resolve(file)))
                    .isEqualTo(Files.readAllBytes(folder.resolve("other").resolve(file)));
        }
    }
}
