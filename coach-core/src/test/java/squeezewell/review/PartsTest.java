package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Collectors;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.Segment;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.judge.Severity;
import squeezewell.review.judge.Verdict;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.Interruption;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;

/**
 * Sessions whose rhythm changes, worked by hand. AHA 2025: an adult with a pulse one breath every 6
 * s (range 5 to 7 s, our own choice); without one 30:2, our pace 110 a minute and 4 s for the
 * breaths, so a cycle of 30 x 60/110 + 4 = 20.3636 s; a child one breath every 2 to 3 s. Prompts
 * start at 0 without a count-in.
 */
class PartsTest {
  private static final PatientChange LOST = PatientChange.PULSE_LOST;
  private static final PatientChange BACK = PatientChange.PULSE_BACK;

  /**
   * Breaths at 0.2, 6.2 .. 114.2 (20); pulse lost at 120; three cycles of 30 compressions 0.545 s
   * apart from 120, 140.4 and 160.8, with breaths after the first two; pulse back at 180. The last
   * prompt of the cycle would be at 177.0909 and 179.0909; the second is less than 6 s before the
   * change, so the next is at 185.0909, then every 6 s to 239.0909 (10).
   */
  private static SessionBuilder lostAndBack() {
    return SessionBuilder.ofSeconds(240)
        .breathsEvery(6, 0.2, 114.2)
        .finding(120, LOST)
        .compressions(30, 120, 0.545)
        .breaths(136.5, 138.5)
        .compressions(30, 140.4, 0.545)
        .breaths(156.9, 158.9)
        .compressions(30, 160.8, 0.545)
        .breaths(177.2, 179.2)
        .finding(180, BACK)
        .breathsEvery(6, 185.3, 239.3);
  }

  @Test
  void aSessionIsCutWhereTheRhythmChanges() {
    Review review = lostAndBack().review();
    assertThat(review.parts())
        .extracting(p -> p.startNanos() / 1e9)
        .containsExactly(0., 120., 180.);
    assertThat(review.parts())
        .extracting(p -> p.endNanos() / 1e9)
        .containsExactly(120., 180., 240.);
    assertThat(review.parts())
        .extracting(p -> p.asked().situation())
        .containsExactly(
            Situation.PULSE_NO_BREATHING.label(),
            Situation.ARREST_NO_ADVANCED_AIRWAY.label(),
            Situation.PULSE_NO_BREATHING.label());
    assertThat(review.found()).extracting(f -> f.finding()).containsExactly(LOST, BACK);
    assertThat(review.parts()).allMatch(p -> p.found().isEmpty() && p.parts().isEmpty());
    assertThat(review.rhythms()).isEqualTo(review.parts());
  }

  @Test
  void noIntervalSpansAChangeAndThePoolHoldsThoseOfBothParts() {
    // 20 breaths have 19 intervals, 10 have 9; 114.2 to 136.5 and 179.2 to 185.3 are none.
    Review review = lostAndBack().review();
    Metrics metrics = review.metrics();
    assertThat(review.intervals()).hasSize(28);
    assertThat(metrics.interval().count()).isEqualTo(28);
    assertThat(metrics.interval().inRangeFraction()).hasValue(1);
    assertThat(metrics.interval().meanSeconds().getAsDouble()).isCloseTo(6, within(1e-9));
    assertThat(metrics.rate().overallPerMinute().getAsDouble()).isCloseTo(10, within(1e-9));
    // Prompts: 20 and 10; in the cycles between a trainee's own cycle counts, not their beat.
    assertThat(metrics.prompts()).isEmpty();
    assertThat(review.parts())
        .extracting(p -> p.metrics().prompts().map(Metrics.Prompts::given).orElse(-1))
        .containsExactly(20, -1, 10);
    assertThat(metrics.breathCount()).isEqualTo(36);
    // From 114.2 to 136.5, the whole session through: 22.3 s.
    assertThat(metrics.gap().longestSeconds()).isCloseTo(22.3, within(1e-9));
    assertThat(metrics.drift().percentPerMinute()).isEmpty();
  }

  @Test
  void pooledFiguresAreThoseOfAReferenceLibrary() {
    // Intervals 5.5, 6.5, 6 before; 6.1, 5.6 after a slip that splits the session.
    double[] lengths = {5.5, 6.5, 6, 6.1, 5.6};
    Review review =
        SessionBuilder.ofSeconds(42)
            .breaths(0, 5.5, 12, 18)
            .finding(19, LOST)
            .undone(21)
            .breaths(24.1, 30.2, 35.8)
            .review();
    Metrics.Interval interval = review.metrics().interval();
    assertThat(interval.meanSeconds().getAsDouble())
        .isCloseTo(StatUtils.mean(lengths), within(1e-9));
    assertThat(interval.sdSeconds().getAsDouble())
        .isCloseTo(new StandardDeviation().evaluate(lengths), within(1e-9));
    assertThat(interval.medianSeconds().getAsDouble())
        .isCloseTo(StatUtils.percentile(lengths, 50), within(1e-9));
    assertThat(review.metrics().rate().overallPerMinute().getAsDouble())
        .isCloseTo(60 / StatUtils.mean(lengths), within(1e-9));
  }

  @Test
  void eachIntervalIsJudgedByTheRangeOfItsOwnPart() {
    // A newborn needs 40 to 60 breaths a minute (NRP 8: every 1 to 1.5 s), a child every 2 to 3 s;
    // ERC 2021 asks an infant for other rates than AHA. Here a child: 2.4 s is in range, 4 s slow;
    // with an airway in place the same range holds, and an interval across the change is none.
    Review review =
        SessionBuilder.ofSeconds(40)
            .by(TestPlans.edition("aha-2025"), PatientGroup.CHILD)
            .in(Situation.ARREST_ADVANCED_AIRWAY)
            .breaths(0, 2.4, 4.8, 8.8)
            .finding(10, BACK)
            .breaths(11, 13.4, 17.4, 18.4)
            .review();
    assertThat(review.parts()).hasSize(2);
    assertThat(review.intervals())
        .extracting(IntervalPoint::judgement)
        .containsExactly(
            Judgement.IN_RANGE,
            Judgement.IN_RANGE,
            Judgement.SLOW,
            Judgement.IN_RANGE,
            Judgement.SLOW,
            Judgement.FAST);
    assertThat(review.breaths().get(4).judgement()).isEqualTo(Judgement.UNJUDGED);
  }

  @Test
  void differentRhythmsHaveNoMeanInCommon() {
    // A service that asks for 6 s without breathing and 4 s with slow breathing.
    Review review =
        SessionBuilder.ofSeconds(60)
            .by(TwoRhythms.protocol(), PatientGroup.ADULT)
            .breathsEvery(6, 0.1, 24.1)
            .finding(27, PatientChange.BREATHING_SLOW)
            .breathsEvery(4, 30.1, 58.1)
            .review();
    Metrics metrics = review.metrics();
    // 0.1 to 24.1: 4 intervals of 6 s; 30.1 to 58.1: 7 of 4 s, each in its own range (5 to 7 and
    // 3 to 5 s), which those of the other part would not be.
    assertThat(metrics.interval().count()).isEqualTo(11);
    assertThat(metrics.interval().inRangeCount()).isEqualTo(11);
    assertThat(metrics.interval().meanSeconds()).isEmpty();
    assertThat(metrics.interval().sdSeconds()).isEmpty();
    assertThat(metrics.rate().overallPerMinute()).isEmpty();
    assertThat(metrics.interval().tempoErrorPercent().getAsDouble()).isCloseTo(0, within(1e-9));
    // 13 breaths in 60 s.
    assertThat(metrics.rate().countPerMinute().getAsDouble()).isCloseTo(13, within(1e-9));
    assertThat(review.parts())
        .extracting(p -> p.metrics().interval().meanSeconds().getAsDouble())
        .satisfiesExactly(
            a -> assertThat(a).isCloseTo(6, within(1e-9)),
            b -> assertThat(b).isCloseTo(4, within(1e-9)));
  }

  @Test
  void aBreathSoonAfterAChangeThatAnswersThePromptBeforeItBelongsThere() {
    // Prompts at 0, 6, 12; pulse lost at 12.3; the squeeze for 12 comes at 12.5.
    Review review =
        SessionBuilder.ofSeconds(28)
            .breaths(0.2, 6.2)
            .squeeze(12.5, 1, "")
            .finding(12.3, LOST)
            .compressions(20, 13, 0.55)
            .review();
    assertThat(review.parts().get(0).breaths()).hasSize(3);
    assertThat(review.parts().get(1).breaths()).isEmpty();
    assertThat(review.parts().get(0).metrics().prompts())
        .contains(new Metrics.Prompts(3, 3, 0, 0, 0));
    assertThat(review.intervals()).extracting(IntervalPoint::seconds).hasSize(2);
    // What follows it is counted from its end at 13.5: 14.5 s to the end at 28, not 15.7 from the
    // change on. In the first part nothing is left after it.
    assertThat(review.parts().get(1).metrics().gap().longestSeconds())
        .isCloseTo(14.5, within(1e-9));
    assertThat(review.parts().get(0).metrics().gap().longestSeconds()).isCloseTo(6.3, within(1e-9));
  }

  @Test
  void aBreathBeforeAChangeThatAnswersThePromptAfterItBelongsThere() {
    // Without a pulse, the pulse is back at 10: a prompt at once. The breath at 9.8 answers it.
    Review review =
        SessionBuilder.ofSeconds(22)
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY)
            .breaths(9.8)
            .finding(10, BACK)
            .breaths(16.1)
            .review();
    assertThat(review.parts().get(0).breaths()).isEmpty();
    assertThat(review.parts().get(1).breaths()).hasSize(2);
    assertThat(review.parts().get(1).metrics().firstBreathSeconds().getAsDouble())
        .isCloseTo(-0.2, within(1e-9));
    assertThat(review.intervals()).extracting(IntervalPoint::seconds).containsExactly(6.3);
  }

  @Test
  void aPromptRightBeforeAChangeIsNotHeldAgainstTheTrainee() {
    // The prompt at 12 comes 1.2 s before the pulse is lost; a wait of up to 1.5 s is excused.
    assertThat(
            SessionBuilder.ofSeconds(28)
                .breaths(0.2, 6.2)
                .finding(13.2, LOST)
                .compressions(20, 14, 0.55)
                .review()
                .parts()
                .get(0)
                .metrics()
                .prompts())
        .contains(new Metrics.Prompts(3, 2, 0, 0, 1));
    // 1.6 s before it is missed.
    assertThat(
            SessionBuilder.ofSeconds(28)
                .breaths(0.2, 6.2)
                .finding(13.6, LOST)
                .compressions(20, 14, 0.55)
                .review()
                .parts()
                .get(0)
                .metrics()
                .prompts())
        .contains(new Metrics.Prompts(3, 2, 1, 0, 0));
  }

  @Test
  void compressionsArePooledOverThePartsThatAskForThem() {
    // 120 to 150 and 180 to 240 without a pulse. First: 50 at 0.5 s from 121 (to 145.5), which end
    // at 146: 1 s before, 4 s after, of 30. Second: 60 at 0.5 s from 180 (to 209.5), a pause, 51
    // from 214.5 (to 239.5), which end at 240: 214.5 - 210 = 4.5 s, of 60. One stray at 150.2 is
    // counted only. In all 162; hands off 5 + 4.5 = 9.5 of 90 s.
    Review review =
        SessionBuilder.ofSeconds(240)
            .finding(120, LOST)
            .compressions(50, 121, 0.5)
            .finding(150, BACK)
            .compressions(1, 150.2, 0.5)
            .finding(180, LOST)
            .compressions(60, 180, 0.5)
            .breaths(211, 213)
            .compressions(51, 214.5, 0.5)
            .review();
    Compressions done = review.metrics().compressions().orElseThrow();
    assertThat(done.count()).isEqualTo(162);
    assertThat(done.handsOffSeconds()).isCloseTo(9.5, within(1e-9));
    assertThat(done.fraction().getAsDouble()).isCloseTo(1 - 9.5 / 90, within(1e-9));
    assertThat(done.ratePerMinute().getAsDouble()).isCloseTo(120, within(1e-9));
    assertThat(done.inRangeFraction().getAsDouble()).isCloseTo(1, within(1e-9));
    // 209.5 to 214.5; what the changes cut off is no pause.
    assertThat(done.pauseCount()).isEqualTo(1);
    assertThat(done.longestPauseSeconds().getAsDouble()).isCloseTo(5, within(1e-9));
    assertThat(done.cycles()).hasSize(1);
    assertThat(done.goodCycles()).isZero();
  }

  @Test
  void anAirwayThatIsPlacedWhileOneCompressesCostsNoHandsOffTime() {
    // 40 at 0.5 s from 0 (to 19.5, ends at 20); the airway at 10.2. Nothing is hands off.
    Compressions done =
        SessionBuilder.ofSeconds(20)
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY)
            .compressions(40, 0, 0.5)
            .finding(10.2, PatientChange.ADVANCED_AIRWAY)
            .review()
            .metrics()
            .compressions()
            .orElseThrow();
    assertThat(done.handsOffSeconds()).isCloseTo(0, within(1e-9));
    assertThat(done.fraction().getAsDouble()).isCloseTo(1, within(1e-9));
  }

  @Test
  void aCheckIsInOnePartOnlyAndNoneIsMissedBecauseOfAChange() {
    // Check from 118 to 126, when the pulse is found lost: due at 120, 2 s early. Without a change
    // the next would be due at 238; it is 126 + 120 = 246 by the change, after the end.
    Review review =
        SessionBuilder.ofSeconds(240)
            .breathsEvery(6, 0.2, 114.2)
            .event(118, EventType.PULSE_CHECK, "")
            .finding(126, LOST)
            .review();
    assertThat(review.metrics().pulseChecks()).hasSize(1);
    PulseCheckResult check = review.metrics().pulseChecks().get(0);
    assertThat(check.outcome()).isEqualTo(PulseCheckResult.Outcome.ON_TIME);
    assertThat(check.lengthOutcome()).isEqualTo(PulseCheckResult.LengthOutcome.RIGHT);
    assertThat(check.lengthSeconds()).hasValue(8);
    assertThat(review.parts().get(0).metrics().pulseChecks()).containsExactly(check);
    assertThat(review.parts().get(1).metrics().pulseChecks()).isEmpty();
    // The pulse is lost at 110, 10 s before the check was due: it is void, the next due at 230.
    Review early = SessionBuilder.ofSeconds(240).finding(110, LOST).review();
    assertThat(early.metrics().pulseChecks())
        .extracting(PulseCheckResult::outcome)
        .containsExactly(PulseCheckResult.Outcome.NOT_COUNTED);
    assertThat(early.metrics().pulseChecks().get(0).dueSeconds()).hasValue(230);
  }

  @Test
  void aCheckThatWasMissedLongBeforeAChangeStaysMissed() {
    // Due at 120, not made; the pulse is lost at 190, more than 60 s later.
    Review review = SessionBuilder.ofSeconds(240).finding(190, LOST).review();
    assertThat(review.metrics().pulseChecks())
        .extracting(PulseCheckResult::outcome)
        .containsExactly(PulseCheckResult.Outcome.MISSED);
  }

  @Test
  void timeInWhichThePatientIsOnlyWatchedIsExcused() {
    // Breaths to 24.2, breathing well from 27, stopped at 87: a prompt at once, then 93, 99.
    Review review =
        SessionBuilder.ofSeconds(120)
            .breathsEvery(6, 0.2, 24.2)
            .finding(27, PatientChange.BREATHING_BACK)
            .finding(87, PatientChange.BREATHING_STOPPED)
            .breathsEvery(6, 87.2, 117.2)
            .review();
    assertThat(review.parts()).as("the rhythm is the same after as before").isEmpty();
    assertThat(review.holds())
        .containsExactly(
            new Interruption(
                Segment.Kind.WATCHING,
                27_000_000_000L,
                87_000_000_000L,
                60_000_000_000L,
                false,
                false));
    assertThat(review.metrics().prompts()).contains(new Metrics.Prompts(11, 11, 0, 0, 0));
    assertThat(review.metrics().effectiveSeconds()).isEqualTo(60);
    assertThat(review.metrics().interval().count()).isEqualTo(4 + 5);
    assertThat(review.metrics().interval().slowCount()).isZero();
    // 24.2 to 87.2 less the 60 s: 3 s. The longest net is then 6 s.
    assertThat(review.metrics().gap().longestSeconds()).isCloseTo(6, within(1e-9));
    assertThat(InterruptionsTest.codes(review)).doesNotContain("long-gap", "missed-prompts");
    assertThat(review.found()).hasSize(2);
  }

  @Test
  void watchingDoesNotCountForTheTwoMinutesOfTheRule() {
    // 27 s and 90 s of breathing: 117 of 187 s.
    Review review =
        SessionBuilder.ofSeconds(187)
            .breathsEvery(6, 0.2, 24.2)
            .finding(27, PatientChange.BREATHING_BACK)
            .finding(97, PatientChange.BREATHING_STOPPED)
            .breathsEvery(6, 97.2, 181.2)
            .review();
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.TOO_SHORT);
    assertThat(review.reasons()).containsExactly("practiced for 1:57; the rule needs 2:00");
  }

  @Test
  void aSlipIsAPartThatIsNotJudged() {
    // No pulse at 20, taken back at 23: nothing was compressed, and the breath at 24 stands.
    Review review =
        SessionBuilder.ofSeconds(60)
            .breathsEvery(6, 0.2, 18.2)
            .finding(20, LOST)
            .undone(23)
            .breathsEvery(6, 24.2, 54.2)
            .review();
    assertThat(review.parts()).hasSize(3);
    Review slip = review.parts().get(1);
    assertThat(slip.verdict().outcome()).isEqualTo(Verdict.Outcome.NOT_JUDGED);
    assertThat(slip.notes()).hasSize(1);
    assertThat(review.metrics().prompts()).contains(new Metrics.Prompts(10, 10, 0, 0, 0));
    assertThat(review.metrics().interval().count()).isEqualTo(3 + 5);
    assertThat(review.metrics().compressions()).isEmpty();
    assertThat(review.findings()).allMatch(f -> f.severity() == Severity.GOOD);
    assertThat(review.found().get(0).undone()).isTrue();
    assertThat(review.reasons()).containsExactly("practiced for 0:57; the rule needs 2:00");
  }

  @Test
  void aSlipInAPauseIsASlipToo() {
    // Found at 20 in a pause from 19, in force from its end at 22, taken back at 24.
    Review review =
        SessionBuilder.ofSeconds(60)
            .breathsEvery(6, 0.2, 18.2)
            .pause(19, 22)
            .finding(20, LOST)
            .undone(24)
            .review();
    assertThat(review.parts()).hasSize(3);
    assertThat(review.parts().get(1).startNanos()).isEqualTo(22_000_000_000L);
    assertThat(review.parts().get(1).notes()).isNotEmpty();
    assertThat(review.metrics().compressions()).isEmpty();
  }

  @Test
  void aChangeInTheCountInMakesOnePart() {
    Review review =
        SessionBuilder.ofSeconds(60).countIn(3).finding(1, LOST).compressions(90, 3, 0.55).review();
    assertThat(review.parts()).isEmpty();
    assertThat(review.asked().situation()).isEqualTo(Situation.ARREST_NO_ADVANCED_AIRWAY.label());
    assertThat(review.found()).hasSize(1);
    assertThat(review.metrics().compressions().orElseThrow().cycles()).isEmpty();
    assertThat(review.metrics().compressions().orElseThrow().pauseLimitSeconds()).isPresent();
  }

  @Test
  void aChangeInAPauseComesIntoForceWhenItEnds() {
    Review review =
        SessionBuilder.ofSeconds(60)
            .breathsEvery(6, 0.2, 18.2)
            .pause(20, 40)
            .finding(30, LOST)
            .compressions(30, 40, 0.55)
            .review();
    assertThat(review.parts()).extracting(p -> p.endNanos() / 1e9).containsExactly(40., 80.);
    assertThat(review.parts().get(0).metrics().effectiveSeconds()).isEqualTo(20);
    assertThat(review.asked().practisedNanos()).isEqualTo(60_000_000_000L);
  }

  @Test
  void aChangeInSuctionWaitsForItsEndUnlessTheChestMustBeCompressed() {
    // A child who breathes slowly again: the suction from 20 goes on to 28.
    assertThat(suctioned(PatientChange.BREATHING_SLOW).parts())
        .extracting(p -> p.endNanos() / 1e9)
        .containsExactly(28., 60.);
    Review lost = suctioned(LOST);
    assertThat(lost.parts()).extracting(p -> p.endNanos() / 1e9).containsExactly(24., 60.);
    assertThat(lost.metrics().suctions()).hasSize(1);
    assertThat(lost.metrics().suctions().get(0).lengthSeconds()).isEqualTo(4);
  }

  private static Review suctioned(PatientChange finding) {
    return SessionBuilder.ofSeconds(60)
        .by(TwoRhythms.protocol(), PatientGroup.ADULT)
        .suction(20, 28)
        .finding(24, finding)
        .review();
  }

  @Test
  void aChangeAtTheVeryEndMakesNoPart() {
    assertThat(SessionBuilder.ofSeconds(60).finding(60, LOST).review().parts()).isEmpty();
    Review review = SessionBuilder.ofSeconds(60).finding(59.999, LOST).review();
    assertThat(review.parts()).hasSize(2);
    assertThat(review.findings()).isNotEmpty();
    assertThat(InterruptionsTest.codes(review)).doesNotContain("compressions-missing");
  }

  @Test
  void ofTwoChangesAtOneInstantTheLastCounts() {
    Review review =
        SessionBuilder.ofSeconds(60)
            .finding(30, LOST)
            .finding(30, PatientChange.ADVANCED_AIRWAY)
            .compressions(50, 30.5, 0.55)
            .review();
    assertThat(review.parts())
        .extracting(p -> p.asked().situation())
        .containsExactly(
            Situation.PULSE_NO_BREATHING.label(), Situation.ARREST_ADVANCED_AIRWAY.label());
    assertThat(InterruptionsTest.codes(review)).containsOnlyOnce("compressions-at-once");
    assertThat(SessionBuilder.ofSeconds(60).finding(30, LOST).finding(30, BACK).review().parts())
        .isEmpty();
  }

  @Test
  void partsThatAskForTheSameBreathsAreJudgedTogether() {
    // 120 s before and 60 s after, at 6 s each: held. Each by itself: the second is too short.
    Review review = lostAndBack().review();
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.HELD);
    assertThat(review.parts())
        .extracting(p -> p.verdict().outcome())
        .containsExactly(
            Verdict.Outcome.HELD, Verdict.Outcome.NOT_JUDGED, Verdict.Outcome.TOO_SHORT);
  }

  @Test
  void whatIsFoundSaysInWhichPart() {
    // 3 s apart after the pulse is back, where 6 s were asked.
    SessionBuilder fast =
        SessionBuilder.ofSeconds(240)
            .breathsEvery(6, 0.2, 84.2)
            .finding(90, LOST)
            .compressions(30, 90, 0.545)
            .breaths(106.5, 108.5)
            .finding(110, BACK)
            .breathsEvery(3, 114.5, 237.5);
    Feedback first = fast.review().findings().get(0);
    assertThat(first.code()).isEqualTo("too-fast");
    assertThat(first.title()).isEqualTo("Too fast, after 1:50");
    assertThat(first.text())
        .startsWith(
            "From 1:50 (pulse, not breathing): 41 of 41 intervals were too short, usually 3 s");
    List<String> even =
        lostAndBack().review().findings().stream()
            .filter(f -> f.code().equals("rhythm-even"))
            .map(Feedback::title)
            .collect(Collectors.toList());
    assertThat(even).containsExactly("Breaths at the right rate, before 2:00 and after 3:00");
  }

  @Test
  void aPartWithoutABreathIsToldOf() {
    Review review =
        SessionBuilder.ofSeconds(120)
            .breathsEvery(6, 0.2, 54.2)
            .finding(60, LOST)
            .compressions(30, 60, 0.545)
            .breaths(76.6, 78.6)
            .finding(80, BACK)
            .review();
    // Prompts at 84.3636, then every 6 s to 114.3636: 6 and none answered.
    Feedback first = review.findings().get(0);
    assertThat(first.code()).isEqualTo("no-breaths");
    assertThat(first.title()).isEqualTo("No breath was recorded, after 1:20");
    assertThat(first.text()).contains("6 breaths were asked for and none was recorded");
  }

  @Test
  void compressionsThatStartLateAreAFault() {
    // 12 s after the finding, where 10 s are the longest check for a pulse.
    Review review =
        SessionBuilder.ofSeconds(120)
            .breathsEvery(6, 0.2, 54.2)
            .finding(60, LOST)
            .compressions(30, 72, 0.545)
            .review();
    assertThat(review.findings())
        .filteredOn(f -> f.code().equals("compressions-late"))
        .singleElement()
        .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.FAULT))
        .satisfies(f -> assertThat(f.text()).contains("12 s after the finding at 1:00"));
  }

  @Test
  void compressionsThatGoOnLongAfterThePulseIsBackAreToldOf() {
    // From 60 every 0.5 s to 74.5 (30); more than 10 s after 60 are those at 70.5 to 74.5: 9.
    SessionBuilder session =
        SessionBuilder.ofSeconds(120)
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY)
            .compressions(100, 0, 0.5)
            .finding(60, BACK)
            .compressions(30, 60, 0.5)
            .breathsEvery(6, 60.2, 114.2);
    assertThat(session.review().findings())
        .filteredOn(f -> f.code().equals("compressions-went-on"))
        .singleElement()
        .satisfies(
            f -> assertThat(f.text()).startsWith("9 compressions came more than 10 s after"));
  }

  @Test
  void breathsForAPatientWhoBreathesWellAreToldOf() {
    // Well from 27 s on; breaths at 30.2 and 36.2 are let pass, 42.2 to 54.2 are three.
    Review review =
        SessionBuilder.ofSeconds(60)
            .breathsEvery(6, 0.2, 54.2)
            .finding(27, PatientChange.BREATHING_BACK)
            .review();
    assertThat(review.findings())
        .filteredOn(f -> f.code().equals("breaths-not-needed"))
        .singleElement()
        .satisfies(f -> assertThat(f.text()).startsWith("3 breaths came although"));
    assertThat(InterruptionsTest.codes(review)).doesNotContain("extra-breaths", "rhythm-uneven");
  }
}
