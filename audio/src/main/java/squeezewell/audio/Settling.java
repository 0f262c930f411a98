package squeezewell.audio;

/**
 * Tells when a device that was just opened has begun to play evenly. Devices swallow the first
 * frames at once and may then stand still for as long as two seconds. Not thread-safe.
 */
final class Settling {
  private static final long WINDOW_NANOS = 250_000_000L;

  /** A device that has not begun by then is taken as one that never will (our own choice). */
  static final long LONGEST_NANOS = 4_000_000_000L;

  private static final double EVEN_ENOUGH = 0.25;

  private final int rate;
  private boolean begun;
  private int windows;
  private long windowNanos;
  private long windowFrames;

  Settling(int rate) {
    this.rate = rate;
  }

  /**
   * Takes a look at the device.
   *
   * @param nanos session time
   * @param playedFrames frames that have left the device
   * @return what the look has shown
   */
  Result look(long nanos, long playedFrames) {
    if (!begun) {
      begun = true;
      startWindow(nanos, playedFrames);
      return Result.UNEVEN;
    }
    long length = nanos - windowNanos;
    if (length < WINDOW_NANOS) {
      return Result.WAIT;
    }
    double expected = length / 1e9 * rate;
    double played = playedFrames - windowFrames;
    boolean even = windows > 0 && Math.abs(played / expected - 1) < EVEN_ENOUGH;
    windows++;
    startWindow(nanos, playedFrames);
    return even ? Result.EVEN : Result.UNEVEN;
  }

  /** What a look can show. */
  enum Result {
    /** Nothing yet. */
    WAIT,
    /** What was seen so far is of no use. */
    UNEVEN,
    /** The device has played evenly for a while. */
    EVEN
  }

  private void startWindow(long nanos, long playedFrames) {
    windowNanos = nanos;
    windowFrames = playedFrames;
  }
}
