package platecall.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Absence;
import platecall.day.Happening;
import platecall.day.Release;
import platecall.day.Spelling;
import platecall.day.StationUse;
import platecall.day.Use;
import platecall.units.Money;

/** The kinds of values that stand in cells, times apart; see {@link Clock} for those. */
final class Grammars {

    private static final int LONGEST_NAME = 100;
    private static final int LONGEST_TEXT = 1000;
    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]{1,15}(\\.[0-9]{1,400})?");
    private static final Pattern COMMA_NUMBER = Pattern.compile("[+-]?[0-9]{1,15},[0-9]{1,400}");
    private static final Pattern COMMA_MEASURE = Pattern.compile("^([+-]?[0-9]{1,15}),([0-9]{1,400})(?=[^0-9,]*$)");
    private static final Pattern WITH_UNIT = Pattern.compile(
            "([\\p{L}\\p{Sc}~]{0,9}\\s*)([0-9]{1,9}(?:[.,][0-9]{1,9})?)(\\s*[\\p{L}\\p{Sc}°%′'. ]{0,12})");
    private static final Pattern HOURS_AND_MINUTES =
            Pattern.compile("([0-9]{1,2})\\s*(?::|h|hrs?|hours?)\\s*([0-5]?[0-9])(?:\\s*m(?:in)?(?:utes)?)?");
    private static final Pattern THOUSANDS = Pattern.compile("[^0-9]*[1-9][0-9]{0,2}(,[0-9]{3})+(\\.[0-9]+)?[^0-9]*");
    /** With points between thousands and a comma before decimals. */
    private static final Pattern POINTED = Pattern.compile("[1-9][0-9]{0,2}(\\.[0-9]{3})+,[0-9]{1,9}");

    private static final Pattern WITHOUT_ZERO = Pattern.compile("\\.[0-9]{1,9}");
    /** Two numbers to choose from: 5 or 6, 5-6. */
    private static final Pattern CHOICE =
            Pattern.compile("([0-9]{1,4})\\s*(?:or|to|-|–|/)\\s*([0-9]{1,4})", Pattern.CASE_INSENSITIVE);

    private static final Pattern WALK_PARTS = Pattern.compile("([^:|\\n]+?)\\s*:\\s*([+-]?[0-9]{1,9}(?:\\.0{1,400})?)");
    private static final Pattern WALK_MEANT =
            Pattern.compile("(?:([^:=;|]+?)\\s*[:=]|([^:=;|0-9]+?)\\s*[-–]?)\\s*([0-9]{1,4}(?:[.,][0-9]{1,4})?)"
                    + "(?:\\s*m(?:in(?:utes?)?)?)?\\.?");
    /** What stands between two walks; a comma with a digit right after it may be a decimal one. */
    private static final Pattern BETWEEN_WALKS = Pattern.compile("[;/|\\n]|,(?![0-9])");

    private static final Pattern COMMA_BETWEEN = Pattern.compile(":\\s*[0-9]+\\s*,.*:");
    /** What people write for a zone, common usage; not exact, so only offered. */
    private static final Map<String, String> USUAL_ZONES = Map.ofEntries(
            Map.entry("EST|EDT|ET|EASTERN|NYC|NEW YORK CITY", "America/New_York"),
            Map.entry("CST|CDT|CT|CENTRAL", "America/Chicago"),
            Map.entry("MST|MDT|MT|MOUNTAIN", "America/Denver"),
            Map.entry("PST|PDT|PT|PACIFIC|LA", "America/Los_Angeles"),
            Map.entry("BST|UK", "Europe/London"),
            Map.entry("CEST", "Europe/Berlin"));

    /** A number of hours alone, as -1, is no zone that anybody means. */
    private static final Pattern BARE_OFFSET = Pattern.compile("[+-][0-9]{1,2}");

    /** What may stand around a zone's usual name, or behind a city's. */
    private static final Pattern AROUND_ZONE = Pattern.compile("^US[ /]|( (STANDARD|DAYLIGHT))? TIME$|,.*$|[ /]US$");

    private static final String NUMBER_NOUN = "a number";
    private static final String SHARE_NOUN = "a share";
    private static final String MINUTES_NOUN = "a whole number of minutes";
    private static final String SECONDS_NOUN = "a whole number of seconds";
    private static final String CELSIUS_NOUN = "a whole number of degrees Celsius";
    private static final String WALK_NOUN = "a place and the minutes to walk there";
    private static final Pattern PERCENT_IN_WORDS =
            Pattern.compile("([0-9]{1,9}(?:[.,][0-9]{1,9})?)\\s*(?:per\\s?cent|pct)\\.?", Pattern.CASE_INSENSITIVE);
    private static final Pattern LASTS = Pattern.compile("lasts ([0-9]{1,6}) takes?");
    private static final Pattern TOPPED_UP = Pattern.compile("topped up in ([0-9]{1,6})( min(utes?)?)?");
    private static final Pattern AFTER_SETUP = Pattern.compile("after setup (.+)", Pattern.CASE_INSENSITIVE);
    private static final Pattern AFTER =
            Pattern.compile("after (?:set-?up|scene|shot)?\\s*(.+)", Pattern.CASE_INSENSITIVE);
    private static final Pattern ON_SETUP = Pattern.compile("setup (.+)", Pattern.CASE_INSENSITIVE);

    /** A setup's number without the word, as 7 or 12A; it may be an hour as well. */
    private static final Pattern BARE_SETUP = Pattern.compile("[0-9]{1,3}[A-Ga-g]?");

    private static final Pattern HALF_DAY =
            Pattern.compile("[0-9]{1,2}:[0-9]{2}\\s*[ap]\\.?m\\.?", Pattern.CASE_INSENSITIVE);

    private static final Pattern SEVERAL = Pattern.compile("[0-9]+(\\s*([-–,;&+/]|and|to)\\s*[0-9]+)+");

    private Grammars() {}

    static final Grammar<String> TEXT =
            Grammar.text("text", "soup", (text, frame) -> oneLine(text, LONGEST_TEXT), (value, frame) -> value);

    /** A word, or a number with or without its unit, kept as text with a point in it. */
    static final Grammar<String> MEASURE = Grammar.text(
            TEXT.noun(),
            "75",
            (text, frame) -> oneLine(
                    frame.decimalComma() ? COMMA_MEASURE.matcher(text).replaceFirst("$1.$2") : text, LONGEST_TEXT),
            (value, frame) -> value);

    /** A name that may stand in a list. */
    static final Grammar<String> NAME =
            Grammar.text("a name", "soup", (text, frame) -> name(text, ";"), (value, frame) -> value);

    /** A name for a step, which can't be the word for the way to camera. */
    static final Grammar<String> STEP_NAME =
            Grammar.text("a name", "simmer", (text, frame) -> stepName(text), (value, frame) -> value);

    /** A name that may stand before a colon, or between bars. */
    static final Grammar<String> STATION_NAME =
            Grammar.text("a name", "hob", (text, frame) -> name(text, ";|:"), (value, frame) -> value);

    static final Grammar<Integer> WHOLE = Grammar.number(
            "a whole number",
            "3",
            Grammar.Json.WHOLE_NUMBER,
            (text, frame) -> wholeNumber(text, "a whole number", ""),
            value -> Integer.toString(value));

    /** One copy's number; several would be several copies, each with a row. */
    static final Grammar<Integer> COPY_NUMBER = Grammar.number(
            "a copy's number",
            "3",
            Grammar.Json.WHOLE_NUMBER,
            (text, frame) -> copyNumber(text),
            value -> Integer.toString(value));

    static final Grammar<Integer> MINUTES = Grammar.number(
            MINUTES_NOUN,
            "12",
            Grammar.Json.WHOLE_NUMBER,
            (text, frame) -> wholeNumber(text, MINUTES_NOUN, ""),
            value -> Integer.toString(value));

    static final Grammar<Integer> SECONDS = Grammar.number(
            SECONDS_NOUN,
            "15",
            Grammar.Json.WHOLE_NUMBER,
            (text, frame) -> wholeNumber(text, SECONDS_NOUN, ""),
            value -> Integer.toString(value));

    static final Grammar<Integer> CELSIUS = Grammar.number(
            CELSIUS_NOUN,
            "180",
            Grammar.Json.WHOLE_NUMBER,
            (text, frame) -> wholeNumber(text, CELSIUS_NOUN, ""),
            value -> Integer.toString(value));

    static final Grammar<Double> DECIMAL = Grammar.number(
            NUMBER_NOUN,
            "1.5",
            Grammar.Json.NUMBER,
            (text, frame) -> decimal(text, frame, NUMBER_NOUN, "").doubleValue(),
            value -> plain(BigDecimal.valueOf(value)));

    /** A percentage that is kept as one: {@code 45} and {@code 45 %} are the same. */
    static final Grammar<Double> PERCENT = Grammar.number(
            "a percentage",
            "45",
            Grammar.Json.NUMBER,
            (text, frame) ->
                    decimal(withoutPercent(text), frame, "a percentage", "").doubleValue(),
            value -> plain(BigDecimal.valueOf(value)));

    /** A share of one: {@code 95 %} and {@code 0.95} are the same. */
    static final Grammar<Double> SHARE = Grammar.number(
            SHARE_NOUN,
            "95 %",
            Grammar.Json.NUMBER,
            Grammars::share,
            value -> plain(BigDecimal.valueOf(value).movePointRight(2)) + " %");

    static final Grammar<Money> MONEY =
            Grammar.number("an amount of money", "12.50", Grammar.Json.NUMBER, Grammars::money, Money::toString);

    static final Grammar<Boolean> YES_NO = new Grammar<>(
            "yes or no",
            "yes",
            Grammar.Json.YES_NO,
            List.of("yes", "no"),
            "",
            (text, frame) -> yesOrNo(text),
            (value, frame) -> value ? "yes" : "no");

    static final Grammar<ZoneId> ZONE =
            Grammar.text("a time zone", "Europe/Berlin", (text, frame) -> zone(text), (value, frame) -> value.getId());

    static final Grammar<List<String>> NAMES = list(NAME);

    static final Grammar<Use> USE = Grammar.text(
                    "a way in which takes use up a plate",
                    "fresh; or lasts 3 takes; or topped up in 4 min",
                    (text, frame) -> use(text),
                    (value, frame) -> value instanceof Use.LastsTakes lasts
                            ? "lasts " + lasts.takes() + (lasts.takes() == 1 ? " take" : " takes")
                            : value instanceof Use.ToppedUp toppedUp
                                    ? "topped up in " + toppedUp.minutes() + " min"
                                    : "fresh")
            .matching("^(fresh|lasts [0-9]+ takes?|topped up in [0-9]+( min(utes?)?)?)$");

    static final Grammar<Release> RELEASE = Grammar.text(
            "a release",
            "at end; or 18:30; or after setup 5",
            Grammars::release,
            (value, frame) -> value instanceof Release.At at
                    ? Clock.MOMENT.writer().apply(at.moment(), frame)
                    : value instanceof Release.After after ? "after setup " + after.setup() : "at end");

    static final Grammar<List<Absence>> ABSENCES = list(Grammar.text(
            "a setup or a span of time",
            "setup 3; or 13:00-14:00",
            Grammars::absence,
            (value, frame) -> value instanceof Absence.HandDouble handDouble
                    ? "setup " + handDouble.setup()
                    : Clock.SPAN.writer().apply(((Absence.During) value).span(), frame)));

    static final Grammar<List<StationUse>> STATION_USES = list(Grammar.text(
            "a station and how much of it",
            "hob:1; or oven a|oven b:1",
            (text, frame) -> stationUse(text),
            (value, frame) -> String.join("|", value.anyOf()) + ":" + value.units()));

    static final Grammar<Map<String, Integer>> WALK = walk();

    /** One of the words that stand for {@code values}. */
    static <V> Grammar<V> oneOf(String noun, List<V> values, Function<V, String> word) {
        Map<String, V> byWord = new LinkedHashMap<>();
        values.forEach(value -> byWord.put(unhyphened(word.apply(value)), value));
        List<String> words = values.stream().map(word).toList();
        return new Grammar<>(
                noun,
                words.get(0),
                Grammar.Json.TEXT,
                words,
                "",
                (text, frame) -> {
                    V value = byWord.get(unhyphened(text));
                    if (value == null) {
                        throw new Unreadable(
                                "is not " + noun,
                                Spelling.nearest(text, words)
                                        .map(near -> "Maybe " + near + ".")
                                        .orElse("Maybe one of " + String.join(", ", words) + "."));
                    }
                    return value;
                },
                (value, frame) -> word.apply(value));
    }

    private static String unhyphened(String text) {
        return Names.normal(text).replace('-', ' ');
    }

    /** Several of {@code each}, separated by semicolons. */
    static <V> Grammar<List<V>> list(Grammar<V> each) {
        return new Grammar<>(
                each.noun(),
                each.example(),
                Grammar.Json.LIST,
                List.of(),
                each.pattern(),
                (text, frame) -> elements(text)
                        .map(element -> each.reader().apply(element, frame))
                        .toList(),
                (values, frame) -> values.stream()
                        .map(value -> each.writer().apply(value, frame))
                        .collect(Collectors.joining("; ")));
    }

    private static Stream<String> elements(String text) {
        return Stream.of(text.split(";")).map(String::strip).filter(element -> !element.isEmpty());
    }

    private static String oneLine(String text, int longest) {
        if (text.length() > longest) {
            throw new Unreadable("is longer than " + longest + " letters", "");
        }
        if (text.indexOf('\n') >= 0) {
            throw new Unreadable("has a line break in it", "Maybe write it in one line.");
        }
        return text;
    }

    private static String name(String text, String forbidden) {
        oneLine(text, LONGEST_NAME);
        for (char c : forbidden.toCharArray()) {
            if (text.indexOf(c) >= 0) {
                throw new Unreadable(
                        "can't be a name, because " + c + " has a meaning of its own",
                        "Maybe leave out the " + c + ".");
            }
        }
        return text;
    }

    private static String stepName(String text) {
        if (Names.normal(text).equals(Happening.CARRY)) {
            throw new Unreadable(
                    "can't be a step, because that is what the way to camera is called",
                    "Maybe bring out; or leave it out, that way is planned by the walk in sheet places.");
        }
        return name(text, ";");
    }

    private static int copyNumber(String text) {
        if (SEVERAL.matcher(text.strip()).matches()) {
            throw new Unreadable("is more than one copy", "Maybe a row for each of them, with its number alone.");
        }
        return wholeNumber(text, "a copy's number", "");
    }

    /** @param before what stands in the cell before the number, to be kept in what is offered */
    private static int wholeNumber(String text, String noun, String before) {
        if (NUMBER.matcher(text).matches()) {
            try {
                return new BigDecimal(text).intValueExact();
            } catch (ArithmeticException fractionOrTooLarge) {
                BigDecimal rounded = new BigDecimal(text).setScale(0, RoundingMode.UP);
                if (rounded.abs().compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) > 0) {
                    throw new Unreadable("is not " + noun + " below 2 billion", "Maybe a smaller one.");
                }
                throw new Unreadable("is not " + noun, "Maybe " + before + plain(rounded) + ".");
            }
        }
        Matcher choice = CHOICE.matcher(text);
        Optional<BigDecimal> meant = choice.matches()
                ? Optional.of(new BigDecimal(choice.group(2)))
                : meant(text, noun).map(number -> number.setScale(0, RoundingMode.UP));
        String orElse = before.isEmpty() ? "" : "Maybe digits after the colon.";
        throw new Unreadable("is not " + noun, meant.isPresent() ? maybe(before, meant, "") : orElse);
    }

    /** @param after what stands in the cell after the number, to be kept in what is offered */
    private static BigDecimal decimal(String text, Frame frame, String noun, String after) {
        String written = text;
        if (COMMA_NUMBER.matcher(text).matches()) {
            written = text.replace(',', '.');
            if (!frame.decimalComma()) {
                String meant = THOUSANDS.matcher(text).matches() ? text.replace(",", "") : written;
                throw new Unreadable("is not " + noun, "Maybe " + meant + after + ".");
            }
        }
        if (POINTED.matcher(text).matches()) {
            throw new Unreadable(
                    "is not " + noun, "Maybe " + text.replace(".", "").replace(',', '.') + after + ".");
        }
        if (WITHOUT_ZERO.matcher(written).matches()) {
            throw new Unreadable("is not " + noun, "Maybe 0" + written + after + ".");
        }
        if (!NUMBER.matcher(written).matches()) {
            throw new Unreadable("is not " + noun, maybe("", meant(text, noun), after));
        }
        return new BigDecimal(written);
    }

    /** The way out with the number that was meant; none if no number was, so that {@link Column} says what goes there. */
    private static String maybe(String before, Optional<BigDecimal> meant, String after) {
        return meant.map(number -> "Maybe " + before + plain(number) + after + ".")
                .orElse("");
    }

    /** The number that was meant by one with a unit written to it, in the unit of the cell. */
    private static Optional<BigDecimal> meant(String text, String noun) {
        boolean minutes = noun.equals(MINUTES_NOUN);
        boolean celsius = noun.equals(CELSIUS_NOUN);
        Matcher clock = HOURS_AND_MINUTES.matcher(text);
        if (minutes && clock.matches()) {
            return Optional.of(
                    new BigDecimal(60 * Integer.parseInt(clock.group(1)) + Integer.parseInt(clock.group(2))));
        }
        Matcher matcher = WITH_UNIT.matcher(THOUSANDS.matcher(text).matches() ? text.replace(",", "") : text);
        if (!matcher.matches() || noun.equals(SHARE_NOUN)) {
            return Optional.empty();
        }
        BigDecimal number = new BigDecimal(matcher.group(2).replace(',', '.'));
        String unit = (matcher.group(1) + matcher.group(3)).strip().toLowerCase(Locale.ROOT);
        if (minutes && unit.matches("h|hrs?|hours?")) {
            number = number.multiply(BigDecimal.valueOf(60));
        } else if (minutes && unit.matches("s|secs?|seconds?")) {
            number = number.divide(BigDecimal.valueOf(60), 0, RoundingMode.UP);
        } else if (noun.equals(SECONDS_NOUN) && unit.matches("m|mins?|minutes?")) {
            number = number.multiply(BigDecimal.valueOf(60));
        } else if ((celsius || noun.equals(NUMBER_NOUN)) && unit.matches("(°|deg|degrees )?\\s*f|fahrenheit")) {
            number = number.subtract(BigDecimal.valueOf(32)).divide(new BigDecimal("1.8"), 0, RoundingMode.HALF_UP);
        }
        return Optional.of(number);
    }

    private static String withoutPercent(String text) {
        return text.endsWith("%") ? text.substring(0, text.length() - 1).strip() : text;
    }

    private static double share(String text, Frame frame) {
        Matcher inWords = PERCENT_IN_WORDS.matcher(text);
        if (inWords.matches()) {
            throw new Unreadable("is not a share", "Maybe " + inWords.group(1).replace(',', '.') + " %.");
        }
        BigDecimal number = decimal(withoutPercent(text), frame, SHARE_NOUN, text.endsWith("%") ? " %" : "");
        if (text.endsWith("%")) {
            return number.movePointLeft(2).doubleValue();
        }
        if (number.compareTo(BigDecimal.ONE) > 0) {
            throw new Unreadable("is a share above 1", "Maybe " + plain(number) + " %.");
        }
        return number.doubleValue();
    }

    private static Money money(String text, Frame frame) {
        BigDecimal amount = decimal(text, frame, "an amount of money", "");
        if (amount.stripTrailingZeros().scale() > 2) {
            throw new Unreadable(
                    "is not an amount of money: it has more than two decimals",
                    "Maybe " + amount.setScale(2, RoundingMode.HALF_UP).toPlainString()
                            + (amount.scale() == 3 ? ", or " + plain(amount.movePointRight(3)) : "") + ".");
        }
        if (amount.signum() < 0 || amount.compareTo(BigDecimal.valueOf(1_000_000_000)) > 0) {
            boolean negative = amount.signum() < 0;
            throw new Unreadable(
                    "is not an amount of money from 0 to 1000000000",
                    negative ? "Maybe " + plain(amount.negate()) + "." : "Maybe a smaller one.");
        }
        return Money.of(amount);
    }

    /** Without zeros at the end and without an exponent. */
    static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    private static boolean yesOrNo(String text) {
        switch (text.toLowerCase(Locale.ROOT)) {
            case "yes", "y", "true":
                return true;
            case "no", "n", "false":
                return false;
            default:
                throw new Unreadable("is neither yes nor no", "Maybe yes, or no.");
        }
    }

    private static ZoneId zone(String text) {
        try {
            ZoneId zone = ZoneId.of(text);
            boolean wholeMinutes = Stream.of("2000-01-01", "2000-07-01")
                    .map(LocalDate::parse)
                    .allMatch(date -> date.atStartOfDay(zone).getOffset().getTotalSeconds() % 60 == 0);
            if (wholeMinutes && !BARE_OFFSET.matcher(text).matches()) {
                return zone;
            }
        } catch (DateTimeException unknown) {
            // told below, with the nearest name
        }
        throw new Unreadable(
                "is not a time zone",
                zoneMeant(text)
                        .map(near -> "Maybe " + near + ".")
                        .orElse("Maybe a continent and a city, as in Europe/Berlin or America/New_York."));
    }

    /** The zone of a usual word, of a city, or of a name that is nearly one. */
    private static Optional<String> zoneMeant(String text) {
        String word = AROUND_ZONE.matcher(text.toUpperCase(Locale.ROOT)).replaceAll("");
        List<String> zones = ZoneId.getAvailableZoneIds().stream().sorted().toList();
        return USUAL_ZONES.entrySet().stream()
                .filter(usual -> word.matches(usual.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .or(() -> zones.stream()
                        .filter(zone -> zone.substring(zone.lastIndexOf('/') + 1)
                                .replace('_', ' ')
                                .equalsIgnoreCase(word.replace('_', ' ')))
                        .findFirst())
                .or(() -> Spelling.nearest(text, zones));
    }

    private static Use use(String text) {
        String words = Names.normal(text);
        Matcher lasts = LASTS.matcher(words);
        if (lasts.matches()) {
            return new Use.LastsTakes(Integer.parseInt(lasts.group(1)));
        }
        Matcher toppedUp = TOPPED_UP.matcher(words);
        if (toppedUp.matches()) {
            return new Use.ToppedUp(Integer.parseInt(toppedUp.group(1)));
        }
        if (words.equals("fresh")) {
            return new Use.FreshEachTake();
        }
        throw new Unreadable(
                "does not say how takes use up a plate", "Maybe fresh, lasts 3 takes, or topped up in 4 min.");
    }

    private static Release release(String text, Frame frame) {
        if (Names.normal(text).equals("at end")) {
            return new Release.AtEnd();
        }
        Matcher after = AFTER_SETUP.matcher(text);
        if (after.matches()) {
            return new Release.After(name(after.group(1).strip(), ";"));
        }
        if (!Clock.looksLikeTime(text)) {
            Matcher brief = AFTER.matcher(text);
            throw new Unreadable(
                    "is not a release",
                    brief.matches()
                            ? "Maybe after setup " + brief.group(1) + "."
                            : "Maybe at end, 18:30, or after setup 5.");
        }
        if (BARE_SETUP.matcher(text).matches()) {
            throw new Unreadable(
                    "is not a release",
                    "Maybe after setup " + text + ", or " + Clock.meant(text).orElse("18:30") + ".");
        }
        return new Release.At(Clock.MOMENT.reader().apply(text, frame));
    }

    private static Absence absence(String text, Frame frame) {
        Matcher onSetup = ON_SETUP.matcher(text);
        if (onSetup.matches()) {
            return new Absence.HandDouble(onSetup.group(1).strip());
        }
        if (!Clock.looksLikeTime(text)) {
            throw new Unreadable("is neither a setup nor a span of time", "Maybe setup 3, or 13:00-14:00.");
        }
        if (BARE_SETUP.matcher(text).matches()) {
            throw new Unreadable("is neither a setup nor a span of time", "Maybe setup " + text + ", or 13:00-14:00.");
        }
        return new Absence.During(Clock.SPAN.reader().apply(text, frame));
    }

    private static StationUse stationUse(String text) {
        if (HALF_DAY.matcher(text).matches()) {
            throw new Unreadable("is a time, not a station", "Maybe hob:1, or oven a|oven b:1.");
        }
        if (COMMA_BETWEEN.matcher(text).find()) {
            throw new Unreadable("has a comma between stations", "Maybe " + text.replaceAll(",\\s*", "; ") + ".");
        }
        int colon = text.lastIndexOf(':');
        List<String> anyOf = new ArrayList<>();
        for (String name : (colon < 0 ? text : text.substring(0, colon)).split("\\|", -1)) {
            if (name.isBlank()) {
                throw new Unreadable("does not name a station", "Maybe hob:1, or oven a|oven b:1.");
            }
            anyOf.add(name(name.strip(), ";|:"));
        }
        String units = colon < 0 ? "1" : text.substring(colon + 1).strip();
        return new StationUse(anyOf, wholeNumber(units, "a station and how much of it", String.join("|", anyOf) + ":"));
    }

    private static Grammar<Map<String, Integer>> walk() {
        return new Grammar<>(
                WALK_NOUN,
                "set:4",
                Grammar.Json.LIST,
                List.of(),
                "",
                (text, frame) -> {
                    Map<String, Integer> minutes = new LinkedHashMap<>();
                    elements(text).forEach(element -> {
                        Matcher parts = WALK_PARTS.matcher(element);
                        if (!parts.matches()) {
                            throw new Unreadable("is not " + WALK_NOUN, walksMeant(text));
                        }
                        String place = name(parts.group(1), "");
                        int walk = new BigDecimal(parts.group(2)).intValueExact();
                        if (minutes.put(place, walk) != null) {
                            throw new Unreadable("names " + place + " twice", "");
                        }
                    });
                    return minutes;
                },
                (value, frame) -> value.entrySet().stream()
                        .map(entry -> entry.getKey() + ":" + entry.getValue())
                        .collect(Collectors.joining("; ")));
    }

    /** Walks with other signs in between: {@code van 2, quay: 1 min}. */
    private static String walksMeant(String text) {
        List<Matcher> walks = BETWEEN_WALKS
                .splitAsStream(text)
                .map(String::strip)
                .map(WALK_MEANT::matcher)
                .toList();
        return walks.stream().allMatch(Matcher::matches)
                ? walks.stream().map(Grammars::walkMeant).collect(Collectors.joining("; ", "Maybe ", "."))
                : "Maybe a place, a colon and whole minutes, as in set:4; barn:12.";
    }

    private static String walkMeant(Matcher walk) {
        String place = walk.group(1) != null ? walk.group(1) : walk.group(2);
        BigDecimal minutes = new BigDecimal(walk.group(3).replace(',', '.'));
        return place.strip() + ":" + plain(minutes.setScale(0, RoundingMode.UP));
    }
}
