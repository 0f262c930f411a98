package squeezewell.cue;

import java.util.Objects;
import java.util.Optional;
import squeezewell.protocol.Guidance;

/**
 * Something that changes what is prompted from an instant on.
 *
 * @param atNanos when, nanoseconds since the session began, at most {@link #LATEST_NANOS}
 * @param kind what
 * @param guidance what is in force from then on; there for {@link Kind#CHANGE}, and may be for
 *     {@link Kind#WATCH} and {@link Kind#NO_RATE}
 */
public record Control(long atNanos, Kind kind, Optional<Guidance> guidance) {
  /** A session that is left paused may go on for long; after a year nobody will come back to it. */
  public static final long LATEST_NANOS = 366L * 24 * 3_600 * 1_000_000_000L;

  public Control {
    Objects.requireNonNull(kind, "kind");
    if (atNanos > LATEST_NANOS) {
      throw new IllegalArgumentException("a control over a year after the start: " + atNanos);
    }
    boolean takes = kind == Kind.CHANGE || kind == Kind.WATCH || kind == Kind.NO_RATE;
    boolean fits = guidance.isPresent() ? takes : kind != Kind.CHANGE;
    if (!fits) {
      throw new IllegalArgumentException("guidance goes with a change, and a change with guidance");
    }
  }

  /** A control of any kind but {@link Kind#CHANGE}. */
  public Control(long atNanos, Kind kind) {
    this(atNanos, kind, Optional.empty());
  }

  /** From then on that guidance is in force. */
  public static Control change(long atNanos, Guidance guidance) {
    return new Control(atNanos, Kind.CHANGE, Optional.of(guidance));
  }

  /** From then on there is only to watch, with the limits and checks of that guidance. */
  public static Control watch(long atNanos, Guidance guidance) {
    return new Control(atNanos, Kind.WATCH, Optional.of(guidance));
  }

  /** From then on breaths go on without prompts, with the limits and checks of that guidance. */
  public static Control noRate(long atNanos, Guidance guidance) {
    return new Control(atNanos, Kind.NO_RATE, Optional.of(guidance));
  }

  /** The kinds of change. An end without its start changes nothing. */
  public enum Kind {
    PULSE_CHECK,
    PULSE_CHECK_END,
    SUCTION,
    /** Suction during which compressions go on, where the rhythm in force has them. */
    SUCTION_COMPRESSING,
    SUCTION_END,
    /** Suction was a slip: what it held up goes on as if it had not been. */
    SUCTION_UNDONE,
    PAUSE,
    RESUME,
    /** Another rhythm is in force: it starts in step, or after a hold that must go on first. */
    CHANGE,
    /** The patient breathes well: nothing is prompted until {@link #CHANGE}. */
    WATCH,
    /**
     * The patient needs breaths, and there is no rate for them: nothing is prompted until {@link
     * #CHANGE}.
     */
    NO_RATE,
    /**
     * Breaths are no longer prompted. The breath that is going on keeps its squeeze and release.
     * Has no effect where prompts may not fall silent.
     */
    PROMPTS_OFF,
    /** Breaths are prompted again, counted on from the breath that was given at this instant. */
    PROMPTS_ON,
    /** Breaths are prompted again, the first at once. */
    PROMPTS_AT_ONCE,
    FINISH
  }
}
