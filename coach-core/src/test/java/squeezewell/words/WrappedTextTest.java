package squeezewell.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WrappedTextTest {
  /** By hand: 12 columns hold "- one two" (9) and " three" (6) does not fit. */
  @Test
  void aLineIsBrokenBeforeTheWordThatDoesNotFit() {
    assertThat(WrappedText.lines("- ", "  ", "one two three four", 12, String::length))
        .containsExactly("- one two", "  three four");
    assertThat(WrappedText.lines("extraordinarily long", 6, String::length))
        .containsExactly("extraordinarily", "long");
    assertThat(WrappedText.oneSpaced("  a \n b  ")).isEqualTo("a b");
  }

  @Test
  void noWordIsLostAndNoLineCouldHoldTheNextWord() {
    Random random = new Random(5);
    for (int i = 0; i < 500; i++) {
      StringBuilder text = new StringBuilder("x");
      for (int k = 0; k < 30; k++) {
        text.append(' ');
        for (int letter = random.nextInt(9); letter >= 0; letter--) {
          text.append((char) ('a' + letter));
        }
      }
      List<String> lines = WrappedText.lines(text.toString(), 20, String::length);
      assertThat(String.join(" ", lines)).isEqualTo(text.toString());
      for (int k = 0; k < lines.size(); k++) {
        assertThat(lines.get(k).length()).isLessThanOrEqualTo(20);
        if (k > 0) {
          String next = lines.get(k).split(" ", -1)[0];
          assertThat(lines.get(k - 1).length() + 1 + next.length()).isGreaterThan(20);
        }
      }
    }
  }
}
