package squeezewell.review.measure;

import java.util.Objects;
import java.util.Optional;
import squeezewell.cue.Segment;

/**
 * A stretch of a session in which no breaths were asked for.
 *
 * @param kind why
 * @param startNanos inclusive, nanoseconds since the session began
 * @param endNanos exclusive; the session's end if it was not ended before
 * @param excusedNanos how much of it, from its start, is not held against the trainee: a check or
 *     suction up to its limit, all of a pause, a time of watching or a hole
 * @param cutByEnd whether the session ended before it did
 * @param compressing whether compressions were asked for all the same, without a break
 */
public record Interruption(
    Segment.Kind kind,
    long startNanos,
    long endNanos,
    long excusedNanos,
    boolean cutByEnd,
    boolean compressing) {
  public Interruption {
    Objects.requireNonNull(kind, "kind");
  }

  /**
   * What of it lies in a span, which may be nothing.
   *
   * @param from inclusive, nanoseconds since the session began
   * @param to exclusive
   */
  Optional<Interruption> within(long from, long to) {
    long start = Math.max(startNanos, from);
    long end = Math.min(endNanos, to);
    boolean there = start < end || (startNanos == endNanos && from <= startNanos && endNanos < to);
    long excused = Math.max(0, Math.min(end, startNanos + excusedNanos) - start);
    return there
        ? Optional.of(
            new Interruption(kind, start, end, excused, cutByEnd && end == endNanos, compressing))
        : Optional.empty();
  }

  /** The same, counted from an instant. */
  Interruption from(long zero) {
    return new Interruption(
        kind, startNanos - zero, endNanos - zero, excusedNanos, cutByEnd, compressing);
  }

  /** Its whole length in seconds. */
  public double seconds() {
    return (endNanos - startNanos) / 1e9;
  }
}
