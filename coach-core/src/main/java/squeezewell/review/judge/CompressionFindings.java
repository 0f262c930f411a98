package squeezewell.review.judge;

import java.util.ArrayList;
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

  /** A usual number this far off is a fault. */
  private static final double WRONG_SHARE = 0.1;

  private final Compressions done;
  private final double share;
  private final boolean first;
  private final CompressionPlan plan;
  private final Optional<Rhythm.CompressionCycle> cycle;
  private final int breaths;
  private final PatientGroup patient;

  private CompressionFindings(Analysis facts, Compressions done, CompressionPlan plan) {
    this.done = done;
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

  private void addPauses(List<Finding> found) {
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
    int counted = asked.perCycle() >= COUNTED ? 1 : 0;
    int off = count(c -> Math.abs(c.compressions() - asked.perCycle()) > counted);
    if (off > MOST_OFF * done.cycles().size()) {
      double usual =
          Statistics.median(done.cycles().stream().mapToDouble(c -> c.compressions()).toArray())
              .getAsDouble();
      boolean far = Math.abs(usual - asked.perCycle()) > WRONG_SHARE * asked.perCycle();
      found.add(
          Finding.faultOrAdvice(
              far,
              FindingCode.WRONG_NUMBER,
              Sentence.done(
                  "wrong-number.done",
                  off,
                  done.cycles().size(),
                  asked.perCycle(),
                  Math.round(usual)),
              Sentence.next("wrong-number.next")));
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
    return done.cycles().isEmpty()
        ? told
        : told.and(
            Sentence.done("compressions-good.cycles", done.goodCycles(), done.cycles().size()));
  }
}
