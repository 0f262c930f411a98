package squeezewell.review.measure;

import java.util.Objects;
import java.util.OptionalLong;
import squeezewell.protocol.Judgement;

/**
 * One compression as the debrief shows it.
 *
 * @param atNanos when it was given, nanoseconds since the session began
 * @param intervalNanos from the one before in the same part of the session; empty for the first,
 *     and where a check, suction, pause of the practice or hole lies between
 * @param pause whether that interval is a pause
 * @param judgement of the interval; {@link Judgement#UNJUDGED} without one, after a pause and where
 *     no compressions are asked for
 */
public record CompressionMark(
    long atNanos, OptionalLong intervalNanos, boolean pause, Judgement judgement) {
  public CompressionMark {
    Objects.requireNonNull(intervalNanos, "intervalNanos");
    Objects.requireNonNull(judgement, "judgement");
  }
}
