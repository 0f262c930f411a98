package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Metrics;

/** Findings about how the breaths followed the prompts. The numbers are our own choice. */
final class PromptFindings {
  private static final int FEWEST_PAIRS = 10;
  private static final int FEWEST_MISSED = 2;
  private static final double MISSED_SHARE = 0.05;
  private static final double EXTRA_SHARE = 0.1;

  /** Early by this much on average is more than chance. */
  private static final double EARLY_SECONDS = 0.15;

  private static final double EARLY_SHARE = 0.05;

  /** Late by this much on average is more than the time to react. */
  private static final double LATE_SECONDS = 0.6;

  private static final double LATE_SHARE = 0.15;

  private static final Metrics.Prompts NONE = new Metrics.Prompts(0, 0, 0, 0, 0);

  private PromptFindings() {}

  static List<Finding> of(Analysis facts) {
    List<Finding> found = new ArrayList<>();
    if (facts.marks().locking().ownTempo() && Pace.differs(facts)) {
      found.add(ownTempo(facts));
      return found;
    }
    Metrics.Prompts prompts = facts.metrics().prompts().orElse(NONE);
    if (prompts.given() == 0) {
      return found;
    }
    // Where no wait was too long one prompt that no breath answered is nothing to a patient.
    if (prompts.missed() >= FEWEST_MISSED
        || (prompts.missed() > 0 && GapFindings.leftOutABreath(facts))) {
      found.add(missed(facts));
    }
    if (prompts.extra() >= 2 && prompts.extra() > EXTRA_SHARE * prompts.given()) {
      found.add(
          Finding.advice(
              FindingCode.EXTRA_BREATHS,
              Sentence.done("extra-breaths.done", prompts.extra(), prompts.met()),
              Sentence.next("extra-breaths.next")));
    }
    if (prompts.missed() == 0 && prompts.met() >= FEWEST_PAIRS) {
      found.add(
          Finding.good(FindingCode.PROMPTS_MET, Sentence.done("prompts-met.done", prompts.met())));
    }
    addTiming(facts, found);
    return found;
  }

  private static void addTiming(Analysis facts, List<Finding> found) {
    if (facts.metrics().prompts().get().met() < FEWEST_PAIRS) {
      return;
    }
    BreathPlan plan = facts.practice().breathPlan().get();
    double mean = facts.metrics().asynchrony().get().meanSeconds().getAsDouble();
    double interval = plan.interval().seconds();
    if (mean <= -Math.min(EARLY_SECONDS, EARLY_SHARE * interval)) {
      found.add(
          Finding.advice(
              FindingCode.ANTICIPATES,
              Sentence.done("anticipates.done", Quantity.interval(-mean, interval)),
              Sentence.why("anticipates.why")));
    } else if (mean >= Math.max(LATE_SECONDS, LATE_SHARE * interval)) {
      found.add(
          Finding.advice(
              FindingCode.LATE,
              Sentence.done("late.done", Quantity.interval(mean, interval)),
              Sentence.next("late.next")));
    }
  }

  private static Finding missed(Analysis facts) {
    Metrics.Prompts prompts = facts.metrics().prompts().get();
    boolean single = GapFindings.leavesOutSingleBreaths(facts);
    boolean longGaps = facts.metrics().gap().overLimitCount() > 0;
    // Where no wait was too long the breaths were given, only not with the prompts.
    boolean many =
        prompts.missed() >= FEWEST_MISSED
            && GapFindings.leftOutABreath(facts)
            && (prompts.missed() >= MISSED_SHARE * prompts.given() || (single && longGaps));
    Finding told =
        Finding.faultOrAdvice(
            many,
            FindingCode.MISSED_PROMPTS,
            Sentence.done("missed-prompts.done", prompts.missed(), prompts.given()));
    if (prompts.missed() == 1) {
      told = told.titled("missed-prompts.title.one");
    }
    if (many && single) {
      told = told.inPlaceOf(FindingCode.SKIPS);
    }
    if (!GapFindings.leftOutABreath(facts)) {
      return told.and(Sentence.done("missed-prompts.no-wait"));
    }
    // Several in a row do more than double the wait.
    return single || prompts.missed() == 1
        ? told.and(Sentence.why("missed-prompts.why"), Sentence.next("missed-prompts.next"))
        : told.and(Sentence.next("missed-prompts.next"));
  }

  private static Finding ownTempo(Analysis facts) {
    Metrics.Interval interval = facts.metrics().interval();
    double own = interval.medianSeconds().orElse(0);
    double asked = facts.practice().breathPlan().get().interval().seconds();
    return Finding.advice(
        FindingCode.OWN_TEMPO,
        Sentence.done(
            "own-tempo.done",
            own(own, facts.practice().breathPlan().get()),
            Quantity.tenths(asked)),
        Sentence.done("in-range.short", interval.inRangeCount(), interval.count()),
        Sentence.next("own-tempo.next"));
  }

  /** Out of range it is never printed as the end of the range. */
  private static Quantity own(double seconds, BreathPlan plan) {
    Judgement judgement = plan.judgeSeconds(seconds);
    return judgement.off()
        ? Quantity.tenths(seconds, plan.limitSeconds(judgement))
        : Quantity.interval(seconds, plan.interval().seconds());
  }
}
