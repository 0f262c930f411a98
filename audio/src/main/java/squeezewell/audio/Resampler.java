package squeezewell.audio;

/**
 * Changes the frame rate of a short sound upwards, by band-limited interpolation: a sinc with a
 * Hann window (the textbook method; 16 zero crossings to each side are our choice). Pure.
 */
final class Resampler {
  private static final int CROSSINGS = 16;

  private Resampler() {}

  /**
   * The same sound at another rate.
   *
   * @param samples the sound
   * @param fromRate its frames a second
   * @param toRate frames a second of the result, not below {@code fromRate}
   */
  static float[] convert(float[] samples, int fromRate, int toRate) {
    if (toRate < fromRate) {
      throw new IllegalArgumentException("from " + fromRate + " down to " + toRate + " frames/s");
    }
    if (fromRate == toRate) {
      return samples.clone();
    }
    float[] result = new float[(int) ((long) samples.length * toRate / fromRate)];
    for (int i = 0; i < result.length; i++) {
      result[i] = (float) at(samples, (double) i * fromRate / toRate);
    }
    return result;
  }

  private static double at(float[] samples, double position) {
    int centre = (int) Math.floor(position);
    double sum = 0;
    int from = Math.max(0, centre - CROSSINGS + 1);
    int to = Math.min(samples.length - 1, centre + CROSSINGS);
    for (int i = from; i <= to; i++) {
      sum += samples[i] * kernel(position - i);
    }
    return sum;
  }

  private static double kernel(double x) {
    if (x == 0) {
      return 1;
    }
    double window = 0.5 + 0.5 * Math.cos(Math.PI * x / CROSSINGS);
    return Math.sin(Math.PI * x) / (Math.PI * x) * window;
  }
}
