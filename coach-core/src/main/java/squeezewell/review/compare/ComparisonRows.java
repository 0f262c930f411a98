package squeezewell.review.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import java.util.function.Function;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Statistics;
import squeezewell.review.say.Review;

/** The rows of a {@link Comparison}, each with the test by which a difference is called clear. */
final class ComparisonRows {
  /** Below this many values on a side, nothing is said of a mean or a spread (our own choice). */
  private static final int FEWEST = 10;

  /**
   * A mean has to be nearer by this share of the length asked for: about the smallest change of a
   * tempo that listeners notice over some six intervals (Drake and Botte, 1993).
   */
  private static final double LEAST_CHANGE = 0.03;

  /** The same for the spread: about the best that listeners do. */
  private static final double LEAST_SPREAD = 0.015;

  /** By which rule a difference is called clear. */
  static final List<String> RULES =
      List.of(
          "A difference is called clear if the 99 % interval of it leaves out 0."
              + " 99 % because several figures are looked at together: one or another would"
              + " otherwise seem to change by chance too often.",
          "Shares: score interval of the difference of two proportions (Newcombe, 1998,"
              + " method 10).",
          "Means: how far each lies from what was asked, with Welch's interval (1947), from "
              + FEWEST
              + " values on both sides; and the change must be at least 3 % of what was asked"
              + " (our own choices).",
          "Evenness: the mean distance from the median (Brown and Forsythe, 1974), with Welch's"
              + " interval; the change must be at least 1.5 % of the interval asked for (our own"
              + " choice).",
          "The tests take one interval as independent of the next. All other figures are shown and"
              + " not tested.",
          "One practice of each shows how these two went, not how a person always breathes.");

  private final Review a;
  private final Review b;
  private final List<Comparison.Row> rows = new ArrayList<>();

  ComparisonRows(Review a, Review b) {
    this.a = a;
    this.b = b;
  }

  /** The rows so far, in the order in which they were added. */
  List<Comparison.Row> list() {
    return List.copyOf(rows);
  }

  /** A word that is shown and not tested. */
  void word(String code, String label, Function<Review, String> word) {
    rows.add(
        new Comparison.Row(
            code,
            label,
            "",
            Sides.word(word.apply(a)),
            Sides.word(word.apply(b)),
            OptionalDouble.empty(),
            Optional.empty(),
            Comparison.Outcome.NOT_TESTED));
  }

  /** A figure that is shown and not tested. */
  void plain(
      String code,
      String label,
      String unit,
      Function<Review, OptionalDouble> value,
      Function<Review, Integer> observations) {
    OptionalDouble ofA = value.apply(a);
    OptionalDouble ofB = value.apply(b);
    if (ofA.isPresent() || ofB.isPresent()) {
      rows.add(
          new Comparison.Row(
              code,
              label,
              unit,
              Sides.number(ofA, unit, observations == null ? -1 : observations.apply(a)),
              Sides.number(ofB, unit, observations == null ? -1 : observations.apply(b)),
              minus(ofB, ofA),
              Optional.empty(),
              Comparison.Outcome.NOT_TESTED));
    }
  }

  /** Time in intervals that were out of range on one side, as a share of the time in all. */
  void time(String code, String label, Judgement judgement) {
    if (Sides.intervals(a).length == 0 && Sides.intervals(b).length == 0) {
      return;
    }
    Comparison.Side ofA = Sides.time(a, judgement);
    Comparison.Side ofB = Sides.time(b, judgement);
    rows.add(
        new Comparison.Row(
            code,
            label,
            Sides.ONE,
            ofA,
            ofB,
            minus(ofB.value(), ofA.value()),
            Optional.empty(),
            Comparison.Outcome.NOT_TESTED));
  }

  /**
   * A share that is tested.
   *
   * @param manyIsGood whether more of them is better
   */
  void share(
      String code,
      String label,
      Function<Review, Integer> successes,
      Function<Review, Integer> trials,
      boolean manyIsGood) {
    int triedA = trials.apply(a);
    int triedB = trials.apply(b);
    if (triedA == 0 && triedB == 0) {
      return;
    }
    Comparison.Side ofA = Sides.share(successes.apply(a), triedA);
    Comparison.Side ofB = Sides.share(successes.apply(b), triedB);
    Optional<TwoSamples.Difference> difference =
        TwoSamples.shares(successes.apply(b), triedB, successes.apply(a), triedA, TwoSamples.Z99);
    Comparison.Outcome outcome =
        difference
            .map(d -> outcome(d, manyIsGood ? d.value() > 0 : d.value() < 0, 0))
            .orElse(Comparison.Outcome.TOO_FEW);
    rows.add(
        new Comparison.Row(
            code,
            label,
            Sides.ONE,
            ofA,
            ofB,
            minus(ofB.value(), ofA.value()),
            difference.map(ComparisonRows::tested),
            outcome));
  }

  /**
   * A mean against what was asked. How much further off B is than A has the spread of a difference
   * or of a sum of the two means, which is the same; and it is never larger than the difference of
   * the means, so that what is clear here is clear there.
   *
   * @param askedSeconds what was asked, of both
   */
  void mean(String code, String label, Function<Review, double[]> sample, double askedSeconds) {
    samples(
        code,
        label,
        sample,
        (ofA, ofB) -> Math.abs(ofB - askedSeconds) - Math.abs(ofA - askedSeconds),
        LEAST_CHANGE * askedSeconds);
  }

  /**
   * How even the intervals were: their mean distance from the median.
   *
   * @param askedSeconds the interval asked for, of both
   */
  void spread(double askedSeconds) {
    samples(
        "interval.spread",
        "distance from median",
        review -> distances(Sides.intervals(review)),
        (ofA, ofB) -> ofB - ofA,
        LEAST_SPREAD * askedSeconds);
  }

  /**
   * Means that are tested.
   *
   * @param worse of the means of A and B, how much worse B is; it has the spread of their
   *     difference
   */
  private void samples(
      String code,
      String label,
      Function<Review, double[]> sample,
      DoubleBinaryOperator worse,
      double leastChange) {
    double[] ofA = sample.apply(a);
    double[] ofB = sample.apply(b);
    OptionalDouble meanA = Statistics.mean(ofA);
    OptionalDouble meanB = Statistics.mean(ofB);
    if (!meanA.isPresent() && !meanB.isPresent()) {
      return;
    }
    Optional<TwoSamples.Difference> further = Optional.empty();
    if (ofA.length >= FEWEST && ofB.length >= FEWEST) {
      double value = worse.applyAsDouble(meanA.getAsDouble(), meanB.getAsDouble());
      further = Optional.of(TwoSamples.welch(ofB, ofA, value, Comparison.LEVEL));
    }
    rows.add(
        new Comparison.Row(
            code,
            label,
            Sides.SECONDS,
            Sides.number(meanA, Sides.SECONDS, ofA.length),
            Sides.number(meanB, Sides.SECONDS, ofB.length),
            minus(meanB, meanA),
            further.map(ComparisonRows::tested),
            further
                .map(d -> outcome(d, d.value() < 0, leastChange))
                .orElse(Comparison.Outcome.TOO_FEW)));
  }

  /** Each value's distance from the median of all (Brown and Forsythe, 1974, JASA 69:364). */
  private static double[] distances(double[] sample) {
    double median = Statistics.median(sample).orElse(0);
    return Arrays.stream(sample).map(v -> Math.abs(v - median)).toArray();
  }

  private static Comparison.Outcome outcome(
      TwoSamples.Difference difference, boolean better, double least) {
    // Decimal fractions that are equal on paper differ in the last places.
    double rounding = 1e-9;
    boolean large = Math.abs(difference.value()) >= Math.max(least - rounding, rounding);
    return !difference.isClear() || !large
        ? Comparison.Outcome.NO_CLEAR_DIFFERENCE
        : better ? Comparison.Outcome.BETTER : Comparison.Outcome.WORSE;
  }

  private static Comparison.Tested tested(TwoSamples.Difference difference) {
    return new Comparison.Tested(difference.value(), difference.low(), difference.high());
  }

  private static OptionalDouble minus(OptionalDouble one, OptionalDouble other) {
    return one.isPresent() && other.isPresent()
        ? OptionalDouble.of(one.getAsDouble() - other.getAsDouble())
        : OptionalDouble.empty();
  }
}
