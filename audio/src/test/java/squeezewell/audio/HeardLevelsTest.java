package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/**
 * Spectrum and level of each cue, measured from a rendered file with a plain discrete Fourier
 * transform (by its definition, Oppenheim and Schafer) and not by the code that made it. What is
 * asked of them is our own choice: small loudspeakers and old ears hear little below 600 Hz.
 */
class HeardLevelsTest {
  private static final int RATE = 44_100;
  private static final int HEADER = 44;

  @TempDir Path folder;

  private record Heard(double rmsDecibels, double peak, double shareAbove600) {}

  @Test
  void squeezeAndReleaseCarryAndCountsAreHeard() throws Exception {
    PracticePlan plan =
        new PracticePlan(
            Plans.guidance("aha-2025", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING),
            0,
            30_000_000_000L,
            0);
    CueTrack track = new CueTrack(CueSchedule.of(plan), RATE, SoundLevels.defaults());
    Path file = folder.resolve("cues.wav");
    track.write(file, false, done -> {});
    double[] samples = samples(file);
    Map<String, Heard> heard = new TreeMap<>();
    for (CueTrack.Expected cue : track.cues()) {
      double seconds =
          cue.kind() == CueKind.SQUEEZE ? 0.96 : cue.kind() == CueKind.RELEASE ? 0.42 : 0.09;
      heard.computeIfAbsent(
          cue.kind().id() + (cue.kind() == CueKind.COUNT ? cue.count() : ""),
          name -> measure(samples, (int) cue.frame(), (int) (seconds * RATE)));
    }
    heard.forEach(
        (name, h) ->
            System.out.printf(
                java.util.Locale.ROOT,
                "%-12s %6.1f dBFS, peak %.2f, %3.0f %% of the energy above 600 Hz%n",
                name,
                h.rmsDecibels(),
                h.peak(),
                100 * h.shareAbove600()));
    assertThat(heard.get("squeeze").shareAbove600()).isGreaterThanOrEqualTo(0.5);
    assertThat(heard.get("release").shareAbove600()).isGreaterThanOrEqualTo(0.5);
    for (int count = 3; count <= 6; count++) {
      assertThat(heard.get("count" + count).rmsDecibels()).isGreaterThanOrEqualTo(-22);
    }
    // The last two lead in, louder and higher.
    assertThat(heard.get("count5").rmsDecibels())
        .isGreaterThan(heard.get("count4").rmsDecibels() + 1);
    assertThat(heard.values()).allMatch(h -> h.peak() < 0.9);
  }

  private static double[] samples(Path file) throws Exception {
    byte[] bytes = Files.readAllBytes(file);
    ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    double[] samples = new double[(bytes.length - HEADER) / 2];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = buffer.getShort(HEADER + 2 * i) / 32_768.0;
    }
    return samples;
  }

  /** Energy in bins of the transform, up to 4 kHz, above which these sounds have nothing. */
  private static Heard measure(double[] samples, int from, int length) {
    double sum = 0;
    double peak = 0;
    for (int i = 0; i < length; i++) {
      sum += samples[from + i] * samples[from + i];
      peak = Math.max(peak, Math.abs(samples[from + i]));
    }
    double all = 0;
    double above = 0;
    double step = 10;
    for (double hertz = step; hertz <= 4_000; hertz += step) {
      double real = 0;
      double imaginary = 0;
      for (int i = 0; i < length; i++) {
        double turn = 2 * Math.PI * hertz * i / RATE;
        real += samples[from + i] * Math.cos(turn);
        imaginary += samples[from + i] * Math.sin(turn);
      }
      double energy = real * real + imaginary * imaginary;
      all += energy;
      above += hertz > 600 ? energy : 0;
    }
    return new Heard(10 * Math.log10(sum / length), peak, above / all);
  }
}
