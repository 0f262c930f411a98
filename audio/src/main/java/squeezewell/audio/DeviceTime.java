package squeezewell.audio;

import java.util.Arrays;

/**
 * Estimates by how many frames session time is ahead of a device's count of frames, from many rough
 * pairs of the two. Devices count in steps of 10 ms and more, and a step is seen late but never
 * early; so the least of the differences within the last seconds tells the truth, however busy the
 * machine is. Not thread-safe.
 */
final class DeviceTime {
  private static final long BUCKET_NANOS = 500_000_000L;
  private static final int BUCKETS = 6;

  private static final double HICCUP_SECONDS = 0.004;

  /** What a device counts just after a hole is of no use (our own choice). */
  private static final long QUIET_NANOS = 150_000_000L;

  /** With this much the estimate may be acted upon (our own choice). */
  private static final int ENOUGH_PAIRS = 12;

  private static final long ENOUGH_NANOS = 250_000_000L;

  private final int rate;
  private final double[] least = new double[BUCKETS];
  private long pairs;
  private long quietUntilNanos = Long.MIN_VALUE;
  private long firstNanos;
  private long lastNanos;
  private long bucket;

  /**
   * An estimate that knows nothing.
   *
   * @param rate nominal frames a second
   */
  DeviceTime(int rate) {
    this.rate = rate;
  }

  /** Forgets everything, as after a hole in the sound, and waits a little. */
  void reset(long nowNanos) {
    pairs = 0;
    quietUntilNanos = nowNanos + QUIET_NANOS;
  }

  /**
   * Takes one pair.
   *
   * @param nanos session time
   * @param playedFrames frames that had left the device by then
   */
  void add(long nanos, long playedFrames) {
    if (nanos < quietUntilNanos) {
      return;
    }
    long now = nanos / BUCKET_NANOS;
    if (pairs == 0 || now - bucket >= BUCKETS) {
      Arrays.fill(least, Double.POSITIVE_INFINITY);
      bucket = now;
    }
    while (bucket < now) {
      bucket++;
      least[(int) (bucket % BUCKETS)] = Double.POSITIVE_INFINITY;
    }
    int at = (int) (now % BUCKETS);
    least[at] = Math.min(least[at], nanos / 1e9 * rate - playedFrames);
    firstNanos = pairs == 0 ? nanos : firstNanos;
    lastNanos = nanos;
    pairs++;
  }

  /** Whether there were enough pairs to act upon. */
  boolean known() {
    return pairs >= ENOUGH_PAIRS && lastNanos - firstNanos >= ENOUGH_NANOS;
  }

  /** Session frames minus device frames; only after the first pair. */
  long aheadFrames() {
    double all = Arrays.stream(least).min().orElseThrow();
    double recent =
        Math.min(least[(int) (bucket % BUCKETS)], least[(int) ((bucket + BUCKETS - 1) % BUCKETS)]);
    // No drift is that fast: the device has put in silence of its own, and the past is past.
    boolean hiccup = recent < Double.POSITIVE_INFINITY && recent - all > HICCUP_SECONDS * rate;
    return Math.round(hiccup ? recent : all);
  }
}
