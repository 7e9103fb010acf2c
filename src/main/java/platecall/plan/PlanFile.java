package platecall.plan;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Set;
import java.util.stream.Collectors;
import platecall.day.Day;
import platecall.day.Need;

/**
 * A plan as a JSON file in UTF-8: the records of {@link Plan} under the names of their components, in their order. What is
 * empty is left out; a moment is written as ISO 8601 with the zone's offset, to the minute. The same plan gives the same
 * bytes.
 */
public final class PlanFile {

    /** Largest file that is read, in bytes. */
    static final int MOST_BYTES = 100_000_000;

    private static final ObjectMapper JSON = JsonMapper.builder()
            .nodeFactory(JsonNodeFactory.withExactBigDecimals(true))
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS, DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private static final String ANOTHER_FILE =
            "Maybe it is another file: a plan is the plan.json that the command plan writes.";

    private PlanFile() {}

    /** A plan's file as it stands on the disk. */
    public static byte[] bytes(Plan plan, ZoneId zone) {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        try {
            String text = JSON.writer(
                            new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines))
                    .with(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
                    .writeValueAsString(new PlanJson(zone).node(plan));
            return (text + "\n").getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /**
     * Reads a plan of whatever day.
     *
     * @throws BadPlan if it is not a plan
     */
    public static Plan read(Path file) {
        JsonNode tree = tree(file, content(file));
        if (!tree.isObject() || !tree.has("dayDigest")) {
            throw new BadPlan(file.toString(), "is not a plan", ANOTHER_FILE);
        }
        try {
            return PlanJson.plan(tree);
        } catch (PlanJson.Unreadable fault) {
            throw new BadPlan(
                    file.toString(),
                    "is not a plan: " + fault.getMessage(),
                    "Maybe it was changed by hand; plan again.");
        }
    }

    private static byte[] content(Path file) {
        try {
            if (Files.isDirectory(file)) {
                throw new BadPlan(file.toString(), "is a folder, not a plan", ANOTHER_FILE);
            }
            if (Files.size(file) > MOST_BYTES) {
                throw new BadPlan(
                        file.toString(),
                        "is too large to be a plan (more than " + MOST_BYTES / 1_000_000 + " MB)",
                        ANOTHER_FILE);
            }
            return Files.readAllBytes(file);
        } catch (IOException failure) {
            throw new BadPlan(file.toString(), reason(failure), "");
        }
    }

    private static JsonNode tree(Path file, byte[] content) {
        try {
            return JSON.readTree(content);
        } catch (IOException notJson) {
            throw new BadPlan(file.toString(), "is not a plan: it is not JSON" + place(notJson), ANOTHER_FILE);
        }
    }

    /**
     * Reads a plan of a certain day.
     *
     * @param dayDigest the day's digest
     * @throws BadPlan if it is not a plan, or one of another day
     */
    public static Plan read(Path file, String dayDigest) {
        Plan plan = read(file);
        if (!plan.dayDigest().equals(dayDigest)) {
            throw new BadPlan(
                    file.toString(),
                    "is a plan of another day: it was made for [" + plan.day() + "] with digest ["
                            + start(plan.dayDigest()) + "], but this day's digest is [" + start(dayDigest) + "]",
                    "Maybe the day has changed since; plan it again, or replan the rest if it is under way.");
        }
        return plan;
    }

    /**
     * Reads a plan of a whole day, to plan that day again from it.
     *
     * @param dayDigest the day's digest
     * @throws BadPlan if it is not a plan, one of another day, or one of the rest of a day
     */
    public static Plan readOfWholeDay(Path file, String dayDigest) {
        Plan plan = read(file, dayDigest);
        plan.asOf().ifPresent(made -> {
            throw new BadPlan(
                    file.toString(),
                    "was made when the day was under way: the hours that were gone by then would be planned anew",
                    "Maybe take the plan.json that the command plan made, or the command replan.");
        });
        return plan;
    }

    /**
     * Reads a plan of a day as it was before it was changed.
     *
     * @throws BadPlan if it is not a plan, or has nothing to do with that day
     */
    public static Plan readOf(Path file, Day day) {
        Plan plan = read(file);
        Set<String> needs = needs(day);
        if (plan.copies().stream().noneMatch(copy -> needs.contains(copy.need()))) {
            throw new BadPlan(
                    file.toString(),
                    "is a plan of another day: it was made for [" + plan.day()
                            + "], and none of its copies is wanted on this one",
                    "");
        }
        return plan;
    }

    /**
     * A plan of a day whose sheets may have changed since it was made, as long as all that it makes is still in them.
     *
     * @param dayDigest digest of the day as it is now
     * @throws BadPlan if it can't be read, or it makes what the day doesn't know
     */
    public static Plan readWith(Path file, Day day, String dayDigest) {
        Plan plan = readOf(file, day);
        Set<String> needs = needs(day);
        boolean known = plan.copies().stream().allMatch(copy -> needs.contains(copy.need()))
                && plan.work().stream()
                        .allMatch(work -> work.kind() == Plan.Work.Kind.CARRY
                                || day.step(work.dish(), work.step()).isPresent());
        return known ? plan : read(file, dayDigest);
    }

    private static Set<String> needs(Day day) {
        return day.needs().stream().map(Need::key).collect(Collectors.toSet());
    }

    private static String start(String digest) {
        return digest.length() <= 12 ? digest : digest.substring(0, 12) + "...";
    }

    private static String place(IOException notJson) {
        return notJson instanceof JsonProcessingException fault && fault.getLocation() != null
                ? " (line " + fault.getLocation().getLineNr() + ", column "
                        + fault.getLocation().getColumnNr() + ")"
                : "";
    }

    private static String reason(IOException failure) {
        if (failure instanceof NoSuchFileException) {
            return "there is no such file";
        }
        return failure instanceof AccessDeniedException ? "permission is denied" : "it fails with " + failure;
    }
}
