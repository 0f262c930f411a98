package squeezewell.audio;

import java.math.BigInteger;

/**
 * Changes the frame rate of a sound upwards, by band-limited interpolation: a sinc with a Hann
 * window (the textbook method; 16 zero crossings to each side are our choice). Immutable.
 */
final class Resampler {
  private static final int CROSSINGS = 16;
  private static final int TAPS = 2 * CROSSINGS;

  private final int step;
  private final int phases;
  private final double[][] kernels;

  /**
   * For one pair of rates.
   *
   * @param fromRate frames a second of the sound
   * @param toRate frames a second of the result, not below {@code fromRate}
   */
  Resampler(int fromRate, int toRate) {
    if (toRate < fromRate) {
      throw new IllegalArgumentException("from " + fromRate + " down to " + toRate + " frames/s");
    }
    int divisor = BigInteger.valueOf(fromRate).gcd(BigInteger.valueOf(toRate)).intValue();
    step = fromRate / divisor;
    phases = toRate / divisor;
    kernels = kernels(phases);
  }

  /**
   * The same sound at another rate.
   *
   * @param toRate frames a second of the result, not below the line's
   */
  static float[] convert(SpokenLine line, int toRate) {
    Resampler resampler = new Resampler(line.rate(), toRate);
    float[] result = new float[resampler.length(line.frames())];
    for (int i = 0; i < result.length; i++) {
      result[i] = resampler.sample(line, i);
    }
    return result;
  }

  /** How many frames so many become. */
  int length(int frames) {
    return (int) ((long) frames * phases / step);
  }

  /** One frame of the result. */
  float sample(SpokenLine line, int frame) {
    int first = (int) ((long) frame * step / phases) - CROSSINGS + 1;
    double[] kernel = kernels[(int) ((long) frame * step % phases)];
    double sum = 0;
    for (int k = 0; k < TAPS; k++) {
      sum += line.at(first + k) * kernel[k];
    }
    return (float) sum;
  }

  /** One kernel for each place that a new sample can have between two old ones. */
  private static double[][] kernels(int phases) {
    double[][] kernels = new double[phases][TAPS];
    for (int phase = 0; phase < phases; phase++) {
      for (int k = 0; k < TAPS; k++) {
        kernels[phase][k] = kernel((double) phase / phases + CROSSINGS - 1 - k);
      }
    }
    return kernels;
  }

  private static double kernel(double x) {
    if (x == 0) {
      return 1;
    }
    double window = 0.5 + 0.5 * Math.cos(Math.PI * x / CROSSINGS);
    return Math.sin(Math.PI * x) / (Math.PI * x) * window;
  }
}
