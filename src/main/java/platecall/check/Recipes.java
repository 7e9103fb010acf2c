package platecall.check;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import platecall.day.Day;
import platecall.day.Dish;
import platecall.day.Need;
import platecall.day.Step;

/** The order of steps: dishes without any, circles, and waits that contradict each other. */
final class Recipes {

    private final Day day;
    private final Set<String> circular = new LinkedHashSet<>();
    private final Set<String> broken = new HashSet<>();
    private final Set<Step> wanted = new LinkedHashSet<>();

    Recipes(Day day) {
        this.day = day;
        Set<String> dishes = new LinkedHashSet<>();
        day.steps().forEach(step -> dishes.add(step.dish()));
        for (String dish : dishes) {
            List<Step> steps = day.stepsOf(dish);
            Set<String> ids = new HashSet<>();
            steps.forEach(step -> ids.add(step.id()));
            if (!circles(steps).isEmpty()) {
                circular.add(dish);
            }
            if (ids.size() < steps.size()
                    || steps.stream().anyMatch(step -> !ids.containsAll(step.predecessors()))
                    || circular.contains(dish)) {
                broken.add(dish);
            }
        }
        collectWanted();
    }

    /** A misspelt name must not hide what else is wrong: then every step counts that may have been meant. */
    private void collectWanted() {
        Map<List<String>, Boolean> done = new HashMap<>();
        for (Need need : day.needs()) {
            if (done.put(List.of(need.dish(), need.stage()), true) != null) {
                continue;
            }
            if (day.dish(need.dish()).isEmpty()) {
                wanted.addAll(day.steps());
            } else if (day.step(need.dish(), need.stage()).isEmpty()) {
                wanted.addAll(day.stepsOf(need.dish()));
            } else {
                wanted.addAll(day.stepsTo(need.dish(), need.stage()));
            }
        }
    }

    /** Whether a need leads to this step; those that lead to no need are no work. */
    boolean wanted(Step step) {
        return wanted.contains(step);
    }

    /** Whether the steps of a dish have an order and names of their own. */
    boolean sound(String dish) {
        return !broken.contains(dish);
    }

    void check(Findings found) {
        checkOrder(found);
        waits(found);
    }

    /** Dishes without steps, and circles. */
    void checkOrder(Findings found) {
        Set<String> needed = new HashSet<>();
        day.needs().forEach(need -> needed.add(need.dish()));
        for (int row = 0; row < day.dishes().size(); row++) {
            Dish dish = day.dishes().get(row);
            if (needed.contains(dish.id()) && day.stepsOf(dish.id()).isEmpty()) {
                found.add(
                        Sheet.DISHES,
                        row,
                        "dish",
                        dish.id(),
                        "has no steps",
                        "Maybe add a step to sheet steps that plates it, with its minutes.");
            }
        }
        circular.forEach(dish -> circles(day.stepsOf(dish)).forEach(circle -> tell(dish, circle, found)));
    }

    private void tell(String dish, List<String> circle, Findings found) {
        Step first = day.step(dish, circle.get(0)).orElseThrow();
        String before = circle.get(circle.size() - 1);
        found.add(
                Sheet.STEPS,
                day.steps().indexOf(first),
                first.after().contains(before) ? "after" : "any time after",
                before,
                "closes a circle: " + String.join(" -> ", circle) + " -> " + first.id(),
                circle.size() == 1
                        ? "Maybe leave it out."
                        : "Maybe " + first.id() + " need not wait for " + before + ".");
    }

    /** Circles that share no step, each as a chain in order of work that begins with its first step in the sheet. */
    private static List<List<String>> circles(List<Step> steps) {
        Map<String, List<String>> next = new LinkedHashMap<>();
        steps.forEach(step -> next.putIfAbsent(step.id(), new ArrayList<>()));
        for (Step step : steps) {
            for (String before : step.predecessors()) {
                if (next.containsKey(before)) {
                    next.get(before).add(step.id());
                }
            }
        }
        List<List<String>> circles = new ArrayList<>();
        Set<String> told = new HashSet<>();
        for (String first : next.keySet()) {
            if (told.contains(first)) {
                continue;
            }
            List<String> circle = shortestBack(first, next, told);
            if (!circle.isEmpty()) {
                circles.add(circle);
                told.addAll(circle);
            }
        }
        return circles;
    }

    private static List<String> shortestBack(String first, Map<String, List<String>> next, Set<String> told) {
        Map<String, String> cameFrom = new HashMap<>();
        Deque<String> open = new ArrayDeque<>(List.of(first));
        while (!open.isEmpty()) {
            String at = open.poll();
            for (String to : next.get(at)) {
                if (to.equals(first)) {
                    List<String> back = new ArrayList<>();
                    for (String step = at; !step.equals(first); step = cameFrom.get(step)) {
                        back.add(step);
                    }
                    back.add(first);
                    Collections.reverse(back);
                    return back;
                }
                if (!told.contains(to) && cameFrom.putIfAbsent(to, at) == null) {
                    open.add(to);
                }
            }
        }
        return List.of();
    }

    private void waits(Findings found) {
        Set<List<String>> done = new HashSet<>();
        for (Need need : day.needs()) {
            if (sound(need.dish()) && done.add(List.of(need.dish(), need.stage()))) {
                waits(day.stepsTo(need.dish(), need.stage()), found);
            }
        }
    }

    /**
     * {@code to} is at least {@code minutes} after {@code from}: the start of a step is twice its place, its end one more, as it takes
     * longer with more copies.
     */
    private record Lag(int from, int to, long minutes, boolean most) {}

    /** Longest paths; if they never settle, some most wait is shorter than what lies between. */
    private void waits(List<Step> steps, Findings found) {
        List<Lag> lags = lags(steps);
        long[] at = new long[2 * steps.size()];
        Lag[] because = new Lag[at.length];
        int moved = -1;
        for (int round = 0; round <= at.length; round++) {
            moved = -1;
            for (Lag lag : lags) {
                if (at[lag.from()] + lag.minutes() > at[lag.to()]) {
                    at[lag.to()] = at[lag.from()] + lag.minutes();
                    because[lag.to()] = lag;
                    moved = lag.to();
                }
            }
            if (moved < 0) {
                return;
            }
        }
        for (int i = 0; i < at.length; i++) {
            moved = because[moved].from();
        }
        long missing = 0;
        List<Lag> limits = new ArrayList<>();
        int on = moved;
        do {
            missing += because[on].minutes();
            if (because[on].most()) {
                limits.add(because[on]);
            }
            on = because[on].from();
        } while (on != moved);
        Lag limit = limits.stream()
                .min(java.util.Comparator.comparingInt(lag -> day.steps().indexOf(steps.get(lag.from() / 2))))
                .orElseThrow();
        Step bound = steps.get(limit.from() / 2);
        int most = bound.mostWait().orElseThrow();
        found.add(
                Sheet.STEPS,
                day.steps().indexOf(bound),
                "most wait",
                String.valueOf(most),
                limits.size() == 1
                        ? "can't be kept: between " + steps.get(limit.to() / 2).id() + " and " + bound.id() + " lie "
                                + Wording.minutes(most + missing) + " of other steps and waits"
                        : "can't be kept beside the other most waits of dish " + bound.dish() + ": "
                                + Wording.minutes(missing) + " are missing",
                limits.size() == 1
                        ? "Maybe " + (most + missing) + ", or put the other step before "
                                + steps.get(limit.to() / 2).id() + "."
                        : "Maybe " + (most + missing) + ".");
    }

    private static List<Lag> lags(List<Step> steps) {
        Map<String, Integer> indexOf = new HashMap<>();
        List<Lag> lags = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            lags.add(new Lag(2 * i, 2 * i + 1, step.minutesFor(1), false));
            lags.add(new Lag(2 * i + 1, 2 * i, -step.minutesFor(step.batchMost().orElse(1)), false));
            for (String before : step.predecessors()) {
                int end = 2 * indexOf.get(before) + 1;
                boolean timed = step.after().contains(before);
                lags.add(new Lag(end, 2 * i, timed ? step.leastWait() : 0, false));
                if (timed && step.mostWait().isPresent()) {
                    lags.add(new Lag(2 * i, end, -step.mostWait().get(), true));
                }
            }
            indexOf.put(step.id(), i);
        }
        return lags;
    }
}
