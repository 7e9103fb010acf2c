package platecall;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import platecall.plan.Rule;

/** The README says what the program does. */
class ReadmeTest {

    private static String readme() throws IOException {
        return Files.readString(Path.of("README.md"));
    }

    @ParameterizedTest
    @EnumSource(Rule.class)
    void everyRuleStandsInItsTableWithSentenceInequalityAndUnit(Rule rule) throws IOException {
        assertThat(readme())
                .contains("| " + rule.sentence() + " | `" + rule.inequality() + "` | " + rule.unit() + " |");
    }

    @Test
    void thePicturesAndPapersThatItShowsAreThere() throws IOException {
        var links = java.util.regex.Pattern.compile("\\]\\(((?:reports|problems)/[^)]+)\\)")
                .matcher(readme());
        int found = 0;
        while (links.find()) {
            assertThat(Path.of(links.group(1))).exists();
            found++;
        }
        assertThat(found).isGreaterThan(10);
    }

    @Test
    void theTestCommandIsTheOneThatTheBuildServerRuns() throws IOException {
        assertThat(Files.readString(Path.of(".ci/run"))).contains("mvn -B -ntp verify");
        assertThat(readme()).contains("\nmvn verify\n");
    }
}
