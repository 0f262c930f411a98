package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import squeezewell.cue.CueFader;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.Drift;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.measure.Unprompted;

/**
 * The one table of figures, as docs/formats.md lists them: the review as text, page and JSON, the
 * table as CSV, the statements for a record store and the comparison are all read from it. See
 * {@link Metrics} for what each of them means.
 */
@SuppressWarnings("UnnecessaryLambda") // each names what several figures rest on
public final class Figures {
  private static final String S = "s";
  private static final String PER_MINUTE = "/min";
  private static final String MIN = "min";
  private static final String ONE = "1";
  private static final String PERCENT = "%";
  private static final String PERCENT_PER_MINUTE = "%/min";
  private static final String WORD = "";

  /** How many intervals, breaths and so on a figure rests on. */
  private static final Function<Review, ?> INTERVALS = r -> interval(r).count();

  private static final Function<Review, ?> BREATHS = r -> r.metrics().breathCount();
  private static final Function<Review, ?> GIVEN = followed(Metrics.Prompts::given);
  private static final Function<Review, ?> MET = followed(Metrics.Prompts::met);
  private static final Function<Review, ?> SILENT = alone(Unprompted::intervalCount);
  private static final Function<Review, ?> SQUEEZES = r -> r.metrics().inspiration().count();
  private static final Function<Review, ?> PAUSES = pressed(Compressions::pauseCount);
  private static final Function<Review, ?> DRIFTING = r -> r.metrics().drift().intervals();
  private static final Function<Review, ?> VOLUMES = r -> r.metrics().volume().count();

  private static final List<Figure<Review>> ASKED =
      List.of(
          of("asked.protocol", WORD, r -> r.asked().protocolId()).besideJson(),
          of("asked.patient", WORD, r -> Figure.slug(r.asked().patient())).besideJson(),
          of("asked.situation", WORD, r -> Figure.slug(r.asked().situation())).besideJson(),
          of("asked.intervalSeconds", S, r -> r.asked().intervalSeconds()).besideJson(),
          of("asked.lowSeconds", S, r -> seconds(r.asked().lowNanos())).besideJson(),
          of("asked.highSeconds", S, r -> seconds(r.asked().highNanos())).besideJson(),
          of("asked.inspirationSeconds", S, Figures::askedSqueeze).besideJson(),
          of("asked.lengthSeconds", S, r -> r.asked().lengthNanos() / 1e9).besideJson(),
          of("asked.practisedSeconds", S, r -> r.asked().practisedNanos() / 1e9)
              .besideJson()
              .asClock(),
          of("verdict.outcome", WORD, r -> r.verdict().outcome()).besideJson(),
          of("time.fromSeconds", S, r -> r.startNanos() / 1e9).besideJson(),
          of("time.toSeconds", S, r -> r.endNanos() / 1e9).besideJson(),
          of("time.sessionSeconds", S, r -> r.metrics().sessionSeconds()).besideJson(),
          of("time.effectiveSeconds", S, r -> r.metrics().effectiveSeconds()).besideJson());

  private static final List<Figure<Review>> BREATHING =
      List.of(
          of("breaths.count", ONE, BREATHS),
          of("breaths.firstSeconds", S, r -> r.metrics().firstBreathSeconds()),
          of("rate.overallPerMinute", PER_MINUTE, r -> r.metrics().rate().overallPerMinute())
              .from(INTERVALS),
          of("rate.countPerMinute", PER_MINUTE, r -> r.metrics().rate().countPerMinute())
              .from(BREATHS),
          of("interval.count", ONE, INTERVALS),
          of("interval.meanSeconds", S, r -> interval(r).meanSeconds()).from(INTERVALS),
          of("interval.medianSeconds", S, r -> interval(r).medianSeconds()).from(INTERVALS),
          of("interval.sdSeconds", S, r -> interval(r).sdSeconds()).from(INTERVALS),
          of("interval.robustSdSeconds", S, r -> interval(r).robustSdSeconds()).from(INTERVALS),
          of("interval.inRangeCount", ONE, r -> interval(r).inRangeCount()).from(INTERVALS),
          of("interval.inRangeFraction", ONE, r -> interval(r).inRangeFraction()).from(INTERVALS),
          of("interval.inRangeFractionLow", ONE, r -> interval(r).inRangeLow()).from(INTERVALS),
          of("interval.inRangeFractionHigh", ONE, r -> interval(r).inRangeHigh()).from(INTERVALS),
          of("interval.fastCount", ONE, r -> interval(r).fastCount()).from(INTERVALS),
          of("interval.slowCount", ONE, r -> interval(r).slowCount()).from(INTERVALS),
          of("interval.timeInRangeFraction", ONE, r -> interval(r).timeInRangeFraction())
              .from(INTERVALS),
          of("interval.tempoErrorPercent", PERCENT, r -> interval(r).tempoErrorPercent())
              .from(INTERVALS),
          of("interval.excessBreaths", ONE, ranged(i -> i.excessBreaths())).from(INTERVALS),
          of("interval.deficitBreaths", ONE, ranged(i -> i.deficitBreaths())).from(INTERVALS),
          of("interval.fastMinutes", MIN, ranged(i -> i.fastMinutes())).from(INTERVALS),
          of("interval.slowMinutes", MIN, ranged(i -> i.slowMinutes())).from(INTERVALS),
          of("interval.hyperventilationMinutes", MIN, r -> r.metrics().hyperventilationMinutes())
              .from(BREATHS),
          of("gap.longestSeconds", S, r -> r.metrics().gap().longestSeconds()),
          of("gap.longestAtSeconds", S, r -> r.metrics().gap().longestAtSeconds()).asClock(),
          of("gap.longestNetSeconds", S, r -> r.metrics().gap().longestSeconds()),
          of("gap.longestNetAtSeconds", S, r -> r.metrics().gap().longestAtSeconds()),
          of("gap.overLimitCount", ONE, r -> r.metrics().gap().overLimitCount()),
          of("gap.overLimitSeconds", S, r -> r.metrics().gap().overLimitSeconds()).besideJson());

  private static final List<Figure<Review>> FOLLOWING =
      List.of(
          of("prompts.given", ONE, GIVEN),
          of("prompts.met", ONE, MET).from(GIVEN),
          of("prompts.missed", ONE, followed(Metrics.Prompts::missed)).from(GIVEN),
          of("prompts.forgiven", ONE, followed(Metrics.Prompts::forgiven)).from(GIVEN),
          of("prompts.extra", ONE, followed(Metrics.Prompts::extra))
              .from(followed(p -> p.met() + p.extra())),
          of("prompts.unprompted", ONE, followed(Metrics.Prompts::unprompted)).from(BREATHS),
          of("asynchrony.meanSeconds", S, lateness(Metrics.Asynchrony::meanSeconds)).from(MET),
          of("asynchrony.medianSeconds", S, lateness(Metrics.Asynchrony::medianSeconds)).from(MET),
          of("asynchrony.sdSeconds", S, lateness(Metrics.Asynchrony::sdSeconds)).from(MET),
          of("asynchrony.phaseLocking", ONE, lateness(Metrics.Asynchrony::phaseLocking)),
          of("unprompted.silences", ONE, alone(Unprompted::silences)),
          of("unprompted.seconds", S, alone(Unprompted::seconds)).asClock(),
          of("unprompted.breathCount", ONE, alone(Unprompted::breathCount)),
          of("unprompted.plannedCount", ONE, alone(Unprompted::plannedCount)),
          of("unprompted.intervalCount", ONE, SILENT),
          of("unprompted.meanSeconds", S, alone(Unprompted::meanSeconds)).from(SILENT),
          of("unprompted.ratePerMinute", PER_MINUTE, alone(Unprompted::ratePerMinute)).from(SILENT),
          of("unprompted.inRangeCount", ONE, alone(Unprompted::inRangeCount)).from(SILENT),
          of("unprompted.fastCount", ONE, alone(Unprompted::fastCount)).from(SILENT),
          of("unprompted.slowCount", ONE, alone(Unprompted::slowCount)).from(SILENT),
          of("unprompted.inRangeFractionLow", ONE, alone(Unprompted::inRangeLow)).from(SILENT),
          of("unprompted.inRangeFractionHigh", ONE, alone(Unprompted::inRangeHigh)).from(SILENT),
          of(
              "unprompted.driftPercentPerMinute",
              PERCENT_PER_MINUTE,
              alone(Unprompted::driftPercentPerMinute)),
          of("unprompted.longestGapSeconds", S, alone(Unprompted::longestGapSeconds)),
          of("unprompted.longestGapAtSeconds", S, alone(Unprompted::longestGapAtSeconds)),
          of("unprompted.highestLevel", ONE, alone(Unprompted::highestLevel)),
          of("unprompted.test", WORD, r -> r.test().map(VerdictText::testWord)).besideJson(),
          of("inspiration.count", ONE, SQUEEZES),
          of("inspiration.meanSeconds", S, squeeze(s -> s.meanSeconds())).from(SQUEEZES),
          of("inspiration.medianSeconds", S, squeeze(s -> s.medianSeconds())).from(SQUEEZES),
          of("inspiration.lowerQuartileSeconds", S, squeeze(s -> s.lowerQuartileSeconds()))
              .from(SQUEEZES)
              .besideJson(),
          of("inspiration.upperQuartileSeconds", S, squeeze(s -> s.upperQuartileSeconds()))
              .from(SQUEEZES)
              .besideJson(),
          of("inspiration.goodFraction", ONE, squeeze(s -> s.goodFraction())).from(SQUEEZES));

  private static final List<Figure<Review>> COMPRESSING =
      List.of(
          of("compressions.count", ONE, pressed(Compressions::count)),
          of("compressions.ratePerMinute", PER_MINUTE, pressed(Compressions::ratePerMinute)),
          of("compressions.eventsPerMinute", PER_MINUTE, pressed(Compressions::eventsPerMinute)),
          of("compressions.inRangeFraction", ONE, pressed(Compressions::inRangeFraction)),
          of("compressions.pauseCount", ONE, PAUSES),
          of("compressions.longestPauseSeconds", S, pressed(Compressions::longestPauseSeconds))
              .from(PAUSES),
          of("compressions.overLimitPauses", ONE, inCycles(Compressions::overLimitPauses))
              .from(PAUSES),
          of("compressions.handsOffSeconds", S, pressed(Compressions::handsOffSeconds)),
          of("compressions.fraction", ONE, pressed(Compressions::fraction)),
          of("compressions.cycles", ONE, inCycles(c -> c.cycles().size())),
          of("compressions.goodCycles", ONE, inCycles(Compressions::goodCycles))
              .from(inCycles(c -> c.cycles().size())));

  private static final List<Figure<Review>> OTHERS =
      List.of(
          of("holes.count", ONE, r -> r.metrics().holeCount()),
          of("holes.seconds", S, r -> r.metrics().holeSeconds()).from(r -> r.metrics().holeCount()),
          of("drift.percentPerMinute", PERCENT_PER_MINUTE, r -> drift(r).percentPerMinute())
              .from(DRIFTING),
          of("drift.lowPercentPerMinute", PERCENT_PER_MINUTE, r -> drift(r).lowPercentPerMinute())
              .from(DRIFTING),
          of("drift.highPercentPerMinute", PERCENT_PER_MINUTE, r -> drift(r).highPercentPerMinute())
              .from(DRIFTING),
          of("volume.count", ONE, VOLUMES),
          of("volume.medianMillilitres", "mL", r -> r.metrics().volume().medianMillilitres())
              .from(VOLUMES),
          of("volume.variationFraction", ONE, r -> r.metrics().volume().variationFraction())
              .from(VOLUMES),
          of("volume.litresPerMinute", "L/min", r -> r.metrics().volume().litresPerMinute()));

  /** What is told only beside another figure. */
  private static final List<Figure<Review>> BESIDE =
      List.of(
          of("compressions.pauseLimitSeconds", S, pressed(Compressions::pauseLimitSeconds)),
          of("compressions.cyclesMade", ONE, inCycles(Figures::cyclesMade)),
          of("unprompted.levels", ONE, r -> CueFader.HIGHEST));

  /** Of one check; the names are those of its fields. */
  static final List<Figure<PulseCheckResult>> CHECK =
      List.of(
          Figure.of("dueSeconds", S, PulseCheckResult::dueSeconds),
          Figure.of("startedSeconds", S, PulseCheckResult::startedSeconds),
          Figure.of("lengthSeconds", S, PulseCheckResult::lengthSeconds),
          Figure.of("lateSeconds", S, PulseCheckResult::lateSeconds),
          Figure.of("outcome", WORD, PulseCheckResult::outcome),
          Figure.of("length", WORD, PulseCheckResult::lengthOutcome),
          Figure.of("breathsDuring", ONE, PulseCheckResult::breathsDuring));

  /** Of one suction. */
  static final List<Figure<SuctionResult>> SUCTION =
      List.of(
          Figure.of("startedSeconds", S, SuctionResult::startedSeconds),
          Figure.of("lengthSeconds", S, SuctionResult::lengthSeconds),
          Figure.of("withinLimit", WORD, SuctionResult::withinLimit));

  /** All that stand once in a review, in the order in which they are listed. */
  static final List<Figure<Review>> ONCE =
      List.of(ASKED, BREATHING, FOLLOWING, COMPRESSING, OTHERS).stream()
          .flatMap(List::stream)
          .collect(Collectors.toList());

  private Figures() {}

  /** The figures of a review or of one part of it, always in the same order. */
  public static List<FigureValue> of(Review review) {
    List<FigureValue> values = new ArrayList<>();
    for (List<Figure<Review>> group : List.of(ASKED, BREATHING, FOLLOWING, COMPRESSING)) {
      group.forEach(figure -> values.add(figure.in(review, figure.name())));
    }
    list(values, "pulseChecks", CHECK, review.metrics().pulseChecks());
    list(values, "suctions", SUCTION, review.metrics().suctions());
    OTHERS.forEach(figure -> values.add(figure.in(review, figure.name())));
    return values;
  }

  /** A figure by its name, such as {@code interval.meanSeconds}. */
  public static Figure<Review> named(String name) {
    return Stream.concat(ONCE.stream(), BESIDE.stream())
        .filter(f -> f.name().equals(name))
        .findFirst()
        .get();
  }

  private static <T> void list(
      List<FigureValue> values, String group, List<Figure<T>> table, List<T> items) {
    Figure<List<T>> count = Figure.of(group + ".count", ONE, List::size);
    values.add(count.in(items, count.name()));
    for (int i = 0; i < items.size(); i++) {
      for (Figure<T> figure : table) {
        values.add(figure.in(items.get(i), group + "." + (i + 1) + "." + figure.name()));
      }
    }
  }

  private static Figure<Review> of(String name, String unit, Function<Review, ?> value) {
    return Figure.of(name, unit, value);
  }

  private static Metrics.Interval interval(Review review) {
    return review.metrics().interval();
  }

  /** What rests on the range is not known for a rhythm without one. */
  private static Function<Review, ?> ranged(Function<Metrics.Interval, ?> value) {
    return review ->
        review.rhythms().stream().anyMatch(r -> r.asked().intervalSeconds().isPresent())
            ? Optional.of(value.apply(interval(review)))
            : Optional.empty();
  }

  /** Empty where it means nothing which breath met which prompt. */
  private static Function<Review, ?> followed(Function<Metrics.Prompts, ?> value) {
    return review -> review.metrics().prompts().map(value);
  }

  private static Function<Review, ?> lateness(Function<Metrics.Asynchrony, OptionalDouble> value) {
    return review -> review.metrics().asynchrony().map(value).orElse(OptionalDouble.empty());
  }

  private static Drift drift(Review review) {
    return review.metrics().drift();
  }

  /** Of the breaths without prompts; empty where all was prompted. */
  private static Function<Review, ?> alone(Function<Unprompted, ?> value) {
    return review -> review.metrics().unprompted().map(value);
  }

  private static Function<Review, ?> squeeze(Function<Metrics.Inspiration, ?> value) {
    return review -> value.apply(review.metrics().inspiration());
  }

  private static Function<Review, ?> pressed(Function<Compressions, ?> value) {
    return review -> review.metrics().compressions().map(value);
  }

  /** Empty where compressions were to go on without a break. */
  private static Function<Review, ?> inCycles(Function<Compressions, ?> value) {
    return review ->
        review
            .metrics()
            .compressions()
            .filter(done -> done.pauseLimitSeconds().isPresent())
            .map(value);
  }

  private static Optional<Integer> cyclesMade(Compressions done) {
    return Optional.of(done.cycles().size()).filter(cycles -> cycles > 0);
  }

  private static OptionalDouble askedSqueeze(Review review) {
    return review.parts().isEmpty()
        ? seconds(OptionalLong.of(review.asked().inspirationNanos()))
        : OptionalDouble.empty();
  }

  private static OptionalDouble seconds(OptionalLong nanos) {
    return nanos.isPresent() ? OptionalDouble.of(nanos.getAsLong() / 1e9) : OptionalDouble.empty();
  }
}
