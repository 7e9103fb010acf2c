package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class OddsCommandTest {

    private static final Path DEMO = Path.of("problems/lantern-supper");
    private static final Path PLAN = Path.of("reports/lantern-supper/plan.json");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int odds(Object... args) {
        String[] words = Stream.concat(Stream.of("odds"), Stream.of(args))
                .map(Object::toString)
                .toArray(String[]::new);
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    }

    @Test
    void tellsTheChancesOfEachSetupThePromiseAndWhatMakesItLate() {
        int code = odds(DEMO, PLAN, "--runs", 500);
        assertThat(err.toString()).isEmpty();
        assertThat(out.toString().lines())
                .anyMatch(line -> line.matches("setup +call +at call +at peak +every take +half ready +95 % ready +.*"))
                .anyMatch(line -> line.matches("1 +10:00 +.*[0-9]+ %.* min"))
                .anyMatch(line -> line.matches(
                        "[0-7] of 7 setups keep the promise of 95 %\\. All are ready .* 500 rehearsals\\."))
                .allMatch(line -> line.length() <= 120);
        boolean kept = out.toString().contains("7 of 7 setups keep");
        assertThat(code).isEqualTo(kept ? Main.FINE : Main.NOT_READY);
    }

    @Test
    void refusesNoRehearsalsAndThePlanOfAnotherDay() {
        assertThat(odds(DEMO, PLAN, "--runs", 0)).isEqualTo(Main.BAD_INPUT);
        assertThat(err.toString()).startsWith("--runs must be from 1 to 1000000. Maybe --runs 5000.");
        assertThat(odds("problems/first-egg", PLAN)).isEqualTo(Main.BAD_INPUT);
        assertThat(err.toString()).contains("another day");
    }
}
