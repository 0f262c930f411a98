package squeezewell.protocol;

import java.util.Objects;

/**
 * How often to give a breath and for how long to squeeze.
 *
 * @param interval start of one squeeze to start of the next
 * @param lowNanos shortest interval that counts as in range, in nanoseconds
 * @param highNanos longest interval that counts as in range, in nanoseconds
 * @param inspirationNanos length of the squeeze, in nanoseconds, shorter than the interval
 * @param intervalSource where the interval comes from
 * @param rangeSource where the range comes from
 * @param inspirationSource where the length of the squeeze comes from
 */
public record BreathPlan(
    Tempo interval,
    long lowNanos,
    long highNanos,
    long inspirationNanos,
    Citation intervalSource,
    Citation rangeSource,
    Citation inspirationSource) {
  public BreathPlan {
    Objects.requireNonNull(intervalSource, "intervalSource");
    Objects.requireNonNull(rangeSource, "rangeSource");
    Objects.requireNonNull(inspirationSource, "inspirationSource");
    long target = interval.nanosAt(1);
    if (lowNanos > target || highNanos < target) {
      throw new IllegalArgumentException("the interval lies outside its own range");
    }
    if (inspirationNanos <= 0 || inspirationNanos >= lowNanos) {
      throw new IllegalArgumentException("the squeeze must be shorter than the shortest interval");
    }
  }

  /** Whether an interval in nanoseconds lies in the range, ends included. */
  public boolean inRange(long nanos) {
    return nanos >= lowNanos && nanos <= highNanos;
  }
}
