package platecall.plan;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import platecall.units.Moment;
import platecall.units.Money;

/** The records of a plan as JSON and back, by the names and types of their components. */
final class PlanJson {

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mmxxx", Locale.ROOT);
    /** A day's date is from 2000 to 2199, and its times are within a month of it. */
    private static final int FIRST_YEAR = 1999;

    private static final int LAST_YEAR = 2200;
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private final ZoneId zone;

    PlanJson(ZoneId zone) {
        this.zone = zone;
    }

    /** Something in the tree is not what it should be; the message says where and what. */
    @SuppressWarnings("serial")
    static final class Unreadable extends RuntimeException {
        Unreadable(String where, String what) {
            super(where + " " + what);
        }
    }

    /** Any part of a plan as JSON. */
    JsonNode node(Object value) {
        if (value instanceof String text) {
            return NODES.textNode(text);
        }
        if (value instanceof Integer number) {
            return NODES.numberNode(number);
        }
        if (value instanceof Long number) {
            return NODES.numberNode(number);
        }
        if (value instanceof Boolean truth) {
            return NODES.booleanNode(truth);
        }
        if (value instanceof Enum<?> word) {
            return NODES.textNode(word.name());
        }
        if (value instanceof Moment moment) {
            return NODES.textNode(MINUTE.format(moment.in(zone)));
        }
        if (value instanceof Money money) {
            return NODES.numberNode(money.amount());
        }
        if (value instanceof List<?> list) {
            ArrayNode array = NODES.arrayNode();
            list.forEach(item -> array.add(node(item)));
            return array;
        }
        return object((Record) value);
    }

    private ObjectNode object(Record value) {
        ObjectNode object = NODES.objectNode();
        for (RecordComponent component : value.getClass().getRecordComponents()) {
            Object part = part(value, component);
            if (part instanceof Optional<?> optional) {
                optional.ifPresent(present -> object.set(component.getName(), node(present)));
            } else {
                object.set(component.getName(), node(part));
            }
        }
        return object;
    }

    private static Object part(Record value, RecordComponent component) {
        try {
            return component.getAccessor().invoke(value);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** @throws Unreadable if the tree is not a plan */
    static Plan plan(JsonNode tree) {
        return (Plan) record(tree, Plan.class, "the plan");
    }

    private static Object value(JsonNode node, Type type, String where) {
        if (type instanceof ParameterizedType list) {
            return list(node, list.getActualTypeArguments()[0], where);
        }
        Class<?> kind = (Class<?>) type;
        if (kind == String.class) {
            return text(node, where);
        }
        if (kind == boolean.class) {
            require(node.isBoolean(), where, "must be true or false", node);
            return node.booleanValue();
        }
        if (kind == int.class || kind == Integer.class) {
            require(node.isIntegralNumber() && node.canConvertToInt(), where, "must be a whole number", node);
            return node.intValue();
        }
        if (kind == long.class || kind == Long.class) {
            require(node.isIntegralNumber() && node.canConvertToLong(), where, "must be a whole number", node);
            return node.longValue();
        }
        if (kind == Moment.class) {
            return moment(node, where);
        }
        if (kind == Money.class) {
            return money(node, where);
        }
        return kind.isEnum() ? word(node, kind, where) : record(node, kind, where);
    }

    private static List<Object> list(JsonNode node, Type itemType, String where) {
        require(node.isArray(), where, "must be a list", node);
        List<Object> items = new ArrayList<>();
        for (JsonNode item : node) {
            items.add(value(item, itemType, where + "[" + items.size() + "]"));
        }
        return items;
    }

    private static String text(JsonNode node, String where) {
        require(node.isTextual(), where, "must be a text", node);
        return node.textValue();
    }

    private static Moment moment(JsonNode node, String where) {
        try {
            OffsetDateTime time = OffsetDateTime.parse(text(node, where), MINUTE);
            if (time.getYear() >= FIRST_YEAR && time.getYear() <= LAST_YEAR) {
                return Moment.of(time.toZonedDateTime());
            }
        } catch (DateTimeException unreadable) {
            // told below
        }
        throw new Unreadable(
                where,
                "must be a time like 2026-03-14T09:05+01:00, from " + FIRST_YEAR + " to " + LAST_YEAR + ", but it is ["
                        + shown(node) + "]");
    }

    private static Money money(JsonNode node, String where) {
        require(node.isNumber(), where, "must be an amount", node);
        try {
            return new Money(node.decimalValue().movePointRight(2).longValueExact());
        } catch (ArithmeticException finerThanCents) {
            throw new Unreadable(where, "must be an amount with two decimals, but it is [" + shown(node) + "]");
        }
    }

    private static Object word(JsonNode node, Class<?> kind, String where) {
        String text = text(node, where);
        return Arrays.stream(kind.getEnumConstants())
                .filter(constant -> ((Enum<?>) constant).name().equals(text))
                .findFirst()
                .orElseThrow(() -> new Unreadable(
                        where,
                        "must be one of " + Arrays.toString(kind.getEnumConstants()) + ", but it is [" + shown(node)
                                + "]"));
    }

    private static Object record(JsonNode node, Class<?> kind, String where) {
        require(node.isObject(), where, "must be an object", node);
        RecordComponent[] components = kind.getRecordComponents();
        Object[] parts = new Object[components.length];
        Class<?>[] types = new Class<?>[components.length];
        Set<String> known = new HashSet<>();
        for (int i = 0; i < components.length; i++) {
            String name = components[i].getName();
            known.add(name);
            types[i] = components[i].getType();
            parts[i] = part(node.get(name), components[i], where + ", " + name);
        }
        node.fieldNames().forEachRemaining(name -> {
            if (!known.contains(name)) {
                throw new Unreadable(where + ", " + name, "is not known");
            }
        });
        try {
            return kind.getDeclaredConstructor(types).newInstance(parts);
        } catch (InvocationTargetException refused) {
            throw new Unreadable(where, "can't be: " + refused.getCause().getMessage());
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static Object part(JsonNode node, RecordComponent component, String where) {
        if (component.getType() == Optional.class) {
            Type present = ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0];
            return Optional.ofNullable(node).map(there -> value(there, present, where));
        }
        if (node == null) {
            throw new Unreadable(where, "is missing");
        }
        return value(node, component.getGenericType(), where);
    }

    private static void require(boolean holds, String where, String what, JsonNode node) {
        if (!holds) {
            throw new Unreadable(where, what + ", but it is [" + shown(node) + "]");
        }
    }

    /** The value as text, cut to a readable length. */
    private static String shown(JsonNode node) {
        String text = node.isTextual() ? node.textValue() : node.toString();
        return text.length() <= 40 ? text : text.substring(0, 40) + "...";
    }
}
