package platecall.audit;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import platecall.day.Diner;
import platecall.day.Ingredient;
import platecall.day.Need;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Rule;
import platecall.units.Moment;

/** Nobody eats what would harm: no allergen of his or hers, nothing that is only for looks. */
final class EaterRules {

    private EaterRules() {}

    static void check(Ledger ledger, Breaches breaches) {
        for (Need need : ledger.day().needs()) {
            if (need.eatenBy().isEmpty()) {
                continue;
            }
            List<PlannedCopy> made = ledger.madeFor(need);
            Optional<Moment> over = ledger.shotBy(made);
            String dish = ledger.name(need.dish()) + " for setup " + need.setup();
            breaches.add(
                    Rule.INEDIBLE,
                    ledger.dish(need).edible() ? 0 : made.size(),
                    over,
                    () -> dish + " is only for looks, but eaten by " + Words.list(need.eatenBy()));
            for (String eater : need.eatenBy()) {
                Set<String> harmful = harmful(ledger, need, eater);
                breaches.add(
                        Rule.ALLERGEN,
                        harmful.isEmpty() ? 0 : made.size(),
                        over,
                        () -> dish + " has " + Words.list(List.copyOf(harmful)) + ", which " + eater + " must not eat");
            }
        }
    }

    private static Set<String> harmful(Ledger ledger, Need need, String eater) {
        List<String> allergies = ledger.day().diner(eater).map(Diner::allergies).orElse(List.of());
        Set<String> harmful = new TreeSet<>();
        for (Ingredient ingredient : ledger.day().ingredientsIn(need.dish(), ledger.recipe(need))) {
            allergies.forEach(allergy -> harmful.addAll(ingredient.harmfulTo(allergy)));
        }
        return harmful;
    }
}
