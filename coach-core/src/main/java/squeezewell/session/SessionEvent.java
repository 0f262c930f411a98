package squeezewell.session;

import java.util.Objects;
import squeezewell.cue.Control;

/**
 * One event of a session.
 *
 * @param number its place in the session, from 1, without gaps
 * @param atNanos when it happened, nanoseconds since the session began, not negative, at most
 *     {@link #LATEST_NANOS}
 * @param fact what happened
 */
public record SessionEvent(int number, long atNanos, Fact fact) {
  /** A session that is left paused may go on for long; after a year nobody will come back to it. */
  public static final long LATEST_NANOS = Control.LATEST_NANOS;

  public SessionEvent {
    Objects.requireNonNull(fact, "fact");
    if (number < 1 || atNanos < 0 || atNanos > LATEST_NANOS) {
      throw new IllegalArgumentException("number " + number + ", at " + atNanos + " ns");
    }
  }

  /** An event as format 1 and event lists tell it. */
  public static SessionEvent of(int number, long atNanos, EventType type, String detail) {
    return new SessionEvent(number, atNanos, EventCodec.parse(type, detail));
  }

  /** Which of the words of a session it is. */
  public EventType what() {
    return fact.type();
  }

  /** What goes with it as format 1 and event lists tell it, for people; nothing is read from it. */
  public String detail() {
    return EventCodec.text(fact);
  }
}
