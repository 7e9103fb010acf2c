package platecall.intake;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** The JSON Schema (draft 2020-12) of a day in JSON, made from the descriptions of its sheets. */
public final class DaySchema {

    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private DaySchema() {}

    /** The schema as text: indented, lines ended by LF. */
    public static String text() {
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        try {
            return new JsonMapper()
                            .writer(new DefaultPrettyPrinter()
                                    .withObjectIndenter(indenter)
                                    .withArrayIndenter(indenter))
                            .writeValueAsString(schema())
                    + "\n";
        } catch (JsonProcessingException neverFromTree) {
            throw new IllegalStateException(neverFromTree);
        }
    }

    private static ObjectNode schema() {
        ObjectNode schema = JSON.objectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("$id", "urn:platecall:day");
        schema.put("title", "A shooting day");
        schema.put("type", "object");
        ObjectNode members = schema.putObject("properties");
        members.putObject(JsonDay.SCHEMA_KEY).put("type", "string");
        for (Sheet<?> sheet : DaySheets.ALL) {
            ObjectNode row = row(sheet);
            if (sheet.name().equals(DaySheets.Facts.SHEET.name())) {
                members.set(sheet.name(), row);
            } else {
                ObjectNode rows = members.putObject(sheet.name());
                rows.put("description", "each item is " + sheet.oneRowIs());
                rows.put("type", "array");
                if (sheet.required()) {
                    rows.put("minItems", 1);
                }
                rows.put("maxItems", RawDay.MOST_ROWS);
                rows.set("items", row);
            }
        }
        ArrayNode required = schema.putArray("required");
        DaySheets.ALL.stream().filter(Sheet::required).map(Sheet::name).forEach(required::add);
        schema.put("additionalProperties", false);
        return schema;
    }

    private static <R> ObjectNode row(Sheet<R> sheet) {
        ObjectNode row = JSON.objectNode();
        row.put("type", "object");
        ObjectNode properties = row.putObject("properties");
        ArrayNode required = row.putArray("required");
        for (Column<R, ?> column : sheet.columns()) {
            properties.set(column.name(), cell(column));
            if (column.required()) {
                required.add(column.name());
            }
        }
        row.put("additionalProperties", false);
        return row;
    }

    private static ObjectNode cell(Column<?, ?> column) {
        ObjectNode cell = JSON.objectNode();
        cell.put(
                "description",
                column.unit().isEmpty() ? column.meaning() : column.meaning() + " (" + column.unit() + ")");
        cell.putArray("examples").add(column.example());
        Grammar<?> grammar = column.grammar();
        switch (grammar.json()) {
            case WHOLE_NUMBER -> either(cell, JSON.objectNode().put("type", "integer"), text(column));
            case NUMBER -> either(cell, JSON.objectNode().put("type", "number"), text(column));
            case YES_NO -> either(cell, JSON.objectNode().put("type", "boolean"), text(column));
            case LIST -> {
                ObjectNode array = JSON.objectNode().put("type", "array");
                array.putObject("items").put("type", "string").put("pattern", "^[^;]+$");
                either(cell, array, JSON.objectNode().put("type", "string"));
            }
            case TEXT -> cell.setAll(text(column));
        }
        return cell;
    }

    private static void either(ObjectNode cell, ObjectNode one, ObjectNode other) {
        cell.putArray("anyOf").add(one).add(other);
    }

    private static ObjectNode text(Column<?, ?> column) {
        ObjectNode text = JSON.objectNode().put("type", "string");
        if (!column.grammar().words().isEmpty()) {
            ArrayNode words = text.putArray("enum");
            column.grammar().words().forEach(words::add);
        } else if (!column.grammar().pattern().isEmpty()) {
            text.put("pattern", column.grammar().pattern());
        } else if (column.required()) {
            text.put("minLength", 1);
        }
        return text;
    }
}
