package squeezewell.picture;

import java.util.Objects;
import squeezewell.protocol.Judgement;

/**
 * One thing on a ribbon.
 *
 * @param kind what it is
 * @param startNanos where it starts
 * @param endNanos where it ends; the same as the start for a point
 * @param judgement how it was timed; only breaths have one
 */
public record RibbonMark(Kind kind, long startNanos, long endNanos, Judgement judgement) {
  public RibbonMark {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(judgement, "judgement");
  }

  /** What can stand on a ribbon. */
  public enum Kind {
    PROMPT,
    BREATH,
    COMPRESSION,
    PULSE_CHECK,
    SUCTION,
    PAUSE,
    /** The patient breathed well and was only watched. */
    WATCH,
    /** The patient needed breaths, and there was no rate for them. */
    NO_RATE,
    /** Breaths were asked for and not prompted. */
    SILENCE,
    /** Something was found; these are numbered in the order they are given. */
    FINDING;

    /** Whether it is a stretch over both lanes in which no rhythm was asked for. */
    public boolean hold() {
      return this == PULSE_CHECK
          || this == SUCTION
          || this == PAUSE
          || this == WATCH
          || this == NO_RATE;
    }

    /** Whether it stands in a lane: that of the prompts, or that of what was done. */
    public boolean inLane(boolean prompts) {
      return switch (this) {
        case PROMPT, SILENCE -> prompts;
        case BREATH, COMPRESSION -> !prompts;
        default -> true;
      };
    }
  }
}
