package squeezewell.review.measure;

import squeezewell.protocol.Judgement;

/**
 * The time from the start of one breath to the start of the next.
 *
 * @param atNanos start of the second breath, nanoseconds since the session began
 * @param lengthNanos start of one to start of the other
 * @param judgement how it compares with the range
 * @param valid whether it counts: no hold lies in it
 */
public record IntervalPoint(long atNanos, long lengthNanos, Judgement judgement, boolean valid) {
  /** Its length in seconds. */
  public double seconds() {
    return lengthNanos / 1e9;
  }
}
