package squeezewell.audio;

/**
 * Estimates by how many frames session time is ahead of a device's count of frames, from many rough
 * pairs of the two: a plain mean at first, then a mean that forgets with a time constant. Devices
 * count in steps of 10 ms and more, so a single pair says little; the mean of some hundred is good
 * to a fraction of a millisecond. Not thread-safe.
 */
final class DeviceTime {
  private static final double FORGETS_AFTER_NANOS = 4e9;

  /** With this much the mean may be acted upon (our own choice). */
  private static final int ENOUGH_PAIRS = 12;

  private static final long ENOUGH_NANOS = 250_000_000L;

  private final int rate;
  private long pairs;
  private long firstNanos;
  private long lastNanos;
  private double aheadFrames;

  /**
   * An estimate that knows nothing.
   *
   * @param rate nominal frames a second
   */
  DeviceTime(int rate) {
    this.rate = rate;
  }

  /** Forgets everything, as after a hole in the sound. */
  void reset() {
    pairs = 0;
  }

  /**
   * Takes one pair.
   *
   * @param nanos session time
   * @param playedFrames frames that had left the device by then
   */
  void add(long nanos, long playedFrames) {
    double ahead = nanos / 1e9 * rate - playedFrames;
    pairs++;
    if (pairs == 1) {
      firstNanos = nanos;
      aheadFrames = ahead;
    } else {
      double weight = Math.max(1.0 / pairs, (nanos - lastNanos) / FORGETS_AFTER_NANOS);
      aheadFrames += Math.min(weight, 0.5) * (ahead - aheadFrames);
    }
    lastNanos = nanos;
  }

  /** Whether there were enough pairs to act upon. */
  boolean known() {
    return pairs >= ENOUGH_PAIRS && lastNanos - firstNanos >= ENOUGH_NANOS;
  }

  /** Session frames minus device frames; 0 before the first pair. */
  long aheadFrames() {
    return Math.round(aheadFrames);
  }
}
