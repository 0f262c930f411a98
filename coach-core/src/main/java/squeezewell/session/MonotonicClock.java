package squeezewell.session;

import java.time.Instant;

/** The clock of a live session: the machine's monotonic clock, from the moment it was made. */
public final class MonotonicClock implements SessionClock {
  private final long zero;
  private final Instant startedAt;

  private MonotonicClock(long zero, Instant startedAt) {
    this.zero = zero;
    this.startedAt = startedAt;
  }

  /** Starts a session's time now. */
  public static MonotonicClock startNow() {
    Instant wall = Instant.now();
    return new MonotonicClock(System.nanoTime(), wall);
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
