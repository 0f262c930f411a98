package squeezewell.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import squeezewell.cue.Segment;
import squeezewell.review.measure.PromptMark;

/** Words whose keys are made of a constant's name are there for every constant. */
class MarkWordsTest {
  @ParameterizedTest
  @EnumSource(names = {"PULSE_CHECK", "SUCTION", "WATCHING", "NO_RATE", "PAUSED", "STALLED"})
  void everyHoldHasItsWord(Segment.Kind kind) {
    String name = kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    assertThat(MarksView.WORDS.has("hold." + name)).isTrue();
  }

  @ParameterizedTest
  @EnumSource
  void everyOutcomeOfAPromptHasItsWords(PromptMark.Outcome outcome) {
    assertThat(MarksView.WORDS.has("prompt." + outcome.name().toLowerCase(Locale.ROOT))).isTrue();
  }
}
