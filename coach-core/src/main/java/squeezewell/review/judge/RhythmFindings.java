package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import squeezewell.cue.CheckKind;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.Drift;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Hold;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.RollingRate;
import squeezewell.review.measure.Statistics;
import squeezewell.review.say.Words;

/** Findings about the intervals between breaths. None for a rhythm of compressions and pauses. */
final class RhythmFindings {
  /** A tempo error below this is not told: people can't hear it (our own choice). */
  private static final double TEMPO_MARGIN = 0.03;

  private static final double COUNTED_SECONDS = 1.8;

  /** In arrest, at 12 to 30 breaths a minute; what it means for another patient is an inference. */
  static final String SEEN_IN_PIGS = " (seen in pigs in cardiac arrest, Circulation 2004)";

  /** Time above the range is told in seconds from here on. */
  private static final int FAST_SECONDS = 30;

  /** Fast intervals this soon after a check are put down to it. */
  private static final long AFTER_CHECK_NANOS = 60_000_000_000L;

  private final Facts facts;
  private final BreathPlan plan;
  private final Metrics.Interval interval;
  private final double[] lengths;
  private final double median;
  private final int slow;

  private RhythmFindings(Facts facts, BreathPlan plan) {
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

  static List<Ranked> of(Facts facts) {
    List<Ranked> found = new ArrayList<>();
    if (facts.practice().breathPlan().isPresent() && facts.metrics().interval().count() >= 3) {
      new RhythmFindings(facts, facts.practice().breathPlan().get()).addTo(found);
    }
    return found;
  }

  /** Whether the rhythm as a whole is slower than asked, so that prompts are missed by tempo. */
  static boolean slowTempo(Facts facts) {
    if (!facts.practice().breathPlan().isPresent() || facts.metrics().interval().count() < 3) {
      return false;
    }
    RhythmFindings findings = new RhythmFindings(facts, facts.practice().breathPlan().get());
    return findings.isTooSlow() || findings.isSlowing();
  }

  /** Whether it is told that the rhythm slowed down or sped up. */
  static boolean drifts(Facts facts) {
    if (!facts.practice().breathPlan().isPresent() || facts.metrics().interval().count() < 3) {
      return false;
    }
    RhythmFindings findings = new RhythmFindings(facts, facts.practice().breathPlan().get());
    return findings.isSlowing() || findings.isSpeeding();
  }

  private void addTo(List<Ranked> found) {
    boolean fast = isTooFast();
    boolean slowing = isSlowing();
    boolean speeding = isSpeeding();
    if (fast) {
      found.add(tooFast());
    }
    if (speeding) {
      found.add(
          drifted(
              Ranked.SPED_UP,
              "sped-up",
              "You sped up",
              fast || is(Judgement.FAST, last()) || interval.fastCount() > most()));
    }
    if (slowing) {
      boolean harmful = is(Judgement.SLOW, last()) || slow > most();
      found.add(drifted(Ranked.SLOWED_DOWN, "slowed-down", "You slowed down", harmful));
    }
    if (isTooSlow() && !(slowing && !is(Judgement.SLOW, first()))) {
      found.add(tooSlow());
    }
    boolean own = facts.metrics().asynchrony().ownTempo();
    int outside = interval.fastCount() + slow;
    // Who keeps a tempo of one's own is told of that instead, where it is another tempo.
    boolean told = own && PromptFindings.tempoDiffers(facts);
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
    if (!fast && !isTooSlow() && RhythmRule.kept(facts)) {
      found.add(even());
    }
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

  private Ranked tooFast() {
    int seconds = RollingRate.secondsAbove(facts.rollingRate(), plan.highestPerMinute());
    String howLong =
        seconds < FAST_SECONDS
            ? ""
            : " Over "
                + Words.decimal(plan.highestPerMinute())
                + " breaths a minute for "
                + Words.clock((double) seconds)
                + " in all.";
    return Ranked.fault(
        Ranked.TOO_FAST,
        "too-fast",
        onlyAfterChecks()
            ? "Too fast after the " + CheckKind.of(facts.practice().guidance()).words()
            : isUsuallyFast() ? "Too fast" : "Too fast for a while",
        OffPace.words(facts.valid(), Judgement.FAST, plan)
            + "."
            + inRange()
            + howLong
            + " Too many breaths keep the pressure in the chest high, so that less blood flows"
            + " back to the heart"
            + SEEN_IN_PIGS
            + ". "
            + count(plan));
  }

  private boolean onlyAfterChecks() {
    int after = 0;
    for (IntervalPoint point : facts.valid()) {
      boolean soon =
          facts.practice().holds(Hold.Kind.PULSE_CHECK).stream()
              .anyMatch(
                  h ->
                      point.atNanos() > h.endNanos()
                          && point.atNanos() <= h.endNanos() + AFTER_CHECK_NANOS);
      after += soon && point.judgement() == Judgement.FAST ? 1 : 0;
    }
    return after >= 2 && after >= 0.8 * interval.fastCount() && !is(Judgement.FAST, median);
  }

  private Ranked tooSlow() {
    return Ranked.fault(
        Ranked.TOO_SLOW,
        "too-slow",
        "Too slow",
        OffPace.words(facts.valid(), Judgement.SLOW, plan)
            + "."
            + inRange()
            + " With too few breaths carbon dioxide builds up and oxygen runs low (physiology). "
            + count(plan));
  }

  /** Seconds can be counted; what is shorter than two is felt as a beat. */
  static String count(BreathPlan plan) {
    return plan.interval().seconds() < COUNTED_SECONDS
        ? "Next time say the beat aloud, and squeeze on it."
        : "Next time count the seconds to yourself, and squeeze when the count is full.";
  }

  private Ranked drifted(int harm, String code, String title, boolean harmful) {
    double asked = plan.interval().seconds();
    String text =
        "Your interval went from about "
            + Words.intervalSeconds(first(), asked)
            + " in the first third to about "
            + Words.intervalSeconds(last(), asked)
            + " in the last; asked was "
            + Words.seconds(asked)
            + " throughout. "
            + (first() > last()
                ? "A rhythm that speeds up ends in too many breaths"
                : "A rhythm that slows down ends in too few breaths")
            + "; counting under your breath keeps it when attention tires (teaching).";
    return harmful ? Ranked.fault(harm, code, title, text) : Ranked.advice(harm, code, title, text);
  }

  private Ranked uneven() {
    return Ranked.fault(
        Ranked.UNEVEN,
        "rhythm-uneven",
        "The rhythm was uneven",
        inRange().trim()
            + " "
            + interval.fastCount()
            + " came too soon and "
            + interval.slowCount()
            + " too late. A breath that comes too soon leaves the one before it no time to flow"
            + " out, and in a long wait oxygen runs low (physiology). "
            + count(plan));
  }

  private Ranked aLittleOff(boolean fast) {
    return Ranked.advice(
        Ranked.TEMPO_OFF,
        fast ? "a-little-fast" : "a-little-slow",
        fast ? "A little too fast" : "A little too slow",
        asked()
            + inRange()
            + (fast
                ? " Wait for the whole interval: what is a little fast now gets faster in earnest."
                : " Squeeze as soon as the interval is over."));
  }

  private Ranked even() {
    return Ranked.good(0, "rhythm-even", Findings.EVEN, asked() + inRange());
  }

  private String asked() {
    return "Your breaths came "
        + Words.seconds(interval.meanSeconds().getAsDouble())
        + " apart on average ("
        + Words.decimal(facts.metrics().rate().overallPerMinute().orElse(0))
        + " a minute); asked was one every "
        + Words.seconds(plan.interval().seconds())
        + ".";
  }

  private String inRange() {
    return " "
        + interval.inRangeCount()
        + " of "
        + interval.count()
        + " intervals were in range ("
        + Words.decimal(plan.range().low())
        + " to "
        + Words.seconds(plan.range().high())
        + ").";
  }
}
