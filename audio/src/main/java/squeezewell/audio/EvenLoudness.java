package squeezewell.audio;

import java.util.Arrays;

/** Makes spoken lines equally loud and takes the silence off their ends. Pure. */
final class EvenLoudness {
  /** The mean level of the lines that are rendered ahead, as measured: 0.086 of full scale. */
  static final double LEVEL = 0.086;

  /** A line is never louder than this at its peak. */
  static final double PEAK = 0.95;

  /** What counts as silence: 0.5 % of full scale, as for the lines that are rendered ahead. */
  private static final int SILENCE = 164;

  private static final double FULL_SCALE = 32_767;

  private EvenLoudness() {}

  /**
   * The line, even and without silent ends.
   *
   * @throws SpeechException if it is silent
   */
  static SpokenLine of(short[] samples, int rate) throws SpeechException {
    int from = 0;
    while (from < samples.length && Math.abs((int) samples[from]) < SILENCE) {
      from++;
    }
    int to = samples.length;
    while (to > from && Math.abs((int) samples[to - 1]) < SILENCE) {
      to--;
    }
    if (from == to) {
      throw new SpeechException("nothing was said");
    }
    short[] line = Arrays.copyOfRange(samples, from, to);
    double squares = 0;
    double peak = 0;
    for (short sample : line) {
      squares += (double) sample * sample;
      peak = Math.max(peak, Math.abs((int) sample));
    }
    double level = Math.sqrt(squares / line.length) / FULL_SCALE;
    double gain = Math.min(LEVEL / level, PEAK * FULL_SCALE / peak);
    for (int i = 0; i < line.length; i++) {
      line[i] = (short) Math.round(line[i] * gain);
    }
    return new SpokenLine(line, rate);
  }
}
