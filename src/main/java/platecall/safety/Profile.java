package platecall.safety;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;

/**
 * A set of published food-safety limits under one name, from the data files of this package; each number keeps its edition
 * and source. Local codes decide which one holds.
 */
public final class Profile {

    private static final Map<String, Profile> PROFILES = new LinkedHashMap<>();

    static {
        for (CSVRecord row : SourcedCsv.rows("profiles.csv")) {
            PROFILES.put(row.get("profile"), new Profile(row));
        }
    }

    private final String name;
    private final List<String> also;
    private final String title;
    private final String edition;
    private final Map<String, Limit> limits = new LinkedHashMap<>();
    private final List<Cooking> cooking;
    private final List<Cooling.Stage> cooling;

    private Profile(CSVRecord row) {
        name = row.get("profile");
        also = SourcedCsv.list(row.get("also"));
        title = row.get("title");
        edition = row.get("edition");
        for (CSVRecord limit : SourcedCsv.rows("limits.csv", name)) {
            limits.put(limit.get("limit"), Limit.of(limit, "value", limit.get("unit")));
        }
        cooking = Cooking.rowsOf(name);
        cooling = Cooling.stagesOf(name);
    }

    /** The profile that the day sheet means; case, full stops and spaces around it don't matter. */
    public static Optional<Profile> named(String word) {
        String plain = word.strip().toLowerCase(Locale.ROOT).replace(".", "");
        return PROFILES.values().stream()
                .filter(profile -> profile.name.equals(plain) || profile.also.contains(plain))
                .findFirst();
    }

    /** Every name that {@link #named} knows. */
    public static List<String> names() {
        List<String> names = new ArrayList<>();
        for (Profile profile : PROFILES.values()) {
            names.add(profile.name);
            names.addAll(profile.also);
        }
        return List.copyOf(names);
    }

    /** The name that each profile has here. */
    public static List<String> mainNames() {
        return List.copyOf(PROFILES.keySet());
    }

    /** {@code fda-2022}, as in the data files. */
    public String name() {
        return name;
    }

    /** {@code FDA Food Code (2022)} */
    public String title() {
        return title + " (" + edition + ")";
    }

    /** Whether it is an edition of the FDA Food Code, whose other sections and companion tables count, too. */
    public boolean isFoodCode() {
        return name.startsWith("fda-");
    }

    /** A limit by its name in limits.csv; empty if this profile has none. */
    public Optional<Limit> limit(String limit) {
        return Optional.ofNullable(limits.get(limit));
    }

    /** Each limit by its name in limits.csv, in that order. */
    public Map<String, Limit> limits() {
        return Collections.unmodifiableMap(limits);
    }

    /** Core temperatures and times for every kind of food; one of those of its kind is enough. */
    public List<Cooking> cooking() {
        return cooking;
    }

    private Limit demanded(String limit) {
        return limit(limit).orElseThrow(() -> new IllegalStateException(name + " has no limit [" + limit + "]"));
    }

    /** Least core temperature of food held hot, in degrees C. */
    public Limit hot() {
        return demanded("hot");
    }

    /** Highest temperature of food held cold, in degrees C. */
    public Limit cold() {
        return demanded("cold");
    }

    /** Minutes that food may stand between the limits after it was hot. */
    public Limit outHot() {
        return demanded("out hot");
    }

    /** Minutes that food may stand between the limits after it was cold. */
    public Limit outCold() {
        return demanded("out cold");
    }

    /**
     * Whether food may stand outside the limits for service or on display. The {@link SafetyClock} counts no times: a plan
     * has each copy on set once, without a break, and time out while it is prepared is no service.
     *
     * @param warm whether it was hot before
     * @param minutes outside them this time, 0 or more
     * @param earlierTimes how often it stood there before, 0 or more; counts only where the profile limits it
     */
    public boolean mayStandOut(boolean warm, double minutes, int earlierTimes) {
        return (warm ? outHot() : outCold()).allows(minutes)
                && limit("occasions")
                        .map(times -> times.allows(earlierTimes + 1))
                        .orElse(true);
    }

    /** Whether a core temperature is hot enough to hold food; roasts from the whole-roast table may be cooler. */
    public boolean holdsHot(double celsius, boolean roast) {
        return (roast ? limit("roast hot").orElse(hot()) : hot()).allows(celsius);
    }

    /** Whether food at {@code celsius} is cold enough to be held. */
    public boolean holdsCold(double celsius) {
        return cold().allows(celsius);
    }

    /** Whether the air around raw shell eggs is cold enough; without a limit of its own as for other food. */
    public boolean holdsShellEggs(double airCelsius) {
        return limit("shell egg air").orElse(cold()).allows(airCelsius);
    }

    /** Core temperatures and times for a kind of food; one of them is enough. */
    public List<Cooking> cooking(FoodKind kind) {
        return cooking.stream().filter(row -> row.kinds().contains(kind)).toList();
    }

    /** Whether a core of {@code celsius}, held for {@code seconds}, cooks a kind of food. */
    public boolean cooks(FoodKind kind, double celsius, double seconds) {
        return cooking(kind).stream().anyMatch(row -> row.reached(celsius, seconds));
    }

    /** Core temperatures and times of which one is enough to heat up again what was cooked; the profile's own comes first. */
    public List<Cooking> reheating() {
        Limit celsius = demanded("reheat");
        Cooking own = new Cooking(
                Set.of(FoodKind.values()),
                celsius.value(),
                (int) demanded("reheat seconds").value(),
                celsius.edition(),
                celsius.source());
        // a rule that stands in the table of what cooks every kind has the other rows as its equivalents
        List<Cooking> everyKind =
                cooking.stream().filter(row -> row.kinds().equals(own.kinds())).toList();
        boolean inTable =
                everyKind.stream().anyMatch(row -> row.celsius() == own.celsius() && row.seconds() == own.seconds());
        return inTable ? Stream.concat(Stream.of(own), everyKind.stream()).toList() : List.of(own);
    }

    /** Whether a core of {@code celsius}, held for {@code seconds}, is enough to heat up again what was cooked. */
    public boolean reheats(double celsius, double seconds) {
        return reheating().stream().anyMatch(row -> row.reached(celsius, seconds));
    }

    /** The cooling stages, in order; none where no number is published. */
    public List<Cooling.Stage> cooling() {
        return cooling;
    }
}
