package squeezewell.desktop.screens;

/**
 * Keeps a slip of the finger from ending a station: while something is left to do, it ends at the
 * second press within five seconds. Used on the event thread.
 */
public final class FinishGuard {
  /** How long the first press waits for the second (our own choice, as long as a slip's undo). */
  static final long WAIT_NANOS = 5_000_000_000L;

  private boolean asked;
  private long askedAt;

  /**
   * Takes a press; tells whether it ends the station.
   *
   * @param complete whether nothing is left to do
   * @param nanoTime when, a reading of {@link System#nanoTime()}
   */
  public boolean press(boolean complete, long nanoTime) {
    if (complete || waits(nanoTime)) {
      asked = false;
      return true;
    }
    asked = true;
    askedAt = nanoTime;
    return false;
  }

  /** Whether one more press would end it now. */
  public boolean waits(long nanoTime) {
    return asked && nanoTime - askedAt <= WAIT_NANOS;
  }
}
