package squeezewell.audio;

/** Words as sound: mono, at a rate of its own. Immutable. */
public final class SpokenLine {
  /** The rates that occur: a telephone's to a studio's. */
  static final int LEAST_RATE = 8_000;

  static final int MOST_RATE = 44_100;

  private final short[] samples;
  private final int rate;

  /**
   * Words as sound.
   *
   * @param samples signed 16 bits
   * @param rate frames a second, 8,000 to 44,100
   */
  public SpokenLine(short[] samples, int rate) {
    if (rate < LEAST_RATE || rate > MOST_RATE) {
      throw new IllegalArgumentException("a rate lies between 8000 and 44100, not " + rate);
    }
    this.samples = samples.clone();
    this.rate = rate;
  }

  /** Frames a second. */
  public int rate() {
    return rate;
  }

  /** How many frames it has. */
  public int frames() {
    return samples.length;
  }

  /** How long it is, nanoseconds. */
  public long nanos() {
    return Frames.nanosOf(samples.length, rate);
  }

  /** One sample, -1 to 1; 0 outside. */
  float at(int frame) {
    return frame < 0 || frame >= samples.length ? 0 : samples[frame] / 32_768f;
  }
}
