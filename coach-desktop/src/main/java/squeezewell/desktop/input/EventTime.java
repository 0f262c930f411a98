package squeezewell.desktop.input;

/**
 * When an input event really happened. The event thread may come to it late; the window system's
 * own stamp tells how late.
 */
public final class EventTime {
  /** A stamp further off than this is not believed: the two clocks are not the same. */
  private static final long BELIEVED_MILLIS = 500;

  private static final long NANOS_PER_MILLI = 1_000_000L;

  private EventTime() {}

  /**
   * The reading of {@link System#nanoTime()} at which an event happened.
   *
   * @param whenMillis the event's stamp, milliseconds of the wall clock
   */
  public static long nanoTimeOf(long whenMillis) {
    return nanoTimeOf(whenMillis, System.currentTimeMillis(), System.nanoTime());
  }

  static long nanoTimeOf(long whenMillis, long wallMillis, long nanoTime) {
    long late = wallMillis - whenMillis;
    return late < 0 || late > BELIEVED_MILLIS ? nanoTime : nanoTime - late * NANOS_PER_MILLI;
  }
}
