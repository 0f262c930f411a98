package squeezewell.review.judge;

import squeezewell.protocol.Situation;
import squeezewell.review.measure.Practice;

/**
 * A part of a practice.
 *
 * @param startNanos nanoseconds since the session began
 * @param endNanos the same
 * @param first whether nothing comes before it
 * @param last whether nothing comes after it
 * @param situation what was found then
 */
public record Where(
    long startNanos, long endNanos, boolean first, boolean last, Situation situation) {
  static Where of(Practice part) {
    return new Where(
        part.startNanos(),
        part.endNanos(),
        part.place().first(),
        part.place().last(),
        part.guidance().situation());
  }
}
