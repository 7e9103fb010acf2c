package platecall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import platecall.audit.Audit;
import platecall.day.Day;
import platecall.day.Trouble;
import platecall.intake.HappeningsFile;
import platecall.odds.SoFar;
import platecall.plan.Plan;
import platecall.plan.Plan.Readiness;
import platecall.plan.Plan.Verdict;
import platecall.plan.PlanFile;
import platecall.report.Changes;
import platecall.report.Reports;
import platecall.report.UnwritableFolderException;
import platecall.tasks.TaskNet;
import platecall.tasks.UnderWay;
import platecall.units.Moment;

/** Plans the rest of a day that is under way. */
@Command(
        name = "replan",
        mixinStandardHelpOptions = true,
        description = "Plan the rest of a day that is under way, close to the plan in hand.",
        footer = {
            "",
            "Until now all went as in PLAN, but for what --happened tells: a CSV file with the columns",
            "what (began, ended, waits, lost), setup, dish, part, number, step, person, time.",
            "What the AD changes, calls, takes, inserts, goes into the sheets of DAY; so does who is",
            "away and what is broken. What has begun stays; nothing else begins before now.",
            "Exit code: 0 all that is still to come is ready at its call, 1 it isn't, or a rule is",
            "broken, or the promise isn't kept with --promise, 2 bad input."
        })
final class ReplanCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private DayArgument dayArgument;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json that people have in their hands")
    private Path planPath;

    @Option(
            names = "--now",
            paramLabel = "TIME",
            required = true,
            description = "from when on to plan: 11:20, or 2026-03-14 01:20")
    private String now;

    @Option(
            names = "--happened",
            paramLabel = "FILE",
            description = "what went otherwise than planned since PLAN was made")
    private Path happened;

    @Option(names = "--out", paramLabel = "DIR", description = "folder to write to (reports/<day>/<time> if not given)")
    private Path out;

    @Mixin
    private Planning planning;

    @Override
    public Integer call() throws UnwritableFolderException {
        planning.limits(spec);
        Day day = dayArgument.checked().day();
        Plan before = PlanFile.read(planPath);
        Moment at = now(day, before);
        Path folder = out != null ? out : dayArgument.reports().resolve(stamp(day, at));
        Reports.mustBeWritable(folder);
        SoFar soFar = soFar(day, before, at);
        TaskNet all = PlanCommand.tasks(day);
        UnderWay left = UnderWay.of(day, all, at, soFar.begun(), soFar.breaks());
        Plan inHand = soFar.inHand(before);
        Planning.Planned made = planning.plan(spec, day, left.net(), Optional.of(inHand));
        Changes changes = Changes.of(day, inHand, made.plan());

        PrintWriter print = spec.commandLine().getOut();
        tellSoFar(print, day, soFar, left);
        compare(print, day, Audit.of(day, soFar.carriedOn()), made.plan());
        print.println(changes.line());
        print.println();
        ReadyTable.print(print, day, made.plan());
        boolean kept = planning.tellOdds(spec, day, made);
        planning.write(spec, day, made, Optional.of(changes), folder, at);
        return made.plan().verdict().sound() && kept ? Main.FINE : Main.NOT_READY;
    }

    private Moment now(Day day, Plan before) {
        Moment at;
        try {
            at = HappeningsFile.time(now, day);
        } catch (IllegalArgumentException bad) {
            throw new ParameterException(spec.commandLine(), "--now: " + bad.getMessage());
        }
        ZoneId zone = day.facts().zone();
        if (!day.horizon().contains(at)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--now: " + stamp(zone, at) + " is not within the day, which goes from "
                            + stamp(zone, day.horizon().start()) + " to "
                            + stamp(zone, day.horizon().end())
                            + ". Maybe give the date too: --now \""
                            + stamp(zone, day.horizon().end().plus(-60)) + "\".");
        }
        before.asOf().filter(at::isBefore).ifPresent(made -> {
            throw new ParameterException(
                    spec.commandLine(),
                    "--now: " + stamp(zone, at) + " is before " + stamp(zone, made)
                            + ", when the plan in hand was made. Maybe take the plan before it.");
        });
        return at;
    }

    private SoFar soFar(Day day, Plan before, Moment at) {
        Optional<HappeningsFile> file = Optional.ofNullable(happened).map(path -> HappeningsFile.read(path, day));
        List<Trouble> troubles = new ArrayList<>();
        SoFar soFar = SoFar.of(
                day, before, at, file.map(HappeningsFile::rows).orElse(List.of()), HappeningsFile.SHEET_NAME, troubles);
        if (!troubles.isEmpty()) {
            throw file.orElseThrow().bad(troubles);
        }
        return soFar;
    }

    private static String stamp(ZoneId zone, Moment moment) {
        return DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT).format(moment.in(zone));
    }

    /** {@code 1120}, or with the date before it if it isn't the day's. */
    private static String stamp(Day day, Moment moment) {
        boolean onTheDay =
                moment.in(day.facts().zone()).toLocalDate().equals(day.facts().date());
        return DateTimeFormatter.ofPattern(onTheDay ? "HHmm" : "uuuu-MM-dd-HHmm", Locale.ROOT)
                .format(moment.in(day.facts().zone()));
    }

    private static void tellSoFar(PrintWriter print, Day day, SoFar soFar, UnderWay left) {
        long underWay = soFar.begun().stream()
                .filter(work -> work.span().end().isAfter(soFar.now()))
                .count();
        print.printf(
                Locale.ROOT,
                "%s: %d works have begun, %d of them are under way.%n",
                ReadyTable.clock(soFar.now(), day.facts().zone()),
                soFar.begun().size(),
                underWay);
        list(print, "Lost: ", soFar.lost());
        Map<String, List<String>> renamed = new LinkedHashMap<>();
        soFar.renamed()
                .forEach((was, is) -> renamed.computeIfAbsent(need(was), need -> new ArrayList<>())
                        .add(was.substring(need(was).length()) + " is now " + is.substring(need(is).length())));
        renamed.forEach((need, copies) -> list(print, "Numbered anew, " + need + ": ", copies));
        list(print, "Waited too long, made anew: ", left.spoiled());
        list(
                print,
                "Not made while their setup was shot, not made any more: ",
                left.net().past().missed().stream().map(TaskNet.Copy::id).toList());
        print.println();
    }

    /** A copy's id without its number. */
    private static String need(String copy) {
        return copy.substring(0, copy.lastIndexOf('#'));
    }

    private static void list(PrintWriter print, String what, Collection<String> copies) {
        if (!copies.isEmpty()) {
            print.println(what + String.join(", ", copies) + ".");
        }
    }

    /** When each setup that isn't shot yet is ready if people go on as they are, and by the new plan. */
    private static void compare(PrintWriter print, Day day, Verdict carriedOn, Plan plan) {
        ZoneId zone = day.facts().zone();
        int width = day.setups().stream()
                .mapToInt(setup -> setup.id().length())
                .max()
                .orElse(0);
        String row = "%-" + Math.max(5, Math.min(24, width)) + "s  %-8s  %-26s  %s%n";
        print.printf(Locale.ROOT, row, "setup", "call", "if people go on as planned", "by the new plan");
        for (int i = 0; i < plan.verdict().setups().size(); i++) {
            Readiness then = plan.verdict().setups().get(i);
            print.printf(
                    Locale.ROOT,
                    row,
                    then.setup(),
                    ReadyTable.clock(then.call(), zone),
                    inTime(carriedOn.setups().get(i), zone),
                    inTime(then, zone));
        }
        print.println();
    }

    private static String inTime(Readiness setup, ZoneId zone) {
        return setup.ready()
                .map(at -> ReadyTable.clock(at, zone)
                        + (setup.marginMinutes() < 0 ? ", " + -setup.marginMinutes() + " min late" : ""))
                .orElse("not ready");
    }
}
