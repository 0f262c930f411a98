package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import squeezewell.protocol.BreathPlan;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Gaps;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.RatePoint;
import squeezewell.review.measure.RollingRate;
import squeezewell.review.say.Words;

/**
 * The rule by which a rhythm counts as held. Its numbers are our own choice: at least 120 s
 * practised; at most 15 % of the intervals out of range; the mean within 8 % of the interval asked
 * for, or inside the range where the guideline prints a range; nothing longer than 5/3 of the
 * interval; and less than a minute in all in which the rate over the last minute was more than 8 %
 * above the range. They were chosen so that a steady trainee (mean within 0.3 s, SD up to 0.4 s at
 * a 6 s interval) nearly always passes and one who is 0.6 s off nearly never does. In a long
 * practice 15 % of the intervals are enough for minutes of breathing too fast at one go, so the
 * rate is asked about too: at practical stations a full minute above the upper rate is what is
 * commonly called hyperventilating. A share of the whole also hides a part, or the time without
 * prompts, that was off by itself: what stands under the findings as a fault of the breaths is a
 * shortfall too.
 */
public final class RhythmRule {
  private static final long SECOND = 1_000_000_000L;

  /** To the nanosecond, as in a test without prompts. */
  private static final long LEAST_PRACTISED_NANOS = 120 * SECOND;

  private static final int MOST_OUTSIDE_PERCENT = 15;

  /** A rate this far above the range is told. */
  private static final double FAST_MARGIN = 1.08;

  /** In all, from which on it is too long. */
  private static final int FAST_SECONDS = 60;

  /**
   * Faults of the breaths over time; those of single breaths, checks and compressions are others.
   */
  private static final Set<String> OF_BREATHS =
      Set.of(
          "no-breaths",
          "too-fast",
          "too-slow",
          "sped-up",
          "slowed-down",
          "rhythm-uneven",
          "long-gap",
          "late-breath",
          "a-little-fast",
          "a-little-slow",
          "own-tempo",
          "missed-prompts",
          "breaths-missing",
          "unprompted-fast",
          "unprompted-slow",
          "unprompted-uneven");

  /** What one breath that was not recorded can look like. */
  private static final Set<String> OF_A_LOST_BREATH = Set.of("long-gap", "missed-prompts");

  /** An interval this many times the one asked for may be two, with a breath not recorded. */
  private static final double DOUBLE_LOW = 1.7;

  private static final double DOUBLE_HIGH = 2.3;

  /** What {@link #besides} asks for, in plain words; the label is that of a fault. */
  static final String NOTHING_TOLD =
      "; and nothing under "
          + Finding.Severity.FAULT.label()
          + " about the breaths over time (too fast, too slow, speeding up, slowing down, uneven, a"
          + " long wait, prompts or breaths missed, a tempo of your own), in the whole, in a part"
          + " or without prompts";

  private RhythmRule() {}

  /**
   * Judges a session. Parts that ask for the same breaths are judged together, others each by
   * itself; it is held if none that can be judged was not.
   */
  public static Verdict judge(List<Facts> parts) {
    Map<List<Object>, List<Facts>> rhythms = new LinkedHashMap<>();
    for (Facts part : parts) {
      Optional<BreathPlan> plan = part.practice().breathPlan();
      if (plan.isPresent() && !part.practice().place().slip()) {
        List<Object> key =
            List.of(plan.get().interval(), plan.get().range(), plan.get().rangeIsPublished());
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

  /** A time of less than 2:00, which the clock in whole seconds may show as 2:00. */
  static String shortOf2Minutes(long nanos) {
    String shown = Words.clock(nanos);
    return shown.equals("2:00") ? "just under " + shown : shown;
  }

  /** Whether the breaths of one part are as the rule demands, however long it lasted. */
  static boolean kept(Facts facts) {
    BreathPlan plan = facts.practice().breathPlan().get();
    return shortfalls(plan, lengths(List.of(facts)), otherGaps(List.of(facts))).isEmpty();
  }

  private static long[] lengths(List<Facts> parts) {
    return parts.stream()
        .flatMap(f -> f.valid().stream())
        .mapToLong(IntervalPoint::lengthNanos)
        .toArray();
  }

  private static long[] otherGaps(List<Facts> parts) {
    return parts.stream()
        .flatMap(f -> Gaps.of(f.practice()).stream())
        .filter(g -> !g.interval())
        .mapToLong(Gaps.Gap::netOnsetNanos)
        .toArray();
  }

  private static Verdict judgeAlike(List<Facts> parts) {
    BreathPlan plan = parts.get(0).practice().breathPlan().get();
    long practised = parts.stream().mapToLong(f -> f.practice().pacedNanos()).sum();
    if (practised < LEAST_PRACTISED_NANOS) {
      return new Verdict(
          Verdict.Outcome.TOO_SHORT,
          rule(plan),
          List.of("practised for " + shortOf2Minutes(practised) + "; the rule needs 2:00"));
    }
    long[] intervals = lengths(parts);
    long[] otherGaps = otherGaps(parts);
    List<String> reasons = shortfalls(plan, intervals, otherGaps);
    int fast = parts.stream().mapToInt(f -> fastSeconds(plan, f.rollingRate())).sum();
    boolean fastTooLong = fast >= FAST_SECONDS;
    if (fastTooLong) {
      reasons.add(fastFor(plan, fast));
    }
    Verdict.Outcome outcome = Verdict.Outcome.HELD;
    if (!reasons.isEmpty()) {
      boolean undecided = !fastTooLong && heldIfOneWasTwo(plan, intervals, otherGaps);
      outcome = undecided ? Verdict.Outcome.UNDECIDED : Verdict.Outcome.NOT_HELD;
    }
    return new Verdict(outcome, rule(plan), reasons);
  }

  /**
   * The outcome beside what is told: nothing counts as held while a fault of the breaths is told.
   *
   * @param found what is told, each with its place where the rhythm changed
   */
  public static Verdict besides(Verdict verdict, List<Ranked> found) {
    boolean undecided = verdict.outcome() == Verdict.Outcome.UNDECIDED;
    if (verdict.outcome() != Verdict.Outcome.HELD && !undecided) {
      return verdict;
    }
    List<String> reasons = new ArrayList<>(verdict.reasons());
    for (Ranked ranked : found) {
      String code = ranked.finding().code();
      if (ranked.is(Finding.Severity.FAULT)
          && OF_BREATHS.contains(code)
          && !(undecided && OF_A_LOST_BREATH.contains(code))) {
        String title = ranked.finding().title();
        reasons.add(title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1));
      }
    }
    return reasons.size() == verdict.reasons().size()
        ? verdict
        : new Verdict(Verdict.Outcome.NOT_HELD, verdict.rule(), reasons);
  }

  /** Whether a finding other than a good one tells of the breaths over time. */
  static boolean tellsOfBreaths(Ranked ranked) {
    return OF_BREATHS.contains(ranked.finding().code()) && !ranked.is(Finding.Severity.GOOD);
  }

  /** For how long the rate over the last minute was clearly above the range, in seconds. */
  static int fastSeconds(BreathPlan plan, List<RatePoint> rollingRate) {
    return RollingRate.secondsAbove(rollingRate, fastRate(plan));
  }

  /** Whether that is long enough to be told. */
  static boolean fastTooLong(BreathPlan plan, List<RatePoint> rollingRate) {
    return fastSeconds(plan, rollingRate) >= FAST_SECONDS;
  }

  static String fastFor(BreathPlan plan, int seconds) {
    return "over "
        + Words.decimal(fastRate(plan))
        + " breaths a minute for "
        + Words.clock((double) seconds);
  }

  private static double fastRate(BreathPlan plan) {
    return FAST_MARGIN * plan.highestPerMinute();
  }

  /** At most so many of n intervals may be out of range. */
  public static int mostOutside(int n) {
    return n * MOST_OUTSIDE_PERCENT / 100;
  }

  static List<String> shortfalls(BreathPlan plan, long[] intervals, long[] otherGaps) {
    int n = intervals.length;
    if (n == 0) {
      return new ArrayList<>(List.of("no interval between two breaths"));
    }
    List<String> reasons = new ArrayList<>();
    int outside = (int) Arrays.stream(intervals).filter(i -> plan.judge(i).off()).count();
    if (outside > mostOutside(n)) {
      reasons.add(outside + " of " + n + " intervals out of range");
    }
    double mean = Arrays.stream(intervals).average().getAsDouble() / SECOND;
    if (!plan.keepsMean(mean)) {
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
    if (!plan.rangeIsPublished()) {
      return Words.intervalSeconds(seconds, plan.interval().seconds());
    }
    return Words.secondsBeside(seconds, plan.limitSeconds(plan.judgeSeconds(seconds)));
  }

  /** Whether a wait is longer than the rule allows, from the start of one breath to the next. */
  static boolean tooLong(BreathPlan plan, long nanos) {
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
    return "At least 2 minutes; "
        + demands(plan)
        + NOTHING_TOLD
        + ". (This rule is our own choice.)";
  }

  /** What the rule demands of the intervals, in plain words. */
  static String demands(BreathPlan plan) {
    String range = Words.decimal(plan.range().low()) + " to " + Words.seconds(plan.range().high());
    String mean =
        plan.rangeIsPublished()
            ? "the mean inside that range"
            : "the mean within 8 % of " + Words.seconds(plan.interval().seconds());
    return "at most 15 % of the intervals outside "
        + range
        + "; "
        + mean
        + "; never over "
        + Words.seconds(plan.interval().seconds() * 5 / 3)
        + " from one breath to the next, checks and suction within their limits not counted; less"
        + " than a minute in all at over "
        + Words.decimal(fastRate(plan))
        + " breaths a minute";
  }
}
