package squeezewell.session;

import java.time.Instant;

/** The clock of a live session: the machine's monotonic clock, from the moment it was made. */
public final class MonotonicClock implements SessionClock {
  private static final int READINGS = 5;

  private final long zero;
  private final Instant startedAt;

  private MonotonicClock(long zero, Instant startedAt) {
    this.zero = zero;
    this.startedAt = startedAt;
  }

  /**
   * Starts a session's time now. The wall clock is read between two readings of the monotonic one,
   * a few times over, and the closest pair is taken: a pause of the program in between would
   * otherwise shift every event of the session.
   */
  public static MonotonicClock startNow() {
    MonotonicClock best = null;
    long narrowest = Long.MAX_VALUE;
    for (int i = 0; i < READINGS; i++) {
      long before = System.nanoTime();
      Instant wall = Instant.now();
      long width = System.nanoTime() - before;
      if (width < narrowest) {
        narrowest = width;
        best = new MonotonicClock(before + width / 2, wall);
      }
    }
    return best;
  }

  @Override
  public long nanos() {
    return System.nanoTime() - zero;
  }

  /** Session time of a reading of {@link System#nanoTime()}. */
  public long at(long nanoTime) {
    return nanoTime - zero;
  }

  /** Wall-clock time at zero. */
  public Instant startedAt() {
    return startedAt;
  }
}
