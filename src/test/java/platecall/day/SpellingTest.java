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

    @ParameterizedTest
    @CsvSource({
        "9,1",
        "12,1",
        "1,12",
        "12A,12B",
        "S1,S2",
        "S1,T1",
        "a,b",
        "US,UK",
        "ku,UK",
        "oven 2,oven 1",
        "setup 12,setup 21"
    })
    void anotherNumberOrAnotherLetterOfOneOrTwoIsAnotherThing(String word, String known) {
        assertThat(Spelling.nearest(word, List.of(known))).isEmpty();
        assertThat(Spelling.suggest(word, List.of(known, "x"))).isEqualTo("Maybe one of: " + known + ", x.");
    }

    @ParameterizedTest
    @CsvSource({"a,A", "us,US", "12a,12A", "ovn 2,oven 2", "oven2,oven", "Bo,Bob"})
    void nearNamesWithNumbersAreFound(String word, String known) {
        assertThat(Spelling.nearest(word, List.of(known))).contains(known);
    }
}
