package squeezewell.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import squeezewell.audio.CountStyle;
import squeezewell.audio.SoundDevice;
import squeezewell.audio.SoundKind;
import squeezewell.audio.SoundLevels;
import squeezewell.audio.SoundUnavailableException;
import squeezewell.files.Settings;
import squeezewell.files.SoundLevel;
import squeezewell.session.MonotonicClock;

class PracticeSoundTest {
  private static final SoundDevice NONE =
      nanos -> {
        throw new SoundUnavailableException("no device", null);
      };

  @Test
  void settingsSayHowLoudEachKindIs() {
    Settings settings =
        Settings.defaults()
            .withSoundLevel("voice", new SoundLevel(0.25, true))
            .withCountStyle("spoken");
    SoundLevels levels = PracticeSound.levels(settings);
    assertThat(levels.volume(SoundKind.VOICE)).isEqualTo(0.25);
    assertThat(levels.muted(SoundKind.VOICE)).isTrue();
    assertThat(levels.muted(SoundKind.SQUEEZE)).isFalse();
    assertThat(levels.countStyle()).isEqualTo(CountStyle.SPOKEN);
  }

  @Test
  void withoutADeviceThatIsToldOnceAndShown() throws InterruptedException {
    BlockingQueue<Boolean> lost = new LinkedBlockingQueue<>();
    try (PracticeSound sound =
        new PracticeSound(MonotonicClock.startNow(), Settings.defaults(), NONE)) {
      sound.onLost(lost::add);
      assertThat(lost.poll(30, TimeUnit.SECONDS)).isTrue();
      assertThat(sound.notice()).startsWith("No sound: follow the screen.");
    }
    assertThat(lost).as("closing is no return of sound, nor a second loss").isEmpty();
  }

  @Test
  void aMuteByKeyOutlastsOtherSettings() {
    try (PracticeSound sound =
        new PracticeSound(MonotonicClock.startNow(), Settings.defaults(), NONE)) {
      sound.toggleMute();
      sound.apply(Settings.defaults().withCountStyle("silent"));
      assertThat(sound.muted()).isTrue();
      sound.toggleMute();
      assertThat(sound.muted()).isFalse();
    }
  }
}
