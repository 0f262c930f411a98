package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Worked by hand: a cue each second, heard 1,000 frames later. */
class HeardTest {
  private static final long SECOND = PulseSandbox.RATE;
  private static final long DELAY = 1_000;

  @Test
  void anUndisturbedRunIsOneStretch() {
    Heard heard = Heard.of(asked(30), heard(30), List.of("12 STATUS x", "HOLES 0"));
    assertThat(heard.segments()).hasSize(1);
    assertThat(heard.segments().get(0).asked()).hasSize(30);
    assertThat(heard.segments().get(0).steadiness().worstIntervalFrames()).isZero();
    assertThat(heard.missing()).isEmpty();
    assertThat(heard.extra()).isEmpty();
  }

  @Test
  void aDryMomentCutsAndExcusesOnlyWhatIsNearIt() {
    List<Long> sounds = heard(30);
    // The cue of second 10 is lost in the hole of 10.1 s, all later ones come 200 frames late.
    sounds.remove(10);
    sounds.replaceAll(s -> s > 10 * SECOND + DELAY ? s + 200 : s);
    Heard heard = Heard.of(asked(30), sounds, List.of("DRY 10100000000"));
    assertThat(heard.missing()).isEmpty();
    assertThat(heard.segments()).extracting(s -> s.asked().size()).containsExactly(10, 0, 19);
    assertThat(heard.segments())
        .extracting(s -> s.steadiness().worstIntervalFrames())
        .containsOnly(0L);
  }

  @Test
  void whatIsLostOrAddedElsewhereIsTold() {
    List<Long> sounds = heard(30);
    sounds.remove(20);
    sounds.add(25, 25 * SECOND + SECOND / 2 + DELAY);
    Heard heard = Heard.of(asked(30), sounds, List.of("DRY 10100000000"));
    assertThat(heard.missing()).containsExactly(20 * SECOND);
    assertThat(heard.extra()).containsExactly(25 * SECOND + SECOND / 2);
  }

  @Test
  void aCorrectionReachesFourSecondsBack() {
    Heard heard = Heard.of(asked(30), heard(30), List.of("CORRECTED 20500000000"));
    assertThat(heard.segments())
        .extracting(s -> s.asked().size())
        .containsExactly(17, 1, 1, 1, 1, 9);
  }

  @Test
  void aLateSoundIsNotExcused() {
    List<Long> sounds = heard(30);
    sounds.set(15, sounds.get(15) + 5);
    Heard heard = Heard.of(asked(30), sounds, List.of());
    assertThat(heard.segments().get(0).steadiness().worstIntervalFrames()).isEqualTo(5);
    assertThat(heard.only(List.of(0L, 15 * SECOND)).segments().get(0).steadiness())
        .extracting(Steadiness::onsets, Steadiness::worstIntervalFrames)
        .containsExactly(2, 5L);
  }

  @Test
  void overlappingDisturbancesCountOnce() {
    // 0.5 s before to 0.3 s after, twice, half a second apart: 1.3 s in all.
    List<String> lines = List.of("DRY 10000000000", "DRY 10500000000");
    long from = 8 * SECOND;
    assertThat(Heard.hopeless(lines, from, from + 4 * SECOND)).isFalse();
    assertThat(Heard.hopeless(lines, from, from + 38 * SECOND / 10)).isTrue();
  }

  @Test
  void aFailureIsOnlyPutDownToTheMachineInARunThatItDisturbed() {
    AssertionError failure = new AssertionError("10 ms late");
    List<String> lines = List.of("DRY 10000000000", "END");
    Heard.blame(failure, lines, 0, 30 * SECOND);
    assertThatThrownBy(() -> Heard.blame(failure, List.of("END"), 0, 30 * SECOND))
        .isSameAs(failure);
    assertThatThrownBy(() -> Heard.blame(failure, lines, 12 * SECOND, 30 * SECOND))
        .isSameAs(failure);
  }

  private static List<Long> asked(int cues) {
    List<Long> asked = new ArrayList<>();
    for (int i = 0; i < cues; i++) {
      asked.add(i * SECOND);
    }
    return asked;
  }

  private static List<Long> heard(int cues) {
    List<Long> heard = asked(cues);
    heard.replaceAll(frame -> frame + DELAY);
    return heard;
  }
}
