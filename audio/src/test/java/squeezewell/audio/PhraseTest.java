package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Limit;
import squeezewell.protocol.Limits;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
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
    Guidance usual = Plans.guidance("aha-2020", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);
    Limits limits = usual.limits();
    Limit eight = new Limit(8 * Plans.SECOND, limits.pulseCheckNotice().source());
    Guidance other =
        new Guidance(
            usual.patient(),
            usual.situation(),
            usual.rescuers(),
            usual.rhythm(),
            new Limits(
                limits.pulseCheckEvery(),
                eight,
                limits.pulseCheckShortest(),
                eight,
                limits.suctionLongest(),
                eight,
                limits.gapLongest()));
    assertThat(said(usual))
        .contains(
            Phrase.PULSE_CHECK_IN_TEN, Phrase.TEN_SECONDS_SQUEEZE, Phrase.FIVE_SECONDS_OF_SUCTION);
    assertThat(said(other))
        .doesNotContain(
            Phrase.PULSE_CHECK_IN_TEN, Phrase.TEN_SECONDS_SQUEEZE, Phrase.FIVE_SECONDS_OF_SUCTION);
  }

  /**
   * AHA, basic life support: change compressors about every two minutes or five cycles. A newborn's
   * heart rate is checked every 60 s (AHA 2020, Part 5), which is no time for that.
   */
  @Test
  void theCheckIsAChangeOfCompressorWhereTwoOrMoreCompress() {
    List<Phrase> change =
        List.of(
            Phrase.CHANGE_COMPRESSORS_SOON,
            Phrase.CHECK_RHYTHM_CHANGE_COMPRESSORS,
            Phrase.CHANGE_COMPRESSORS_NOW);
    List<Phrase> pulse =
        List.of(Phrase.PULSE_CHECK_IN_TEN, Phrase.CHECK_THE_PULSE, Phrase.PULSE_CHECK_OVERDUE);
    int changing = 0;
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance guidance : edition.guidance()) {
        boolean compresses = guidance.rhythm().compressions().isPresent();
        boolean changes =
            compresses && guidance.patient() != PatientGroup.NEWBORN && guidance.rescuers() != 1;
        String name = edition.id() + " " + guidance.patient() + " " + guidance.situation();
        assertThat(said(guidance)).as(name).doesNotContainAnyElementsOf(changes ? pulse : change);
        if (changes) {
          assertThat(said(guidance)).as(name).containsAll(change);
          changing++;
        }
        // Whoever compresses is not told to squeeze, except to end suction during which somebody
        // else compressed: then the breaths that waited are due.
        Phrase afterSuction =
            guidance.compressesDuringSuction()
                ? Phrase.STOP_SUCTION
                : compresses ? Phrase.STOP_SUCTION_COMPRESS : Phrase.STOP_SUCTION;
        assertThat(said(guidance)).as(name).contains(afterSuction);
        List<Phrase> squeeze = List.of(Phrase.TEN_SECONDS_SQUEEZE, Phrase.SQUEEZE_NOW);
        List<Phrase> compress =
            List.of(Phrase.TEN_SECONDS_COMPRESS, Phrase.COMPRESS_NOW, Phrase.STOP_SUCTION_COMPRESS);
        assertThat(said(guidance))
            .as(name)
            .doesNotContainAnyElementsOf(compresses ? squeeze : compress);
      }
    }
    assertThat(changing).isPositive();
  }

  /** All that may be said under that guidance. */
  private static Set<Phrase> said(Guidance guidance) {
    Set<Phrase> said = EnumSet.noneOf(Phrase.class);
    for (CueKind kind : CueKind.values()) {
      for (int count = 1; count <= 2; count++) {
        Phrase.reminder(new Cue(0, kind, count, 0, 0, false), guidance).ifPresent(said::add);
      }
    }
    return said;
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
