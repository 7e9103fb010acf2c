package platecall.safety;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import platecall.day.Allergens;

/** Allergens that the law has declared, as data; nobody's allergy ends at a list. */
public enum DeclaredAllergens {
    /** The nine of 21 USC 321(qq). */
    US,
    /** The fourteen of Regulation (EU) No 1169/2011, Annex II, kept in the UK. */
    EU;

    /** Above this many mg/kg or mg/l, counted as SO2, sulphites are declared. */
    public static final double SULPHITES_MG_PER_KG = 10;

    /** The list, in the order of the law. */
    public List<String> list() {
        return SourcedCsv.rows("declared.csv").stream()
                .filter(row -> row.get("list").equalsIgnoreCase(name()))
                .map(row -> row.get("allergen"))
                .toList();
    }

    /** Which of the list are meant by the words that an ingredient's row has. */
    public Set<String> among(List<String> words) {
        Set<String> found = new TreeSet<>();
        for (String allergen : list()) {
            if (words.stream().anyMatch(word -> Allergens.isA(word, allergen))) {
                found.add(allergen);
            }
        }
        return found;
    }

    /** Whether sulphites must be declared. */
    public static boolean sulphites(double milligramsPerKilogram) {
        return milligramsPerKilogram > SULPHITES_MG_PER_KG;
    }
}
