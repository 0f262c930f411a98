package squeezewell.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.MissingResourceException;
import org.junit.jupiter.api.Test;

class WordingTest {
  private final Wording words = Wording.beside(WordingTest.class);

  @Test
  void anApostropheIsAnApostrophe() {
    assertThat(words.say("plain")).isEqualTo("It can't be told.");
  }

  @Test
  void aPluralFollowsItsNumberWhichHasNoGrouping() {
    assertThat(words.say("count", 0, "2:00")).isEqualTo("0 breaths in 2:00");
    assertThat(words.say("count", 1, "2:00")).isEqualTo("1 breath in 2:00");
    assertThat(words.say("count", 6600, "it's 60:00")).isEqualTo("6600 breaths in it's 60:00");
  }

  @Test
  void aPlaceLeftEmptyOrAKeyThatIsMissingIsAFaultOfTheProgram() {
    assertThatThrownBy(() -> words.say("count", 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> words.say("nothing")).isInstanceOf(MissingResourceException.class);
    assertThat(words.has("nothing")).isFalse();
  }
}
