package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import squeezewell.cue.Prompting;
import squeezewell.cue.Segment;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Measure;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.Practice;
import squeezewell.review.measure.Spans;
import squeezewell.session.Breath;

/**
 * Whether the rhythm was held for two minutes without prompts, by a rule that is stated: no score
 * is made up of several figures. It is scored from the first breath to the first one at or after
 * 120 s, checks, suction and pauses not counted, and nowhere else: to let the best two minutes
 * count would let nearly anyone pass in time. The rule is that of {@link RhythmRule}, and asks for
 * at least 15 intervals, no drift, no swing from breath to breath and squeezes of the right length;
 * the verdict on the practice also asks that no fault of the breaths is told beside it, and counts
 * for the days on which a rhythm was held.
 *
 * @param ruled what the rule gives
 * @param intervalCount how many intervals were scored
 */
public record UnpromptedTrial(Verdict ruled, int intervalCount) {
  /** As long as one test is, in nanoseconds. */
  static final long LENGTH_NANOS = 120_000_000_000L;

  private static final double SECOND = 1e9;

  /** With fewer the chance that a poor rhythm passes is too large (our own choice). */
  private static final int FEWEST_INTERVALS = 15;

  /** By this share of the interval the last third may differ from the first (our own choice). */
  private static final double MOST_DRIFT = 0.12;

  /** By this share of it an interval may differ from the one before, on average (our choice). */
  private static final double MOST_SWING = 0.2;

  /** Squeezes in range, where their ends are known (our own choice). */
  private static final double LEAST_GOOD_SQUEEZES = 2.0 / 3;

  /** Whether a part is a test: the first one, with breaths at a steady interval and no prompts. */
  public static boolean isOf(Analysis part) {
    Practice practice = part.practice();
    return practice.plan().prompting() == Prompting.NONE
        && practice.place().first()
        && practice.breathPlan().isPresent()
        && part.metrics().unprompted().isPresent();
  }

  /** What of a practice is scored, and whether that is a whole test. */
  private record Scored(
      List<Long> intervals,
      List<RhythmRule.Wait> waits,
      List<IntervalPoint> points,
      long nanos,
      long end) {
    static Scored of(Practice practice) {
      Spans held = Spans.whole(practice.holds());
      Spans excused = Spans.excused(practice.holds());
      List<Breath> breaths = practice.breaths();
      List<Long> intervals = new ArrayList<>();
      List<RhythmRule.Wait> waits = new ArrayList<>();
      List<IntervalPoint> points = new ArrayList<>();
      long scored = 0;
      long end = practice.endNanos();
      for (int k = 1; k < breaths.size() && scored < LENGTH_NANOS; k++) {
        long from = breaths.get(k - 1).startNanos();
        long to = breaths.get(k).startNanos();
        long hold = held.overlap(from, to);
        points.add(new IntervalPoint(to, to - from, Judgement.UNJUDGED, hold == 0));
        end = to;
        scored += to - from - hold;
        if (hold == 0) {
          intervals.add(to - from);
        } else {
          waits.add(RhythmRule.Wait.between(to - from - excused.overlap(from, to)));
        }
      }
      return new Scored(intervals, waits, points, scored, end);
    }

    boolean whole() {
      return nanos >= LENGTH_NANOS;
    }
  }

  /**
   * The breath with which a test without prompts ends, nanoseconds since the session began; empty
   * if it came to no end.
   */
  public static OptionalLong end(Practice practice) {
    Scored scored = Scored.of(practice);
    return scored.whole() ? OptionalLong.of(scored.end()) : OptionalLong.empty();
  }

  /** Whether the program stood still in the test, which then decides nothing. */
  static boolean isInterrupted(Practice practice) {
    long end = Scored.of(practice).end();
    return practice.holds(Segment.Kind.STALLED).stream().anyMatch(h -> h.startNanos() < end);
  }

  /** The test of a practice, or of its first part, in which nothing was prompted. */
  public static UnpromptedTrial of(Practice practice) {
    BreathPlan plan = practice.breathPlan().get();
    Scored scored = Scored.of(practice);
    List<Sentence> rule =
        List.of(Sentence.done("rule.unprompted", RhythmRule.demands(plan), Severity.FAULT));
    int count = scored.intervals().size();
    if (isInterrupted(practice)) {
      Sentence stalled = Sentence.done("reason.stalled");
      return new UnpromptedTrial(
          new Verdict(Verdict.Outcome.UNDECIDED, rule, List.of(stalled)), count);
    }
    if (!scored.whole()) {
      Sentence far = Sentence.done("reason.first-to-last", Quantity.clock(scored.nanos()));
      return new UnpromptedTrial(new Verdict(Verdict.Outcome.TOO_SHORT, rule, List.of(far)), count);
    }
    long[] lengths = scored.intervals().stream().mapToLong(Long::longValue).toArray();
    FastTime fast = FastTime.of(plan, scored.points());
    Verdict verdict = RhythmRule.verdict(plan, rule, lengths, scored.waits(), fast);
    List<Sentence> reasons = new ArrayList<>(verdict.reasons());
    if (verdict.outcome() != Verdict.Outcome.UNDECIDED) {
      addSteadiness(plan, scored.intervals(), reasons);
    }
    addSqueezes(practice, scored.end(), reasons);
    if (reasons.size() > verdict.reasons().size()) {
      return new UnpromptedTrial(new Verdict(Verdict.Outcome.NOT_HELD, rule, reasons), count);
    }
    if (verdict.outcome() == Verdict.Outcome.HELD && count < FEWEST_INTERVALS) {
      Sentence few = Sentence.done("reason.few-intervals", count, FEWEST_INTERVALS);
      return new UnpromptedTrial(new Verdict(Verdict.Outcome.TOO_SHORT, rule, List.of(few)), count);
    }
    return new UnpromptedTrial(verdict, count);
  }

  /** A rhythm may be in range all along and yet drift, or swing from breath to breath. */
  private static void addSteadiness(BreathPlan plan, List<Long> intervals, List<Sentence> reasons) {
    int n = intervals.size();
    if (n < 6) {
      return;
    }
    double asked = plan.interval().seconds();
    double first = mean(intervals.subList(0, n / 3));
    double last = mean(intervals.subList(n - n / 3, n));
    if (Math.abs(last - first) > MOST_DRIFT * asked) {
      reasons.add(
          Sentence.done(
              "reason.drift", Quantity.interval(first, asked), Quantity.interval(last, asked)));
    }
    double swing = 0;
    for (int i = 1; i < n; i++) {
      swing += Math.abs(intervals.get(i) - intervals.get(i - 1)) / SECOND;
    }
    if (swing / (n - 1) > MOST_SWING * asked) {
      reasons.add(Sentence.done("reason.swing", Quantity.interval(swing / (n - 1), asked)));
    }
  }

  private static double mean(List<Long> nanos) {
    return nanos.stream().mapToLong(Long::longValue).average().orElse(0) / SECOND;
  }

  private static void addSqueezes(Practice practice, long end, List<Sentence> reasons) {
    Practice scored = end < practice.endNanos() ? practice.upTo(end) : practice;
    Metrics.Inspiration squeezes = Measure.squeezesOf(scored);
    if (squeezes.goodFraction().orElse(1) < LEAST_GOOD_SQUEEZES) {
      reasons.add(
          Sentence.done(
              "reason.squeezes",
              squeezes.count() - squeezes.goodCount(),
              squeezes.count(),
              Quantity.tenths(squeezes.shortestGoodSeconds()),
              Quantity.tenths(squeezes.longestGoodSeconds())));
    }
  }
}
