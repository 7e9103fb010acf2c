package platecall.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The README's commands, run as they are written there. */
class ReadmeCommandsTest {

    private static final Path README = Path.of("README.md");

    @TempDir
    Path papers;

    private static String run(int code, String... words) {
        StringWriter out = new StringWriter();
        assertThat(Main.run(new PrintWriter(out), new PrintWriter(out), words)).isEqualTo(code);
        return out.toString().replace(System.lineSeparator(), "\n");
    }

    /** The text between the first two fences after {@code words}. */
    private static List<String> blockAfter(String words) throws IOException {
        String readme = Files.readString(README);
        int open = readme.indexOf("```\n", readme.indexOf(words)) + "```\n".length();
        return readme.substring(open, readme.indexOf("\n```", open)).lines().toList();
    }

    /** Where a search of ten seconds stops depends on the machine, so what comes out better or worse is left aside. */
    private static String form(String line) {
        return line.replaceFirst("^(\\d+ +\\d\\d:\\d\\d) .*", "$1")
                .replaceFirst("kitchen call .*", "")
                .replaceFirst("\\d+ min off peak", "N min off peak")
                .replaceFirst("^\\d of 7 setups keep .*", "N of 7 setups keep");
    }

    @Test
    void theFirstCommandPrintsWhatIsShownBelowIt() throws IOException {
        Matcher command = Pattern.compile("-Dexec\\.args=\"([^\"]+)\"").matcher(Files.readString(README));
        assertThat(command.find()).isTrue();
        List<String> words = new ArrayList<>(List.of(command.group(1).split(" ")));
        words.addAll(List.of("--out", papers.toString()));

        String printed =
                run(Main.FINE, words.toArray(String[]::new)).replace(papers.toString(), "reports/lantern-supper");

        assertThat(printed.lines().map(ReadmeCommandsTest::form))
                .containsExactlyElementsOf(blockAfter("The first plans the demo day").stream()
                        .map(ReadmeCommandsTest::form)
                        .toList());
    }

    @Test
    void theThermometerReadingsAreJudgedAsShown() throws IOException {
        Matcher command = Pattern.compile("`(safety [^`]+ --readings [^`]+)`").matcher(Files.readString(README));
        assertThat(command.find()).isTrue();

        assertThat(run(Main.NOT_READY, command.group(1).split(" ")).lines())
                .containsSequence(blockAfter(command.group(1)));
    }

    @Test
    void everyCommandStandsInTheTableWithItsWordsAndTheOthersDoNot() throws IOException {
        Matcher row = Pattern.compile("(?m)^\\| `(([a-z]+)[^`]*)` \\| (.*) \\|$")
                .matcher(Files.readString(README).split("## Commands")[1].split("## ")[0]);
        List<String> named = new ArrayList<>();
        while (row.find()) {
            named.add(row.group(2));
            String help = run(Main.FINE, row.group(2), "--help").replace("--[no-]", "--no-");
            for (String word : row.group(1).split(" ")) {
                assertThat(help).contains(word);
            }
            Matcher option = Pattern.compile("`(--[a-z-]+)").matcher(row.group(3));
            while (option.find()) {
                assertThat(help).containsPattern(option.group(1) + "[= ]");
            }
        }
        List<String> known = run(Main.FINE, "--help")
                .lines()
                .map(Pattern.compile("^  ([a-z]+) +[A-Z].*")::matcher)
                .filter(Matcher::matches)
                .map(matcher -> matcher.group(1))
                .toList();
        assertThat(named).containsExactlyInAnyOrderElementsOf(known);
    }
}
