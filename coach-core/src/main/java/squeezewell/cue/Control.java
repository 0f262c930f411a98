package squeezewell.cue;

import java.util.Objects;

/**
 * Something that changes what is prompted from an instant on.
 *
 * @param atNanos when, nanoseconds since the session began
 * @param kind what
 */
public record Control(long atNanos, Kind kind) {
  public Control {
    Objects.requireNonNull(kind, "kind");
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
