package platecall.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import platecall.copies.CopyCounts;
import platecall.day.CameraTime;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Step;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Work;
import platecall.plan.Rule;

/** Every wanted copy is made, by each of its steps once, in batches no larger than may be. */
final class CopyRules {

    private CopyRules() {}

    static void check(Ledger ledger, Breaches breaches) {
        CopyCounts counts = CopyCounts.of(ledger.day());
        for (Need need : ledger.day().needs()) {
            wanted(ledger, need, counts.copiesOf(need), breaches);
        }
        for (PlannedCopy copy : ledger.madeCopies()) {
            List<String> wrong = wrongWork(ledger, copy);
            breaches.add(
                    Rule.COPIES,
                    wrong.isEmpty() ? 0 : 1,
                    () -> ledger.name(copy) + " is not made as its recipe says: " + Words.list(wrong));
        }
        for (Work work : ledger.plan().work()) {
            batch(ledger, work, breaches);
        }
    }

    private static void wanted(Ledger ledger, Need need, int count, Breaches breaches) {
        List<PlannedCopy> copies = ledger.plan().copies().stream()
                .filter(copy -> copy.need().equals(need.key()))
                .toList();
        int highest = copies.stream().mapToInt(PlannedCopy::number).max().orElse(0);
        // more than reckoned does no harm, unless the number is fixed by hand; on a day under way it was reckoned
        // before
        boolean before = ledger.plan().asOf().isPresent() && highest > 0;
        int wanted = need.copies().orElse(before ? highest : Math.max(count, highest));
        Set<Integer> missing = new TreeSet<>();
        for (int number = 1; number <= wanted; number++) {
            missing.add(number);
        }
        int tooMany = 0;
        for (PlannedCopy copy : copies) {
            if (copy.made() && !missing.remove(copy.number())) {
                tooMany++;
            }
        }
        Setup setup = ledger.setup(need);
        missing.removeIf(number -> ledger.plan().isShot(setup) || before && CameraTime.isShot(setup, need, number));
        String what = ledger.name(need.dish()) + " (" + need.part().word() + ") for setup " + need.setup();
        breaches.add(
                Rule.COPIES,
                missing.size(),
                () -> what + ": " + missing.size() + " of " + Words.copies(wanted) + " not made: "
                        + Words.list(
                                missing.stream().map(number -> "#" + number).toList()));
        int more = tooMany;
        breaches.add(
                Rule.COPIES,
                more,
                () -> what + ": " + Words.copies(more) + " made beyond the " + wanted + " that are wanted");
    }

    private static List<String> wrongWork(Ledger ledger, PlannedCopy copy) {
        Need need = ledger.need(copy).orElseThrow();
        List<String> wrong = new ArrayList<>();
        Set<String> recipe = ledger.recipe(need).stream().map(Step::id).collect(Collectors.toSet());
        for (Step step : ledger.recipe(need)) {
            count(wrong, step.id(), ledger.work(copy, step.id()).size(), 1);
        }
        count(wrong, "carry", ledger.carries(copy).size(), ledger.day().minutesToCamera(need) > 0 ? 1 : 0);
        for (Work work : ledger.work(copy)) {
            if (work.kind() == Work.Kind.STEP && !recipe.contains(work.step())) {
                wrong.add(work.step() + " is no step of it");
            }
        }
        return wrong;
    }

    private static void count(List<String> wrong, String step, int times, int wanted) {
        if (times != wanted) {
            wrong.add(step + " is done " + Words.count(times, "time") + " instead of " + wanted);
        }
    }

    private static void batch(Ledger ledger, Work work, Breaches breaches) {
        boolean carried = work.kind() == Work.Kind.CARRY;
        int most = carried
                ? ledger.dish(work).map(Dish::copiesPerWalk).orElse(1)
                : ledger.step(work).flatMap(Step::batchMost).orElse(1);
        breaches.add(
                Rule.BATCH,
                work.copies().size() - most,
                () -> ledger.name(work) + " at "
                        + ledger.words().clock(work.span().start()) + " serves "
                        + Words.copies(work.copies().size()) + ", but may serve " + most);
        List<PlannedCopy> strangers = work.copies().stream()
                .flatMap(id -> ledger.copy(id).stream())
                .filter(copy -> !copy.dish().equals(work.dish())
                        || carried
                                && !ledger.need(work)
                                        .filter(need -> need.setup().equals(copy.setup())
                                                && need.stage().equals(copy.stage()))
                                        .isPresent())
                .toList();
        breaches.add(
                Rule.BATCH,
                strangers.size(),
                () -> work.step() + " of " + ledger.dish(work).map(Dish::name).orElse(work.dish()) + " at "
                        + ledger.words().clock(work.span().start())
                        + (carried ? " serves another dish, stage or setup: " : " serves another dish: ")
                        + Words.list(strangers.stream().map(ledger::name).toList()));
    }
}
