package squeezewell.review.compare;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.Function;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.measure.Unprompted;
import squeezewell.review.say.Review;

/** Picks the figures of a {@link Comparison}, in their order. */
final class Comparer {
  private final Review a;
  private final Review b;
  private final AskedOfBoth both;
  private final ComparisonRows rows;

  Comparer(Review a, Review b) {
    this.a = a;
    this.b = b;
    this.both = new AskedOfBoth(a, b);
    this.rows = new ComparisonRows(a, b);
  }

  Comparison compare() {
    breaths();
    prompts();
    squeezes();
    holds();
    compressions();
    rows.word("verdict", "by the rule", review -> review.verdict().outcome().label());
    return new Comparison(
        ComparisonWords.sentence(a, b, rows.list()),
        both.differences(),
        rows.list(),
        ComparisonRows.RULES);
  }

  private void breaths() {
    if (both.sameBreaths()) {
      Function<Review, Integer> count = r -> r.metrics().interval().count();
      rows.plain(
          "rate", "breaths a minute", "/min", r -> r.metrics().rate().overallPerMinute(), count);
      double asked = both.intervalSeconds();
      rows.mean("interval.mean", "mean interval", Sides::intervals, asked);
      rows.plain(
          "interval.median",
          "median interval",
          Sides.SECONDS,
          r -> r.metrics().interval().medianSeconds(),
          count);
      rows.plain(
          "interval.sd",
          "spread (SD)",
          Sides.SECONDS,
          r -> r.metrics().interval().sdSeconds(),
          count);
      rows.spread(asked);
    }
    rows.share(
        "interval.inRange",
        "intervals in range",
        r -> r.metrics().interval().inRangeCount(),
        r -> r.metrics().interval().count(),
        true);
    rows.time("interval.fastTime", "time too fast", Judgement.FAST);
    rows.time("interval.slowTime", "time too slow", Judgement.SLOW);
    if (both.steadyBreaths()) {
      rows.plain(
          "gap.longestNet",
          "longest gap",
          Sides.SECONDS,
          r -> OptionalDouble.of(r.metrics().gap().longestNetSeconds()),
          null);
    }
  }

  private void prompts() {
    rows.share(
        "prompts.met",
        "prompts met",
        r -> r.metrics().prompts().met(),
        r -> r.metrics().prompts().given() - r.metrics().prompts().forgiven(),
        true);
    rows.plain(
        "prompts.missed",
        "prompts missed",
        Sides.ONE,
        r -> OptionalDouble.of(r.metrics().prompts().missed()),
        r -> r.metrics().prompts().given() - r.metrics().prompts().forgiven());
    rows.share(
        "prompts.extra",
        "extra breaths",
        r -> r.metrics().prompts().extra(),
        r -> r.metrics().breathCount() - r.metrics().prompts().unprompted(),
        false);
    rows.share(
        "unprompted.inRange",
        "in range, unprompted",
        r -> r.metrics().unprompted().map(Unprompted::inRangeCount).orElse(0),
        r -> r.metrics().unprompted().map(Unprompted::intervalCount).orElse(0),
        true);
    if (both.sameBreaths()) {
      // One breath's lateness carries over to the next, so that no test of a mean holds for it.
      rows.plain(
          "lateness.mean",
          "after the prompt",
          Sides.SECONDS,
          r -> r.metrics().asynchrony().meanSeconds(),
          r -> r.metrics().prompts().met());
    }
  }

  private void squeezes() {
    if (both.sameSqueeze()) {
      rows.mean("squeeze.mean", "mean squeeze", Sides::squeezes, both.squeezeSeconds());
    }
    rows.share(
        "squeeze.good",
        "squeezes of good length",
        r -> r.metrics().inspiration().goodCount(),
        r -> r.metrics().inspiration().count(),
        true);
  }

  private void holds() {
    rows.share(
        "checks.onTime",
        "checks on time",
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
    rows.share(
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
    rows.share(
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
    if (both.sameCompressions()) {
      rows.plain(
          "compressions.rate",
          "compressions a minute",
          "/min",
          r -> done(r).ratePerMinute(),
          r -> done(r).count());
    }
    rows.plain(
        "compressions.inRange",
        "compressions in range",
        Sides.PERCENT,
        r -> percent(done(r).inRangeFraction()),
        r -> done(r).count());
    rows.share(
        "compressions.goodCycles",
        "good cycles",
        r -> done(r).goodCycles(),
        r -> done(r).pauseLimitSeconds().isPresent() ? done(r).cycles().size() : 0,
        true);
    rows.plain(
        "compressions.longestPause",
        "longest pause",
        Sides.SECONDS,
        r -> done(r).longestPauseSeconds(),
        r -> done(r).pauseCount());
    rows.plain(
        "compressions.fraction",
        "time compressed",
        Sides.PERCENT,
        r -> percent(done(r).fraction()),
        null);
  }

  private static Compressions done(Review review) {
    return review.metrics().compressions().get();
  }

  private static OptionalDouble percent(OptionalDouble share) {
    return share.isPresent() ? OptionalDouble.of(100 * share.getAsDouble()) : share;
  }
}
