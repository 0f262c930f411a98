package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Situation;
import squeezewell.protocol.Tempo;
import squeezewell.review.measure.Compressions;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;

/** Figures of compressions, worked by hand; the steps stand beside each. */
class CompressionsTest {
  @Test
  void twoRunsOfThirtyWithTwoBreathsBetweenAreOneGoodCycle() {
    // The 30th compression is at 29 x 0.55 = 15.95; 20.95 - 15.95 = 5.0 s. Breaths at 17 and 19.2
    // lie between. 60 / 0.55 = 109.09 a minute. Each of 60 compressions takes 0.55 s: 33 s of
    // 37.45 s, so 4.45 s hands off; the last is at 20.95 + 15.95 = 36.9, 0.55 s before the end.
    Compressions done =
        arrest(37.45)
            .compressions(30, 0, 0.55)
            .breaths(17, 19.2)
            .compressions(30, 20.95, 0.55)
            .review()
            .metrics()
            .compressions()
            .orElseThrow();
    assertThat(done.count()).isEqualTo(60);
    assertThat(done.cycles()).hasSize(1);
    assertThat(done.cycles().get(0).compressions()).isEqualTo(30);
    assertThat(done.cycles().get(0).breaths()).isEqualTo(2);
    assertThat(done.longestPauseSeconds().getAsDouble()).isCloseTo(5.0, within(1e-9));
    assertThat(done.pauseCount()).isEqualTo(1);
    assertThat(done.overLimitPauses()).isZero();
    assertThat(done.goodCycles()).isEqualTo(1);
    assertThat(done.ratePerMinute().getAsDouble()).isCloseTo(109.0909, within(1e-4));
    assertThat(done.inRangeFraction()).hasValue(1);
    assertThat(done.handsOffSeconds()).isCloseTo(4.45, within(1e-9));
    assertThat(done.fraction().getAsDouble()).isCloseTo(33 / 37.45, within(1e-9));
  }

  /**
   * Arithmetic from 30:2, the rate and a pause of 4 s: at 110 a minute 30 x 60/110 + 4 = 20.36 s, 2
   * breaths in it are 5.89 a minute, 16.36 / 20.36 = 80.4 %; at 100 a minute 18 / 22 = 81.8 %; at
   * 120 a minute 15 / 19 = 78.9 %. Ten whole cycles with each prompt met have no edges that differ,
   * so the tolerance is that of the figures as printed.
   */
  @ParameterizedTest
  @CsvSource({"110, 20.36, 5.89, 80.4", "100, 22, 5.45, 81.8", "120, 19, 6.32, 78.9"})
  void tenExactCyclesGiveTheFigures(String rate, double cycle, double breaths, double percent) {
    Rhythm rhythm = TestPlans.cycle(rate, 30, 2, "4", "1");
    Tempo tempo = Tempo.perMinute(new BigDecimal(rate)).cycleOf(30, 4 * TestPlans.SECOND);
    assertThat(tempo.seconds()).isCloseTo(cycle, within(0.005));
    Review review = exact(rhythm, tempo.nanosAt(10));
    Compressions done = review.metrics().compressions().orElseThrow();
    assertThat(done.count()).isEqualTo(300);
    assertThat(100 * done.fraction().getAsDouble()).isCloseTo(percent, within(0.05));
    assertThat(review.metrics().rate().countPerMinute().getAsDouble())
        .isCloseTo(breaths, within(0.006));
    // The tenth pause is not ended by a compression.
    assertThat(done.cycles()).hasSize(9);
    assertThat(done.goodCycles()).isEqualTo(9);
    assertThat(done.inRangeFraction()).hasValue(1);
    assertThat(done.handsOffSeconds()).isCloseTo(40, within(1e-3));
    assertThat(InterruptionsTest.codes(review)).contains("compressions-good");
  }

  @Test
  void aNewbornsPausesAreFoundAlthoughTheyAreShort() {
    // 120 a minute, 3 to 1, 0.5 s for the breath: gaps of 0.5, 0.5 and 1.0 s. A pause begins at
    // 0.5 + 0.5 / 2 = 0.75 s. 30 cycles of 2 s; 3 x 0.5 of 2 s compressed = 75 %.
    Review review = exact(TestPlans.cycle("120", 3, 1, "0.5", "0.5"), TestPlans.MINUTE);
    Compressions done = review.metrics().compressions().orElseThrow();
    // 90 compressions and 30 breaths, 120 events a minute (Solevåg, 2012;20:73).
    assertThat(done.ratePerMinute().getAsDouble()).isCloseTo(90, within(1e-6));
    assertThat(done.eventsPerMinute().getAsDouble()).isCloseTo(120, within(1e-6));
    assertThat(done.pauseCount()).isEqualTo(29);
    assertThat(done.goodCycles()).isEqualTo(29);
    assertThat(done.fraction().getAsDouble()).isCloseTo(0.75, within(1e-6));
  }

  /**
   * A pause of 4 s is planned at 100 a minute, a compression each 0.6 s: 4.6 s from one to the
   * next. Where the protocol's limit is 5 s, up to 5 + 0.6 = 5.6 s is good, since one compression's
   * own time is in it, not 1.5 x 4.6 = 6.9 s. With 8 s it is 8 s, with 10 s it is 10 s. A newborn's
   * 3 to 1 at 120 a minute: 0.5 s planned, 1 s to the next, 1 s allowed: 1 + 0.5 = 1.5 x 1 = 1.5 s.
   */
  @ParameterizedTest
  @CsvSource({
    "100, 30, 4, 5, 5.6",
    "100, 30, 4, 8, 8",
    "100, 30, 4, 10, 10",
    "120, 3, 0.5, 1, 1.5"
  })
  void aPauseBeyondTheProtocolsOwnLimitIsTooLong(
      String rate, int count, String pause, String limit, double longest) {
    Rhythm.CompressionCycle plan =
        (Rhythm.CompressionCycle) TestPlans.cycle(rate, count, 1, pause, "0.4");
    Rhythm rhythm =
        new Rhythm.CompressionCycle(
            plan.compressing(),
            count,
            1,
            plan.pauseNanos(),
            TestPlans.nanos(limit),
            plan.inspirationNanos(),
            TestPlans.CITATION,
            TestPlans.CITATION,
            TestPlans.CITATION,
            TestPlans.CITATION);
    for (int millis : new int[] {-1, 1}) {
      double resumed = 0.5 * (count - 1) + longest + millis / 1e3;
      List<SessionEvent> events = new ArrayList<>();
      for (int k = 0; k < count; k++) {
        events.add(event(events, 0.5 * k, EventType.COMPRESSION));
      }
      events.add(event(events, 0.5 * (count - 1) + 0.2, EventType.BREATH));
      events.add(event(events, resumed, EventType.COMPRESSION));
      events.add(event(events, resumed + 1, EventType.FINISH));
      Compressions done = review(rhythm, TestPlans.MINUTE, events).metrics().compressions().get();
      assertThat(done.pauseLimitSeconds().getAsDouble()).isCloseTo(longest, within(1e-9));
      assertThat(done.overLimitPauses()).isEqualTo(millis > 0 ? 1 : 0);
      assertThat(done.goodCycles()).isEqualTo(millis > 0 ? 0 : 1);
    }
  }

  private static SessionEvent event(List<SessionEvent> before, double at, EventType what) {
    return SessionEvent.of(before.size() + 1, SessionBuilder.nanos(at), what, "");
  }

  @Test
  void compressionsWithoutABreakHaveNoCyclesAndEveryLongGapIsAPause() {
    // 50 at 0.5 s from 0 (to 24.5), 50 more from 30: one pause of 5.5 s, 5 s of them beyond the
    // last compression's own 0.5 s. The last is at 54.5, its time ends at 55: 5 of 55 s.
    Review review =
        SessionBuilder.ofSeconds(55)
            .in(Situation.ARREST_ADVANCED_AIRWAY)
            .compressions(50, 0, 0.5)
            .compressions(50, 30, 0.5)
            .breathsEvery(6, 0.2, 54.2)
            .review();
    Compressions done = review.metrics().compressions().orElseThrow();
    assertThat(done.cycles()).isEmpty();
    assertThat(done.pauseLimitSeconds()).isEmpty();
    assertThat(done.longestPauseSeconds()).hasValue(5.5);
    assertThat(done.handsOffSeconds()).isCloseTo(5, within(1e-9));
    assertThat(done.fraction().getAsDouble()).isCloseTo(50 / 55.0, within(1e-9));
    assertThat(review.metrics().interval().inRangeCount()).isEqualTo(9);
  }

  @Test
  void aGapOfTwoSecondsIsNoPauseYet() {
    assertThat(
            arrest(20).compressions(2, 0, 2).review().metrics().compressions().get().pauseCount())
        .isZero();
    assertThat(
            arrest(20)
                .compressions(2, 0, 2.001)
                .review()
                .metrics()
                .compressions()
                .get()
                .pauseCount())
        .isEqualTo(1);
  }

  @Test
  void aCheckIsNoPauseAndItsExcusedTimeIsNotHandsOff() {
    // 20 at 0.5 s (to 9.5), check 10 to 18 (8 s, excused), 20 more from 18 to 27.5, end 28. The
    // gap of 8.5 s less 8 s is the compression's own 0.5 s: nothing is hands off.
    Compressions done =
        arrest(28)
            .compressions(20, 0, 0.5)
            .pulseCheck(10, 18)
            .compressions(20, 18, 0.5)
            .review()
            .metrics()
            .compressions()
            .orElseThrow();
    assertThat(done.pauseCount()).isZero();
    assertThat(done.cycles()).isEmpty();
    assertThat(done.handsOffSeconds()).isCloseTo(0, within(1e-9));
    assertThat(done.fraction()).hasValue(1);
    assertThat(done.ratePerMinute().getAsDouble()).isCloseTo(120, within(1e-9));
  }

  @Test
  void withoutCompressionsAllTimeIsHandsOffAndThereIsNoRate() {
    Compressions done = arrest(60).review().metrics().compressions().orElseThrow();
    assertThat(done.count()).isZero();
    assertThat(done.ratePerMinute()).isEmpty();
    assertThat(done.inRangeFraction()).isEmpty();
    assertThat(done.longestPauseSeconds()).isEmpty();
    assertThat(done.handsOffSeconds()).isEqualTo(60);
    assertThat(done.fraction()).hasValue(0);
  }

  @Test
  void aRhythmOfBreathsHasNoneUnlessSomeWereRecorded() {
    assertThat(SessionBuilder.ofSeconds(60).review().metrics().compressions()).isEmpty();
    Compressions done =
        SessionBuilder.ofSeconds(60)
            .compressions(10, 0, 0.5)
            .review()
            .metrics()
            .compressions()
            .orElseThrow();
    assertThat(done.count()).isEqualTo(10);
    assertThat(done.inRangeFraction()).isEmpty();
  }

  private static SessionBuilder arrest(double seconds) {
    return SessionBuilder.ofSeconds(seconds).in(Situation.ARREST_NO_ADVANCED_AIRWAY);
  }

  /** Everything done at its prompt. */
  private static Review exact(Rhythm rhythm, long lengthNanos) {
    PracticePlan plan =
        new PracticePlan(TestPlans.guidance(rhythm, TestPlans.usualLimits()), 0, lengthNanos, 0);
    List<SessionEvent> events = new ArrayList<>();
    for (Cue cue : CueSchedule.of(plan).between(0, lengthNanos)) {
      EventType what = cue.kind() == CueKind.COMPRESS ? EventType.COMPRESSION : EventType.BREATH;
      if (cue.kind() == CueKind.COMPRESS || cue.kind() == CueKind.SQUEEZE) {
        events.add(SessionEvent.of(events.size() + 1, cue.atNanos(), what, ""));
      }
    }
    events.add(SessionEvent.of(events.size() + 1, lengthNanos, EventType.FINISH, ""));
    return review(rhythm, lengthNanos, events);
  }

  private static Review review(Rhythm rhythm, long lengthNanos, List<SessionEvent> events) {
    PracticePlan plan =
        new PracticePlan(TestPlans.guidance(rhythm, TestPlans.usualLimits()), 0, lengthNanos, 0);
    return Reviewer.review(new Session(TestPlans.header(plan), events, List.of()));
  }
}
