package platecall.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;

/** Names copies for readers: {@code hero 1-3, 5}, with the stage where a setup wants a dish at several. */
final class Copies {

    private final Map<String, PlannedCopy> byId = new HashMap<>();
    private final Set<String> severalStages = new HashSet<>();
    private final Map<String, Integer> setupRank = new HashMap<>();

    Copies(Plan plan) {
        Map<String, String> stageOf = new HashMap<>();
        for (PlannedCopy copy : plan.copies()) {
            byId.put(copy.id(), copy);
            setupRank.putIfAbsent(copy.setup(), setupRank.size());
            String before = stageOf.putIfAbsent(kin(copy), copy.stage());
            if (before != null && !before.equals(copy.stage())) {
                severalStages.add(kin(copy));
            }
        }
    }

    private static String kin(PlannedCopy copy) {
        return copy.setup() + "\n" + copy.dish() + "\n" + copy.part();
    }

    private String label(PlannedCopy copy) {
        return severalStages.contains(kin(copy)) ? copy.part() + " (" + copy.stage() + ")" : copy.part();
    }

    /** {@code hero 2}. */
    String name(PlannedCopy copy) {
        return label(copy) + " " + copy.number();
    }

    PlannedCopy copy(String id) {
        PlannedCopy copy = byId.get(id);
        if (copy == null) {
            throw new IllegalArgumentException(
                    "the plan's work names a copy that the plan does not have: [" + id + "]");
        }
        return copy;
    }

    /** The setups that the copies are for, in the plan's order. */
    List<String> setups(List<String> ids) {
        return ids.stream()
                .map(id -> copy(id).setup())
                .distinct()
                .sorted(java.util.Comparator.comparing(setupRank::get))
                .toList();
    }

    /** {@code hero 1-3, stand-in 1}; with more than one setup {@code setup S1 hero 1-3; setup S4 hero 1}. */
    String names(List<String> ids) {
        return names(ids, setups(ids).size() > 1);
    }

    /** The same with or without their setups. */
    String names(List<String> ids, boolean withSetups) {
        List<String> setups = setups(ids);
        List<String> groups = new ArrayList<>();
        for (String setup : setups) {
            Map<String, TreeSet<Integer>> numbers = new LinkedHashMap<>();
            for (String id : ids) {
                PlannedCopy copy = copy(id);
                if (copy.setup().equals(setup)) {
                    numbers.computeIfAbsent(label(copy), key -> new TreeSet<>()).add(copy.number());
                }
            }
            List<String> parts = new ArrayList<>();
            numbers.forEach((label, of) -> parts.add(label + " " + ranges(of)));
            groups.add((withSetups ? "setup " + setup + " " : "") + String.join(", ", parts));
        }
        return String.join("; ", groups);
    }

    /** {@code 1-3, 5}. */
    private static String ranges(TreeSet<Integer> numbers) {
        List<String> ranges = new ArrayList<>();
        Integer from = null;
        for (Integer number : numbers) {
            if (from == null) {
                from = number;
            }
            if (!numbers.contains(number + 1)) {
                ranges.add(from.equals(number) ? "" + number : from + "-" + number);
                from = null;
            }
        }
        return String.join(", ", ranges);
    }
}
