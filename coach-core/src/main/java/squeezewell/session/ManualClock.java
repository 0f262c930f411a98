package squeezewell.session;

/** A clock that moves only when told, for tests and for practices that run faster than time. */
public final class ManualClock implements SessionClock {
  private long nanos;

  @Override
  public long nanos() {
    return nanos;
  }

  /**
   * Moves on to an instant.
   *
   * @throws IllegalArgumentException if that lies in the past
   */
  public void moveTo(long toNanos) {
    if (toNanos < nanos) {
      throw new IllegalArgumentException("a clock can't go back from " + nanos + " to " + toNanos);
    }
    nanos = toNanos;
  }
}
