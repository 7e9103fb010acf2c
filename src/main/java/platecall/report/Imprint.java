package platecall.report;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.Locale;
import platecall.plan.Plan;

/**
 * Where a print comes from, so that two papers can be told apart.
 *
 * @param at when it was printed
 * @param planVersion six letters that differ between plans
 * @param madeBy version of Platecall that made the plan
 */
public record Imprint(ZonedDateTime at, String planVersion, String madeBy) {

    private static final int PLAN_VERSION_LETTERS = 6;

    static Imprint of(Plan plan, ZonedDateTime at) {
        try {
            byte[] digest =
                    MessageDigest.getInstance("SHA-256").digest(plan.toString().getBytes(StandardCharsets.UTF_8));
            String hex = HexFormat.of().withUpperCase().formatHex(digest);
            return new Imprint(at, hex.substring(0, PLAN_VERSION_LETTERS), plan.version());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** {@code Printed 2026-03-13 18:05 · plan 3F9A1C · Platecall 0.1.0}. */
    public String line() {
        return "Printed " + at.format(DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT)) + " · plan "
                + planVersion + (madeBy.isEmpty() ? "" : " · Platecall " + madeBy);
    }
}
