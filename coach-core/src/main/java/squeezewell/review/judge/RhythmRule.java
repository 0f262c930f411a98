package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import squeezewell.protocol.BreathPlan;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Gaps;
import squeezewell.review.measure.IntervalPoint;

/**
 * The rule by which a rhythm counts as held. Its numbers are our own choice: at least 120 s
 * practised; at most 15 % of the intervals out of range; the mean within 8 % of the interval asked
 * for, or inside the range where the guideline prints a range; nothing longer than 5/3 of the
 * interval; and less than a minute in all spent breathing too fast (see {@link FastTime}). They
 * were chosen so that a steady trainee (mean within 0.3 s, SD up to 0.4 s at a 6 s interval) nearly
 * always passes and one who is 0.6 s off nearly never does. In a long practice 15 % of the
 * intervals are enough for minutes of breathing too fast at one go, so the rate is asked about too:
 * at practical stations a full minute above the upper rate is what is commonly called
 * hyperventilating. A share of the whole also hides a part, or the time without prompts, that was
 * off by itself: what stands under the findings as a fault of the breaths, or of the compressions,
 * is a shortfall too.
 */
public final class RhythmRule {
  private static final long SECOND = 1_000_000_000L;

  /** To the nanosecond, as in a test without prompts. */
  private static final long LEAST_PRACTISED_NANOS = 120 * SECOND;

  private static final int MOST_OUTSIDE_PERCENT = 15;

  /** An interval this many times the one asked for may be two, with a breath not recorded. */
  private static final double DOUBLE_LOW = 1.7;

  private static final double DOUBLE_HIGH = 2.3;

  private RhythmRule() {}

  /**
   * What the figures give. Parts that ask for the same breaths are judged together, others each by
   * itself; it is held if none that can be judged was not.
   */
  static Verdict judge(List<Analysis> parts) {
    Map<List<Object>, List<Analysis>> rhythms = new LinkedHashMap<>();
    for (Analysis part : parts) {
      Optional<BreathPlan> plan = part.practice().breathPlan();
      if (plan.isPresent() && !part.practice().place().slip()) {
        List<Object> key =
            List.of(plan.get().interval(), plan.get().range(), plan.get().rangeIsPublished());
        rhythms.computeIfAbsent(key, k -> new ArrayList<>()).add(part);
      }
    }
    if (rhythms.isEmpty()) {
      return Verdict.notJudged("rule.not-steady");
    }
    if (rhythms.size() == 1) {
      return judgeAlike(rhythms.values().iterator().next());
    }
    List<Verdict.Outcome> outcomes = new ArrayList<>();
    List<Sentence> rules = new ArrayList<>();
    List<Sentence> reasons = new ArrayList<>();
    for (List<Analysis> alike : rhythms.values()) {
      Verdict verdict = judgeAlike(alike);
      Quantity seconds =
          Quantity.tenths(alike.get(0).practice().breathPlan().get().interval().seconds());
      outcomes.add(verdict.outcome());
      verdict.rule().forEach(rule -> rules.add(Sentence.done("rule.each", seconds, rule)));
      verdict.reasons().forEach(reason -> reasons.add(Sentence.done("rule.each", seconds, reason)));
    }
    for (Verdict.Outcome outcome :
        List.of(Verdict.Outcome.NOT_HELD, Verdict.Outcome.UNDECIDED, Verdict.Outcome.HELD)) {
      if (outcomes.contains(outcome)) {
        return new Verdict(outcome, rules, reasons);
      }
    }
    return new Verdict(Verdict.Outcome.TOO_SHORT, rules, reasons);
  }

  /** Whether the breaths of one part are as the rule demands, however long it lasted. */
  static boolean kept(Analysis facts) {
    BreathPlan plan = facts.practice().breathPlan().get();
    return shortfalls(plan, lengths(List.of(facts)), waits(List.of(facts))).isEmpty();
  }

  private static long[] lengths(List<Analysis> parts) {
    return parts.stream()
        .flatMap(f -> f.valid().stream())
        .mapToLong(IntervalPoint::lengthNanos)
        .toArray();
  }

  /**
   * A time without a breath that is no interval.
   *
   * @param where which, in words
   */
  record Wait(long nanos, Sentence where) {
    static Wait between(long nanos) {
      return new Wait(nanos, Sentence.done("wait.between"));
    }
  }

  private static List<Wait> waits(List<Analysis> parts) {
    List<Wait> waits = new ArrayList<>();
    for (Analysis part : parts) {
      List<Gaps.Gap> all = Gaps.of(part.practice());
      for (Gaps.Gap gap : all) {
        if (!gap.interval()) {
          Sentence end =
              GapFindings.end(part.practice(), all, gap).orElse(Sentence.done("wait.between"));
          waits.add(new Wait(gap.netOnsetNanos(), end));
        }
      }
    }
    return waits;
  }

  private static Verdict judgeAlike(List<Analysis> parts) {
    BreathPlan plan = parts.get(0).practice().breathPlan().get();
    long practised = parts.stream().mapToLong(f -> f.practice().pacedNanos()).sum();
    if (practised < LEAST_PRACTISED_NANOS) {
      return new Verdict(
          Verdict.Outcome.TOO_SHORT,
          rule(plan),
          List.of(Sentence.done("reason.practised", Quantity.clock(practised))));
    }
    long[] intervals = lengths(parts);
    List<Wait> waits = waits(parts);
    double fast = parts.stream().mapToDouble(f -> FastTime.of(plan, f.valid()).seconds()).sum();
    return verdict(plan, rule(plan), intervals, waits, new FastTime(fast, 0));
  }

  /**
   * What the intervals give.
   *
   * @param fast for how long breaths came too fast
   */
  static Verdict verdict(
      BreathPlan plan, List<Sentence> rule, long[] intervals, List<Wait> waits, FastTime fast) {
    List<Sentence> reasons = shortfalls(plan, intervals, waits);
    boolean fastTooLong = fast.tooLong();
    if (fastTooLong) {
      reasons.add(
          Sentence.done(
              "reason.fast",
              Quantity.tenths(plan.highestPerMinute()),
              Quantity.clockSeconds((double) Math.round(fast.seconds()))));
    }
    Verdict.Outcome outcome = Verdict.Outcome.HELD;
    if (!reasons.isEmpty()) {
      boolean undecided = !fastTooLong && heldIfOneWasTwo(plan, intervals, waits);
      outcome = undecided ? Verdict.Outcome.UNDECIDED : Verdict.Outcome.NOT_HELD;
    }
    return new Verdict(outcome, rule, reasons);
  }

  /**
   * The verdict: nothing counts as held while a fault of the breaths or the compressions is told.
   *
   * @param ruled what the figures give
   * @param found what is told, each with its place where the rhythm changed
   */
  static Verdict besides(Verdict ruled, List<Finding> found) {
    boolean undecided = ruled.outcome() == Verdict.Outcome.UNDECIDED;
    if (ruled.outcome() != Verdict.Outcome.HELD && !undecided) {
      return ruled;
    }
    List<Sentence> reasons = new ArrayList<>(ruled.reasons());
    for (Finding finding : found) {
      FindingCode.Theme theme = finding.code().theme();
      if (finding.is(Severity.FAULT)
          && (theme == FindingCode.Theme.BREATHS || theme == FindingCode.Theme.COMPRESSIONS)
          && !(undecided && finding.code().mayBeALostBreath())) {
        reasons.add(Sentence.done("reason.told", finding));
      }
    }
    return reasons.size() == ruled.reasons().size()
        ? ruled
        : new Verdict(Verdict.Outcome.NOT_HELD, ruled.rule(), reasons);
  }

  /** At most so many of n intervals may be out of range. */
  public static int mostOutside(int n) {
    return n * MOST_OUTSIDE_PERCENT / 100;
  }

  static List<Sentence> shortfalls(BreathPlan plan, long[] intervals, List<Wait> waits) {
    int n = intervals.length;
    if (n == 0) {
      return new ArrayList<>(List.of(Sentence.done("reason.no-interval")));
    }
    List<Sentence> reasons = new ArrayList<>();
    int outside = (int) Arrays.stream(intervals).filter(i -> plan.judge(i).off()).count();
    if (outside > mostOutside(n)) {
      reasons.add(Sentence.done("reason.outside", outside, n));
    }
    double mean = Arrays.stream(intervals).average().getAsDouble() / SECOND;
    if (!plan.keepsMean(mean)) {
      reasons.add(Sentence.done("reason.mean", mean(plan, mean)));
    }
    Wait longest =
        Stream.concat(
                waits.stream(), Stream.of(Wait.between(Arrays.stream(intervals).max().getAsLong())))
            .max(Comparator.comparingLong(Wait::nanos))
            .get();
    if (tooLong(plan, longest.nanos())) {
      reasons.add(
          Sentence.done(
              "reason.wait", Quantity.tenths(plan.interval().seconds() * 5 / 3), longest.where()));
    }
    return reasons;
  }

  /** Beside the end of the range that it lies beyond, where the rule is that range. */
  private static Quantity mean(BreathPlan plan, double seconds) {
    if (!plan.rangeIsPublished()) {
      return Quantity.interval(seconds, plan.interval().seconds());
    }
    return Quantity.tenths(seconds, plan.limitSeconds(plan.judgeSeconds(seconds)));
  }

  /** Whether a wait is longer than the rule allows, from the start of one breath to the next. */
  static boolean tooLong(BreathPlan plan, long nanos) {
    return 3 * nanos > 5 * plan.interval().nanosAt(1);
  }

  static boolean heldIfOneWasTwo(BreathPlan plan, long[] intervals, List<Wait> waits) {
    long target = plan.interval().nanosAt(1);
    for (int i = 0; i < intervals.length; i++) {
      if (intervals[i] < DOUBLE_LOW * target || intervals[i] > DOUBLE_HIGH * target) {
        continue;
      }
      List<Long> split = Arrays.stream(intervals).boxed().collect(Collectors.toList());
      split.set(i, intervals[i] / 2);
      split.add(intervals[i] - intervals[i] / 2);
      long[] halves = split.stream().mapToLong(Long::longValue).toArray();
      if (shortfalls(plan, halves, waits).isEmpty()) {
        return true;
      }
      // A second double interval would fail the split too.
      break;
    }
    return false;
  }

  private static List<Sentence> rule(BreathPlan plan) {
    return List.of(Sentence.done("rule", demands(plan), Severity.FAULT));
  }

  /** What the rule demands of the intervals. */
  static Sentence demands(BreathPlan plan) {
    return Sentence.done(
        plan.rangeIsPublished() ? "rule.demands.range" : "rule.demands",
        Quantity.tenths(plan.asked().low()),
        Quantity.tenths(plan.asked().high()),
        Quantity.tenths(plan.interval().seconds()),
        Quantity.tenths(plan.interval().seconds() * 5 / 3),
        Quantity.tenths(plan.highestPerMinute()));
  }
}
