package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class SoundLevelsTest {
  private final SoundLevels levels = SoundLevels.defaults();

  @Test
  void countsAreQuieterThanSqueezesFromTheStart() {
    assertThat(levels.gain(SoundKind.COUNT)).isLessThan(levels.gain(SoundKind.SQUEEZE));
    assertThat(levels.gain(SoundKind.VOICE)).isPositive();
    assertThat(levels.countStyle()).isEqualTo(CountStyle.SOUND);
  }

  @Test
  void mutingKeepsTheVolume() {
    SoundLevels muted = levels.withVolume(SoundKind.COUNT, 0.2).withMuted(SoundKind.COUNT, true);
    assertThat(muted.gain(SoundKind.COUNT)).isZero();
    assertThat(muted.withMuted(SoundKind.COUNT, false).gain(SoundKind.COUNT)).isEqualTo(0.2);
    assertThat(levels.withAllMuted(true).gain(SoundKind.SQUEEZE)).isZero();
    assertThat(levels.withAllMuted(true).withAllMuted(false)).isEqualTo(levels);
    assertThat(levels.withCountStyle(CountStyle.SPOKEN)).isNotEqualTo(levels);
  }

  @Test
  void aVolumeOutOfRangeIsRefused() {
    for (double volume : new double[] {-0.01, 1.01, Double.NaN}) {
      assertThatThrownBy(() -> levels.withVolume(SoundKind.SQUEEZE, volume))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("between 0 and 1");
    }
  }
}
