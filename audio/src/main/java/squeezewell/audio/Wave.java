package squeezewell.audio;

/**
 * Builds one sound sample by sample. Each partial starts at the top of its cosine, so that a sound
 * is there with its very first sample; it ends at exactly zero and has no direct current. Pure
 * apart from the array it fills.
 */
final class Wave {
  private static final double TURN = 2 * Math.PI;

  private final int rate;
  private final double[] samples;

  Wave(int rate, double seconds) {
    this.rate = rate;
    this.samples = new double[(int) Math.round(seconds * rate)];
  }

  /** A function of time in seconds. */
  interface Shape {
    double at(double seconds);
  }

  /**
   * Adds a tone that starts at the top of its cosine.
   *
   * @param fromSeconds where it starts
   * @param hertz its frequency over its own time
   * @param amplitude its amplitude over its own time
   * @param partials amplitudes of the harmonics, the fundamental first
   */
  Wave add(double fromSeconds, Shape hertz, Shape amplitude, double... partials) {
    double turns = 0;
    int from = (int) Math.round(fromSeconds * rate);
    for (int i = from; i < samples.length; i++) {
      double seconds = (double) (i - from) / rate;
      double sum = 0;
      for (int p = 0; p < partials.length; p++) {
        sum += partials[p] * Math.cos(TURN * turns * (p + 1));
      }
      samples[i] += sum * amplitude.at(seconds);
      turns += hertz.at(seconds) / rate;
    }
    return this;
  }

  /** The finished sound, faded to zero over its last part. */
  float[] endingOver(double fadeSeconds) {
    int fade = Math.min(samples.length, (int) Math.round(fadeSeconds * rate));
    for (int i = 0; i < fade; i++) {
      int at = samples.length - 1 - i;
      samples[at] *= 0.5 - 0.5 * Math.cos(Math.PI * i / fade);
    }
    removeDirectCurrent();
    float[] sound = new float[samples.length];
    for (int i = 0; i < sound.length; i++) {
      sound[i] = (float) samples[i];
    }
    return sound;
  }

  /** Takes the mean away with a smooth bell, which leaves both ends as they are. */
  private void removeDirectCurrent() {
    double sum = 0;
    for (double sample : samples) {
      sum += sample;
    }
    int last = samples.length - 1;
    for (int i = 0; i <= last; i++) {
      double bell = 1 - Math.cos(TURN * i / Math.max(1, last));
      samples[i] -= sum * bell / Math.max(1, last);
    }
  }
}
