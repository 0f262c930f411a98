package squeezewell.desktop.input;

import java.awt.AWTEvent;
import java.awt.event.AWTEventListener;
import java.awt.event.InputEvent;

/**
 * When input events really happened. The event thread may come to one late; the window system's own
 * stamp tells how late, once it is known how the two clocks stand to each other. What the toolkit
 * says of that can't be relied on: it asks the window system once, at the first event, and a system
 * that is busy at that moment puts every stamp off by as long as its answer took (70 ms were seen).
 * So the difference is learned here: no event comes before it happened, hence the least delay seen
 * is the nearest to none. Used on the event thread only.
 */
public final class EventTime implements AWTEventListener {
  /** The events to learn from. */
  public static final long EVENTS =
      AWTEvent.KEY_EVENT_MASK | AWTEvent.MOUSE_EVENT_MASK | AWTEvent.MOUSE_MOTION_EVENT_MASK;

  /** A delay longer than this is not believed: a clock was set. */
  private static final long BELIEVED_NANOS = 500_000_000L;

  /** How far two clocks may part: 500 parts in a million, as Linux slews at most (adjtimex(2)). */
  private static final long PARTING = 2_000;

  private static final long NANOS_PER_MILLI = 1_000_000L;

  private boolean learned;
  private long leastNanos;
  private long learnedAtNanos;

  @Override
  public void eventDispatched(AWTEvent e) {
    if (e instanceof InputEvent input) {
      nanoTimeOf(input.getWhen());
    }
  }

  /**
   * The reading of {@link System#nanoTime()} at which an event happened.
   *
   * @param whenMillis the event's stamp, milliseconds of the wall clock
   */
  public long nanoTimeOf(long whenMillis) {
    return nanoTimeOf(whenMillis, System.nanoTime());
  }

  long nanoTimeOf(long whenMillis, long nanoTime) {
    long apart = nanoTime - whenMillis * NANOS_PER_MILLI;
    long least = leastNanos + (nanoTime - learnedAtNanos) / PARTING;
    leastNanos = learned && apart - least > 0 ? least : apart;
    learnedAtNanos = nanoTime;
    learned = true;
    long late = apart - leastNanos;
    return late > BELIEVED_NANOS ? nanoTime : nanoTime - late;
  }
}
