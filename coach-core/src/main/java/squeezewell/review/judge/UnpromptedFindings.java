package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Statistics;
import squeezewell.review.measure.Unprompted;

/** Findings about the rhythm while no breath was prompted. The numbers are our own choice. */
final class UnpromptedFindings {
  private static final double TEMPO_MARGIN = 0.03;

  private UnpromptedFindings() {}

  static List<Finding> of(Analysis facts) {
    List<Finding> found = new ArrayList<>();
    Optional<Unprompted> measured = facts.metrics().unprompted();
    Optional<BreathPlan> plan = facts.practice().breathPlan();
    if (!measured.isPresent()
        || !plan.isPresent()
        || measured.get().intervalCount() < Pace.FEWEST_UNPROMPTED) {
      return found;
    }
    Unprompted unprompted = measured.get();
    double median =
        Statistics.median(facts.unprompted().stream().mapToDouble(IntervalPoint::seconds).toArray())
            .getAsDouble();
    int fast = unprompted.fastCount();
    int slow = unprompted.slowCount();
    int most = RhythmRule.mostOutside(unprompted.intervalCount());
    Judgement clearly = plan.get().judgeClearly(median, TEMPO_MARGIN);
    // What is a little off all along is told of the whole.
    boolean partly = unprompted.intervalCount() < facts.metrics().interval().count();
    boolean tooFast = clearly == Judgement.FAST || (partly && often(fast, slow, most));
    boolean tooSlow = clearly == Judgement.SLOW || (partly && often(slow, fast, most));
    if (tooFast) {
      found.add(
          Finding.fault(
              FindingCode.UNPROMPTED_FAST,
              off(facts, Judgement.FAST, plan.get()),
              Pace.whyFast(facts),
              Pace.count(plan.get())));
    } else if (tooSlow) {
      found.add(
          Finding.fault(
              FindingCode.UNPROMPTED_SLOW,
              off(facts, Judgement.SLOW, plan.get()),
              Sentence.why("too-slow.why"),
              Pace.count(plan.get())));
    } else if (fast + slow > most) {
      found.add(
          Finding.fault(
              FindingCode.UNPROMPTED_UNEVEN,
              mean(unprompted, plan.get()),
              share(unprompted),
              Pace.count(plan.get())));
    } else if (kept(facts, plan.get())) {
      found.add(
          Finding.good(
              FindingCode.UNPROMPTED_HELD, mean(unprompted, plan.get()), share(unprompted)));
    }
    return found;
  }

  /** In a test waits at its ends count too. */
  private static boolean kept(Analysis facts, BreathPlan plan) {
    if (UnpromptedTrial.isOf(facts)) {
      return RhythmRule.kept(facts);
    }
    long[] lengths = facts.unprompted().stream().mapToLong(IntervalPoint::lengthNanos).toArray();
    return RhythmRule.shortfalls(plan, lengths, List.of()).isEmpty();
  }

  private static boolean often(int these, int others, int most) {
    return these >= 2 && these > most && these >= 2 * others;
  }

  private static Sentence off(Analysis facts, Judgement side, BreathPlan plan) {
    return Sentence.done("unprompted.off", Pace.off(facts.unprompted(), side, plan));
  }

  private static Sentence mean(Unprompted unprompted, BreathPlan plan) {
    return Sentence.done(
        "unprompted.mean",
        Quantity.tenths(unprompted.meanSeconds().getAsDouble()),
        Quantity.tenths(unprompted.ratePerMinute().getAsDouble()),
        Quantity.tenths(plan.interval().seconds()));
  }

  private static Sentence share(Unprompted unprompted) {
    return Sentence.done("in-range.short", unprompted.inRangeCount(), unprompted.intervalCount());
  }
}
