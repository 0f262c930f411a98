package squeezewell.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import squeezewell.review.Review;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.Drift;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.measure.Unprompted;
import squeezewell.review.say.Asked;
import squeezewell.review.say.VerdictText;

/**
 * All figures of a review by name, as docs/formats.md lists them. The names and what they mean are
 * those of the review as JSON; see {@link Metrics} for the definitions.
 */
public final class MetricList {
  private static final int PLACES = 6;
  private static final String SECONDS = "s";
  private static final String PER_MINUTE = "/min";
  private static final String MINUTES = "min";
  private static final String ONE = "1";
  private static final String PERCENT = "%";
  private static final String PERCENT_PER_MINUTE = "%/min";

  private final Review review;
  private final Metrics metrics;
  private final List<Metric> list = new ArrayList<>();

  private MetricList(Review review) {
    this.review = review;
    this.metrics = review.metrics();
  }

  /** The figures of a review or of one part of it, always in the same order. */
  public static List<Metric> of(Review review) {
    MetricList figures = new MetricList(review);
    figures.asked();
    figures.breaths();
    figures.intervals();
    figures.gap();
    figures.prompts();
    figures.unprompted();
    figures.squeezes();
    figures.compressions();
    figures.holds();
    figures.others();
    return List.copyOf(figures.list);
  }

  private void asked() {
    Asked asked = review.asked();
    word("asked.protocol", asked.protocolId());
    word("asked.patient", slug(asked.patient()));
    word("asked.situation", slug(asked.situation()));
    number("asked.intervalSeconds", asked.intervalSeconds(), SECONDS);
    number("asked.lowSeconds", seconds(asked.lowNanos()), SECONDS);
    number("asked.highSeconds", seconds(asked.highNanos()), SECONDS);
    number(
        "asked.inspirationSeconds",
        review.parts().isEmpty()
            ? seconds(OptionalLong.of(asked.inspirationNanos()))
            : OptionalDouble.empty(),
        SECONDS);
    number("asked.lengthSeconds", asked.lengthNanos() / 1e9, SECONDS);
    number("asked.practisedSeconds", asked.practisedNanos() / 1e9, SECONDS);
    word("verdict.outcome", slug(review.verdict().outcome().name()));
    number("time.fromSeconds", review.startNanos() / 1e9, SECONDS);
    number("time.toSeconds", review.endNanos() / 1e9, SECONDS);
    number("time.sessionSeconds", metrics.sessionSeconds(), SECONDS);
    number("time.effectiveSeconds", metrics.effectiveSeconds(), SECONDS);
  }

  private void breaths() {
    count("breaths.count", metrics.breathCount());
    number("breaths.firstSeconds", metrics.firstBreathSeconds(), SECONDS);
    number(
        "rate.overallPerMinute",
        metrics.rate().overallPerMinute(),
        PER_MINUTE,
        metrics.interval().count());
    number(
        "rate.countPerMinute", metrics.rate().countPerMinute(), PER_MINUTE, metrics.breathCount());
  }

  private void intervals() {
    Metrics.Interval interval = metrics.interval();
    int n = interval.count();
    count("interval.count", n);
    number("interval.meanSeconds", interval.meanSeconds(), SECONDS, n);
    number("interval.medianSeconds", interval.medianSeconds(), SECONDS, n);
    number("interval.sdSeconds", interval.sdSeconds(), SECONDS, n);
    number("interval.robustSdSeconds", interval.robustSdSeconds(), SECONDS, n);
    count("interval.inRangeCount", interval.inRangeCount(), n);
    number("interval.inRangeFraction", interval.inRangeFraction(), ONE, n);
    number("interval.inRangeFractionLow", interval.inRangeLow(), ONE, n);
    number("interval.inRangeFractionHigh", interval.inRangeHigh(), ONE, n);
    count("interval.fastCount", interval.fastCount(), n);
    count("interval.slowCount", interval.slowCount(), n);
    number("interval.timeInRangeFraction", interval.timeInRangeFraction(), ONE, n);
    number("interval.tempoErrorPercent", interval.tempoErrorPercent(), PERCENT, n);
    number("interval.excessBreaths", judged(interval.excessBreaths()), ONE, n);
    number("interval.deficitBreaths", judged(interval.deficitBreaths()), ONE, n);
    number("interval.fastMinutes", judged(interval.fastMinutes()), MINUTES, n);
    number("interval.slowMinutes", judged(interval.slowMinutes()), MINUTES, n);
    number(
        "interval.hyperventilationMinutes",
        metrics.hyperventilationMinutes(),
        MINUTES,
        metrics.breathCount());
  }

  /** What rests on the range is not known for a rhythm without one. */
  private OptionalDouble judged(double value) {
    boolean ranged =
        review.rhythms().stream().anyMatch(r -> r.asked().intervalSeconds().isPresent());
    return ranged ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private void gap() {
    Metrics.Gap gap = metrics.gap();
    number("gap.longestSeconds", gap.longestSeconds(), SECONDS);
    number("gap.longestAtSeconds", gap.longestAtSeconds(), SECONDS);
    number("gap.longestNetSeconds", gap.longestNetSeconds(), SECONDS);
    number("gap.longestNetAtSeconds", gap.longestNetAtSeconds(), SECONDS);
    count("gap.overLimitCount", gap.overLimitCount());
    number("gap.overLimitSeconds", gap.overLimitSeconds(), SECONDS);
  }

  private void prompts() {
    Metrics.Prompts prompts = metrics.prompts();
    count("prompts.given", prompts.given());
    count("prompts.met", prompts.met(), prompts.given());
    count("prompts.missed", prompts.missed(), prompts.given());
    count("prompts.forgiven", prompts.forgiven(), prompts.given());
    count("prompts.extra", prompts.extra(), metrics.breathCount() - prompts.unprompted());
    count("prompts.unprompted", prompts.unprompted(), metrics.breathCount());
    Metrics.Asynchrony asynchrony = metrics.asynchrony();
    int met = prompts.met();
    number("asynchrony.meanSeconds", asynchrony.meanSeconds(), SECONDS, met);
    number("asynchrony.medianSeconds", asynchrony.medianSeconds(), SECONDS, met);
    number("asynchrony.sdSeconds", asynchrony.sdSeconds(), SECONDS, met);
    number("asynchrony.phaseLocking", asynchrony.phaseLocking(), ONE);
    word("asynchrony.ownTempo", Boolean.toString(asynchrony.ownTempo()));
  }

  /** The rows are there where all was prompted too, empty. */
  private void unprompted() {
    Optional<Unprompted> done = metrics.unprompted();
    OptionalInt n = whole(done.map(Unprompted::intervalCount));
    add("unprompted.silences", text(done.map(Unprompted::silences)), ONE, OptionalInt.empty());
    number("unprompted.seconds", flat(done.map(u -> OptionalDouble.of(u.seconds()))), SECONDS);
    add(
        "unprompted.breathCount",
        text(done.map(Unprompted::breathCount)),
        ONE,
        OptionalInt.empty());
    add(
        "unprompted.plannedCount",
        text(done.map(Unprompted::plannedCount)),
        ONE,
        OptionalInt.empty());
    add(
        "unprompted.intervalCount",
        text(done.map(Unprompted::intervalCount)),
        ONE,
        OptionalInt.empty());
    add("unprompted.meanSeconds", number(flat(done.map(Unprompted::meanSeconds))), SECONDS, n);
    add(
        "unprompted.ratePerMinute",
        number(flat(done.map(Unprompted::ratePerMinute))),
        PER_MINUTE,
        n);
    add("unprompted.inRangeCount", text(done.map(Unprompted::inRangeCount)), ONE, n);
    add("unprompted.fastCount", text(done.map(Unprompted::fastCount)), ONE, n);
    add("unprompted.slowCount", text(done.map(Unprompted::slowCount)), ONE, n);
    add("unprompted.inRangeFractionLow", number(flat(done.map(Unprompted::inRangeLow))), ONE, n);
    add("unprompted.inRangeFractionHigh", number(flat(done.map(Unprompted::inRangeHigh))), ONE, n);
    number(
        "unprompted.driftPercentPerMinute",
        flat(done.map(Unprompted::driftPercentPerMinute)),
        PERCENT_PER_MINUTE);
    number(
        "unprompted.longestGapSeconds",
        flat(done.map(u -> OptionalDouble.of(u.longestGapSeconds()))),
        SECONDS);
    number(
        "unprompted.longestGapAtSeconds",
        flat(done.map(u -> OptionalDouble.of(u.longestGapAtSeconds()))),
        SECONDS);
    add(
        "unprompted.highestLevel",
        done.map(Unprompted::highestLevel)
            .filter(OptionalInt::isPresent)
            .map(level -> Integer.toString(level.getAsInt())),
        ONE,
        OptionalInt.empty());
    add(
        "unprompted.test",
        done.filter(u -> review.testIntervals().isPresent())
            .map(u -> VerdictText.testWord(review.verdict().outcome())),
        "",
        OptionalInt.empty());
  }

  private void squeezes() {
    Metrics.Inspiration squeeze = metrics.inspiration();
    int n = squeeze.count();
    count("inspiration.count", n);
    number("inspiration.meanSeconds", squeeze.meanSeconds(), SECONDS, n);
    number("inspiration.medianSeconds", squeeze.medianSeconds(), SECONDS, n);
    number("inspiration.lowerQuartileSeconds", squeeze.lowerQuartileSeconds(), SECONDS, n);
    number("inspiration.upperQuartileSeconds", squeeze.upperQuartileSeconds(), SECONDS, n);
    number("inspiration.goodFraction", squeeze.goodFraction(), ONE, n);
  }

  /** The rows are there without compressions too, empty, so that every table has the same rows. */
  private void compressions() {
    Optional<Compressions> done = metrics.compressions();
    Optional<Compressions> cycles = done.filter(c -> c.pauseLimitSeconds().isPresent());
    OptionalInt pauses = whole(done.map(Compressions::pauseCount));
    add("compressions.count", text(done.map(Compressions::count)), ONE, OptionalInt.empty());
    number("compressions.ratePerMinute", flat(done.map(Compressions::ratePerMinute)), PER_MINUTE);
    number("compressions.inRangeFraction", flat(done.map(Compressions::inRangeFraction)), ONE);
    add(
        "compressions.pauseCount",
        text(done.map(Compressions::pauseCount)),
        ONE,
        OptionalInt.empty());
    add(
        "compressions.longestPauseSeconds",
        number(flat(done.map(Compressions::longestPauseSeconds))),
        SECONDS,
        pauses);
    add(
        "compressions.overLimitPauses",
        text(cycles.map(Compressions::overLimitPauses)),
        ONE,
        pauses);
    number(
        "compressions.handsOffSeconds",
        flat(done.map(c -> OptionalDouble.of(c.handsOffSeconds()))),
        SECONDS);
    number("compressions.fraction", flat(done.map(Compressions::fraction)), ONE);
    OptionalInt ended = whole(cycles.map(c -> c.cycles().size()));
    add("compressions.cycles", text(cycles.map(c -> c.cycles().size())), ONE, OptionalInt.empty());
    add("compressions.goodCycles", text(cycles.map(Compressions::goodCycles)), ONE, ended);
  }

  private void holds() {
    List<PulseCheckResult> checks = metrics.pulseChecks();
    count("pulseChecks.count", checks.size());
    for (int i = 0; i < checks.size(); i++) {
      PulseCheckResult check = checks.get(i);
      String name = "pulseChecks." + (i + 1) + ".";
      number(name + "dueSeconds", check.dueSeconds(), SECONDS);
      number(name + "startedSeconds", check.startedSeconds(), SECONDS);
      number(name + "lengthSeconds", check.lengthSeconds(), SECONDS);
      number(name + "lateSeconds", check.lateSeconds(), SECONDS);
      word(name + "outcome", slug(check.outcome().name()));
      word(name + "length", slug(check.lengthOutcome().name()));
      count(name + "breathsDuring", check.breathsDuring());
    }
    List<SuctionResult> suctions = metrics.suctions();
    count("suctions.count", suctions.size());
    for (int i = 0; i < suctions.size(); i++) {
      SuctionResult suction = suctions.get(i);
      String name = "suctions." + (i + 1) + ".";
      number(name + "startedSeconds", suction.startedSeconds(), SECONDS);
      number(name + "lengthSeconds", suction.lengthSeconds(), SECONDS);
      word(name + "withinLimit", Boolean.toString(suction.withinLimit()));
    }
  }

  private void others() {
    count("holes.count", metrics.holeCount());
    add(
        "holes.seconds",
        number(OptionalDouble.of(metrics.holeSeconds())),
        SECONDS,
        OptionalInt.of(metrics.holeCount()));
    Drift drift = metrics.drift();
    int n = drift.intervals();
    number("drift.percentPerMinute", drift.percentPerMinute(), PERCENT_PER_MINUTE, n);
    number("drift.lowPercentPerMinute", drift.lowPercentPerMinute(), PERCENT_PER_MINUTE, n);
    number("drift.highPercentPerMinute", drift.highPercentPerMinute(), PERCENT_PER_MINUTE, n);
    Metrics.Volume volume = metrics.volume();
    count("volume.count", volume.count());
    number("volume.medianMillilitres", volume.medianMillilitres(), "mL", volume.count());
    number("volume.variationFraction", volume.variationFraction(), ONE, volume.count());
    number("volume.litresPerMinute", volume.litresPerMinute(), "L/min");
  }

  private void word(String name, String word) {
    add(name, Optional.of(word), "", OptionalInt.empty());
  }

  private void count(String name, int count) {
    add(name, Optional.of(Integer.toString(count)), ONE, OptionalInt.empty());
  }

  private void count(String name, int count, int observations) {
    add(name, Optional.of(Integer.toString(count)), ONE, OptionalInt.of(observations));
  }

  private void number(String name, double value, String unit) {
    number(name, OptionalDouble.of(value), unit);
  }

  private void number(String name, OptionalDouble value, String unit) {
    add(name, number(value), unit, OptionalInt.empty());
  }

  private void number(String name, OptionalDouble value, String unit, int observations) {
    add(name, number(value), unit, OptionalInt.of(observations));
  }

  private void add(String name, Optional<String> value, String unit, OptionalInt observations) {
    list.add(new Metric(name, value, unit, observations));
  }

  private static Optional<String> number(OptionalDouble value) {
    if (value.isEmpty()) {
      return Optional.empty();
    }
    BigDecimal rounded =
        BigDecimal.valueOf(value.getAsDouble()).setScale(PLACES, RoundingMode.HALF_EVEN);
    return Optional.of(rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString());
  }

  private static Optional<String> text(Optional<Integer> count) {
    return count.map(c -> Integer.toString(c));
  }

  private static OptionalInt whole(Optional<Integer> count) {
    return count.map(OptionalInt::of).orElse(OptionalInt.empty());
  }

  private static OptionalDouble flat(Optional<OptionalDouble> value) {
    return value.orElse(OptionalDouble.empty());
  }

  private static OptionalDouble seconds(OptionalLong nanos) {
    return nanos.isPresent() ? OptionalDouble.of(nanos.getAsLong() / 1e9) : OptionalDouble.empty();
  }

  /** Lower-case letters, digits and hyphens only. */
  static String slug(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
  }
}
