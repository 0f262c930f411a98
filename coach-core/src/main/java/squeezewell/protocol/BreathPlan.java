package squeezewell.protocol;

import java.util.Objects;

/**
 * How often to give a breath and for how long to squeeze.
 *
 * @param interval start of one squeeze to start of the next
 * @param lowNanos shortest interval that is asked for, in nanoseconds
 * @param highNanos longest interval that is asked for, in nanoseconds
 * @param toleranceNanos by how much a single breath may lie outside that and still be in range, in
 *     nanoseconds; above 0 where what is published is a rate over a minute rather than a wall for
 *     each breath (AHA 2015: 10 to 12 a minute)
 * @param inspirationNanos length of the squeeze, in nanoseconds, shorter than the interval
 * @param intervalSource where the interval comes from
 * @param rangeSource where the range comes from
 * @param inspirationSource where the length of the squeeze comes from
 */
public record BreathPlan(
    Tempo interval,
    long lowNanos,
    long highNanos,
    long toleranceNanos,
    long inspirationNanos,
    Citation intervalSource,
    Citation rangeSource,
    Citation inspirationSource) {
  private static final double NANOS_PER_SECOND = 1e9;
  private static final double MEAN_WITHIN = 0.08;

  public BreathPlan {
    Objects.requireNonNull(intervalSource, "intervalSource");
    Objects.requireNonNull(rangeSource, "rangeSource");
    Objects.requireNonNull(inspirationSource, "inspirationSource");
    long target = interval.nanosAt(1);
    if (lowNanos > target || highNanos < target) {
      throw new IllegalArgumentException("the interval lies outside its own range");
    }
    if (toleranceNanos < 0 || toleranceNanos >= lowNanos) {
      throw new IllegalArgumentException("no such tolerance: " + toleranceNanos);
    }
    if (inspirationNanos <= 0 || inspirationNanos >= lowNanos) {
      throw new IllegalArgumentException("the squeeze must be shorter than the shortest interval");
    }
  }

  /** A plan that judges each breath by the range alone. */
  public BreathPlan(
      Tempo interval,
      long lowNanos,
      long highNanos,
      long inspirationNanos,
      Citation intervalSource,
      Citation rangeSource,
      Citation inspirationSource) {
    this(
        interval,
        lowNanos,
        highNanos,
        0,
        inspirationNanos,
        intervalSource,
        rangeSource,
        inspirationSource);
  }

  /** The range in which a single interval is judged to be, tolerance included, in seconds. */
  public Range range() {
    return new Range(
        (lowNanos - toleranceNanos) / NANOS_PER_SECOND,
        (highNanos + toleranceNanos) / NANOS_PER_SECOND);
  }

  /** The highest rate in range, breaths a minute, to be shown. */
  public double highestPerMinute() {
    return 60 / range().low();
  }

  /**
   * The end of the range that lies next to what is off on one side, in seconds, to be shown.
   *
   * @param side {@link Judgement#FAST} for the shortest interval, else the longest
   */
  public double limitSeconds(Judgement side) {
    return side == Judgement.FAST ? range().low() : range().high();
  }

  /**
   * Whether a range is asked for, and the interval is only where we prompt in it; else a single
   * interval is asked for, as in a local protocol of one breath every 5 s.
   */
  public boolean rangeIsPublished() {
    return rangeSource.confidence() != Confidence.HOUSE
        && intervalSource.confidence() == Confidence.HOUSE;
  }

  /** The range that is asked for, without tolerance, in seconds. */
  public Range asked() {
    return new Range(lowNanos / NANOS_PER_SECOND, highNanos / NANOS_PER_SECOND);
  }

  /** Whether another plan asks for the same interval with the same range. */
  public boolean asksTheSame(BreathPlan other) {
    return interval.equals(other.interval) && range().equals(other.range());
  }

  /**
   * How an interval is. Both ends of the range, and the tolerance beyond them, are in it and
   * nothing else: an interval is measured to the nanosecond.
   *
   * @param intervalNanos from the start of one breath to the start of the next
   */
  public Judgement judge(long intervalNanos) {
    if (intervalNanos < lowNanos - toleranceNanos) {
      return Judgement.FAST;
    }
    return intervalNanos > highNanos + toleranceNanos ? Judgement.SLOW : Judgement.IN_RANGE;
  }

  /** The same for a mean or a median in seconds, to the nearest nanosecond. */
  public Judgement judgeSeconds(double seconds) {
    return judge(Math.round(seconds * NANOS_PER_SECOND));
  }

  /** The same for a rate, breaths a minute. */
  public Judgement judgeRate(double perMinute) {
    return judgeSeconds(60 / perMinute);
  }

  /**
   * The same for a breath that followed a prompt: it may be off by as much as the range leaves on
   * that side of the interval (our own choice).
   *
   * @param errorNanos after the prompt; negative before it
   */
  public Judgement judgeLateness(long errorNanos) {
    return judge(interval.nanosAt(1) + errorNanos);
  }

  /**
   * Whether a mean or a median is out of the range by more than a share of its end, and on which
   * side.
   *
   * @param seconds the mean or median
   * @param share 0.03 for 3 %
   */
  public Judgement judgeClearly(double seconds, double share) {
    if (seconds < range().low() * (1 - share)) {
      return Judgement.FAST;
    }
    return seconds > range().high() * (1 + share) ? Judgement.SLOW : Judgement.IN_RANGE;
  }

  /**
   * Whether a mean interval is close enough to the one asked for: inside the range where the
   * guideline prints one, else within 8 % of the interval (our own choice).
   *
   * @param meanSeconds the mean, in seconds
   */
  public boolean keepsMean(double meanSeconds) {
    if (rangeIsPublished()) {
      long mean = Math.round(meanSeconds * NANOS_PER_SECOND);
      return mean >= lowNanos && mean <= highNanos;
    }
    return Math.abs(meanSeconds / interval.seconds() - 1) <= MEAN_WITHIN + 1e-9;
  }

  /**
   * By what share of the end of the range an interval is beyond it: negative if it is too short,
   * positive if it is too long, 0 in range.
   */
  public double beyond(long intervalNanos) {
    double seconds = intervalNanos / NANOS_PER_SECOND;
    return switch (judge(intervalNanos)) {
      case FAST -> -(1 - seconds / range().low());
      case SLOW -> seconds / range().high() - 1;
      case IN_RANGE, UNJUDGED -> 0;
    };
  }

  /** How much longer a wait is than the longest interval in range, in nanoseconds, at least 0. */
  public long overNanos(long waitNanos) {
    return Math.max(0, waitNanos - highNanos - toleranceNanos);
  }
}
