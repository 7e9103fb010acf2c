package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PromiseTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int plan(String day, String to, String... more) {
        String[] words = Stream.concat(
                        Stream.of(
                                "plan",
                                "problems/" + day,
                                "--out",
                                folder.resolve(to).toString()),
                        Stream.of(more))
                .toArray(String[]::new);
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    }

    /** By hand: the egg's last two steps may take minutes longer than likely, so a plan that ends at the call is late then. */
    @Test
    void timeToSpareKeepsThePromiseThatAPlanWithoutItDoesNot() {
        assertThat(plan("first-egg", "plain", "--steps", "4000"))
                .as(err.toString())
                .isEqualTo(Main.FINE);
        assertThat(out.toString()).contains("0 of 1 setups keep the promise of 95 %.");
        assertThat(plan("first-egg", "sure", "--steps", "4000", "--promise")).isEqualTo(Main.FINE);
        assertThat(out.toString()).contains("1 of 1 setups keep the promise of 95 %.");
    }

    /** Nothing helps a setup for which there is too much to do: it is told, and the plan is written all the same. */
    @Test
    void aPromiseThatCannotBeKeptIsToldByTheExitCode() {
        assertThat(plan("overbooked", "late", "--steps", "4000", "--promise")).isEqualTo(Main.NOT_READY);
        assertThat(out.toString()).contains(" of 4 setups keep the promise of 95 %.");
        assertThat(folder.resolve("late/plan.json")).exists();
    }

    @Test
    void theSameSeedAndStepsGiveTheSamePlan() throws IOException {
        plan("two-kitchens", "one", "--steps", "4000", "--promise");
        plan("two-kitchens", "other", "--steps", "4000", "--promise");
        for (String file : new String[] {"plan.json", "readiness.csv", "readiness.pdf"}) {
            assertThat(Files.readAllBytes(folder.resolve("one").resolve(file)))
                    .isEqualTo(Files.readAllBytes(folder.resolve("other").resolve(file)));
        }
    }
}
