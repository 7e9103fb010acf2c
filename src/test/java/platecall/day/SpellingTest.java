package platecall.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpellingTest {

    @ParameterizedTest
    @CsvSource({"soup,soup,0", "soup,sop,1", "soup,soupe,1", "soup,suop,1", "soup,soap,1", "kitten,sitting,3", "'',ab,2"
    })
    void slipsAreLettersTooManyTooFewWrongOrSwapped(String a, String b, int slips) {
        assertThat(Spelling.slips(a, b)).isEqualTo(slips);
        assertThat(Spelling.slips(b, a)).isEqualTo(slips);
    }

    @Test
    void theNearestNameIsFoundWhateverItsCase() {
        assertThat(Spelling.nearest("MINUTES LIKLEY", List.of("minutes low", "minutes likely")))
                .contains("minutes likely");
    }

    @Test
    void aNameThatIsFarFromAllIsNotGuessed() {
        assertThat(Spelling.nearest("ham", List.of("soup", "bread"))).isEmpty();
        assertThat(Spelling.nearest("", List.of("soup"))).isEmpty();
    }
}
