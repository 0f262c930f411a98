package squeezewell.session;

import java.util.Objects;

/**
 * One fact of a session.
 *
 * @param number its place in the session, from 1, without gaps
 * @param atNanos when it happened, nanoseconds since the session began, not negative
 * @param what what happened
 * @param detail more about it; empty if there is no more
 */
public record SessionEvent(int number, long atNanos, What what, String detail) {
  /** The longest detail a file may hold, in characters. */
  public static final int LONGEST_DETAIL = 2_000;

  public SessionEvent {
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(detail, "detail");
    if (number < 1 || atNanos < 0) {
      throw new IllegalArgumentException("number " + number + ", at " + atNanos + " ns");
    }
  }
}
