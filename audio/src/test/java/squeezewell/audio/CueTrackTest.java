package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.cue.Control;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.protocol.Situation;

class CueTrackTest {
  private static final SoundLevels NO_VOICE =
      SoundLevels.defaults().withMuted(SoundKind.VOICE, true);
  private static final CueSchedule SCHEDULE =
      CueSchedule.of(Plans.adult("aha-2020", Situation.PULSE_NO_BREATHING, 60 * Plans.SECOND));

  @TempDir Path folder;

  /** Read back by the Java platform's own reader. */
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void anIndependentReaderHearsEachCueOnItsFrame(int rate) throws Exception {
    Path file = folder.resolve("track.wav");
    CueTrack track = new CueTrack(SCHEDULE, rate, NO_VOICE);
    List<Double> progress = new ArrayList<>();
    track.write(file, false, progress::add);
    try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
      AudioFormat format = in.getFormat();
      assertThat(format.getSampleRate()).isEqualTo((float) rate);
      assertThat(format.getChannels()).isEqualTo(1);
      assertThat(format.getSampleSizeInBits()).isEqualTo(16);
      assertThat(in.getFrameLength()).isEqualTo(track.frames()).isEqualTo(63L * rate);
      byte[] bytes = in.readAllBytes();
      OnsetFinder finder = new OnsetFinder(0.1, rate / 50);
      for (int i = 0; i < bytes.length; i += 2) {
        finder.sample((short) ((bytes[i] & 0xFF) | (bytes[i + 1] << 8)) / 32_768.0);
      }
      List<Long> wholeSeconds = new ArrayList<>();
      for (long second = 0; second <= 60; second++) {
        wholeSeconds.add(second * rate);
      }
      assertThat(finder.onsets()).isEqualTo(wholeSeconds);
      assertThat(track.cues()).extracting(CueTrack.Expected::frame).isEqualTo(wholeSeconds);
    }
    assertThat(progress).isSorted().endsWith(1.0).allMatch(p -> p > 0 && p <= 1);
    assertThat(track.cues().get(6).kind()).isEqualTo(CueKind.SQUEEZE);
    assertThat(track.cues().get(6).atNanos()).isEqualTo(6 * Plans.SECOND);
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void theFileMayBeReadByWhomeverAnyOtherFileMay() throws Exception {
    Path file = folder.resolve("track.wav");
    new CueTrack(SCHEDULE, 44_100, NO_VOICE).write(file, false, p -> {});
    Path usual = Files.createFile(folder.resolve("usual"));
    assertThat(Files.getPosixFilePermissions(file)).isEqualTo(Files.getPosixFilePermissions(usual));
  }

  /** Read back by a general-purpose sound tool, where it is installed. */
  @Test
  void soundToolsAgreeAboutTheFile() throws Exception {
    Path file = folder.resolve("track.wav");
    new CueTrack(SCHEDULE, 44_100, NO_VOICE).write(file, false, p -> {});
    Process sox;
    try {
      sox = new ProcessBuilder("sox", "--i", file.toString()).redirectErrorStream(true).start();
    } catch (IOException e) {
      org.junit.jupiter.api.Assumptions.abort("sox is not installed");
      return;
    }
    String said = new String(sox.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(sox.waitFor()).isZero();
    assertThat(said)
        .contains("Channels       : 1")
        .contains("Sample Rate    : 44100")
        .contains("Precision      : 16-bit")
        .contains("2778300 samples")
        .doesNotContain("WARN");
  }

  @Test
  void aFileIsReplacedOnlyWhenAsked() throws Exception {
    Path file = folder.resolve("track.wav");
    Files.writeString(file, "precious");
    CueTrack track = new CueTrack(SCHEDULE, 48_000, NO_VOICE);
    assertThatThrownBy(() -> track.write(file, false, p -> {}))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("precious");
    track.write(file, true, p -> {});
    assertThat(Files.size(file)).isEqualTo(44 + 2 * track.frames());
  }

  @Test
  void aStoppedWriteLeavesNothingBehind() throws Exception {
    Path file = folder.resolve("track.wav");
    CueTrack track = new CueTrack(SCHEDULE, 48_000, NO_VOICE);
    assertThatThrownBy(
            () ->
                track.write(
                    file,
                    false,
                    p -> {
                      throw new IllegalStateException("stop");
                    }))
        .hasMessage("stop");
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).isEmpty();
    }
  }

  @Test
  void whatCannotBeWrittenIsRefusedAtOnce() {
    CueSchedule paused = SCHEDULE.with(new Control(Plans.SECOND, Control.Kind.PAUSE));
    CueSchedule day =
        CueSchedule.of(
            Plans.adult("aha-2020", Situation.PULSE_NO_BREATHING, 86_400 * Plans.SECOND));
    assertThatThrownBy(() -> new CueTrack(paused, 48_000, NO_VOICE)).hasMessageContaining("end");
    assertThatThrownBy(() -> new CueTrack(SCHEDULE, 8_000, NO_VOICE)).hasMessageContaining("8000");
    assertThatThrownBy(() -> new CueTrack(day, 48_000, NO_VOICE)).hasMessageContaining("too long");
  }
}
