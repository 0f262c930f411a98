package squeezewell.cue;

import java.util.Objects;

/**
 * A stretch of a session in which one thing goes on. Stretches follow each other without a gap.
 *
 * @param kind what goes on
 * @param startNanos inclusive, nanoseconds since the session began
 * @param endNanos exclusive; {@link #OPEN} while it goes on
 * @param originNanos where the rhythm starts; only for {@link Kind#PACED}
 */
public record Stretch(Kind kind, long startNanos, long endNanos, long originNanos) {
  /** The end of a stretch that has not ended. */
  public static final long OPEN = Long.MAX_VALUE;

  public Stretch {
    Objects.requireNonNull(kind, "kind");
  }

  /** What can go on. */
  public enum Kind {
    COUNT_IN,
    PACED,
    PULSE_CHECK,
    SUCTION,
    PAUSED,
    ENDED
  }

  /** Whether the instant lies in it. */
  public boolean holds(long nanos) {
    return nanos >= startNanos && nanos < endNanos;
  }

  Stretch endingAt(long nanos) {
    return new Stretch(kind, startNanos, nanos, originNanos);
  }
}
