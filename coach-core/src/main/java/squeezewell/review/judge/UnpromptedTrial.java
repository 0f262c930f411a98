package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import squeezewell.cue.Prompting;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Practice;
import squeezewell.review.measure.RatePoint;
import squeezewell.review.measure.RollingRate;
import squeezewell.review.measure.Spans;
import squeezewell.session.Breath;

/**
 * Whether the rhythm was held for two minutes without prompts, by a rule that is stated: no score
 * is made up of several figures. It is scored from the first breath to the first one at or after
 * 120 s, checks, suction and pauses not counted, and nowhere else: to let the best two minutes
 * count would let nearly anyone pass in time. The rule is that of {@link RhythmRule}; the verdict
 * on the practice also asks that no fault of the breaths is told beside it, and counts for the days
 * on which a rhythm was held.
 *
 * @param ruled what the rule gives
 * @param intervalCount how many intervals were scored
 */
public record UnpromptedTrial(Verdict ruled, int intervalCount) {
  /** As long as one test is, in nanoseconds. */
  static final long LENGTH_NANOS = 120_000_000_000L;

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
      List<Long> otherGaps,
      List<IntervalPoint> points,
      long nanos,
      long end) {
    static Scored of(Practice practice) {
      Spans held = Spans.whole(practice.holds());
      Spans excused = Spans.excused(practice.holds());
      List<Breath> breaths = practice.breaths();
      List<Long> intervals = new ArrayList<>();
      List<Long> otherGaps = new ArrayList<>();
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
          otherGaps.add(to - from - excused.overlap(from, to));
        }
      }
      return new Scored(intervals, otherGaps, points, scored, end);
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

  /** The test of a practice, or of its first part, in which nothing was prompted. */
  public static UnpromptedTrial of(Practice practice) {
    BreathPlan plan = practice.breathPlan().get();
    Scored scored = Scored.of(practice);
    List<Sentence> rule =
        List.of(Sentence.done("rule.unprompted", RhythmRule.demands(plan), Severity.FAULT));
    int count = scored.intervals().size();
    if (!scored.whole()) {
      Sentence far =
          Sentence.done("reason.first-to-last", RhythmRule.shortOf2Minutes(scored.nanos()));
      return new UnpromptedTrial(new Verdict(Verdict.Outcome.TOO_SHORT, rule, List.of(far)), count);
    }
    long[] lengths = scored.intervals().stream().mapToLong(Long::longValue).toArray();
    long[] others = scored.otherGaps().stream().mapToLong(Long::longValue).toArray();
    List<RatePoint> rates = RollingRate.of(scored.points(), practice.startNanos(), scored.end());
    int fast = RhythmRule.fastSeconds(plan, rates);
    return new UnpromptedTrial(RhythmRule.verdict(plan, rule, lengths, others, fast), count);
  }
}
