package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.cue.Control;
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
  private static final int HEADER = 44;

  @TempDir Path folder;

  /**
   * One cue as it is heard.
   *
   * @param early what most of its first half has, hertz, below 700
   * @param late the same of its second half
   */
  private record Heard(
      double rmsDecibels, double peak, double shareAbove600, double early, double late) {}

  /** Breaths with all that a check, suction and an end bring. */
  private static CueSchedule breaths(PatientGroup patient) {
    PracticePlan plan =
        new PracticePlan(
            Plans.guidance(
                "aha-2025",
                patient,
                patient == PatientGroup.NEWBORN
                    ? Situation.NEWBORN_VENTILATION
                    : Situation.PULSE_NO_BREATHING),
            0,
            190 * Plans.SECOND,
            0);
    return CueSchedule.of(
        plan,
        List.of(
            new Control(60 * Plans.SECOND + 2_500_000_000L, Control.Kind.PULSE_CHECK),
            new Control(74 * Plans.SECOND, Control.Kind.PULSE_CHECK_END),
            new Control(90 * Plans.SECOND + 2_500_000_000L, Control.Kind.SUCTION),
            new Control(109 * Plans.SECOND, Control.Kind.SUCTION_END)));
  }

  private static CueSchedule cycles() {
    return CueSchedule.of(
        Plans.adult("aha-2025", Situation.ARREST_NO_ADVANCED_AIRWAY, 60 * Plans.SECOND));
  }

  private Map<String, Heard> heard(CueSchedule schedule, int rate) throws Exception {
    CueTrack track = new CueTrack(schedule, rate, SoundLevels.defaults());
    Path file = folder.resolve(rate + ".wav");
    track.write(file, false, done -> {});
    double[] samples = samples(file);
    Map<String, Heard> heard = new TreeMap<>();
    for (int i = 0; i < track.cues().size(); i++) {
      CueTrack.Expected cue = track.cues().get(i);
      boolean counted = cue.kind() == CueKind.COUNT || cue.kind() == CueKind.PULSE_CHECK_SECOND;
      String name = cue.kind().id() + (counted ? cue.count() : "");
      long room =
          i + 1 < track.cues().size() ? track.cues().get(i + 1).frame() - cue.frame() : rate / 4;
      double seconds =
          cue.kind() == CueKind.SQUEEZE ? 0.96 : cue.kind() == CueKind.RELEASE ? 0.42 : 0.09;
      int length = (int) Math.min((long) (seconds * rate), room);
      if (length > rate / 20 && !heard.containsKey(name)) {
        heard.put(name, measure(samples, (int) cue.frame(), length, rate));
      }
    }
    heard.forEach(
        (name, h) ->
            System.out.printf(
                Locale.ROOT,
                "%d  %-20s %6.1f dBFS, peak %.2f, %3.0f %% above 600 Hz, %.0f then %.0f Hz%n",
                rate,
                name,
                h.rmsDecibels(),
                h.peak(),
                100 * h.shareAbove600(),
                h.early(),
                h.late()));
    return heard;
  }

  @ParameterizedTest
  @CsvSource({"ADULT, 44100", "ADULT, 48000", "CHILD, 44100", "NEWBORN, 44100"})
  void eachCueOfBreathsIsHeardOnASmallLoudspeaker(PatientGroup patient, int rate) throws Exception {
    Map<String, Heard> heard = heard(breaths(patient), rate);
    assertThat(heard.get("squeeze").shareAbove600()).isGreaterThanOrEqualTo(0.5);
    assertThat(heard.get("release").shareAbove600()).isGreaterThanOrEqualTo(0.5);
    assertThat(heard.get("squeeze").late()).isGreaterThan(heard.get("squeeze").early() + 20);
    assertThat(heard.get("release").late()).isLessThan(heard.get("release").early() - 20);
    assertThat(heard)
        .containsKeys("pulse-check-limit", "suction-soon", "suction-limit", "session-end");
    assertThat(heard)
        .allSatisfy(
            (name, h) -> {
              // What falls away is as loud at its beginning as a count.
              double least = name.equals("release") ? -27 : -22;
              assertThat(h.rmsDecibels()).isGreaterThanOrEqualTo(least);
              assertThat(h.peak()).isBetween(0.15, 0.9);
            });
    if (patient == PatientGroup.ADULT) {
      // The last two lead in, louder and higher.
      assertThat(heard.get("count5").rmsDecibels())
          .isGreaterThan(heard.get("count4").rmsDecibels() + 1);
    }
  }

  @Test
  void compressionsAreHeardOnASmallLoudspeaker() throws Exception {
    Heard tick = heard(cycles(), 44_100).get("compress");
    assertThat(tick.peak()).isGreaterThanOrEqualTo(0.3);
    assertThat(tick.shareAbove600()).isGreaterThanOrEqualTo(0.5);
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

  private static Heard measure(double[] samples, int from, int length, int rate) {
    double sum = 0;
    double peak = 0;
    for (int i = 0; i < length; i++) {
      sum += samples[from + i] * samples[from + i];
      peak = Math.max(peak, Math.abs(samples[from + i]));
    }
    double all = 0;
    double above = 0;
    for (double hertz = 10; hertz < rate / 2.0; hertz += 10) {
      double energy = energy(samples, from, length, hertz / rate);
      all += energy;
      above += hertz > 600 ? energy : 0;
    }
    return new Heard(
        10 * Math.log10(sum / length),
        peak,
        above / all,
        strongest(samples, from, length / 2, rate),
        strongest(samples, from + length / 2, length / 2, rate));
  }

  private static double strongest(double[] samples, int from, int length, int rate) {
    double best = 0;
    double most = 0;
    for (double hertz = 150; hertz < 700; hertz += 5) {
      double energy = energy(samples, from, length, hertz / rate);
      if (energy > most) {
        most = energy;
        best = hertz;
      }
    }
    return best;
  }

  /**
   * The square of one bin of the transform; the turn of each sample is that of the last, turned.
   */
  private static double energy(double[] samples, int from, int length, double turns) {
    double cos = Math.cos(2 * Math.PI * turns);
    double sin = Math.sin(2 * Math.PI * turns);
    double x = 1;
    double y = 0;
    double real = 0;
    double imaginary = 0;
    for (int i = 0; i < length; i++) {
      real += samples[from + i] * x;
      imaginary += samples[from + i] * y;
      double turned = x * cos - y * sin;
      y = x * sin + y * cos;
      x = turned;
    }
    return real * real + imaginary * imaginary;
  }
}
