package squeezewell.picture;

import squeezewell.protocol.Judgement;
import squeezewell.review.say.Figure;

/**
 * One thing on a ribbon.
 *
 * @param kind what it is
 * @param startNanos where it starts
 * @param endNanos where it ends; the same as the start for a point
 * @param judgement how it was timed; only breaths have one
 */
public record RibbonMark(Kind kind, long startNanos, long endNanos, Judgement judgement) {
  /** Whether it has a length that may go on over the ends of a ribbon. */
  public boolean isSpan() {
    return kind.hold() || kind == Kind.SILENCE;
  }

  /** What can stand on a ribbon. */
  public enum Kind {
    PROMPT,
    /** A prompt that no breath answered. */
    MISSED,
    BREATH,
    COMPRESSION,
    PULSE_CHECK,
    SUCTION,
    PAUSE,
    /** The patient breathed well and was only watched. */
    WATCH,
    /** The patient needed breaths, and there was no rate for them. */
    NO_RATE,
    /** The program itself held everything up. */
    STALL,
    /** Breaths were asked for and not prompted. */
    SILENCE,
    /** Something was found; these are numbered in the order they are given. */
    FINDING;

    /** What is written on a span. */
    String word() {
      return MarksView.WORDS.say("mark." + Figure.slug(name()));
    }

    boolean prompt() {
      return this == PROMPT || this == MISSED;
    }

    /** Whether it is a stretch over both lanes in which no rhythm was asked for. */
    boolean hold() {
      return switch (this) {
        case PULSE_CHECK, SUCTION, PAUSE, WATCH, NO_RATE, STALL -> true;
        default -> false;
      };
    }

    /** Whether it stands in a lane: that of the prompts, or that of what was done. */
    boolean inLane(boolean prompts) {
      return switch (this) {
        case PROMPT, MISSED, SILENCE -> prompts;
        case BREATH, COMPRESSION -> !prompts;
        default -> true;
      };
    }
  }
}
