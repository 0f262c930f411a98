package squeezewell.review.judge;

import java.util.List;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Statistics;

/** What findings with and without prompts say alike of the pace of the breaths. */
final class Pace {
  /** With fewer intervals nothing is said of the rhythm without prompts. */
  static final int FEWEST_UNPROMPTED = 5;

  private static final double COUNTED_SECONDS = 1.8;

  /** Below this an interval is printed as none, and a rate from it would say nothing. */
  private static final double LEAST_SECONDS = 0.05;

  private static final double NOTICEABLE_TEMPO = 0.03;

  private Pace() {}

  /**
   * How far apart breaths came that are called too fast or too slow. The number is the median of
   * the intervals that were out of range on that side, and not the mean of all: one long wait makes
   * the mean of a fast rhythm slow, and the number would contradict the word beside it.
   *
   * @param intervals those that count
   * @param side {@link Judgement#FAST} or {@link Judgement#SLOW}; at least one of them is so
   * @param plan what was asked for
   */
  static Sentence off(List<IntervalPoint> intervals, Judgement side, BreathPlan plan) {
    double[] off =
        intervals.stream()
            .filter(point -> point.judgement() == side)
            .mapToDouble(IntervalPoint::seconds)
            .toArray();
    boolean fast = side == Judgement.FAST;
    double limit = plan.limitSeconds(side);
    double usual = Statistics.median(off).getAsDouble();
    String key = fast ? "off-pace.fast" : "off-pace.slow";
    Quantity seconds = Quantity.tenths(usual, limit);
    Quantity asked = Quantity.tenths(plan.interval().seconds());
    return usual < LEAST_SECONDS
        ? Sentence.done(key + ".no-rate", off.length, intervals.size(), seconds, asked)
        : Sentence.done(
            key,
            off.length,
            intervals.size(),
            seconds,
            Quantity.tenths(60 / usual, 60 / limit),
            asked);
  }

  /** What too many breaths do to such a patient. */
  static Sentence whyFast(Analysis facts) {
    Guidance guidance = facts.practice().guidance();
    if (guidance.patient() == PatientGroup.NEWBORN) {
      return Sentence.why("too-fast.why.newborn");
    }
    boolean tube = guidance.situation() == Situation.ARREST_ADVANCED_AIRWAY;
    return Sentence.why(tube ? "too-fast.why.airway" : "too-fast.why.mask");
  }

  /** Seconds can be counted; what is shorter than two is felt as a beat. */
  static Sentence count(BreathPlan plan) {
    return Sentence.next(plan.interval().seconds() < COUNTED_SECONDS ? "next.beat" : "next.count");
  }

  /**
   * Whether the tempo itself is another: below 3 % a listener notices no difference over a few
   * intervals (Drake and Botte, 1993), and to tell of it would contradict the figures beside it.
   */
  static boolean differs(Analysis facts) {
    double asked = facts.practice().breathPlan().get().interval().seconds();
    double own = facts.metrics().interval().medianSeconds().orElse(asked);
    return Math.abs(own - asked) >= NOTICEABLE_TEMPO * asked;
  }
}
