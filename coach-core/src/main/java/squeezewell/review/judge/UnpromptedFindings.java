package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.MeasureUnprompted;
import squeezewell.review.measure.Unprompted;
import squeezewell.review.say.Words;

/** Findings about the rhythm while no breath was prompted. The numbers are our own choice. */
final class UnpromptedFindings {
  /** With fewer intervals nothing is said. */
  private static final int FEWEST = 5;

  private static final double TEMPO_MARGIN = 0.03;

  private UnpromptedFindings() {}

  /**
   * @param already what is told of the rhythm as a whole; the same is not told twice
   */
  static List<Ranked> of(Facts facts, List<Ranked> already) {
    List<Ranked> found = new ArrayList<>();
    Optional<Unprompted> measured = facts.metrics().unprompted();
    Optional<BreathPlan> plan = facts.practice().breathPlan();
    if (!measured.isPresent() || !plan.isPresent() || measured.get().intervalCount() < FEWEST) {
      return found;
    }
    Unprompted unprompted = measured.get();
    double median = MeasureUnprompted.median(facts).getAsDouble();
    int fast = unprompted.fastCount();
    int slow = unprompted.slowCount();
    int most = RhythmRule.mostOutside(unprompted.intervalCount());
    Judgement clearly = plan.get().judgeClearly(median, TEMPO_MARGIN);
    boolean tooFast = clearly == Judgement.FAST || often(fast, slow, most);
    boolean tooSlow = clearly == Judgement.SLOW || often(slow, fast, most);
    boolean told =
        already.stream()
            .anyMatch(
                r ->
                    r.is(Finding.Severity.FAULT)
                        && (r.isCode("too-fast")
                            || r.isCode("too-slow")
                            || r.isCode("sped-up")
                            || r.isCode("slowed-down")
                            || r.isCode("rhythm-uneven")));
    if (tooFast && !told) {
      found.add(
          Ranked.fault(
              Ranked.UNPROMPTED_FAST,
              "unprompted-fast",
              "Too fast without prompts",
              off(facts, Judgement.FAST, plan.get())
                  + " Too many breaths hold back the blood that flows to the heart"
                  + RhythmFindings.SEEN_IN_PIGS
                  + ". "
                  + RhythmFindings.count(plan.get())));
    } else if (tooSlow && !told) {
      found.add(
          Ranked.fault(
              Ranked.UNPROMPTED_SLOW,
              "unprompted-slow",
              "Too slow without prompts",
              off(facts, Judgement.SLOW, plan.get())
                  + " With too few breaths carbon dioxide builds up and oxygen runs low"
                  + " (physiology). "
                  + RhythmFindings.count(plan.get())));
    } else if (!tooFast && !tooSlow && fast + slow > most && !told) {
      found.add(
          Ranked.fault(
              Ranked.UNEVEN,
              "unprompted-uneven",
              "Uneven without prompts",
              how(unprompted, plan.get()) + " " + RhythmFindings.count(plan.get())));
    } else if (!tooFast && !tooSlow && kept(facts, plan.get())) {
      found.add(
          Ranked.good(
              0, "unprompted-held", "Rhythm kept without prompts", how(unprompted, plan.get())));
    }
    return found;
  }

  /** In a test waits at its ends count too. */
  private static boolean kept(Facts facts, BreathPlan plan) {
    if (facts.metrics().unprompted().get().test().isPresent()) {
      return RhythmRule.kept(facts);
    }
    long[] lengths =
        MeasureUnprompted.intervals(facts).stream().mapToLong(IntervalPoint::lengthNanos).toArray();
    return RhythmRule.shortfalls(plan, lengths, new long[0]).isEmpty();
  }

  private static boolean often(int these, int others, int most) {
    return these >= 2 && these > most && these >= 2 * others;
  }

  private static String off(Facts facts, Judgement side, BreathPlan plan) {
    return "While no prompt was given "
        + OffPace.words(MeasureUnprompted.intervals(facts), side, plan)
        + ".";
  }

  private static String how(Unprompted unprompted, BreathPlan plan) {
    return "While no prompt was given your breaths came "
        + Words.seconds(unprompted.meanSeconds().getAsDouble())
        + " apart on average ("
        + Words.decimal(unprompted.ratePerMinute().getAsDouble())
        + " a minute); asked was one every "
        + Words.seconds(plan.interval().seconds())
        + ". "
        + unprompted.inRangeCount()
        + " of "
        + unprompted.intervalCount()
        + " intervals were in range.";
  }
}
