package platecall.intake;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import platecall.day.Day;
import platecall.day.Trouble;

/** A day as one JSON object with a member for each sheet: {@code day} an object, the others arrays of objects. */
final class JsonDay {

    /** Names the schema in a file; no sheet. */
    static final String SCHEMA_KEY = "$schema";

    /** Every plan.json has it, and no day. */
    private static final String PLAN_KEY = "dayDigest";

    private static final int LONGEST_EXPONENT = 400;
    private static final Pattern TWICE = Pattern.compile("Duplicate field '(.*)'");

    private JsonDay() {}

    /** @return null if it is no JSON at all */
    static RawDay read(byte[] bytes, Troubles troubles) throws IOException {
        JsonMapper mapper = JsonMapper.builder(JsonFactory.builder()
                        .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                        .build())
                .enable(
                        DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                        DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                .nodeFactory(JsonNodeFactory.withExactBigDecimals(true))
                .build();
        JsonNode root;
        try {
            root = mapper.readTree(bytes);
        } catch (JsonProcessingException malformed) {
            troubles.causedBy(malformed);
            tell(malformed, troubles);
            return null;
        }
        if (!root.isObject()) {
            troubles.aboutFile("is not a day in JSON", "Maybe begin it with { \"day\": { \"title\": ... } }.");
            return null;
        }
        if (root.has(PLAN_KEY)) {
            troubles.aboutFile("is a plan, not a day", "Maybe name the day that it was made for.");
            return null;
        }
        RawDay day = new RawDay("item", "", true);
        root.properties().forEach(member -> {
            if (member.getKey().equals(SCHEMA_KEY)) {
                return;
            }
            if (!DaySheets.isSheet(member.getKey())) {
                day.meet(new RawDay.Stranger(member.getKey(), member.getKey(), List.of(), true));
            } else if (day.find(member.getKey(), troubles)) {
                String sheet = Names.normal(member.getKey());
                boolean isDay = sheet.equals(DaySheets.Facts.SHEET.name());
                if (isDay != member.getValue().isObject()
                        || !isDay && !member.getValue().isArray()) {
                    troubles.aboutSheet(
                            sheet,
                            isDay ? "is not an object" : "is not an array of objects",
                            isDay ? "Maybe { \"title\": ... }." : "Maybe [ { ... }, { ... } ].");
                } else if (isDay) {
                    day.add(keys(sheet, member.getValue(), troubles));
                } else if (member.getValue().size() > RawDay.MOST_ROWS) {
                    troubles.aboutSheet(sheet, "has more than " + RawDay.MOST_ROWS + " items", "");
                } else {
                    day.add(table(sheet, member.getValue(), troubles));
                }
            }
        });
        return day;
    }

    /** In our own words: the parser's are about its settings. */
    private static void tell(JsonProcessingException malformed, Troubles troubles) {
        String words = malformed.getOriginalMessage();
        String place = malformed.getLocation() == null
                ? ""
                : ": line " + malformed.getLocation().getLineNr() + ", column "
                        + malformed.getLocation().getColumnNr();
        Matcher twice = TWICE.matcher(words);
        if (twice.find()) {
            troubles.aboutFile(
                    "has [" + twice.group(1) + "] twice in one object" + place, "Maybe remove one of the two.");
        } else if (malformed instanceof StreamConstraintsException) {
            troubles.aboutFile(
                    "is no day in JSON" + place + ": something in it is longer or deeper than in any day",
                    "Maybe it is another file.");
        } else if (words.contains("comment")) {
            troubles.aboutFile("is not JSON" + place + ": a comment stands there", "Maybe remove it: JSON has none.");
        } else if (words.contains("end-of-input")) {
            troubles.aboutFile(
                    "is not JSON: it ends before all brackets and quotation marks are closed" + place.replace(":", ","),
                    "Maybe its end was cut off.");
        } else {
            troubles.aboutFile(
                    "is not JSON" + place,
                    "Maybe a comma, a bracket or a quotation mark is missing there, or one too many.");
        }
    }

    private static RawSheet keys(String sheet, JsonNode object, Troubles troubles) {
        List<RawSheet.RawRow> rows = new ArrayList<>();
        object.properties()
                .forEach(member -> rows.add(new RawSheet.RawRow(
                        0,
                        Arrays.asList(
                                member.getKey(), text(sheet, -1, member.getKey(), member.getValue(), troubles)))));
        return new RawSheet(sheet, List.of("key", "value"), rows, false);
    }

    private static RawSheet table(String sheet, JsonNode array, Troubles troubles) {
        Map<String, Integer> places = new LinkedHashMap<>();
        List<RawSheet.RawRow> rows = new ArrayList<>();
        int number = 0;
        for (JsonNode item : array) {
            number++;
            List<String> cells = new ArrayList<>();
            if (item.isObject()) {
                for (Map.Entry<String, JsonNode> member : item.properties()) {
                    int place = places.computeIfAbsent(member.getKey(), key -> places.size());
                    while (cells.size() <= place) {
                        cells.add("");
                    }
                    cells.set(place, text(sheet, rows.size(), member.getKey(), member.getValue(), troubles));
                }
            } else {
                troubles.add(new Trouble(sheet, rows.size(), "", "", "is not an object", "Maybe { ... }."));
            }
            rows.add(new RawSheet.RawRow(number, cells));
        }
        List<String> header = new ArrayList<>(places.keySet());
        return new RawSheet(sheet, header, rows, false);
    }

    /** The text of a cell; null if it can't be one, which has then been told. */
    private static String text(String sheet, int index, String key, JsonNode value, Troubles troubles) {
        if (value.isArray()) {
            List<String> elements = new ArrayList<>();
            for (JsonNode element : value) {
                String text = element.isValueNode() ? scalar(element) : ";";
                if (text.contains(";")) {
                    troubles.add(new Trouble(
                            sheet, index, key, "", "must be a list of plain texts, without semicolons in them", ""));
                    return null;
                }
                elements.add(text);
            }
            return String.join("; ", elements);
        }
        if (value.isObject()) {
            troubles.add(new Trouble(sheet, index, key, "", "must not be an object", "Maybe write it as text."));
            return null;
        }
        return scalar(value);
    }

    private static String scalar(JsonNode value) {
        if (value.isNull()) {
            return "";
        }
        if (value.isBoolean()) {
            return value.booleanValue() ? "yes" : "no";
        }
        if (value.isNumber()) {
            BigDecimal number = value.decimalValue();
            // an exponent beyond this would make a text of millions of digits
            return Math.abs((long) number.scale()) > LONGEST_EXPONENT ? number.toString() : number.toPlainString();
        }
        return value.asText();
    }

    /** The day as JSON in UTF-8, for people: indented, lines ended by LF. */
    static byte[] pretty(Day day) {
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        return write(
                day, new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter), true);
    }

    /** The day as JSON in UTF-8, always in the same bytes: no blanks, sheets and columns in their own order. */
    static byte[] canonical(Day day) {
        return write(day, null, false);
    }

    private static byte[] write(Day day, DefaultPrettyPrinter printer, boolean endLine) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator json = new JsonFactory().createGenerator(bytes)) {
            json.setPrettyPrinter(printer);
            json.writeStartObject();
            for (Sheet<?> sheet : DaySheets.ALL) {
                json.writeFieldName(sheet.name());
                writeSheet(sheet, day, json);
            }
            json.writeEndObject();
            if (endLine) {
                json.writeRaw('\n');
            }
        } catch (IOException neverInMemory) {
            throw new UncheckedIOException(neverInMemory);
        }
        return bytes.toByteArray();
    }

    private static <R> void writeSheet(Sheet<R> sheet, Day day, JsonGenerator json) throws IOException {
        boolean isDay = sheet.name().equals(DaySheets.Facts.SHEET.name());
        if (!isDay) {
            json.writeStartArray();
        }
        for (List<String> row : DayEncoder.cells(sheet, day)) {
            json.writeStartObject();
            for (int i = 0; i < row.size(); i++) {
                if (!row.get(i).isEmpty()) {
                    json.writeFieldName(sheet.columns().get(i).name());
                    writeCell(sheet.columns().get(i).grammar().json(), row.get(i), json);
                }
            }
            json.writeEndObject();
        }
        if (!isDay) {
            json.writeEndArray();
        }
    }

    private static void writeCell(Grammar.Json form, String text, JsonGenerator json) throws IOException {
        if (form == Grammar.Json.LIST) {
            json.writeStartArray();
            for (String element : text.split("; ")) {
                json.writeString(element);
            }
            json.writeEndArray();
        } else if (form == Grammar.Json.YES_NO) {
            json.writeBoolean(text.equals("yes"));
        } else if (form == Grammar.Json.WHOLE_NUMBER || form == Grammar.Json.NUMBER && !text.endsWith("%")) {
            json.writeNumber(text);
        } else {
            json.writeString(text);
        }
    }
}
