package squeezewell.review.judge;

import java.util.List;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Statistics;
import squeezewell.review.say.Words;

/**
 * How far apart breaths came that are called too fast or too slow. The number is the median of the
 * intervals that were out of range on that side, and not the mean of all: one long wait makes the
 * mean of a fast rhythm slow, and the number would contradict the word beside it.
 */
final class OffPace {
  /** Below this an interval is printed as none, and a rate from it would say nothing. */
  private static final double LEAST_SECONDS = 0.05;

  private OffPace() {}

  /**
   * A sentence without its full stop: {@code 20 of 47 intervals were too short, usually 3 s (20
   * breaths a minute); asked was one breath every 6 s}.
   *
   * @param intervals those that count
   * @param side {@link Judgement#FAST} or {@link Judgement#SLOW}; at least one of them is so
   * @param plan what was asked for
   */
  static String words(List<IntervalPoint> intervals, Judgement side, BreathPlan plan) {
    double[] off =
        intervals.stream()
            .filter(point -> point.judgement() == side)
            .mapToDouble(IntervalPoint::seconds)
            .toArray();
    boolean fast = side == Judgement.FAST;
    double limit = plan.limitSeconds(side);
    double usual = Statistics.median(off).getAsDouble();
    return off.length
        + " of "
        + Words.count(intervals.size(), "interval")
        + (off.length == 1 ? " was" : " were")
        + (fast ? " too short, " : " too long, ")
        + (off.length == 1 ? "" : "usually ")
        + Words.secondsBeside(usual, limit)
        + (usual < LEAST_SECONDS
            ? ""
            : " (" + Words.decimalBeside(60 / usual, 60 / limit) + " breaths a minute)")
        + "; asked was one breath every "
        + Words.seconds(plan.interval().seconds());
  }
}
