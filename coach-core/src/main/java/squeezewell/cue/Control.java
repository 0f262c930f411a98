package squeezewell.cue;

import java.util.Objects;

/**
 * Something that changes what is prompted from an instant on.
 *
 * @param atNanos when, nanoseconds since the session began, at most {@link #LATEST_NANOS}
 * @param kind what
 */
public record Control(long atNanos, Kind kind) {
  /** A session that is left paused may go on for long; after a year nobody will come back to it. */
  public static final long LATEST_NANOS = 366L * 24 * 3_600 * 1_000_000_000L;

  public Control {
    Objects.requireNonNull(kind, "kind");
    if (atNanos > LATEST_NANOS) {
      throw new IllegalArgumentException("a control over a year after the start: " + atNanos);
    }
  }

  /** The kinds of change. An end without its start changes nothing. */
  public enum Kind {
    PULSE_CHECK,
    PULSE_CHECK_END,
    SUCTION,
    SUCTION_END,
    PAUSE,
    RESUME,
    FINISH
  }
}
