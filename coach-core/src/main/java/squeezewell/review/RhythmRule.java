package squeezewell.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.cue.CueFader;
import squeezewell.protocol.BreathPlan;

/**
 * The rule by which a rhythm counts as held. Its numbers are our own choice: at least 120 s
 * practised; at most 15 % of the intervals out of range; the mean within 8 % of the interval asked
 * for, or inside the range where the guideline prints a range; nothing longer than 5/3 of the
 * interval. They were chosen so that a steady trainee (mean within 0.3 s, SD up to 0.4 s at a 6 s
 * interval) nearly always passes and one who is 0.6 s off nearly never does.
 */
final class RhythmRule {
  private static final long SECOND = 1_000_000_000L;

  /** Two minutes by the clock that is shown, which has whole seconds. */
  private static final long LEAST_PRACTISED_NANOS = 120 * SECOND - SECOND / 2;

  private static final int MOST_OUTSIDE_PERCENT = 15;

  /** An interval this many times the one asked for may be two, with a breath not recorded. */
  private static final double DOUBLE_LOW = 1.7;

  private static final double DOUBLE_HIGH = 2.3;

  private RhythmRule() {}

  /**
   * Judges a session. Parts that ask for the same breaths are judged together, others each by
   * itself; it is held if none that can be judged was not.
   */
  static Verdict judge(List<Facts> parts) {
    Map<List<Object>, List<Facts>> rhythms = new LinkedHashMap<>();
    for (Facts part : parts) {
      Optional<BreathPlan> plan = part.practice().breathPlan();
      if (plan.isPresent() && !part.practice().place().slip()) {
        List<Object> key =
            List.of(
                plan.get().interval(),
                plan.get().lowNanos(),
                plan.get().highNanos(),
                CueFader.hasPrintedRange(plan.get()));
        rhythms.computeIfAbsent(key, k -> new ArrayList<>()).add(part);
      }
    }
    if (rhythms.isEmpty()) {
      return Verdict.notJudged("The rule is for breaths at a steady interval.");
    }
    if (rhythms.size() == 1) {
      return judgeAlike(rhythms.values().iterator().next());
    }
    List<Verdict.Outcome> outcomes = new ArrayList<>();
    List<String> rules = new ArrayList<>();
    List<String> reasons = new ArrayList<>();
    for (List<Facts> alike : rhythms.values()) {
      Verdict verdict = judgeAlike(alike);
      double seconds = alike.get(0).practice().breathPlan().get().interval().seconds();
      String every = "One breath every " + Words.seconds(seconds) + ": ";
      outcomes.add(verdict.outcome());
      rules.add(every + verdict.rule());
      verdict.reasons().forEach(reason -> reasons.add(every + reason));
    }
    for (Verdict.Outcome outcome :
        List.of(Verdict.Outcome.NOT_HELD, Verdict.Outcome.UNDECIDED, Verdict.Outcome.HELD)) {
      if (outcomes.contains(outcome)) {
        return new Verdict(outcome, String.join(" ", rules), reasons);
      }
    }
    return new Verdict(Verdict.Outcome.TOO_SHORT, String.join(" ", rules), reasons);
  }

  private static Verdict judgeAlike(List<Facts> parts) {
    BreathPlan plan = parts.get(0).practice().breathPlan().get();
    long practised = parts.stream().mapToLong(f -> f.practice().pacedNanos()).sum();
    if (practised < LEAST_PRACTISED_NANOS) {
      return new Verdict(
          Verdict.Outcome.TOO_SHORT,
          rule(plan),
          List.of("practised for " + Words.clock(practised) + "; the rule needs 2:00"));
    }
    long[] intervals =
        parts.stream()
            .flatMap(f -> f.valid().stream())
            .mapToLong(IntervalPoint::lengthNanos)
            .toArray();
    long[] otherGaps =
        parts.stream()
            .flatMap(f -> Gaps.of(f.practice()).stream())
            .filter(g -> !g.interval())
            .mapToLong(Gaps.Gap::netOnsetNanos)
            .toArray();
    List<String> reasons = shortfalls(plan, intervals, otherGaps);
    Verdict.Outcome outcome = Verdict.Outcome.HELD;
    if (!reasons.isEmpty()) {
      boolean undecided = heldIfOneWasTwo(plan, intervals, otherGaps);
      outcome = undecided ? Verdict.Outcome.UNDECIDED : Verdict.Outcome.NOT_HELD;
    }
    return new Verdict(outcome, rule(plan), reasons);
  }

  /** At most so many of n intervals may be out of range. */
  static int mostOutside(int n) {
    return n * MOST_OUTSIDE_PERCENT / 100;
  }

  static List<String> shortfalls(BreathPlan plan, long[] intervals, long[] otherGaps) {
    int n = intervals.length;
    if (n == 0) {
      return List.of("no interval between two breaths");
    }
    List<String> reasons = new ArrayList<>();
    int outside = (int) Arrays.stream(intervals).filter(i -> !plan.inRange(i)).count();
    if (outside > mostOutside(n)) {
      reasons.add(outside + " of " + n + " intervals out of range");
    }
    double mean = Arrays.stream(intervals).average().getAsDouble() / SECOND;
    if (!CueFader.meanKept(plan, mean)) {
      reasons.add("mean interval " + mean(plan, mean));
    }
    long longest =
        Math.max(
            Arrays.stream(intervals).max().getAsLong(), Arrays.stream(otherGaps).max().orElse(0));
    if (tooLong(plan, longest)) {
      reasons.add(
          Words.secondsBeside((double) longest / SECOND, plan.interval().seconds() * 5 / 3)
              + " from one breath to the next");
    }
    return reasons;
  }

  /** Beside the end of the range that it lies beyond, where the rule is that range. */
  private static String mean(BreathPlan plan, double seconds) {
    if (!CueFader.hasPrintedRange(plan)) {
      return Words.intervalSeconds(seconds, plan.interval().seconds());
    }
    long end = seconds * SECOND < plan.lowNanos() ? plan.lowNanos() : plan.highNanos();
    return Words.secondsBeside(seconds, (double) end / SECOND);
  }

  private static boolean tooLong(BreathPlan plan, long nanos) {
    return 3 * nanos > 5 * plan.interval().nanosAt(1);
  }

  static boolean heldIfOneWasTwo(BreathPlan plan, long[] intervals, long[] otherGaps) {
    long target = plan.interval().nanosAt(1);
    for (int i = 0; i < intervals.length; i++) {
      if (intervals[i] < DOUBLE_LOW * target || intervals[i] > DOUBLE_HIGH * target) {
        continue;
      }
      List<Long> split = Arrays.stream(intervals).boxed().collect(Collectors.toList());
      split.set(i, intervals[i] / 2);
      split.add(intervals[i] - intervals[i] / 2);
      long[] halves = split.stream().mapToLong(Long::longValue).toArray();
      if (shortfalls(plan, halves, otherGaps).isEmpty()) {
        return true;
      }
      // A second double interval would fail the split too.
      break;
    }
    return false;
  }

  private static String rule(BreathPlan plan) {
    return "At least 2 minutes; " + demands(plan) + " (This rule is our own choice.)";
  }

  /** What the rule demands of the intervals, in plain words. */
  static String demands(BreathPlan plan) {
    String range =
        Words.decimal((double) plan.lowNanos() / SECOND)
            + " to "
            + Words.seconds((double) plan.highNanos() / SECOND);
    String mean =
        CueFader.hasPrintedRange(plan)
            ? "the mean inside that range"
            : "the mean within 8 % of " + Words.seconds(plan.interval().seconds());
    return "at most 15 % of the intervals outside "
        + range
        + "; "
        + mean
        + "; never over "
        + Words.seconds(plan.interval().seconds() * 5 / 3)
        + " from one breath to the next, checks and suction within their limits not counted.";
  }
}
