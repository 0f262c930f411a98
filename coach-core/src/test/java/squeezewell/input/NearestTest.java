package squeezewell.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
  /** The textbook pairs of the Levenshtein distance, and one worked by hand letter by letter. */
  @ParameterizedTest
  @CsvSource({
    "kitten, sitting, 3",
    "saturday, sunday, 3",
    "flaw, lawn, 2",
    "oxygen, oxgyen, 2",
    "suction, suction, 0",
    "'', abc, 3",
    "abc, '', 3"
  })
  void theDistanceIsTheNumberOfLettersToChange(String from, String to, int distance) {
    assertThat(Nearest.distance(from, to)).isEqualTo(distance);
    assertThat(Nearest.distance(to, from)).isEqualTo(distance);
  }

  @Test
  void onlyAWordThatIsCloseIsAskedFor() {
    List<String> known = List.of("suction", "oxygen", "open");
    assertThat(Nearest.question("sucton", known)).isEqualTo("; did you mean suction?");
    assertThat(Nearest.question("oxgyen", known)).isEqualTo("; did you mean oxygen?");
    assertThat(Nearest.question("bandage", known)).isEmpty();
    assertThat(Nearest.question("", known)).isEmpty();
    assertThat(Nearest.question("suction", List.of())).isEmpty();
    assertThat(Nearest.question("oxygen".repeat(200_000), known)).isEmpty();
  }
}
