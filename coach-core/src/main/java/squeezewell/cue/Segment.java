package squeezewell.cue;

import java.util.Objects;
import squeezewell.input.FileWord;
import squeezewell.protocol.Guidance;

/**
 * A stretch of a session in which one thing goes on. Stretches follow each other without a gap.
 *
 * @param kind what goes on
 * @param startNanos inclusive, nanoseconds since the session began
 * @param endNanos exclusive; {@link #OPEN} while it goes on
 * @param originNanos where the rhythm starts; only for {@link Kind#PACED}
 * @param breathOriginNanos where steady breaths start: the origin, or the last squeeze before the
 *     stretch, from which they are counted on; only for {@link Kind#PACED}
 * @param compressing whether compressions go on in it without a break while no breath is asked for;
 *     only for {@link Kind#SUCTION}, and then the origin is that of the compressions
 * @param guidance the rhythm and limits in force
 */
public record Segment(
    Kind kind,
    long startNanos,
    long endNanos,
    long originNanos,
    long breathOriginNanos,
    boolean compressing,
    Guidance guidance) {
  /** The end of a stretch that has not ended. */
  public static final long OPEN = Long.MAX_VALUE;

  public Segment {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(guidance, "guidance");
  }

  /** A stretch without a rhythm. */
  static Segment holding(Kind kind, long startNanos, Guidance guidance) {
    return new Segment(kind, startNanos, OPEN, 0, 0, false, guidance);
  }

  /** A stretch of care for which no rhythm is prompted, open. */
  static Segment unprompted(CareKind care, long startNanos, Guidance guidance) {
    return holding(care == CareKind.WATCH ? Kind.WATCHING : Kind.NO_RATE, startNanos, guidance);
  }

  /** A stretch with a rhythm, open. */
  static Segment paced(long startNanos, long origin, long breathOrigin, Guidance guidance) {
    return new Segment(Kind.PACED, startNanos, OPEN, origin, breathOrigin, false, guidance);
  }

  /** Suction while the chest is compressed by somebody else, open. */
  static Segment suctionWhileCompressing(long startNanos, long origin, Guidance guidance) {
    return new Segment(Kind.SUCTION, startNanos, OPEN, origin, 0, true, guidance);
  }

  /**
   * What can go on, in a schedule, a task of a station or a review. The words of a station's file
   * are {@code pulse-check} and {@code suction}.
   */
  public enum Kind implements FileWord {
    COUNT_IN,
    PACED,
    /** The patient breathes well; nothing is prompted but checks. */
    WATCHING,
    /** The patient needs breaths, and there is no rate for them; nothing is prompted but checks. */
    NO_RATE,
    PULSE_CHECK,
    SUCTION,
    PAUSED,
    /** The program stood still; only a review knows of it. */
    STALLED,
    ENDED
  }

  /** Whether the instant lies in it. */
  public boolean holds(long nanos) {
    return nanos >= startNanos && nanos < endNanos;
  }

  /** Whether a check, suction or a pause takes the place of what else is to be done. */
  boolean holdsUp() {
    return kind == Kind.PULSE_CHECK || kind == Kind.SUCTION || kind == Kind.PAUSED;
  }

  /** Whether no rhythm is prompted in it, and no hold takes its place. */
  public boolean unprompted() {
    return kind == Kind.WATCHING || kind == Kind.NO_RATE;
  }

  /** Whether the same is done in both without prompts, or both have a rhythm of one kind. */
  boolean sameDoingAs(Segment other) {
    if (unprompted() || other.unprompted()) {
      return kind == other.kind;
    }
    return guidance.rhythm().getClass().equals(other.guidance.rhythm().getClass());
  }

  /** Whether its breaths are counted on from a squeeze before it. */
  boolean countsOn() {
    return kind == Kind.PACED && breathOriginNanos < startNanos;
  }

  Segment endingAt(long nanos) {
    return new Segment(
        kind, startNanos, nanos, originNanos, breathOriginNanos, compressing, guidance);
  }
}
