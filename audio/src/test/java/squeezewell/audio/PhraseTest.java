package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.protocol.Limit;
import squeezewell.protocol.Limits;
import squeezewell.protocol.Situation;

class PhraseTest {
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void eachPhraseIsThereAndClean(int rate) {
    for (Phrase phrase : Phrase.values()) {
      float[] words = PhraseReader.read(phrase, rate);
      float peak = 0;
      for (float sample : words) {
        peak = Math.max(peak, Math.abs(sample));
      }
      assertThat(words.length / (double) rate).as(phrase.file()).isBetween(0.2, 2.0);
      assertThat(peak).as(phrase.file()).isBetween(0.3f, 0.9f);
      assertThat(Math.abs(words[0])).as(phrase.file()).isLessThan(0.02f);
      assertThat(Math.abs(words[words.length - 1])).as(phrase.file()).isLessThan(0.02f);
    }
  }

  @Test
  void aSpokenNumberEndsBeforeTheNextCount() {
    for (int number = 1; number <= 10; number++) {
      float[] words = PhraseReader.read(Phrase.number(number).orElseThrow(), 48_000);
      assertThat(words.length / 48_000.0).isLessThan(0.6);
    }
    assertThat(Phrase.number(0)).isEmpty();
    assertThat(Phrase.number(11)).isEmpty();
  }

  @Test
  void aTimeIsNamedOnlyIfTheLimitsHaveIt() {
    Limits usual =
        Plans.adult("aha-2020", Situation.PULSE_NO_BREATHING, Plans.SECOND).guidance().limits();
    Limit eight = new Limit(8 * Plans.SECOND, usual.pulseCheckNotice().source());
    Limits other =
        new Limits(
            usual.pulseCheckEvery(),
            eight,
            usual.pulseCheckShortest(),
            eight,
            usual.suctionLongest(),
            eight,
            usual.gapLongest());
    Set<Phrase> said = new HashSet<>();
    for (CueKind kind : CueKind.values()) {
      Phrase.reminder(new Cue(0, kind, 1, 0, 0, false), usual).ifPresent(said::add);
    }
    assertThat(said)
        .contains(
            Phrase.PULSE_CHECK_IN_TEN, Phrase.TEN_SECONDS_SQUEEZE, Phrase.FIVE_SECONDS_OF_SUCTION);
    for (CueKind kind : CueKind.values()) {
      assertThat(Phrase.reminder(new Cue(0, kind, 1, 0, 0, false), other).orElse(Phrase.SQUEEZE))
          .isNotIn(
              Phrase.PULSE_CHECK_IN_TEN,
              Phrase.TEN_SECONDS_SQUEEZE,
              Phrase.FIVE_SECONDS_OF_SUCTION);
    }
  }

  /** A sine is known at every instant, so a resampled one can be compared with itself. */
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void aResampledSineIsTheSameSine(int rate) {
    float[] sine = new float[22_050];
    for (int i = 0; i < sine.length; i++) {
      sine[i] = (float) Math.sin(2 * Math.PI * 1_000 * i / 22_050);
    }
    float[] converted = Resampler.convert(sine, 22_050, rate);
    assertThat(converted).hasSize(rate);
    for (int i = rate / 10; i < rate * 9 / 10; i++) {
      double wanted = Math.sin(2 * Math.PI * 1_000 * i / rate);
      assertThat(Math.abs(converted[i] - wanted)).isLessThan(1e-3);
    }
  }
}
