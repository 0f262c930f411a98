package squeezewell.review.measure;

import java.util.OptionalDouble;
import squeezewell.cue.CheckKind;

/**
 * A time at which a check was due, or a check that nothing had asked for. Seconds since the session
 * began.
 *
 * @param kind what was to be looked for: pulse, rhythm or heart rate
 * @param dueSeconds when it was due; empty for an extra check
 * @param startedSeconds when it began; empty if it was not made
 * @param lengthSeconds how long it lasted; empty if it was not made
 * @param lateSeconds start minus due time, negative if early; empty if either is
 * @param outcome what is to be said about its time
 * @param lengthOutcome what is to be said about its length
 * @param breathsDuring breaths begun in it, its first 0.3 s not counted
 */
public record PulseCheckResult(
    CheckKind kind,
    OptionalDouble dueSeconds,
    OptionalDouble startedSeconds,
    OptionalDouble lengthSeconds,
    OptionalDouble lateSeconds,
    Outcome outcome,
    LengthOutcome lengthOutcome,
    int breathsDuring) {
  /** A check this long before or after its time is on time (our own choice). */
  public static final double ON_TIME_WITHIN_SECONDS = 15;

  /** Whether the check was made at its time. */
  public enum Outcome {
    ON_TIME,
    LATE,
    EARLY,
    MISSED,
    /** Not made yet when the session ended, although it was due some time before. */
    OVERDUE,
    /** Made when none was due. */
    EXTRA,
    /** Due so shortly before the session's end that nothing is made of its absence. */
    NOT_COUNTED
  }

  /** Whether the check lasted as long as it should. */
  public enum LengthOutcome {
    RIGHT,
    TOO_SHORT,
    TOO_LONG,
    /** Not made, or the session ended in it. */
    NOT_JUDGED
  }
}
