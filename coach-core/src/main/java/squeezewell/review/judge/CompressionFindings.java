package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Rhythm;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.MeasureCompressions;
import squeezewell.review.measure.Practice;
import squeezewell.review.measure.Spans;
import squeezewell.review.measure.Statistics;

/**
 * Findings about compressions. The limits are the protocol's; how much has to be off before it is
 * told is our own choice.
 */
final class CompressionFindings {
  /** With fewer compressions nothing is said about them. */
  private static final int FEWEST = 10;

  /** Cycles may be off up to this share. */
  private static final double MOST_OFF = 0.2;

  /** Below this share of intervals in range the rate is not praised, whatever its mean. */
  private static final double MOSTLY = 0.5;

  /** Counting up to thirty may be one off; a count of three may not. */
  private static final int COUNTED = 15;

  /** A usual number this many times the one asked for is another ratio, and told before others. */
  private static final double OTHER_RATIO = 1.5;

  private static final int RATIO_PLACE = FindingCode.COMPRESS_TOO_SLOW.priority();

  /** Without a break so many pauses are told, however short. */
  private static final int FEWEST_BREAKS = 2;

  /** A usual number this far off is a fault. */
  private static final double WRONG_SHARE = 0.1;

  private final Practice practice;
  private final Compressions done;
  private final double share;
  private final boolean first;
  private final CompressionPlan plan;
  private final Optional<Rhythm.CompressionCycle> cycle;
  private final int breaths;
  private final PatientGroup patient;

  private CompressionFindings(Analysis facts, Compressions done, CompressionPlan plan) {
    this.done = done;
    practice = facts.practice();
    this.plan = plan;
    cycle = MeasureCompressions.cycleOf(facts.practice());
    breaths = facts.metrics().breathCount();
    patient = facts.practice().guidance().patient();
    share = facts.practice().guidance().rhythm().compressionShare();
    first = facts.practice().place().first();
  }

  static List<Finding> of(Analysis facts) {
    List<Finding> found = new ArrayList<>();
    Optional<CompressionPlan> plan = facts.practice().guidance().rhythm().compressions();
    if (plan.isPresent()) {
      Compressions done = facts.metrics().compressions().get();
      new CompressionFindings(facts, done, plan.get()).addTo(found);
    }
    return found;
  }

  private void addTo(List<Finding> found) {
    // After a change a finding tells of the change.
    if (done.count() == 0 && first) {
      found.add(missing());
    }
    if (done.count() > 0) {
      addStart(found);
      addEnd(found);
    }
    if (done.count() < FEWEST) {
      return;
    }
    addRate(found);
    addPauses(found);
    cycle.ifPresent(c -> addCycles(found, c));
    boolean noPause = cycle.isPresent() || done.pauseCount() == 0;
    // The mean of intervals that are too short and too long by turns may well be in range.
    boolean mostly = done.inRangeFraction().orElse(0) >= MOSTLY;
    if (found.isEmpty() && noPause && mostly && done.ratePerMinute().isPresent()) {
      found.add(good());
    }
  }

  private static Finding missing() {
    return Finding.advice(
        FindingCode.COMPRESSIONS_MISSING,
        Sentence.done("compressions-missing.done"),
        Sentence.next("compressions-missing.next"));
  }

  private void addRate(List<Finding> found) {
    double rate =
        done.ratePerMinute().isPresent()
            ? done.ratePerMinute().getAsDouble() / share
            : plan.tempo().perMinute();
    Judgement judgement = plan.judgeRate(rate);
    Quantity shown = Quantity.tenths(share * rate, share * plan.limitPerMinute(judgement));
    if (judgement == Judgement.FAST) {
      found.add(offRate(FindingCode.COMPRESS_TOO_FAST, shown));
    } else if (judgement == Judgement.SLOW) {
      found.add(offRate(FindingCode.COMPRESS_TOO_SLOW, shown));
    }
  }

  private Finding offRate(FindingCode code, Quantity rate) {
    return Finding.fault(
        code,
        Sentence.done(
            cycle.map(c -> c.byEvents()).orElse(false) ? "compress-rate.events" : "compress-rate",
            rate,
            Quantity.tenths(share * plan.range().low()),
            Quantity.tenths(share * plan.range().high()),
            Quantity.tenths(plan.tempo().perMinute())),
        Sentence.why(code.id() + ".why"),
        Sentence.next("compress-rate.next"));
  }

  /** After a change a finding tells how late they came. */
  private void addStart(List<Finding> found) {
    long wait = without(practice.startNanos(), practice.compressions().get(0));
    if (first && wait > ChangeFindings.LONGEST_WAIT_NANOS) {
      found.add(
          Finding.fault(
              FindingCode.COMPRESSIONS_LATE,
              Sentence.done("compressions-late.done.start", tenths(wait), longest()),
              Sentence.why("compressions-late.why"),
              Sentence.next("compressions-late.next")));
    }
  }

  private void addEnd(List<Finding> found) {
    long last = practice.compressions().get(practice.compressions().size() - 1);
    long wait = without(last, practice.endNanos());
    // A last cycle that the end cuts off need not be begun.
    long cut =
        cycle
            .map(c -> Math.round(c.perCycle() * 60e9 / plan.range().low()) + c.pauseNanos())
            .orElse(0L);
    if (wait > ChangeFindings.LONGEST_WAIT_NANOS + cut) {
      found.add(
          Finding.fault(
                  FindingCode.PAUSE_TOO_LONG,
                  Sentence.done(
                      practice.place().last()
                          ? "pause-too-long.done.end"
                          : "pause-too-long.done.before-change",
                      tenths(wait),
                      Quantity.clock(last)),
                  Sentence.why("pause-too-long.why"),
                  Sentence.next("pause-too-long.next.end"))
              .titled(
                  practice.place().last()
                      ? "pause-too-long.title.end"
                      : "pause-too-long.title.before-change"));
    }
  }

  /** How long nobody compressed though they were to, in nanoseconds. */
  private long without(long from, long to) {
    return Math.max(0, to - from - Spans.whole(practice.holds()).overlap(from, to));
  }

  private static Quantity tenths(long nanos) {
    return Quantity.tenths(nanos / 1e9, ChangeFindings.LONGEST_WAIT_NANOS / 1e9);
  }

  private static Quantity longest() {
    return Quantity.tenths(ChangeFindings.LONGEST_WAIT_NANOS / 1e9);
  }

  private void addPauses(List<Finding> found) {
    if (found.stream().anyMatch(f -> f.code() == FindingCode.PAUSE_TOO_LONG)) {
      return;
    }
    double longest = done.longestPauseSeconds().orElse(0);
    if (!cycle.isPresent()
        && (done.pauseCount() >= FEWEST_BREAKS
            || longest > ChangeFindings.LONGEST_WAIT_NANOS / 1e9)) {
      found.add(
          Finding.fault(
                  FindingCode.PAUSE_TOO_LONG,
                  Sentence.done(
                      "pause-too-long.done.continuous",
                      done.pauseCount(),
                      Quantity.tenths(longest)),
                  Sentence.why("pause-too-long.why"))
              .titled("pause-too-long.title.continuous"));
    }
    if (done.overLimitPauses() == 0) {
      return;
    }
    double most = done.pauseLimitSeconds().getAsDouble();
    found.add(
        Finding.fault(
            FindingCode.PAUSE_TOO_LONG,
            Sentence.done(
                "pause-too-long.done",
                done.overLimitPauses(),
                done.pauseCount(),
                Quantity.tenths(done.longestPauseSeconds().getAsDouble(), most),
                Quantity.tenths(most)),
            Sentence.why("pause-too-long.why"),
            Sentence.next("pause-too-long.next")));
  }

  private void addCycles(List<Finding> found, Rhythm.CompressionCycle asked) {
    int few = count(c -> c.breaths() < asked.breathsPerCycle());
    // Without any breath there is a finding that says so.
    if (breaths > 0 && few > MOST_OFF * done.cycles().size()) {
      found.add(
          Finding.fault(
              FindingCode.BREATHS_MISSING,
              Sentence.done(
                  "breaths-missing.done", few, done.cycles().size(), asked.breathsPerCycle()),
              Sentence.why(whyBreaths()),
              Sentence.next("breaths-missing.next")));
    }
    int many = count(c -> c.breaths() > asked.breathsPerCycle());
    if (many > MOST_OFF * done.cycles().size()) {
      found.add(
          Finding.advice(
                  FindingCode.EXTRA_BREATHS,
                  Sentence.done(
                      "extra-breaths.done.pause",
                      many,
                      done.cycles().size(),
                      asked.breathsPerCycle()),
                  Sentence.next("extra-breaths.next.pause", asked.breathsPerCycle()))
              .titled("extra-breaths.title.pause"));
    }
    if (done.pauseCount() == 0 && done.count() >= 2 * asked.perCycle()) {
      found.add(
          Finding.fault(
                  FindingCode.WRONG_NUMBER,
                  Sentence.done(
                      "wrong-number.done.no-pause",
                      done.count(),
                      asked.perCycle(),
                      asked.breathsPerCycle()),
                  Sentence.next("wrong-number.next"))
              .titled("wrong-number.title.no-pause")
              .inPlaceOf(RATIO_PLACE));
    }
    int counted = asked.perCycle() >= COUNTED ? 1 : 0;
    int off = count(c -> Math.abs(c.compressions() - asked.perCycle()) > counted);
    if (off > MOST_OFF * done.cycles().size()) {
      double usual =
          Statistics.median(done.cycles().stream().mapToDouble(c -> c.compressions()).toArray())
              .getAsDouble();
      boolean far = Math.abs(usual - asked.perCycle()) > WRONG_SHARE * asked.perCycle();
      IntSummaryStatistics numbers =
          done.cycles().stream().mapToInt(Compressions.Cycle::compressions).summaryStatistics();
      Sentence told =
          Math.round(usual) == asked.perCycle()
              ? Sentence.done(
                  "wrong-number.done.mixed",
                  off,
                  done.cycles().size(),
                  asked.perCycle(),
                  numbers.getMin(),
                  numbers.getMax())
              : Sentence.done(
                  "wrong-number.done",
                  off,
                  done.cycles().size(),
                  asked.perCycle(),
                  Math.round(usual));
      Finding wrong =
          Finding.faultOrAdvice(
              far, FindingCode.WRONG_NUMBER, told, Sentence.next("wrong-number.next"));
      boolean otherRatio =
          Math.max(usual / asked.perCycle(), asked.perCycle() / usual) >= OTHER_RATIO;
      found.add(otherRatio ? wrong.inPlaceOf(RATIO_PLACE) : wrong);
    }
  }

  private String whyBreaths() {
    return switch (patient) {
      case ADULT -> "breaths-missing.why.adult";
      case NEWBORN -> "breaths-missing.why.newborn";
      default -> "breaths-missing.why.child";
    };
  }

  private int count(Predicate<Compressions.Cycle> which) {
    return (int) done.cycles().stream().filter(which).count();
  }

  private Finding good() {
    Finding told =
        Finding.good(
            FindingCode.COMPRESSIONS_GOOD,
            Sentence.done(
                "compressions-good.done",
                Quantity.tenths(share * plan.asRead(done.ratePerMinute().getAsDouble() / share)),
                Quantity.tenths(share * plan.range().low()),
                Quantity.tenths(share * plan.range().high())));
    return done.goodCycles() == 0
        ? told
        : told.and(
            Sentence.done("compressions-good.cycles", done.goodCycles(), done.cycles().size()));
  }
}
