package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import squeezewell.cue.CheckKind;
import squeezewell.cue.Segment;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Drift;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.Statistics;
import squeezewell.review.measure.Unprompted;

/** Findings about the intervals between breaths. None for a rhythm of compressions and pauses. */
final class RhythmFindings {
  /** A tempo error below this is not told: people can't hear it (our own choice). */
  private static final double TEMPO_MARGIN = 0.03;

  /** Out of range so often on both sides that the rhythm is uneven all along (our own choice). */
  private static final double ALL_ALONG = 1.0 / 3;

  private static final double EITHER_SIDE = 0.1;
  private static final double OFTEN_SLOW = 0.2;

  /** A burst of so many seconds is no chance among uneven breaths (our own choice). */
  private static final double LONG_AMONG_UNEVEN = 30;

  private static final double STANDS_OUT = 1.5;

  /** So many pairs, and this share of the intervals inside them, are double breaths all along. */
  private static final int FEWEST_STACKED = 3;

  private static final double STACKED = 0.25;

  /** Fewer are told first too where this share of what is out of range comes of them. */
  private static final double DUE = 0.75;

  /** Three breaths in one go are stacked too; more are a burst (our own choice). */
  private static final int MOST_STACKED_IN_A_ROW = 2;

  /**
   * A spread of this share of the way from the middle of the range to its end is uneven (our own
   * choice).
   */
  private static final double UNEVEN = 0.8;

  /** Time above the range is told in seconds from here on. */
  private static final int FAST_SECONDS = 30;

  /** Fast intervals this soon after a check are put down to it. */
  private static final long AFTER_CHECK_NANOS = 60_000_000_000L;

  private final Analysis facts;
  private final BreathPlan plan;
  private final Metrics.Interval interval;
  private final double[] lengths;
  private final double median;
  private final int slow;
  private final FastTime fastTime;

  private RhythmFindings(Analysis facts, BreathPlan plan) {
    this.facts = facts;
    this.plan = plan;
    interval = facts.metrics().interval();
    lengths = facts.valid().stream().mapToDouble(IntervalPoint::seconds).toArray();
    median = interval.medianSeconds().getAsDouble();
    fastTime = FastTime.of(plan, facts.valid());
    double leftOut = GapFindings.LEFT_OUT * plan.interval().seconds();
    slow =
        (int)
            Arrays.stream(lengths)
                .filter(s -> s < leftOut && plan.judgeSeconds(s) == Judgement.SLOW)
                .count();
  }

  static List<Finding> of(Analysis facts) {
    List<Finding> found = new ArrayList<>();
    if (facts.practice().breathPlan().isPresent() && facts.metrics().interval().count() >= 3) {
      new RhythmFindings(facts, facts.practice().breathPlan().get()).addTo(found);
    }
    return found;
  }

  private void addTo(List<Finding> found) {
    boolean[] pairs = stacked();
    int stacked = (int) IntStream.range(0, pairs.length).filter(i -> pairs[i]).count();
    boolean often =
        (stacked >= FEWEST_STACKED && stacked >= STACKED * interval.count())
            || (stacked > 1 && isDueTo(pairs));
    if (stacked > 1) {
      found.add(doubled(stacked, often));
    }
    if (often) {
      return;
    }
    boolean fast = isTooFast();
    boolean tooSlow = isClearly(Judgement.SLOW);
    boolean slowing = isSlowing();
    boolean speeding = isSpeeding();
    boolean burst = !fast && fastTime.burstSeconds() > 0 && !(speeding && isGradual());
    if (!fast && !tooSlow && isUnevenAllAlong() && !isSteadyDrift(slowing || speeding)) {
      if (burst) {
        found.add(burst(fastTime.burstSeconds() >= LONG_AMONG_UNEVEN));
      }
      found.add(uneven().inPlaceOf(FindingCode.UNEVEN_ALL_ALONG));
      return;
    }
    if (fast) {
      found.add(tooFast());
    } else if (burst) {
      found.add(burst(fastTime.longBurst()));
    }
    if (speeding) {
      boolean harmful = fast || is(Judgement.FAST, last()) || interval.fastCount() > most();
      found.add(drifted(FindingCode.SPED_UP, "drift.why-fast", harmful));
    }
    if (slowing) {
      boolean harmful = is(Judgement.SLOW, last()) || slow > most();
      found.add(drifted(FindingCode.SLOWED_DOWN, "drift.why-slow", harmful));
    }
    if (tooSlow && !(slowing && !is(Judgement.SLOW, first()))) {
      found.add(tooSlow());
    }
    boolean told = fast || burst || tooSlow || slowing || speeding;
    if (!told) {
      addOff(found);
    }
    if (!fast && !fastTime.longBurst() && !tooSlow && !unprompted() && RhythmRule.kept(facts)) {
      found.add(even());
    }
  }

  /** What is off, but in no direction that has a name of its own yet. */
  private void addOff(List<Finding> found) {
    int outside = interval.fastCount() + slow;
    double mean = interval.meanSeconds().getAsDouble();
    if (outside > most()) {
      Judgement side = plan.judgeClearly(mean, TEMPO_MARGIN);
      boolean oneSided = Math.min(interval.fastCount(), slow) < EITHER_SIDE * interval.count();
      if (side == Judgement.SLOW && oneSided) {
        found.add(tooSlow());
      } else if (spread() >= UNEVEN * (plan.range().high() - plan.range().low()) / 2) {
        boolean allAlong = outside >= ALL_ALONG * interval.count();
        found.add(allAlong ? uneven().inPlaceOf(FindingCode.UNEVEN_ALL_ALONG) : uneven());
      } else if (isOften(interval.fastCount(), slow)) {
        found.add(aLittleOff(true, true));
      } else if (isOften(slow, interval.fastCount())) {
        found.add(aLittleOff(false, true));
      } else {
        found.add(uneven());
      }
    } else if (!plan.keepsMean(mean) && !plan.keepsMean(median)) {
      // A mean that only a few long waits make slow is told as those.
      found.add(aLittleOff(mean < plan.interval().seconds(), false));
    }
  }

  /** Often out of range, and on both sides. */
  private boolean isUnevenAllAlong() {
    int n = interval.count();
    int late = interval.slowCount();
    return interval.fastCount() + late >= ALL_ALONG * n
        && Math.min(interval.fastCount(), late) >= EITHER_SIDE * n;
  }

  /** A drift is more than the chance of uneven intervals if it stands out from their spread. */
  private boolean isSteadyDrift(boolean told) {
    return told && Math.abs(last() - first()) >= STANDS_OUT * interval.sdSeconds().orElse(0);
  }

  /** Whether no breath was prompted: then a kept rhythm is told as one without prompts. */
  private boolean unprompted() {
    return interval.count() >= Pace.FEWEST_UNPROMPTED
        && facts.metrics().unprompted().map(Unprompted::intervalCount).orElse(0)
            == interval.count();
  }

  /**
   * The standard deviation of the intervals in seconds, from the squares of the differences between
   * neighbors (von Neumann, 1941), so that a step to another tempo is no spread. Long waits are
   * told as such.
   */
  private double spread() {
    double leftOut = GapFindings.LEFT_OUT * plan.interval().seconds();
    double[] some = Arrays.stream(lengths).filter(s -> s < leftOut).toArray();
    return Math.sqrt(
        IntStream.range(1, some.length)
                .mapToDouble(i -> (some[i] - some[i - 1]) * (some[i] - some[i - 1]))
                .average()
                .orElse(0)
            / 2);
  }

  /** Whether the change goes on all the time, where a burst is a step. */
  private boolean isGradual() {
    double middle = third(1);
    return Math.min(Math.abs(middle - first()), Math.abs(last() - middle)) >= noticeable();
  }

  /**
   * Inside which intervals breaths came in one go: one or two in a row, each under half of the one
   * asked for, with at least twice as long a wait on either side of them (our own choice).
   */
  private boolean[] stacked() {
    double half = plan.interval().seconds() / 2;
    boolean[] pairs = new boolean[lengths.length];
    int end;
    for (int i = 0; i < lengths.length; i = end + 1) {
      double longest = 0;
      for (end = i; end < lengths.length && lengths[end] < half; end++) {
        longest = Math.max(longest, lengths[end]);
      }
      boolean alone =
          (i == 0 || lengths[i - 1] >= 2 * longest)
              && (end == lengths.length || lengths[end] >= 2 * longest);
      Arrays.fill(pairs, i, end, alone && end - i <= MOST_STACKED_IN_A_ROW);
    }
    return pairs;
  }

  /** Whether too much is out of range, and pairs and the waits beside them make most of it. */
  private boolean isDueTo(boolean[] pairs) {
    int off = 0;
    int due = 0;
    for (int i = 0; i < lengths.length; i++) {
      if (plan.judgeSeconds(lengths[i]).off()) {
        off++;
        due += pairs[i] || isWait(pairs, i, i - 1) || isWait(pairs, i, i + 1) ? 1 : 0;
      }
    }
    return off > most() && due >= DUE * off;
  }

  /** Whether an interval is off for the pair beside it: with that pair's it is no short one. */
  private boolean isWait(boolean[] pairs, int at, int pair) {
    return pair >= 0
        && pair < pairs.length
        && pairs[pair]
        && !is(Judgement.FAST, lengths[at] + lengths[pair]);
  }

  private boolean isTooFast() {
    return (isClearly(Judgement.FAST) && !isMadeUpFor()) || fastTime.tooLong() || onlyAfterChecks();
  }

  /** Quick breaths with so many long waits between that as many came as were asked for. */
  private boolean isMadeUpFor() {
    return interval.slowCount() >= OFTEN_SLOW * interval.count()
        && plan.judgeSeconds(interval.meanSeconds().getAsDouble()) != Judgement.FAST;
  }

  /**
   * Clearly means median and mean alike: of two lengths in turns the median is only one of them.
   */
  private boolean isClearly(Judgement side) {
    // Neither one long wait nor a few quick breaths make a tempo.
    double longest = GapFindings.LEFT_OUT * plan.interval().seconds();
    double shortest = plan.interval().seconds() / 2;
    double mean =
        Arrays.stream(lengths)
            .filter(s -> side == Judgement.FAST ? s < longest : s > shortest)
            .average()
            .orElse(median);
    return plan.judgeClearly(median, TEMPO_MARGIN) == side && plan.judgeSeconds(mean) == side;
  }

  private boolean is(Judgement side, double seconds) {
    return plan.judgeSeconds(seconds) == side;
  }

  private boolean isSlowing() {
    return drift().worthTelling()
        && drift().percentPerMinute().getAsDouble() > 0
        && last() - first() >= noticeable();
  }

  private boolean isSpeeding() {
    return drift().worthTelling()
        && drift().percentPerMinute().getAsDouble() < 0
        && first() - last() >= noticeable();
  }

  /** A slope alone is not told: what is printed, first and last third, has to show it. */
  private double noticeable() {
    return TEMPO_MARGIN * plan.interval().seconds();
  }

  private boolean isOften(int these, int others) {
    return these >= 2 && these > most() && these >= 2 * others;
  }

  private int most() {
    return RhythmRule.mostOutside(interval.count());
  }

  private Drift drift() {
    return facts.metrics().drift();
  }

  private double first() {
    return third(0);
  }

  private double last() {
    return third(2);
  }

  private double third(int which) {
    int n = lengths.length;
    double[] part = Arrays.copyOfRange(lengths, which * n / 3, (which + 1) * n / 3);
    return Statistics.median(part).orElse(median);
  }

  private Finding doubled(int pairs, boolean often) {
    return Finding.faultOrAdvice(
        often,
        FindingCode.DOUBLE_BREATHS,
        Sentence.done(
            "double-breaths.done",
            pairs,
            Quantity.tenths(facts.metrics().rate().countPerMinute().orElse(0)),
            Quantity.tenths(60 / plan.interval().seconds())),
        Sentence.why(
            facts.practice().guidance().situation() == Situation.ARREST_ADVANCED_AIRWAY
                ? "double-breaths.why.airway"
                : "double-breaths.why"),
        Sentence.next("double-breaths.next"));
  }

  private Finding tooFast() {
    Finding told =
        Finding.fault(
            FindingCode.TOO_FAST, Pace.off(facts.valid(), Judgement.FAST, plan), inRange());
    int seconds = (int) Math.round(fastTime.seconds());
    if (seconds >= FAST_SECONDS) {
      told = told.and(fastFor(seconds));
    }
    told = told.and(Pace.whyFast(facts), Pace.count(plan));
    if (onlyAfterChecks()) {
      return told.titled("too-fast.title.checks", CheckKind.of(facts.practice().guidance()));
    }
    return isClearly(Judgement.FAST) ? told : told.titled("too-fast.title.while");
  }

  private Finding burst(boolean isLong) {
    return Finding.faultOrAdvice(
        isLong,
        FindingCode.FAST_BURST,
        Pace.off(facts.valid(), Judgement.FAST, plan),
        fastFor((int) Math.round(fastTime.seconds())),
        Pace.whyFast(facts),
        Sentence.next("fast-burst.next"));
  }

  private Sentence fastFor(int seconds) {
    return Sentence.done(
        "too-fast.time", Quantity.tenths(plan.highestPerMinute()), Quantity.clockSeconds(seconds));
  }

  private boolean onlyAfterChecks() {
    int after = 0;
    for (IntervalPoint point : facts.valid()) {
      boolean soon =
          facts.practice().holds(Segment.Kind.PULSE_CHECK).stream()
              .anyMatch(
                  h ->
                      point.atNanos() > h.endNanos()
                          && point.atNanos() <= h.endNanos() + AFTER_CHECK_NANOS);
      after += soon && point.judgement() == Judgement.FAST ? 1 : 0;
    }
    return after >= 2 && after >= 0.8 * interval.fastCount() && !is(Judgement.FAST, median);
  }

  private Finding tooSlow() {
    return Finding.fault(
        FindingCode.TOO_SLOW,
        Pace.off(facts.valid(), Judgement.SLOW, plan),
        inRange(),
        Sentence.why("too-slow.why"),
        Pace.count(plan));
  }

  private Finding drifted(FindingCode code, String why, boolean harmful) {
    double asked = plan.interval().seconds();
    return Finding.faultOrAdvice(
        harmful,
        code,
        Sentence.done(
            "drift.done",
            Quantity.interval(first(), asked),
            Quantity.interval(last(), asked),
            Quantity.tenths(asked)),
        Sentence.why(why));
  }

  private Finding uneven() {
    return Finding.fault(
        FindingCode.RHYTHM_UNEVEN,
        inRange(),
        side(),
        Sentence.why("rhythm-uneven.why"),
        Pace.count(plan));
  }

  /** How many came too soon and too late, without the side on which none did. */
  private Sentence side() {
    String key = "rhythm-uneven.done";
    if (interval.slowCount() == 0) {
      key = "rhythm-uneven.done.soon";
    } else if (interval.fastCount() == 0) {
      key = "rhythm-uneven.done.late";
    }
    return Sentence.done(key, interval.fastCount(), interval.slowCount());
  }

  private Finding aLittleOff(boolean fast, boolean often) {
    FindingCode code = fast ? FindingCode.A_LITTLE_FAST : FindingCode.A_LITTLE_SLOW;
    Finding told =
        Finding.faultOrAdvice(often, code, asked(), inRange(), Sentence.next(code.id() + ".next"));
    return often && 2 * interval.inRangeCount() >= interval.count()
        ? told.titled(fast ? "a-little-fast.title.often" : "a-little-slow.title.often")
        : told;
  }

  private Finding even() {
    return Finding.good(FindingCode.RHYTHM_EVEN, asked(), inRange());
  }

  private Sentence asked() {
    return Sentence.done(
        "mean-interval",
        mean(),
        Quantity.tenths(facts.metrics().rate().overallPerMinute().orElse(0)),
        Quantity.tenths(plan.interval().seconds()));
  }

  /** Out of range it is never printed as the end of the range. */
  private Quantity mean() {
    double mean = interval.meanSeconds().getAsDouble();
    Judgement judgement = plan.judgeSeconds(mean);
    return judgement.off()
        ? Quantity.tenths(mean, plan.limitSeconds(judgement))
        : Quantity.tenths(mean);
  }

  private Sentence inRange() {
    return Sentence.done(
        "in-range",
        interval.inRangeCount(),
        interval.count(),
        Quantity.tenths(plan.range().low()),
        Quantity.tenths(plan.range().high()));
  }
}
