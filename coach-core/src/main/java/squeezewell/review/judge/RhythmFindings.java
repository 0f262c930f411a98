package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import squeezewell.cue.CheckKind;
import squeezewell.cue.Segment;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Drift;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.RollingRate;
import squeezewell.review.measure.Statistics;
import squeezewell.review.measure.Unprompted;

/** Findings about the intervals between breaths. None for a rhythm of compressions and pauses. */
final class RhythmFindings {
  /** A tempo error below this is not told: people can't hear it (our own choice). */
  private static final double TEMPO_MARGIN = 0.03;

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

  private RhythmFindings(Analysis facts, BreathPlan plan) {
    this.facts = facts;
    this.plan = plan;
    interval = facts.metrics().interval();
    lengths = facts.valid().stream().mapToDouble(IntervalPoint::seconds).toArray();
    median = interval.medianSeconds().getAsDouble();
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

  /** Whether it is told that the rhythm slowed down or sped up. */
  static boolean drifts(Analysis facts) {
    if (!facts.practice().breathPlan().isPresent() || facts.metrics().interval().count() < 3) {
      return false;
    }
    RhythmFindings findings = new RhythmFindings(facts, facts.practice().breathPlan().get());
    return findings.isSlowing() || findings.isSpeeding();
  }

  private void addTo(List<Finding> found) {
    boolean fast = isTooFast();
    boolean slowing = isSlowing();
    boolean speeding = isSpeeding();
    if (fast) {
      found.add(tooFast());
    }
    if (speeding) {
      boolean harmful = fast || is(Judgement.FAST, last()) || interval.fastCount() > most();
      found.add(drifted(FindingCode.SPED_UP, "drift.why-fast", harmful));
    }
    if (slowing) {
      boolean harmful = is(Judgement.SLOW, last()) || slow > most();
      found.add(drifted(FindingCode.SLOWED_DOWN, "drift.why-slow", harmful));
    }
    if (isTooSlow() && !(slowing && !is(Judgement.SLOW, first()))) {
      found.add(tooSlow());
    }
    boolean own = facts.metrics().asynchrony().ownTempo();
    int outside = interval.fastCount() + slow;
    // Who keeps a tempo of one's own is told of that instead, where it is another tempo.
    boolean told = own && Pace.differs(facts);
    boolean uneven = !fast && !isTooSlow() && !told && outside > most();
    if (uneven && !slowing && !speeding) {
      found.add(uneven());
    }
    boolean off = fast || isTooSlow() || slowing || speeding || told || outside > most();
    double mean = interval.meanSeconds().getAsDouble();
    // A mean that only a few long waits make slow is told as those.
    if (!off && !plan.keepsMean(mean) && !plan.keepsMean(median)) {
      found.add(aLittleOff(mean < plan.interval().seconds()));
    }
    if (!fast && !isTooSlow() && !unprompted() && RhythmRule.kept(facts)) {
      found.add(even());
    }
  }

  /** Whether no breath was prompted: then a kept rhythm is told as one without prompts. */
  private boolean unprompted() {
    return interval.count() >= Pace.FEWEST_UNPROMPTED
        && facts.metrics().unprompted().map(Unprompted::intervalCount).orElse(0)
            == interval.count();
  }

  private boolean isTooFast() {
    return isUsuallyFast() || RhythmRule.fastTooLong(plan, facts.rollingRate());
  }

  private boolean isUsuallyFast() {
    boolean own = facts.metrics().asynchrony().ownTempo();
    return isClearly(Judgement.FAST) || (!own && isOften(interval.fastCount(), slow));
  }

  private boolean isTooSlow() {
    boolean own = facts.metrics().asynchrony().ownTempo();
    return isClearly(Judgement.SLOW) || (!own && isOften(slow, interval.fastCount()));
  }

  private boolean isClearly(Judgement side) {
    return plan.judgeClearly(median, TEMPO_MARGIN) == side;
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

  private Finding tooFast() {
    int seconds = RollingRate.secondsAbove(facts.rollingRate(), plan.highestPerMinute());
    Finding told =
        Finding.fault(
            FindingCode.TOO_FAST, Pace.off(facts.valid(), Judgement.FAST, plan), inRange());
    if (seconds >= FAST_SECONDS) {
      told =
          told.and(
              Sentence.done(
                  "too-fast.time",
                  Quantity.tenths(plan.highestPerMinute()),
                  Quantity.clockSeconds(seconds)));
    }
    told = told.and(Sentence.why("too-fast.why"), Pace.count(plan));
    if (onlyAfterChecks()) {
      return told.titled("too-fast.title.checks", CheckKind.of(facts.practice().guidance()));
    }
    return isUsuallyFast() ? told : told.titled("too-fast.title.while");
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
        Sentence.done("rhythm-uneven.done", interval.fastCount(), interval.slowCount()),
        Sentence.why("rhythm-uneven.why"),
        Pace.count(plan));
  }

  private Finding aLittleOff(boolean fast) {
    FindingCode code = fast ? FindingCode.A_LITTLE_FAST : FindingCode.A_LITTLE_SLOW;
    return Finding.advice(code, asked(), inRange(), Sentence.next(code.id() + ".next"));
  }

  private Finding even() {
    return Finding.good(FindingCode.RHYTHM_EVEN, asked(), inRange());
  }

  private Sentence asked() {
    return Sentence.done(
        "mean-interval",
        Quantity.tenths(interval.meanSeconds().getAsDouble()),
        Quantity.tenths(facts.metrics().rate().overallPerMinute().orElse(0)),
        Quantity.tenths(plan.interval().seconds()));
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
