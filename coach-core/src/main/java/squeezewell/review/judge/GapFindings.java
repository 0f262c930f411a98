package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Gaps;
import squeezewell.review.measure.Practice;
import squeezewell.review.measure.Statistics;

/** Findings about times without a breath. None for a rhythm of compressions and pauses. */
final class GapFindings {
  /** A gap less than this many times the intervals beside it is slow tempo, not a pause. */
  private static final double STANDS_OUT = 1.5;

  private static final int NEIGHBOURS = 3;

  /** An interval this many times the one asked for is a breath left out, not a slow one. */
  static final double LEFT_OUT = 1.6;

  /** An interval this many times the one asked for is more than one breath left out. */
  private static final double MORE_THAN_ONE = 2.5;

  private static final double MORE_THAN_ONE_ON_AVERAGE = 2.8;
  private static final int OFTEN = 5;

  private GapFindings() {}

  static List<Finding> of(Analysis facts) {
    List<Finding> found = new ArrayList<>();
    if (!facts.practice().breathPlan().isPresent()) {
      return found;
    }
    long limit = facts.practice().limits().gapLongest().nanos();
    List<Gaps.Gap> all = Gaps.of(facts.practice());
    List<Gaps.Gap> over = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      // A hold that overran its limit has a finding of its own.
      if (all.get(i).unheldNanos() > limit && standsOut(all, i)) {
        over.add(all.get(i));
      }
    }
    Optional<Gaps.Gap> longest = over.stream().max(Comparator.comparingLong(Gaps.Gap::unheldNanos));
    if (longest.isPresent()) {
      found.add(longGap(facts.practice(), longest.get(), all, over.size(), limit));
      return found;
    }
    BreathPlan plan = facts.practice().breathPlan().get();
    List<Gaps.Gap> late = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      boolean inHold = all.get(i).unheldNanos() < all.get(i).netNanos();
      if (RhythmRule.tooLong(plan, all.get(i).netOnsetNanos()) && !inHold && standsOut(all, i)) {
        late.add(all.get(i));
      }
    }
    Optional<Gaps.Gap> latest = late.stream().max(Comparator.comparingLong(Gaps.Gap::unheldNanos));
    if (latest.isPresent()) {
      found.add(
          lateBreath(latest.get(), where(facts.practice(), all, latest.get()), plan, late.size()));
    } else if (all.stream().allMatch(g -> g.netNanos() <= limit)
        && all.stream().noneMatch(g -> RhythmRule.tooLong(plan, g.netOnsetNanos()))) {
      double net = facts.metrics().gap().longestSeconds();
      found.add(
          Finding.good(
              FindingCode.NO_LONG_GAP,
              Sentence.done(
                  "no-long-gap.done", Quantity.tenths(net), Quantity.tenths(limit / 1e9))));
    }
    return found;
  }

  private static boolean standsOut(List<Gaps.Gap> all, int index) {
    Gaps.Gap gap = all.get(index);
    // The last wait is only that of a slow rhythm if it is no longer than those before it.
    boolean last = index > 0 && index == all.size() - 1 && gap.rawNanos() == gap.unheldNanos();
    if (!gap.interval() && !last) {
      return true;
    }
    List<Gaps.Gap> beside =
        all.subList(Math.max(0, index - NEIGHBOURS), Math.min(all.size(), index + NEIGHBOURS + 1));
    double[] others =
        beside.stream()
            .filter(g -> !g.equals(gap) && g.interval())
            .mapToDouble(Gaps.Gap::onsetNanos)
            .toArray();
    return others.length == 0
        || gap.onsetNanos() > STANDS_OUT * Statistics.median(others).getAsDouble();
  }

  private static Finding longGap(
      Practice practice, Gaps.Gap longest, List<Gaps.Gap> all, int count, long limit) {
    boolean helped = practice.guidance().situation() == Situation.PULSE_SLOW_BREATHING;
    String title = "long-gap.title";
    if (longest.equals(all.get(0))) {
      title = practice.place().first() ? "long-gap.title.start" : "long-gap.title.after-change";
    } else if (longest.equals(all.get(all.size() - 1))) {
      title = practice.place().last() ? "long-gap.title.end" : "long-gap.title.before-change";
    }
    Quantity wait = Quantity.tenths(longest.unheldNanos() / 1e9, limit / 1e9);
    Quantity most = Quantity.tenths(limit / 1e9);
    Finding told =
        Finding.fault(
                FindingCode.LONG_GAP,
                Sentence.done("long-gap.done", wait, most, where(practice, all, longest)))
            .titled(title);
    if (count > 1) {
      told = told.and(Sentence.done("long-gap.times", count, most));
    }
    return told.and(
        Sentence.why(helped ? "long-gap.why.helped" : "long-gap.why"),
        Sentence.next("long-gap.next"));
  }

  private static Sentence where(Practice practice, List<Gaps.Gap> all, Gaps.Gap gap) {
    return end(practice, all, gap)
        .orElse(Sentence.done("wait.from", Quantity.clock(gap.startNanos())));
  }

  /** At which end of a practice, or of a part of it, a wait is; empty if it lies between. */
  static Optional<Sentence> end(Practice practice, List<Gaps.Gap> all, Gaps.Gap gap) {
    if (all.size() == 1) {
      return Optional.of(Sentence.done("wait.all"));
    }
    if (gap.equals(all.get(0))) {
      return Optional.of(
          Sentence.done(practice.place().first() ? "wait.start" : "wait.after-change"));
    }
    if (gap.equals(all.get(all.size() - 1))) {
      return Optional.of(
          Sentence.done(practice.place().last() ? "wait.end" : "wait.before-change"));
    }
    return Optional.empty();
  }

  /** A wait that the rule does not allow, and that is within the limit all the same. */
  private static Finding lateBreath(Gaps.Gap latest, Sentence where, BreathPlan plan, int count) {
    double asked = plan.interval().seconds();
    Quantity wait = Quantity.tenths(latest.unheldNanos() / 1e9);
    return count == 1
        ? Finding.advice(
            FindingCode.LATE_BREATH,
            Sentence.done("late-breath.done", wait, where, Quantity.tenths(asked)))
        : Finding.advice(
                FindingCode.LATE_BREATH,
                Sentence.done("late-breath.done.some", wait, where, Quantity.tenths(asked), count))
            .titled("late-breath.title.some");
  }

  /** Whether any wait was longer than a held rhythm allows. */
  static boolean leftOutABreath(Analysis facts) {
    Optional<BreathPlan> plan = facts.practice().breathPlan();
    // In cycles each prompt that is missed is a breath that was not given.
    return !plan.isPresent()
        || Gaps.of(facts.practice()).stream()
            .anyMatch(g -> RhythmRule.tooLong(plan.get(), g.netOnsetNanos()));
  }

  /** Whether breaths were left out one at a time, rather than in a few long pauses. */
  static boolean leavesOutSingleBreaths(Analysis facts) {
    if (!facts.practice().breathPlan().isPresent()) {
      return false;
    }
    double asked = facts.practice().breathPlan().get().interval().seconds();
    double[] times =
        facts.valid().stream()
            .mapToDouble(i -> i.seconds() / asked)
            .filter(t -> t > LEFT_OUT)
            .sorted()
            .toArray();
    if (times.length >= OFTEN) {
      return Statistics.mean(times).getAsDouble() < MORE_THAN_ONE_ON_AVERAGE;
    }
    return times.length > 0 && times[(times.length - 1) / 2] < MORE_THAN_ONE;
  }
}
