package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static squeezewell.review.MetricFields.NONE;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.TestPlans;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;

/**
 * Every figure of a review, worked by hand in small practices; the steps stand beside each. A
 * figure that is added to {@link Metrics} and worked in none of them fails a test.
 *
 * <p>An adult needs one breath every 6 s, in range from 5 to 7 s; no wait over 10 s; a pulse check
 * every 120 s, 5 to 10 s long; suction for 15 s at most; a squeeze of 1 s, good from 0.8 to 1.3 s.
 */
class WorkedMetricsTest {
  private static final double CLOSE = 1e-6;

  /** A practice and what was worked out of it by hand. */
  private record Worked(String name, Review review, Map<String, Object> expected) {
    Worked(String name, SessionBuilder session) {
      this(name, session.review(), new LinkedHashMap<>());
    }

    Worked is(String figure, double value) {
      expected.put(figure, value);
      return this;
    }

    Worked is(String figure, String word) {
      expected.put(figure, word);
      return this;
    }

    @Override
    public String toString() {
      return name;
    }
  }

  static List<Worked> worked() {
    return List.of(
        prompted(),
        checks(),
        quicker(),
        fast(),
        silentTest(),
        silentSlowing(),
        compressed(),
        events(),
        cut());
  }

  /**
   * Prompts at 0, 6, 12, 18, 24 and 30 s; suction from 32 to 52 s; then at 52, 58, 64 and 70 s. The
   * practice lasts 71 s.
   */
  private static Worked prompted() {
    Worked worked =
        new Worked(
            "prompted",
            SessionBuilder.ofSeconds(71)
                .squeeze(0.5, 1.0, "400 mL")
                .squeeze(6.5, 1.2, "500 mL")
                .squeeze(12.5, 0.6, "600 mL")
                .breaths(16.5)
                .squeeze(24.5, 1.0, "")
                .squeeze(30.5, 1.1, "")
                .suction(32, 52)
                .squeeze(52.5, 0.9, "")
                .breaths(58.8, 65.1));
    worked.is("breathCount", 9).is("sessionSeconds", 71).is("firstBreathSeconds", 0.5);
    // 15 of the 20 s of suction are excused.
    worked.is("effectiveSeconds", 56);
    worked.is("suctions[0].startedSeconds", 32).is("suctions[0].lengthSeconds", 20);
    worked.is("suctions[0].limitSeconds", 15).is("suctions[0].withinLimit", "false");
    // None of the nine breaths lies in the excused time: 60 x 9 / 56.
    worked.is("rate.countPerMinute", 540.0 / 56);
    // Intervals 6, 6, 4, 8, 6 s; 22 s with the suction in it is none; 6.3 and 6.3 s. Seven, 42.6 s
    // in all: mean 6.0857 s, 60 x 7 / 42.6 = 9.859 a minute.
    worked.is("interval.count", 7).is("interval.meanSeconds", 42.6 / 7);
    worked.is("rate.overallPerMinute", 420 / 42.6);
    worked.is("interval.tempoErrorPercent", 100 * (42.6 / 42 - 1));
    // In order 4 6 6 6 6.3 6.3 8: the median is 6. Distances from it, in order 0 0 0 0.3 0.3 2 2:
    // the median is 0.3.
    worked.is("interval.medianSeconds", 6).is("interval.robustSdSeconds", 1.4826 * 0.3);
    // Squares 16 + 3 x 36 + 2 x 39.69 + 64 = 267.38, less 42.6 x 42.6 / 7 = 259.251429, over 6.
    worked.is("interval.sdSeconds", Math.sqrt((267.38 - 42.6 * 42.6 / 7) / 6));
    worked.is("interval.inRangeCount", 5).is("interval.inRangeFraction", 5.0 / 7);
    worked.is("interval.fastCount", 1).is("interval.slowCount", 1);
    // Wilson (1927), p = 5/7, n = 7, z = 1.959964, z x z = 3.841459: middle
    // (0.714286 + 3.841459 / 14) / (1 + 3.841459 / 7) = 0.988676 / 1.548780 = 0.638358; half
    // 1.959964 x sqrt(0.204082 / 7 + 3.841459 / 196) / 1.548780 = 0.279423.
    worked.is("interval.inRangeLow", 0.358935).is("interval.inRangeHigh", 0.917781);
    // 4 s is 1 - 4/5 of a breath too many, 8 s is 8/7 - 1 of one too few.
    worked.is("interval.excessBreaths", 0.2).is("interval.deficitBreaths", 1.0 / 7);
    worked.is("interval.fastMinutes", 4.0 / 60).is("interval.slowMinutes", 8.0 / 60);
    // In range 3 x 6 + 6 + ... = 18 + 12.6 = 30.6 s; out 4 + 8 = 12 s. Across the suction 22 - 15
    // is 7 s, not over 7; 0.5 s at the start and 5.9 s at the end neither.
    worked.is("interval.timeInRangeFraction", 30.6 / 42.6);
    // Five breaths in 30 s at 31 s and hardly more later: never over 12 a minute.
    worked.is("hyperventilationMinutes", 0);
    // From 31.6 s, the end of a squeeze, to 52.5 s; less 15 s 5.9 s. Net the longest is from 16.5
    // s,
    // the end of which is not known, to 24.5 s.
    worked.is("gap.longestSeconds", 8).is("gap.longestAtSeconds", 16.5);
    worked.is("gap.overLimitCount", 0).is("gap.overLimitSeconds", 0);
    // Each prompt but the last has its breath; the practice ends 1 s after that one.
    worked.is("prompts.given", 10).is("prompts.met", 9).is("prompts.missed", 0);
    worked.is("prompts.forgiven", 1).is("prompts.extra", 0).is("prompts.unprompted", 0);
    // Late by 0.5 (six times), -1.5, 0.8 and 1.1 s: 3.4 / 9; squares 1.5 + 2.25 + 0.64 + 1.21 =
    // 5.6.
    worked.is("asynchrony.meanSeconds", 3.4 / 9).is("asynchrony.medianSeconds", 0.5);
    worked.is("asynchrony.sdSeconds", Math.sqrt((5.6 - 3.4 * 3.4 / 9) / 8));
    // Where they stand between two prompts, 6 s being a turn: 0.5 s are 30 degrees (five times, the
    // prompt at 30 s has none 6 s after it), 4.5 s are 270, 0.8 s 48 and 1.1 s 66. Cosines
    // 5 x 0.8660254 + 0 + 0.6691306 + 0.4067366 = 5.4059942, sines 2.5 - 1 + 0.7431448 + 0.9135455
    // = 3.1566903; sqrt(5.4059942^2 + 3.1566903^2) / 8.
    worked.is("asynchrony.phaseLocking", 0.7825186);
    // 0.6 0.9 1.0 1.0 1.1 1.2: quartiles a quarter and three quarters of the way from the first to
    // the last, at places 1.25 and 3.75: 0.9 + 0.25 x 0.1 and 1.0 + 0.75 x 0.1. One is below 0.8 s.
    worked.is("inspiration.count", 6).is("inspiration.meanSeconds", 5.8 / 6);
    worked.is("inspiration.medianSeconds", 1);
    worked.is("inspiration.lowerQuartileSeconds", 0.925);
    worked.is("inspiration.upperQuartileSeconds", 1.075);
    worked.is("inspiration.goodCount", 5).is("inspiration.goodFraction", 5.0 / 6);
    worked.is("inspiration.shortestGoodSeconds", 0.8).is("inspiration.longestGoodSeconds", 1.3);
    // 400, 500 and 600 mL: SD 100, mean 500. They begin intervals of 6, 6 and 4 s: 1.5 L in 16 s.
    worked.is("volume.count", 3).is("volume.medianMillilitres", 500);
    worked.is("volume.variationFraction", 0.2).is("volume.litresPerMinute", 1.5 * 60 / 16);
    // Seven intervals are too few for a drift.
    worked.is("drift.intervals", 7).is("drift.percentPerMinute", NONE);
    worked.is("drift.lowPercentPerMinute", NONE).is("drift.highPercentPerMinute", NONE);
    worked.is("holeCount", 0).is("holeSeconds", 0);
    return worked.is("unprompted", NONE).is("compressions", NONE);
  }

  /** Breaths at 0, 128 and 300 s; a check from 125 to 132 s; the program stood still to 350 s. */
  private static Worked checks() {
    Worked worked =
        new Worked(
            "checks",
            SessionBuilder.ofSeconds(400)
                .breaths(0, 128, 300)
                .pulseCheck(125, 132)
                .event(350, EventType.HOLE, "20.0 s"));
    // Due at 120 s, made 5 s late; the breath at 128 s lies in it.
    worked.is("pulseChecks[0].dueSeconds", 120).is("pulseChecks[0].startedSeconds", 125);
    worked.is("pulseChecks[0].lengthSeconds", 7).is("pulseChecks[0].lateSeconds", 5);
    worked.is("pulseChecks[0].outcome", "ON_TIME").is("pulseChecks[0].lengthOutcome", "RIGHT");
    worked.is("pulseChecks[0].breathsDuring", 1);
    // The next is due 120 s after it began and not made, the next after that at 365 s, 35 s before
    // the end: it might still have been made up to 60 s after its time.
    worked.is("pulseChecks[1].dueSeconds", 245).is("pulseChecks[1].startedSeconds", NONE);
    worked.is("pulseChecks[1].lengthSeconds", NONE).is("pulseChecks[1].lateSeconds", NONE);
    worked.is("pulseChecks[0].kind", "PULSE").is("pulseChecks[1].outcome", "MISSED");
    worked.is("pulseChecks[1].lengthOutcome", "NOT_JUDGED").is("pulseChecks[1].breathsDuring", 0);
    worked.is("pulseChecks[2].dueSeconds", 365).is("pulseChecks[2].outcome", "OVERDUE");
    // A length is written to a tenth of a second, so half a tenth may be missing from 20.0 s.
    worked.is("holeCount", 1).is("holeSeconds", 20.05);
    worked.is("sessionSeconds", 400).is("effectiveSeconds", 400 - 7 - 20.05);
    // The breath at 128 s lies in excused time, so two are left.
    worked.is("rate.countPerMinute", 120 / 372.95);
    // Waits: 0 to 128 s, 7 excused from 125 s on, of which 3 lie in it: net 125; 128 to 300 s, the
    // other 4 excused: net 168; 300 to 400 s less 20.05 s: net 79.95.
    worked.is("gap.longestSeconds", 168).is("gap.longestAtSeconds", 128);
    worked.is("gap.overLimitCount", 3).is("gap.overLimitSeconds", 115 + 158 + 69.95);
    // Both intervals hold part of the check.
    worked.is("interval.count", 0).is("interval.meanSeconds", NONE);
    return worked.is("interval.timeInRangeFraction", 0);
  }

  /** Intervals of 6.0, 5.9 .. 5.1 s from 0 s on. */
  private static Worked quicker() {
    SessionBuilder session = SessionBuilder.ofSeconds(60);
    double at = 0;
    session.breaths(at);
    for (int k = 0; k < 10; k++) {
      at += 6 - 0.1 * k;
      session.breaths(at);
    }
    Worked worked = new Worked("quicker", session);
    // Between the middles of interval i and j lie (j - i) times the mean of their lengths, so each
    // of the 45 slopes is -0.1 / (6 - 0.05 (i + j)). In order of i + j from 17 down there are 1 1 2
    // 2 3 3 4 4 5 4 4 3 3 2 2 1 1 of them; the middle one, the 23rd, has i + j = 9.
    worked.is("drift.intervals", 10);
    worked.is("drift.percentPerMinute", -0.1 / 5.55 * 6_000 / 5.55);
    // Sen (1968): z sqrt(10 x 9 x 25 / 18) = 1.959964 x sqrt(125) = 21.913; the ends are the
    // (45 - 21.913) / 2 = 11.5th, rounded outwards the 11th (i + j = 12), and one after the
    // (45 + 21.913) / 2 = 33.5th, rounded outwards the 35th (i + j = 6).
    worked.is("drift.lowPercentPerMinute", -0.1 / 5.4 * 6_000 / 5.55);
    return worked.is("drift.highPercentPerMinute", -0.1 / 5.7 * 6_000 / 5.55);
  }

  /** 20 breaths 3 s apart to 60 s, then 10 of 6 s. */
  private static Worked fast() {
    Worked worked =
        new Worked(
            "fast", SessionBuilder.ofSeconds(120).breathsEvery(3, 3, 60).breathsEvery(6, 66, 120));
    // Known from 33 s on (30 s of intervals). In the minute before t > 63 s lie t - 63 s at 10 and
    // the rest at 20 a minute, over 12 until 108 s, where 48 s at 10 and 12 s at 20 make 12: from
    // 33 to 107 s that is 75 times.
    worked.is("hyperventilationMinutes", 75.0 / 60);
    // 19 of 3 s, each 0.4 of a breath too many.
    worked.is("interval.fastCount", 19).is("interval.fastMinutes", 57.0 / 60);
    return worked.is("interval.excessBreaths", 19 * 0.4);
  }

  /** A test: 21 breaths from 1 to 121 s, 6 s apart, without a prompt; it lasts 150 s. */
  private static Worked silentTest() {
    Worked worked =
        new Worked("silent test", SessionBuilder.ofSeconds(150).test().breathsEvery(6, 1, 121));
    worked.is("unprompted.silences", 1).is("unprompted.seconds", 150);
    // The rhythm asked for squeezes at 0, 6 .. 144 s.
    worked.is("unprompted.breathCount", 21).is("unprompted.plannedCount", 25);
    worked.is("unprompted.intervalCount", 20).is("unprompted.meanSeconds", 6);
    worked.is("unprompted.ratePerMinute", 10).is("unprompted.inRangeCount", 20);
    worked.is("unprompted.fastCount", 0).is("unprompted.slowCount", 0);
    // Wilson (1927) for 20 of 20: from n / (n + z x z) = 20 / 23.841459 to 1.
    worked.is("unprompted.inRangeLow", 20 / 23.841459).is("unprompted.inRangeHigh", 1);
    worked.is("unprompted.driftPercentPerMinute", NONE);
    // From 121 s to the end; the clock of a test begins with its first breath, at 1 s.
    worked.is("unprompted.longestGapSeconds", 29).is("unprompted.longestGapAtSeconds", 120);
    worked.is("unprompted.highestLevel", NONE);
    worked.is("unprompted.test.outcome", "PASS").is("unprompted.test.intervalCount", 20);
    worked.is(
        "unprompted.test.rule",
        "Without prompts, from the first breath to the first one at or after 2:00: at most 15 % of"
            + " the intervals outside 5 to 7 s; the mean within 8 % of 6 s; never over 10 s from"
            + " one breath to the next, checks and suction within their limits not counted; less"
            + " than a minute in all faster than 12 breaths a minute, three or more intervals in a"
            + " row; and nothing under To change about the rhythm (too fast, too slow, speeding up, slowing down, uneven, a long wait, prompts or"
            + " breaths missed), in the whole, in a part or without prompts. (This rule is our own choice.) Besides at"
            + " least 15 intervals; the first and the last third within 12 % of the interval; one"
            + " interval and the next within 20 % on average; two thirds of the squeezes of the"
            + " right length. The first try of a day counts, if nothing was practiced in the 30"
            + " minutes before it; the rhythm is yours when it counts twice, at least 20 hours"
            + " apart.");
    worked.is("prompts.given", 0).is("prompts.met", 0).is("prompts.extra", 0);
    worked.is("prompts.unprompted", 21).is("asynchrony.phaseLocking", NONE);
    return worked.is("asynchrony.meanSeconds", NONE);
  }

  /** Prompts fall silent at 0 s at level 3; 30 intervals of 5.5, 5.55 .. 6.95 s from 1 s on. */
  private static Worked silentSlowing() {
    SessionBuilder session =
        SessionBuilder.ofSeconds(260).event(0, EventType.PROMPTS_OFF, "level 3");
    double at = 1;
    session.breaths(at);
    for (int k = 0; k < 30; k++) {
      at += 5.5 + 0.05 * k;
      session.breaths(at);
    }
    // Each slope is 0.05 over the mean of its two lengths; of the 435 the middle one has two that
    // make 5.5 + 6.95 s: 0.05 / 6.225. The median interval is 6.225 s too.
    return new Worked("silent slowing", session)
        .is("unprompted.driftPercentPerMinute", 0.05 / 6.225 * 6_000 / 6.225)
        .is("unprompted.highestLevel", 3)
        .is("unprompted.intervalCount", 30)
        .is("unprompted.meanSeconds", 6.225)
        .is("unprompted.test", NONE);
  }

  /** 30 compressions, 2 breaths, 30 compressions, 1 breath, 20 slow compressions; 60 s. */
  private static Worked compressed() {
    Worked worked =
        new Worked(
            "compressed",
            SessionBuilder.ofSeconds(60)
                .in(Situation.ARREST_NO_ADVANCED_AIRWAY)
                .compressions(30, 0, 0.5)
                .breaths(15.5, 17.5)
                .compressions(30, 19.5, 0.5)
                .breaths(40)
                .compressions(20, 46, 0.7));
    // To 14.5 s, from 19.5 to 34 s, from 46 to 59.3 s. Intervals 58 x 0.5 + 19 x 0.7 = 42.3 s over
    // 77; 0.5 s is 120 a minute and in range, 0.7 s is 85.7 and not.
    worked.is("compressions.count", 80).is("compressions.ratePerMinute", 60 * 77 / 42.3);
    worked.is("compressions.inRangeFraction", 58.0 / 77);
    // Pauses of 5 and 12 s; 10 s may be, which is more than 1.5 x (4 s + 60/110 s).
    worked.is("compressions.pauseCount", 2).is("compressions.longestPauseSeconds", 12);
    worked.is("compressions.pauseLimitSeconds", 10).is("compressions.overLimitPauses", 1);
    // Each pause less the compression's own time, a mean interval, and the end from 59.3 s too.
    double own = 42.3 / 77;
    double off = 5 - own + 12 - own + 0.7 - own;
    worked.is("compressions.handsOffSeconds", off).is("compressions.fraction", 1 - off / 60);
    worked.is("compressions.cycles[0].compressions", 30).is("compressions.cycles[0].breaths", 2);
    worked.is("compressions.cycles[0].pauseSeconds", 5);
    worked.is("compressions.cycles[1].compressions", 30).is("compressions.cycles[1].breaths", 1);
    worked.is("compressions.cycles[1].pauseSeconds", 12).is("compressions.goodCycles", 1);
    // The breaths stand at no steady interval.
    worked.is("interval.count", 0).is("rate.overallPerMinute", NONE);
    worked.is("rate.countPerMinute", 3).is("prompts", NONE).is("asynchrony", NONE);
    return worked.is("hyperventilationMinutes", NONE);
  }

  /** A newborn's 3:1: an event each half second, the fourth of them a breath. */
  private static Worked events() {
    SessionBuilder session =
        SessionBuilder.ofSeconds(20)
            .by(TestPlans.edition("aha-2025"), PatientGroup.NEWBORN)
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY);
    for (int k = 0; k < 10; k++) {
      session.compressions(3, 2 * k, 0.5).breaths(2 * k + 1.5);
    }
    // 120 events a minute, of which three in four are compressions.
    return new Worked("events", session)
        .is("compressions.count", 30)
        .is("compressions.eventsPerMinute", 120)
        .is("compressions.ratePerMinute", 90);
  }

  /**
   * A pulse thought lost at 19 s, which is taken back at 21 s, cuts a practice of 50 s in three;
   * the figures of the whole come from both parts that ask for one breath every 6 s.
   */
  private static Worked cut() {
    Worked worked =
        new Worked(
            "cut",
            SessionBuilder.ofSeconds(50)
                .squeeze(0, 1.0, "400 mL")
                .breaths(5.5, 12, 18)
                .finding(19, PatientChange.PULSE_LOST)
                .undone(21)
                .squeeze(24.1, 0.7, "500 mL")
                .breaths(30.2, 35.8));
    worked.is("breathCount", 7).is("sessionSeconds", 50).is("effectiveSeconds", 50);
    worked.is("firstBreathSeconds", 0).is("rate.countPerMinute", 7 * 60.0 / 50);
    // 5.5 6.5 6 before and 6.1 5.6 after; 18 to 24.1 s lies across the cuts. 29.7 s in all.
    worked.is("interval.count", 5).is("interval.meanSeconds", 29.7 / 5);
    worked.is("rate.overallPerMinute", 60 * 5 / 29.7).is("interval.medianSeconds", 6);
    // Distances from 6 s, in order: 0 0.1 0.4 0.5 0.5.
    worked.is("interval.robustSdSeconds", 1.4826 * 0.4);
    // Squares 30.25 + 42.25 + 36 + 37.21 + 31.36 = 177.07, less 29.7 x 29.7 / 5, over 4.
    worked.is("interval.sdSeconds", Math.sqrt((177.07 - 29.7 * 29.7 / 5) / 4));
    worked.is("interval.inRangeCount", 5).is("interval.inRangeFraction", 1);
    // Wilson (1927) for 5 of 5: 5 / (5 + 3.841459).
    worked.is("interval.inRangeLow", 5 / 8.841459).is("interval.inRangeHigh", 1);
    // Before 0 % off three times, after (5.85 / 6 - 1) = -2.5 % twice.
    worked.is("interval.tempoErrorPercent", -1);
    // 29.7 s in range; of the 14.2 s from 35.8 s to the end 7.2 are too many.
    worked.is("interval.timeInRangeFraction", 29.7 / 36.9);
    worked.is("gap.longestSeconds", 14.2).is("gap.longestAtSeconds", 35.8);
    worked.is("gap.overLimitCount", 1).is("gap.overLimitSeconds", 4.2);
    worked.is("inspiration.count", 2).is("inspiration.meanSeconds", 0.85);
    worked.is("inspiration.lowerQuartileSeconds", 0.775);
    worked.is("inspiration.upperQuartileSeconds", 0.925);
    worked.is("inspiration.goodCount", 1).is("inspiration.goodFraction", 0.5);
    // 0.9 L in 5.5 + 6.1 s; SD of 400 and 500 is 100 over the root of 2.
    worked.is("volume.count", 2).is("volume.medianMillilitres", 450);
    worked.is("volume.variationFraction", 100 / Math.sqrt(2) / 450);
    worked.is("volume.litresPerMinute", 0.9 * 60 / 11.6);
    return worked.is("drift.intervals", 5).is("drift.percentPerMinute", NONE);
  }

  @ParameterizedTest
  @MethodSource("worked")
  void theFiguresAreThoseWorkedByHand(Worked worked) {
    Map<String, Object> found = MetricFields.values(worked.review());
    assertThat(worked.expected())
        .allSatisfy(
            (figure, expected) -> {
              Object value = found.get(figure);
              if (expected instanceof Double number && value instanceof Double other) {
                assertThat(other).as(figure).isCloseTo(number, within(CLOSE));
              } else {
                assertThat(value).as(figure).isEqualTo(expected);
              }
            });
  }

  /** A figure without a worked example may be anything. */
  @Test
  void everyFigureIsWorkedByHandWithAValue() {
    Set<String> known =
        worked().stream()
            .flatMap(w -> w.expected().entrySet().stream())
            .filter(e -> !e.getValue().equals(NONE))
            .map(e -> e.getKey().replaceAll("\\d+", ""))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> all = new TreeSet<>(MetricFields.names());
    // What fell short is told in words; what they say is tested with the rule.
    all.remove("unprompted.test.reasons[]");
    assertThat(known).containsExactlyElementsOf(all);
  }

  @Test
  void ofAPracticeWithoutABreathNothingIsKnownThatNeedsOne() {
    Map<String, Object> found = MetricFields.values(SessionBuilder.ofSeconds(60).review());
    Set<String> unknown =
        found.entrySet().stream()
            .filter(e -> e.getValue().equals(NONE))
            .map(Map.Entry::getKey)
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(unknown)
        .containsExactlyInAnyOrder(
            "firstBreathSeconds",
            "hyperventilationMinutes",
            "rate.overallPerMinute",
            "interval.meanSeconds",
            "interval.medianSeconds",
            "interval.sdSeconds",
            "interval.robustSdSeconds",
            "interval.inRangeFraction",
            "interval.inRangeLow",
            "interval.inRangeHigh",
            "interval.tempoErrorPercent",
            "asynchrony.meanSeconds",
            "asynchrony.medianSeconds",
            "asynchrony.sdSeconds",
            "asynchrony.phaseLocking",
            "unprompted",
            "inspiration.meanSeconds",
            "inspiration.medianSeconds",
            "inspiration.lowerQuartileSeconds",
            "inspiration.upperQuartileSeconds",
            "inspiration.goodFraction",
            "drift.percentPerMinute",
            "drift.lowPercentPerMinute",
            "drift.highPercentPerMinute",
            "volume.medianMillilitres",
            "volume.variationFraction",
            "volume.litresPerMinute",
            "compressions");
    // What is not nothing: 60 s passed, all of them one wait, 50 s over the limit of 10 s; ten
    // prompts, at 0, 6 .. 54 s. No breath in 60 s is none a minute, and all time was out of range.
    Map<String, Object> known = new LinkedHashMap<>(found);
    known.values().removeIf(value -> value.equals(NONE) || value.equals(0.0));
    assertThat(known)
        .containsOnly(
            Map.entry("sessionSeconds", 60.0),
            Map.entry("effectiveSeconds", 60.0),
            Map.entry("gap.longestSeconds", 60.0),
            Map.entry("gap.overLimitCount", 1.0),
            Map.entry("gap.overLimitSeconds", 50.0),
            Map.entry("prompts.given", 10.0),
            Map.entry("prompts.missed", 10.0),
            Map.entry("inspiration.shortestGoodSeconds", 0.8),
            Map.entry("inspiration.longestGoodSeconds", 1.3));
  }
}
