package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
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
 * @param outcome what the rule gives
 * @param rule the rule, in plain words
 * @param reasons what fell short of it; empty if nothing did
 * @param intervalCount how many intervals were scored
 */
public record HeldTest(Outcome outcome, String rule, List<String> reasons, int intervalCount) {
  /** As long as one test is, in nanoseconds. */
  static final long LENGTH_NANOS = 120_000_000_000L;

  public HeldTest {
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(rule, "rule");
    reasons = List.copyOf(reasons);
  }

  /** What the rule gives. */
  public enum Outcome {
    PASS("Held without prompts", Verdict.Outcome.HELD),
    /** It would pass but for one interval that may be a breath which was not recorded. */
    REPEAT("Undecided, try again", Verdict.Outcome.UNDECIDED),
    /** Under two minutes without prompts. */
    INCOMPLETE("Too short to judge", Verdict.Outcome.TOO_SHORT),
    FAIL("Not held without prompts", Verdict.Outcome.NOT_HELD);

    private final String label;
    private final Verdict.Outcome verdict;

    Outcome(String label, Verdict.Outcome verdict) {
      this.label = label;
      this.verdict = verdict;
    }

    /** The same as the verdict on a practice; empty for one that was not judged. */
    public static Optional<Outcome> of(Verdict verdict) {
      for (Outcome outcome : values()) {
        if (outcome.verdict == verdict.outcome()) {
          return Optional.of(outcome);
        }
      }
      return Optional.empty();
    }

    /** The words shown to people. */
    public String label() {
      return label;
    }
  }

  /** The same test, not passed for these reasons. */
  public HeldTest failed(List<String> why) {
    return new HeldTest(Outcome.FAIL, rule, why, intervalCount);
  }

  /** The same as the verdict on a practice. */
  public Verdict verdict() {
    return new Verdict(outcome.verdict, rule, reasons);
  }

  /** What of a practice is scored, and whether that is a whole test. */
  private record Scored(
      List<Long> intervals,
      List<Long> otherGaps,
      List<IntervalPoint> points,
      long nanos,
      long end) {
    public static Scored of(Practice practice) {
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

  /**
   * The test of a practice, or of its first part, in which nothing was prompted.
   *
   * @param plan what was asked for
   */
  public static HeldTest of(Practice practice, BreathPlan plan) {
    Scored scored = Scored.of(practice);
    String rule =
        "Without prompts, from the first breath to the first one at or after 2:00: "
            + RhythmRule.demands(plan)
            + RhythmRule.NOTHING_TOLD
            + ". (This rule is our own choice.) To pass counts for today; a rhythm is yours when"
            + " you pass again on another day.";
    int count = scored.intervals().size();
    if (!scored.whole()) {
      String far =
          RhythmRule.shortOf2Minutes(scored.nanos()) + " from the first breath to the last";
      return new HeldTest(Outcome.INCOMPLETE, rule, List.of(far + "; the rule needs 2:00"), count);
    }
    long[] lengths = scored.intervals().stream().mapToLong(Long::longValue).toArray();
    long[] others = scored.otherGaps().stream().mapToLong(Long::longValue).toArray();
    List<String> reasons = RhythmRule.shortfalls(plan, lengths, others);
    List<RatePoint> rates = RollingRate.of(scored.points(), practice.startNanos(), scored.end());
    boolean fast = RhythmRule.fastTooLong(plan, rates);
    if (fast) {
      reasons.add(RhythmRule.fastFor(plan, RhythmRule.fastSeconds(plan, rates)));
    }
    Outcome outcome = Outcome.PASS;
    if (!reasons.isEmpty()) {
      boolean repeat = !fast && RhythmRule.heldIfOneWasTwo(plan, lengths, others);
      outcome = repeat ? Outcome.REPEAT : Outcome.FAIL;
    }
    return new HeldTest(outcome, rule, reasons, count);
  }
}
