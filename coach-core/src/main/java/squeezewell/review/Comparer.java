package squeezewell.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Makes the rows of a {@link Comparison}. */
final class Comparer {
  /** Below this many values on a side, nothing is said of a mean or a spread (our own choice). */
  static final int FEWEST = 10;

  /**
   * A mean has to be nearer by this share of the length asked for: about the smallest change of a
   * tempo that listeners notice over some six intervals (Drake and Botte, 1993).
   */
  static final double LEAST_CHANGE = 0.03;

  /** The same for the spread: about the best that listeners do. */
  static final double LEAST_SPREAD = 0.015;

  private static final String NONE = "–";
  private static final String SECONDS = "s";
  private static final String ONE = "1";

  private static final List<String> RULES =
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
  private final boolean sameBreaths;
  private final boolean sameSqueeze;
  private final boolean sameCompressions;
  private final List<Comparison.Row> rows = new ArrayList<>();

  Comparer(Review a, Review b) {
    this.a = a;
    this.b = b;
    this.sameBreaths = breathing(a).size() == 1 && breathing(a).equals(breathing(b));
    this.sameSqueeze = squeezing(a).size() == 1 && squeezing(a).equals(squeezing(b));
    this.sameCompressions = compressing(a).size() == 1 && compressing(a).equals(compressing(b));
  }

  Comparison compare() {
    breaths();
    prompts();
    squeezes();
    holds();
    compressions();
    rows.add(
        new Comparison.Row(
            "verdict",
            "by the rule",
            "",
            word(a.verdict().outcome().label()),
            word(b.verdict().outcome().label()),
            OptionalDouble.empty(),
            Optional.empty(),
            Comparison.Outcome.NOT_TESTED));
    return new Comparison(ComparisonWords.sentence(a, b, rows), askedDifferently(), rows, RULES);
  }

  private static List<Asked> judged(Review review) {
    return review.rhythms().stream()
        .filter(r -> !r.slip())
        .map(Review::asked)
        .collect(Collectors.toList());
  }

  /** The different intervals and ranges that a practice asked for, in words. */
  private static List<String> breathing(Review review) {
    return judged(review).stream()
        .filter(asked -> asked.intervalSeconds().isPresent())
        .map(
            asked ->
                "one breath every "
                    + Words.hundredths(asked.intervalSeconds().getAsDouble())
                    + " s (in range: "
                    + Words.hundredths(asked.lowNanos().getAsLong() / 1e9)
                    + " to "
                    + Words.hundredths(asked.highNanos().getAsLong() / 1e9)
                    + " s)")
        .distinct()
        .collect(Collectors.toList());
  }

  private static List<Long> squeezing(Review review) {
    return judged(review).stream()
        .map(Asked::inspirationNanos)
        .distinct()
        .collect(Collectors.toList());
  }

  private static List<String> compressing(Review review) {
    return judged(review).stream()
        .map(Asked::compressions)
        .filter(words -> !words.isEmpty())
        .distinct()
        .collect(Collectors.toList());
  }

  private void breaths() {
    if (sameBreaths) {
      Function<Review, Integer> count = r -> r.metrics().interval().count();
      plain("rate", "breaths a minute", "/min", r -> r.metrics().rate().overallPerMinute(), count);
      double asked =
          judged(a).stream()
              .filter(r -> r.intervalSeconds().isPresent())
              .findFirst()
              .get()
              .intervalSeconds()
              .getAsDouble();
      mean("interval.mean", "mean interval", Comparer::intervals, asked, LEAST_CHANGE * asked);
      plain(
          "interval.median",
          "median interval",
          SECONDS,
          r -> r.metrics().interval().medianSeconds(),
          count);
      plain("interval.sd", "spread (SD)", SECONDS, r -> r.metrics().interval().sdSeconds(), count);
      spread(LEAST_SPREAD * asked);
    }
    share(
        "interval.inRange",
        "intervals in range",
        r -> r.metrics().interval().inRangeCount(),
        r -> r.metrics().interval().count(),
        true);
    time("interval.fastTime", "time too fast", Judgement.FAST);
    time("interval.slowTime", "time too slow", Judgement.SLOW);
    if (steady()) {
      plain(
          "gap.longestNet",
          "longest gap",
          SECONDS,
          r -> OptionalDouble.of(r.metrics().gap().longestNetSeconds()),
          null);
    }
  }

  private boolean steady() {
    return !breathing(a).isEmpty() && !breathing(b).isEmpty();
  }

  private void prompts() {
    share(
        "prompts.met",
        "prompts met",
        r -> r.metrics().prompts().met(),
        r -> r.metrics().prompts().given() - r.metrics().prompts().forgiven(),
        true);
    plain(
        "prompts.missed",
        "prompts missed",
        ONE,
        r -> OptionalDouble.of(r.metrics().prompts().missed()),
        r -> r.metrics().prompts().given() - r.metrics().prompts().forgiven());
    share(
        "prompts.extra",
        "extra breaths",
        r -> r.metrics().prompts().extra(),
        r -> r.metrics().breathCount() - r.metrics().prompts().unprompted(),
        false);
    share(
        "unprompted.inRange",
        "in range, unprompted",
        r -> r.metrics().unprompted().map(Unprompted::inRangeCount).orElse(0),
        r -> r.metrics().unprompted().map(Unprompted::intervalCount).orElse(0),
        true);
    if (sameBreaths) {
      // One breath's lateness carries over to the next, so that no test of a mean holds for it.
      plain(
          "lateness.mean",
          "after the prompt",
          SECONDS,
          r -> r.metrics().asynchrony().meanSeconds(),
          r -> r.metrics().prompts().met());
    }
  }

  private void squeezes() {
    if (sameSqueeze) {
      double asked = squeezing(a).get(0) / 1e9;
      mean("squeeze.mean", "mean squeeze", Comparer::squeezes, asked, LEAST_CHANGE * asked);
    }
    share(
        "squeeze.good",
        "squeezes of good length",
        r -> r.metrics().inspiration().goodCount(),
        r -> r.metrics().inspiration().count(),
        true);
  }

  private void holds() {
    share(
        "checks.onTime",
        "pulse checks on time",
        r -> checks(r, PulseCheckResult.Outcome.ON_TIME),
        r ->
            checks(
                r,
                PulseCheckResult.Outcome.ON_TIME,
                PulseCheckResult.Outcome.LATE,
                PulseCheckResult.Outcome.EARLY,
                PulseCheckResult.Outcome.MISSED,
                PulseCheckResult.Outcome.OVERDUE),
        true);
    share(
        "checks.length",
        "checks of good length",
        r -> lengths(r, PulseCheckResult.LengthOutcome.RIGHT),
        r ->
            lengths(
                r,
                PulseCheckResult.LengthOutcome.RIGHT,
                PulseCheckResult.LengthOutcome.TOO_SHORT,
                PulseCheckResult.LengthOutcome.TOO_LONG),
        true);
    share(
        "suction.withinLimit",
        "suctions within limit",
        r -> (int) r.metrics().suctions().stream().filter(SuctionResult::withinLimit).count(),
        r -> r.metrics().suctions().size(),
        true);
  }

  private static int checks(Review review, PulseCheckResult.Outcome... outcomes) {
    return (int)
        review.metrics().pulseChecks().stream()
            .filter(c -> Arrays.asList(outcomes).contains(c.outcome()))
            .count();
  }

  private static int lengths(Review review, PulseCheckResult.LengthOutcome... outcomes) {
    return (int)
        review.metrics().pulseChecks().stream()
            .filter(c -> Arrays.asList(outcomes).contains(c.lengthOutcome()))
            .count();
  }

  private void compressions() {
    if (!a.metrics().compressions().isPresent() || !b.metrics().compressions().isPresent()) {
      return;
    }
    if (sameCompressions) {
      plain(
          "compressions.rate",
          "compressions a minute",
          "/min",
          r -> done(r).ratePerMinute(),
          r -> done(r).count());
    }
    plain(
        "compressions.inRange",
        "compressions in range",
        "%",
        r -> percent(done(r).inRangeFraction()),
        r -> done(r).count());
    share(
        "compressions.goodCycles",
        "good cycles",
        r -> done(r).goodCycles(),
        r -> done(r).pauseLimitSeconds().isPresent() ? done(r).cycles().size() : 0,
        true);
    plain(
        "compressions.longestPause",
        "longest pause",
        SECONDS,
        r -> done(r).longestPauseSeconds(),
        r -> done(r).pauseCount());
    plain("compressions.fraction", "time compressed", "%", r -> percent(done(r).fraction()), null);
  }

  private static Compressions done(Review review) {
    return review.metrics().compressions().get();
  }

  private static OptionalDouble percent(OptionalDouble share) {
    return share.isPresent() ? OptionalDouble.of(100 * share.getAsDouble()) : share;
  }

  static double[] intervals(Review review) {
    return review.intervals().stream()
        .filter(IntervalPoint::valid)
        .mapToDouble(IntervalPoint::seconds)
        .toArray();
  }

  private static double[] squeezes(Review review) {
    return review.breaths().stream()
        .filter(breath -> breath.endNanos().isPresent())
        .mapToDouble(breath -> (breath.endNanos().getAsLong() - breath.startNanos()) / 1e9)
        .toArray();
  }

  /** A figure that is shown and not tested. */
  private void plain(
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
              number(ofA, unit, observations == null ? -1 : observations.apply(a)),
              number(ofB, unit, observations == null ? -1 : observations.apply(b)),
              minus(ofB, ofA),
              Optional.empty(),
              Comparison.Outcome.NOT_TESTED));
    }
  }

  /** Time in intervals that were out of range on one side, as a share of the time in all. */
  private void time(String code, String label, Judgement judgement) {
    if (intervals(a).length == 0 && intervals(b).length == 0) {
      return;
    }
    Comparison.Side ofA = timeSide(a, judgement);
    Comparison.Side ofB = timeSide(b, judgement);
    rows.add(
        new Comparison.Row(
            code,
            label,
            ONE,
            ofA,
            ofB,
            minus(ofB.value(), ofA.value()),
            Optional.empty(),
            Comparison.Outcome.NOT_TESTED));
  }

  private static Comparison.Side timeSide(Review review, Judgement judgement) {
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

  private void share(
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
    Comparison.Side ofA = share(successes.apply(a), triedA);
    Comparison.Side ofB = share(successes.apply(b), triedB);
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
            ONE,
            ofA,
            ofB,
            minus(ofB.value(), ofA.value()),
            difference.map(Comparer::tested),
            outcome));
  }

  private static Comparison.Side share(int successes, int trials) {
    return new Comparison.Side(
        trials == 0 ? NONE : successes + " of " + trials,
        trials == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) successes / trials),
        OptionalInt.of(trials),
        Statistics.wilsonLow(successes, trials),
        Statistics.wilsonHigh(successes, trials));
  }

  /**
   * A mean against what was asked. How much further off B is than A has the spread of a difference
   * or of a sum of the two means, which is the same; and it is never larger than the difference of
   * the means, so that what is clear here is clear there.
   */
  private void mean(
      String code,
      String label,
      Function<Review, double[]> sample,
      double asked,
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
      double value = Math.abs(meanB.getAsDouble() - asked) - Math.abs(meanA.getAsDouble() - asked);
      further = Optional.of(TwoSamples.welch(ofB, ofA, value, Comparison.LEVEL));
    }
    rows.add(
        new Comparison.Row(
            code,
            label,
            SECONDS,
            number(meanA, SECONDS, ofA.length),
            number(meanB, SECONDS, ofB.length),
            minus(meanB, meanA),
            further.map(Comparer::tested),
            further
                .map(d -> outcome(d, d.value() < 0, leastChange))
                .orElse(Comparison.Outcome.TOO_FEW)));
  }

  private void spread(double leastChange) {
    double[] ofA = distances(intervals(a));
    double[] ofB = distances(intervals(b));
    Optional<TwoSamples.Difference> difference = Optional.empty();
    OptionalDouble meanA = Statistics.mean(ofA);
    OptionalDouble meanB = Statistics.mean(ofB);
    if (!meanA.isPresent() && !meanB.isPresent()) {
      return;
    }
    if (ofA.length >= FEWEST && ofB.length >= FEWEST) {
      double value = meanB.getAsDouble() - meanA.getAsDouble();
      difference = Optional.of(TwoSamples.welch(ofB, ofA, value, Comparison.LEVEL));
    }
    rows.add(
        new Comparison.Row(
            "interval.spread",
            "distance from median",
            SECONDS,
            number(meanA, SECONDS, ofA.length),
            number(meanB, SECONDS, ofB.length),
            minus(meanB, meanA),
            difference.map(Comparer::tested),
            difference
                .map(d -> outcome(d, d.value() < 0, leastChange))
                .orElse(Comparison.Outcome.TOO_FEW)));
  }

  /** Each value's distance from the median of all (Brown and Forsythe, 1974, JASA 69:364). */
  static double[] distances(double[] sample) {
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

  /**
   * @param observations -1 if there is nothing to count
   */
  private static Comparison.Side number(OptionalDouble value, String unit, int observations) {
    String shown = NONE;
    if (value.isPresent()) {
      double number = value.getAsDouble();
      shown =
          unit.equals(SECONDS)
              ? Words.hundredths(number) + " s"
              : unit.equals("%") ? Math.round(number) + " %" : Words.decimal(number);
    }
    return new Comparison.Side(
        shown,
        value,
        observations < 0 ? OptionalInt.empty() : OptionalInt.of(observations),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private static Comparison.Side word(String text) {
    OptionalDouble none = OptionalDouble.empty();
    return new Comparison.Side(text, none, OptionalInt.empty(), none, none);
  }

  private static OptionalDouble minus(OptionalDouble one, OptionalDouble other) {
    return one.isPresent() && other.isPresent()
        ? OptionalDouble.of(one.getAsDouble() - other.getAsDouble())
        : OptionalDouble.empty();
  }

  private List<String> askedDifferently() {
    List<String> lines = new ArrayList<>();
    differs(lines, "Asked by ", r -> r.asked().protocolTitle());
    if (!a.asked().local().equals(b.asked().local())) {
      lines.add(
          "Local protocol: "
              + (a.asked().local().isPresent() ? "A" : "")
              + (a.asked().local().isPresent() && b.asked().local().isPresent() ? " and " : "")
              + (b.asked().local().isPresent() ? "B" : "")
              + ".");
    }
    differs(lines, "Patient: ", r -> r.asked().patient().toLowerCase(Locale.ROOT));
    differs(lines, "Situation: ", r -> r.asked().situation());
    boolean otherBreaths = !breathing(a).equals(breathing(b));
    if (otherBreaths) {
      differs(lines, "Asked for ", r -> all(breathing(r), "no steady breaths"));
    }
    differs(lines, "Compressions: ", r -> all(compressing(r), "none asked"));
    if (!sameBreaths && steady()) {
      lines.add(
          "Each asked for breaths of its own, so rate, mean, median and spread of the intervals and"
              + " the time after the prompt are left out. Whether an interval is in range is"
              + " judged by the rhythm that asked for it.");
    }
    if (!sameSqueeze) {
      lines.add("The squeezes asked for differ in length, so their mean is left out.");
    }
    if (Math.abs(a.asked().practisedNanos() - b.asked().practisedNanos()) >= 1_000_000_000L) {
      differs(lines, "Practised: ", r -> Words.clock(r.asked().practisedNanos()));
      lines.add("A longer practice has more room for a long gap and for missed prompts.");
    }
    return lines;
  }

  private static String all(List<String> words, String none) {
    return words.isEmpty() ? none : String.join("; then ", words);
  }

  private void differs(List<String> lines, String what, Function<Review, String> words) {
    String ofA = words.apply(a);
    String ofB = words.apply(b);
    if (!ofA.equals(ofB)) {
      lines.add(what + ofA + " in A, " + ofB + " in B.");
    }
  }
}
