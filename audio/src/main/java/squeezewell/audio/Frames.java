package squeezewell.audio;

/** Translates between session time and frames, exactly, for sessions of any length. Pure. */
final class Frames {
  private static final long SECOND = 1_000_000_000L;

  private Frames() {}

  /**
   * The frame nearest to an instant; halves go up.
   *
   * @param nanos nanoseconds, may be negative
   * @param rate frames a second, positive
   */
  static long at(long nanos, int rate) {
    long seconds = Math.floorDiv(nanos, SECOND);
    long rest = Math.floorMod(nanos, SECOND);
    return seconds * rate + (rest * rate + SECOND / 2) / SECOND;
  }

  /** The instant of a frame, in nanoseconds, rounded down. */
  static long nanosOf(long frame, int rate) {
    long seconds = Math.floorDiv(frame, rate);
    long rest = Math.floorMod(frame, rate);
    return seconds * SECOND + rest * SECOND / rate;
  }
}
