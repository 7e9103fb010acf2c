package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.intake.DayFiles;

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

    /** The kitchen opens eleven minutes before the call, for five to seventeen of work, eight likely: enough for 86 % of cases, 1 - 0.458^4 * 3.167. */
    @Test
    void aPromiseThatCannotBeKeptIsToldByTheExitCode() {
        TestDays day = new TestDays()
                .with(it -> it.kitchen = List.of(TestDays.span("09:49-18:00")))
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .station("table", Station.Kind.COUNTER, 1, station -> {})
                .setup("S1", "10:00", setup -> {})
                .dish("bun", dish -> {})
                .need("S1", "bun", "shape", need -> need.copies(1))
                .step("bun", "shape", 8, step -> step.from(5, 17).hands = 1);
        DayFiles.write(day.build(), folder.resolve("day.json"));
        String[] words = {
            "plan",
            folder.resolve("day.json").toString(),
            "--out",
            folder.resolve("short").toString(),
            "--steps",
            "4000"
        };
        assertThat(Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words))
                .as(err.toString())
                .isEqualTo(Main.FINE);
        String[] promised =
                Stream.concat(Stream.of(words), Stream.of("--promise")).toArray(String[]::new);
        assertThat(Main.run(new PrintWriter(out, true), new PrintWriter(err, true), promised))
                .isEqualTo(Main.NOT_READY);
        assertThat(out.toString())
                .contains("0 of 1 setups keep the promise of 95 %.")
                .contains("Ready 3 min before call");
    }

    /** Where there is too much to do, time to spare makes it no later than the same number of moves makes it without. */
    @Test
    void aDayThatIsLateIsNotMadeLater() {
        plan("overbooked", "late", "--steps", "8000");
        int late = lateMinutes();
        assertThat(late).isPositive();
        plan("overbooked", "later", "--steps", "40000", "--promise");
        assertThat(lateMinutes()).isLessThanOrEqualTo(late);
    }

    /** Those that the last plan printed. */
    private int lateMinutes() {
        Matcher minutes = Pattern.compile("copies made, (\\d+) min late").matcher(out.toString());
        int last = -1;
        while (minutes.find()) {
            last = Integer.parseInt(minutes.group(1));
        }
        return last;
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
