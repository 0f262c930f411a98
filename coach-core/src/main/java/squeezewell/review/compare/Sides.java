package squeezewell.review.compare;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Statistics;
import squeezewell.review.say.Review;
import squeezewell.review.say.Words;

/** One practice's figures as a {@link Comparison} shows them. */
final class Sides {
  static final String SECONDS = "s";
  static final String ONE = "1";
  static final String PERCENT = "%";

  private static final String NONE = "–";

  private Sides() {}

  /**
   * A figure with its unit.
   *
   * @param observations -1 if there is nothing to count
   */
  static Comparison.Side number(OptionalDouble value, String unit, int observations) {
    String shown = NONE;
    if (value.isPresent()) {
      double number = value.getAsDouble();
      shown =
          unit.equals(SECONDS)
              ? Words.hundredths(number) + " s"
              : unit.equals(PERCENT) ? Math.round(number) + " %" : Words.decimal(number);
    }
    return new Comparison.Side(
        shown,
        value,
        observations < 0 ? OptionalInt.empty() : OptionalInt.of(observations),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /** So many of so many, with the 95 % score interval of the share. */
  static Comparison.Side share(int successes, int trials) {
    return new Comparison.Side(
        trials == 0 ? NONE : successes + " of " + trials,
        trials == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) successes / trials),
        OptionalInt.of(trials),
        Statistics.wilsonLow(successes, trials),
        Statistics.wilsonHigh(successes, trials));
  }

  /** Time in intervals of one judgement, as a share of the time in all. */
  static Comparison.Side time(Review review, Judgement judgement) {
    double all = Arrays.stream(intervals(review)).sum();
    double out =
        review.intervals().stream()
            .filter(p -> p.valid() && p.judgement() == judgement)
            .mapToDouble(IntervalPoint::seconds)
            .sum();
    boolean known = all > 0;
    return new Comparison.Side(
        known ? Math.round(out) + " of " + Math.round(all) + " s" : NONE,
        known ? OptionalDouble.of(out / all) : OptionalDouble.empty(),
        OptionalInt.of(intervals(review).length),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  static Comparison.Side word(String text) {
    OptionalDouble none = OptionalDouble.empty();
    return new Comparison.Side(text, none, OptionalInt.empty(), none, none);
  }

  /** The intervals that count, in seconds, in order. */
  static double[] intervals(Review review) {
    return review.intervals().stream()
        .filter(IntervalPoint::valid)
        .mapToDouble(IntervalPoint::seconds)
        .toArray();
  }

  /** The lengths of the squeezes whose end is known, in seconds, in order. */
  static double[] squeezes(Review review) {
    return review.breaths().stream()
        .filter(breath -> breath.endNanos().isPresent())
        .mapToDouble(breath -> (breath.endNanos().getAsLong() - breath.startNanos()) / 1e9)
        .toArray();
  }
}
