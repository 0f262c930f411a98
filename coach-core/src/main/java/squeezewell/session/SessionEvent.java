package squeezewell.session;

import java.util.Objects;
import squeezewell.cue.Control;

/**
 * One fact of a session.
 *
 * @param number its place in the session, from 1, without gaps
 * @param atNanos when it happened, nanoseconds since the session began, not negative, at most
 *     {@link #LATEST_NANOS}
 * @param what what happened
 * @param detail more about it, at most {@link What#longestDetail()} characters; empty if there is
 *     no more
 */
public record SessionEvent(int number, long atNanos, What what, String detail) {
  /** The longest detail of all events but {@link What#STATION}, in characters. */
  public static final int LONGEST_DETAIL = 2_000;

  /** A session that is left paused may go on for long; after a year nobody will come back to it. */
  public static final long LATEST_NANOS = Control.LATEST_NANOS;

  public SessionEvent {
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(detail, "detail");
    if (number < 1 || atNanos < 0 || atNanos > LATEST_NANOS) {
      throw new IllegalArgumentException("number " + number + ", at " + atNanos + " ns");
    }
    if (detail.length() > what.longestDetail()) {
      throw new IllegalArgumentException("a detail of " + detail.length() + " characters");
    }
  }
}
