package squeezewell.review.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.judge.RhythmRule;
import squeezewell.review.judge.Severity;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.measure.Unprompted;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Figure;
import squeezewell.review.say.Figures;
import squeezewell.review.say.Review;
import squeezewell.review.say.Words;
import squeezewell.words.Wording;

/** Picks the figures of a {@link Comparison}, in their order. */
final class Comparer {
  private static final Wording WORDS = Comparison.WORDS;
  private static final String SECONDS = "s";
  private static final String PER_MINUTE = "/min";
  private static final String ONE = "1";
  private static final String PERCENT = "%";

  private final Review a;
  private final Review b;
  private final SharedPrescription both;
  private final List<Comparison.Row> rows = new ArrayList<>();

  Comparer(Review a, Review b) {
    this.a = a;
    this.b = b;
    this.both = new SharedPrescription(a, b);
  }

  Comparison compare() {
    boolean pressed =
        a.metrics().compressions().isPresent() && b.metrics().compressions().isPresent();
    tooFast();
    gaps(pressed);
    range(pressed);
    holds();
    prompts();
    squeezes();
    verdict();
    return new Comparison(
        sentence(),
        both.differences(),
        rows,
        List.of(WORDS.say("target.marked"), WORDS.say("target.share"), WORDS.say("target.one")));
  }

  private void tooFast() {
    if (both.sameBreaths()) {
      BreathPlan plan = both.breaths();
      figure(
          "rate",
          PER_MINUTE,
          "rate.overallPerMinute",
          Comparer::intervals,
          (r, rate) -> plan.judgeRate(rate).off());
    }
    time("interval.fastTime", Judgement.FAST, Metrics.Interval::fastCount);
  }

  private void gaps(boolean pressed) {
    if (both.steadyBreaths()) {
      figure(
          "gap.longestNet",
          SECONDS,
          "gap.longestNetSeconds",
          null,
          (r, net) -> r.metrics().gap().overLimitCount() > 0);
    }
    if (pressed) {
      figure(
          "compressions.longestPause",
          SECONDS,
          "compressions.longestPauseSeconds",
          r -> done(r).pauseCount(),
          (r, pause) -> pause > done(r).pauseLimitSeconds().orElse(pause));
      figure("compressions.fraction", PERCENT, "compressions.fraction", null, null);
    }
  }

  private void range(boolean pressed) {
    time("interval.slowTime", Judgement.SLOW, Metrics.Interval::slowCount);
    share(
        "interval.inRange",
        r -> r.metrics().interval().inRangeCount(),
        Comparer::intervals,
        Comparer::tooManyOutside);
    if (both.sameBreaths()) {
      BreathPlan plan = both.breaths();
      Target range = (r, seconds) -> plan.judgeSeconds(seconds).off();
      figure("interval.mean", SECONDS, "interval.meanSeconds", Comparer::intervals, range);
      figure("interval.median", SECONDS, "interval.medianSeconds", Comparer::intervals, range);
      // How even a rhythm is that is out of range says nothing that matters to a patient.
      if (!tooManyOutside(a.metrics().interval()) && !tooManyOutside(b.metrics().interval())) {
        figure("interval.sd", SECONDS, "interval.sdSeconds", Comparer::intervals, null);
      }
    }
    share(
        "unprompted.inRange",
        r -> r.metrics().unprompted().map(Unprompted::inRangeCount).orElse(0),
        r -> r.metrics().unprompted().map(Unprompted::intervalCount).orElse(0),
        Comparer::tooManyOutside);
    if (!pressed) {
      return;
    }
    if (both.sameCompressions()) {
      figure(
          "compressions.rate",
          PER_MINUTE,
          "compressions.ratePerMinute",
          r -> done(r).count(),
          null);
    }
    figure(
        "compressions.inRange",
        PERCENT,
        "compressions.inRangeFraction",
        r -> done(r).count(),
        (r, share) -> 100 - share > RhythmRule.mostOutside(100));
    share(
        "compressions.goodCycles",
        r -> done(r).goodCycles(),
        r -> done(r).pauseLimitSeconds().isPresent() ? done(r).cycles().size() : 0,
        null);
  }

  private void holds() {
    share(
        "checks.onTime",
        r -> checks(r, PulseCheckResult.Outcome.ON_TIME),
        r ->
            checks(
                r,
                PulseCheckResult.Outcome.ON_TIME,
                PulseCheckResult.Outcome.LATE,
                PulseCheckResult.Outcome.EARLY,
                PulseCheckResult.Outcome.MISSED,
                PulseCheckResult.Outcome.OVERDUE),
        Comparer::notAll);
    share(
        "checks.length",
        r -> lengths(r, PulseCheckResult.LengthOutcome.RIGHT),
        r ->
            lengths(
                r,
                PulseCheckResult.LengthOutcome.RIGHT,
                PulseCheckResult.LengthOutcome.TOO_SHORT,
                PulseCheckResult.LengthOutcome.TOO_LONG),
        Comparer::notAll);
    share(
        "suction.withinLimit",
        r -> (int) r.metrics().suctions().stream().filter(SuctionResult::withinLimit).count(),
        r -> r.metrics().suctions().size(),
        Comparer::notAll);
  }

  private void prompts() {
    if (!a.metrics().prompts().isPresent() || !b.metrics().prompts().isPresent()) {
      return;
    }
    ToIntFunction<Review> counted = r -> prompts(r).given() - prompts(r).forgiven();
    share("prompts.met", r -> prompts(r).met(), counted, null);
    figure("prompts.missed", ONE, "prompts.missed", counted, null);
    share(
        "prompts.extra",
        r -> prompts(r).extra(),
        r -> r.metrics().breathCount() - prompts(r).unprompted(),
        null);
    if (both.sameBreaths()) {
      figure("lateness.mean", SECONDS, "asynchrony.meanSeconds", r -> prompts(r).met(), null);
    }
  }

  private static Metrics.Prompts prompts(Review review) {
    return review.metrics().prompts().get();
  }

  private void squeezes() {
    ToIntFunction<Review> count = r -> r.metrics().inspiration().count();
    if (both.sameSqueeze()) {
      figure("squeeze.mean", SECONDS, "inspiration.meanSeconds", count, null);
    }
    share("squeeze.good", r -> r.metrics().inspiration().goodCount(), count, null);
  }

  /** Whether a known value lies outside its target. */
  private interface Target {
    boolean isMissed(Review review, double value);
  }

  /** The same for so many of so many. */
  private interface ShareTarget {
    boolean isMissed(int these, int all);
  }

  private static boolean tooManyOutside(Metrics.Interval interval) {
    return tooManyOutside(interval.inRangeCount(), interval.count());
  }

  private static boolean tooManyOutside(int inRange, int all) {
    return all - inRange > RhythmRule.mostOutside(all);
  }

  private static boolean notAll(int these, int all) {
    return these < all;
  }

  /**
   * A row from the table of figures.
   *
   * @param count how many it rests on; null if there is nothing to count
   * @param target null if it has none
   */
  private void figure(
      String code, String unit, String name, ToIntFunction<Review> count, Target target) {
    Figure<Review> figure = Figures.named(name);
    // Shares are told in percent.
    double times = unit.equals(PERCENT) ? 100 : 1;
    Function<Review, Comparison.Side> side =
        review -> {
          OptionalDouble known = figure.number(review);
          OptionalDouble value =
              known.isPresent() ? OptionalDouble.of(times * known.getAsDouble()) : known;
          return new Comparison.Side(
              value.isPresent() ? shown(value.getAsDouble(), unit) : WORDS.say("unknown"),
              value,
              count == null ? OptionalInt.empty() : OptionalInt.of(count.applyAsInt(review)),
              target == null || !value.isPresent()
                  ? Optional.empty()
                  : Optional.of(target.isMissed(review, value.getAsDouble())));
        };
    add(code, unit, side, change -> shown(change, unit));
  }

  /** So many of so many. */
  private void share(
      String code, ToIntFunction<Review> these, ToIntFunction<Review> all, ShareTarget target) {
    add(
        code,
        ONE,
        review -> {
          int some = these.applyAsInt(review);
          int tried = all.applyAsInt(review);
          return side(WORDS.say("share", some, tried), some, tried, tried)
              .apply(target == null ? null : target.isMissed(some, tried));
        },
        Comparer::points);
  }

  /** Time in intervals of one judgement, as a share of the time in all. */
  private void time(String code, Judgement judgement, ToIntFunction<Metrics.Interval> off) {
    add(
        code,
        ONE,
        review -> {
          double out = seconds(review, p -> p.judgement() == judgement);
          double all = seconds(review, p -> true);
          String text = WORDS.say("share.seconds", Math.round(out), Math.round(all));
          int n = intervals(review);
          return side(text, out, all, n)
              .apply(off.applyAsInt(review.metrics().interval()) > RhythmRule.mostOutside(n));
        },
        Comparer::points);
  }

  private static Function<Boolean, Comparison.Side> side(
      String text, double these, double all, int observations) {
    boolean known = all > 0;
    return missed ->
        new Comparison.Side(
            known ? text : WORDS.say("unknown"),
            known ? OptionalDouble.of(these / all) : OptionalDouble.empty(),
            OptionalInt.of(observations),
            known ? Optional.ofNullable(missed) : Optional.empty());
  }

  private void verdict() {
    add(
        "verdict",
        "",
        review ->
            new Comparison.Side(
                review.verdict().outcome().label(),
                OptionalDouble.empty(),
                OptionalInt.empty(),
                Optional.empty()),
        change -> "");
  }

  private void add(
      String code,
      String unit,
      Function<Review, Comparison.Side> side,
      Function<Double, String> shown) {
    Comparison.Side ofA = side.apply(a);
    Comparison.Side ofB = side.apply(b);
    OptionalDouble difference = OptionalDouble.empty();
    String change = "";
    if (ofA.value().isPresent() && ofB.value().isPresent()) {
      double more = ofB.value().getAsDouble() - ofA.value().getAsDouble();
      difference = OptionalDouble.of(more);
      String text = shown.apply(more);
      change = more > 0 && text.matches(".*[1-9].*") ? "+" + text : text;
    }
    if (unit.isEmpty() || ofA.value().isPresent() || ofB.value().isPresent()) {
      rows.add(new Comparison.Row(code, unit, ofA, ofB, difference, change));
    }
  }

  private static String shown(double value, String unit) {
    return switch (unit) {
      case SECONDS -> Words.hundredths(value) + " s";
      case PERCENT -> Math.round(value) + " %";
      default -> Words.decimal(value);
    };
  }

  /** Of the difference of two shares. */
  private static String points(double change) {
    return WORDS.say("points", Math.round(100 * change));
  }

  private static double seconds(Review review, Predicate<IntervalPoint> which) {
    return review.intervals().stream()
        .filter(point -> point.valid() && which.test(point))
        .mapToDouble(IntervalPoint::seconds)
        .sum();
  }

  private static int intervals(Review review) {
    return review.metrics().interval().count();
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

  private static Compressions done(Review review) {
    return review.metrics().compressions().get();
  }

  /** What lies outside its target in both, in A and in B, and what both have to change. */
  private String sentence() {
    List<String> sentences = new ArrayList<>();
    if (rows.stream().noneMatch(row -> row.code().matches("(interval|compressions)\\..*"))) {
      sentences.add(WORDS.say("sentence.too-little"));
    } else {
      outside(sentences, "sentence.outside.both", r -> r.a().isOutside() && r.b().isOutside());
      outside(sentences, "sentence.outside.a", r -> r.a().isOutside() && !r.b().isOutside());
      outside(sentences, "sentence.outside.b", r -> !r.a().isOutside() && r.b().isOutside());
      if (sentences.isEmpty()) {
        sentences.add(WORDS.say("sentence.outside.none"));
      }
    }
    toChange().ifPresent(sentences::add);
    return String.join(" ", sentences);
  }

  private void outside(List<String> sentences, String key, Predicate<Comparison.Row> which) {
    String labels =
        rows.stream().filter(which).map(Comparison.Row::label).collect(Collectors.joining(", "));
    if (!labels.isEmpty()) {
      sentences.add(WORDS.say(key, labels));
    }
  }

  /** The worst thing to change that both debriefs name. */
  private Optional<String> toChange() {
    for (Feedback ofB : b.findings()) {
      for (Feedback ofA : a.findings()) {
        boolean same =
            ofA.code().equals(ofB.code())
                && ofA.severity() != Severity.GOOD
                && ofB.severity() != Severity.GOOD;
        if (same) {
          String titleA = ofA.title().toLowerCase(Locale.ROOT);
          String titleB = ofB.title().toLowerCase(Locale.ROOT);
          return Optional.of(
              titleA.equals(titleB)
                  ? WORDS.say("sentence.both", titleA)
                  : WORDS.say("sentence.both.each", titleA, titleB));
        }
      }
    }
    return Optional.empty();
  }
}
