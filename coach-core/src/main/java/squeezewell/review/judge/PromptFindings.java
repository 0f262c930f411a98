package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Words;

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

  private static final double NOTICEABLE_TEMPO = 0.03;

  private PromptFindings() {}

  static List<Ranked> of(Facts facts) {
    List<Ranked> found = new ArrayList<>();
    Metrics.Asynchrony asynchrony = facts.metrics().asynchrony();
    boolean tooFast = RhythmFindings.of(facts).stream().anyMatch(r -> r.isCode("too-fast"));
    if (asynchrony.ownTempo() && tempoDiffers(facts)) {
      if (!tooFast) {
        found.add(ownTempo(facts));
      }
      return found;
    }
    Metrics.Prompts prompts = facts.metrics().prompts();
    if (prompts.given() == 0) {
      return found;
    }
    if (prompts.missed() > 0 && !RhythmFindings.slowTempo(facts)) {
      found.add(missed(facts));
    }
    boolean extra = prompts.extra() >= 2 && prompts.extra() > EXTRA_SHARE * prompts.given();
    if (extra && !tooFast) {
      found.add(extra(prompts));
    }
    if (prompts.missed() == 0 && prompts.met() >= FEWEST_PAIRS) {
      found.add(
          Ranked.good(
              1,
              "prompts-met",
              "Every prompt met",
              "A breath met each of the " + prompts.met() + " prompts that asked for one."));
    }
    addTiming(facts, found);
    return found;
  }

  private static void addTiming(Facts facts, List<Ranked> found) {
    if (!facts.practice().breathPlan().isPresent()
        || facts.metrics().prompts().met() < FEWEST_PAIRS) {
      return;
    }
    BreathPlan plan = facts.practice().breathPlan().get();
    double mean = facts.metrics().asynchrony().meanSeconds().getAsDouble();
    double interval = plan.interval().seconds();
    if (mean <= -Math.min(EARLY_SECONDS, EARLY_SHARE * interval)) {
      found.add(
          Ranked.advice(
              Ranked.AGAINST_PROMPT,
              "anticipates",
              "You squeeze before the prompt",
              "Your breaths came "
                  + Words.intervalSeconds(-mean, interval)
                  + " before the prompt on average; asked was to squeeze with it. The rhythm is"
                  + " what counts, but running ahead of it soon ends in breathing too fast."));
    } else if (mean >= Math.max(LATE_SECONDS, LATE_SHARE * interval)) {
      found.add(
          Ranked.advice(
              Ranked.AGAINST_PROMPT,
              "late",
              "You squeeze after the prompt",
              "Your breaths came "
                  + Words.intervalSeconds(mean, interval)
                  + " after the prompt on average. Count along with it, so that you are ready"
                  + " when it comes; without prompts a late breath becomes a slow rhythm."));
    }
  }

  private static Ranked missed(Facts facts) {
    Metrics.Prompts prompts = facts.metrics().prompts();
    boolean single = GapFindings.leavesOutSingleBreaths(facts);
    boolean longGaps = facts.metrics().gap().overLimitCount() > 0;
    // Where no wait was too long the breaths were given, only not with the prompts.
    boolean many =
        prompts.missed() >= FEWEST_MISSED
            && GapFindings.leftOutABreath(facts)
            && (prompts.missed() >= MISSED_SHARE * prompts.given() || (single && longGaps));
    String text =
        Words.count(prompts.missed(), "prompt")
            + " of "
            + prompts.given()
            + (prompts.missed() == 1 ? " was" : " were")
            + " not answered by a breath."
            + (GapFindings.leftOutABreath(facts)
                ? leftOut(facts)
                : " No wait was too long all the same: your breaths came between the prompts.");
    String title = prompts.missed() == 1 ? "A prompt was missed" : "Prompts were missed";
    if (!many) {
      return Ranked.advice(Ranked.MISSED_PROMPTS, "missed-prompts", title, text);
    }
    return Ranked.fault(
        single ? Ranked.SKIPS : Ranked.MISSED_PROMPTS, "missed-prompts", title, text);
  }

  private static String leftOut(Facts facts) {
    // Between compressions a breath can't be made up for.
    return facts.practice().breathPlan().isPresent()
        ? " Each one left out doubles the wait for the patient. Next time squeeze at once when you"
            + " notice, and go on with the next prompt."
        : " Each one left out is a pause that brings less air. Next time have the mask sealed"
            + " before the last compression.";
  }

  private static Ranked extra(Metrics.Prompts prompts) {
    return Ranked.advice(
        Ranked.EXTRA_BREATHS,
        "extra-breaths",
        "Breaths that no prompt asked for",
        Words.count(prompts.extra(), "breath")
            + " came without a prompt, besides "
            + prompts.met()
            + " with one. Let each breath flow out; the next is due only with its prompt.");
  }

  /**
   * Whether the tempo itself is another: below 3 % a listener notices no difference over a few
   * intervals (Drake and Botte, 1993), and to tell of it would contradict the figures beside it.
   */
  static boolean tempoDiffers(Facts facts) {
    double asked = facts.practice().breathPlan().get().interval().seconds();
    double own = facts.metrics().interval().medianSeconds().orElse(asked);
    return Math.abs(own - asked) >= NOTICEABLE_TEMPO * asked;
  }

  private static Ranked ownTempo(Facts facts) {
    Metrics.Interval interval = facts.metrics().interval();
    double own = interval.medianSeconds().orElse(0);
    double asked = facts.practice().breathPlan().get().interval().seconds();
    String text =
        "Your breaths did not follow the prompts: your own interval was "
            + own(own, facts.practice().breathPlan().get())
            + ", the prompts' "
            + Words.seconds(asked)
            + ". "
            + interval.inRangeCount()
            + " of "
            + interval.count()
            + " intervals were in range. Listen for the prompt and let it set the time.";
    // A rhythm that drifts has a finding of its own.
    boolean harmful =
        interval.count() - interval.inRangeCount() > RhythmRule.mostOutside(interval.count())
            && !RhythmFindings.drifts(facts);
    return harmful
        ? Ranked.fault(Ranked.OWN_TEMPO, "own-tempo", "A tempo of your own", text)
        : Ranked.advice(Ranked.OWN_TEMPO, "own-tempo", "A tempo of your own", text);
  }

  /** Out of range it is never printed as the end of the range. */
  private static String own(double seconds, BreathPlan plan) {
    Judgement judgement = plan.judgeSeconds(seconds);
    return judgement.off()
        ? Words.secondsBeside(seconds, plan.limitSeconds(judgement))
        : Words.intervalSeconds(seconds, plan.interval().seconds());
  }
}
