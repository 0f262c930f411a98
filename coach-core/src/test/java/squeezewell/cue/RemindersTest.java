package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.protocol.Situation;

/**
 * Reminders, with instants worked out by hand. Pulse checks are due every 120 s and announced 10 s
 * ahead; a check within 60 s of its time serves it; reminders of one that is overdue come every 15
 * s.
 */
class RemindersTest {
  private static final long SECOND = TestPlans.SECOND;

  private static CueSchedule schedule(long minutes, Control... controls) {
    return CueSchedule.of(TestPlans.everySixSeconds(minutes * TestPlans.MINUTE), List.of(controls));
  }

  private static Control at(double seconds, Control.Kind kind) {
    return new Control((long) (seconds * SECOND), kind);
  }

  /** The cues of a kind as "seconds:count". */
  private static List<String> of(CueKind kind, CueSchedule schedule) {
    return schedule.between(0, 3_600 * SECOND).stream()
        .filter(c -> c.kind() == kind)
        .map(c -> c.atNanos() / SECOND + ":" + c.count())
        .collect(Collectors.toList());
  }

  @Test
  void aPulseCheckIsAnnouncedTenSecondsAheadAndAskedForUntilItIsMissed() {
    CueSchedule schedule = schedule(5);
    assertThat(of(CueKind.PULSE_CHECK_SOON, schedule)).containsExactly("110:1", "230:1");
    assertThat(of(CueKind.PULSE_CHECK_DUE, schedule))
        .containsExactly("120:1", "135:2", "150:3", "165:4", "240:1", "255:2", "270:3", "285:4");
    assertThat(of(CueKind.LAST_MINUTE, schedule)).containsExactly("240:1");
    assertThat(of(CueKind.SESSION_END, schedule)).containsExactly("300:1");
  }

  @Test
  void aPracticeUnderTwoMinutesHasNoLastMinute() {
    PracticePlan plan = TestPlans.everySixSeconds(120 * SECOND - 1);
    assertThat(of(CueKind.LAST_MINUTE, CueSchedule.of(plan))).isEmpty();
    assertThat(of(CueKind.LAST_MINUTE, schedule(2))).containsExactly("60:1");
  }

  @Test
  void aLateCheckServesItsTimeAndTheNextIsDueASpacingAfterItsStart() {
    CueSchedule schedule =
        schedule(5, at(140, Control.Kind.PULSE_CHECK), at(147, Control.Kind.PULSE_CHECK_END));
    assertThat(of(CueKind.PULSE_CHECK_DUE, schedule))
        .containsExactly("120:1", "135:2", "260:1", "275:2", "290:3");
    assertThat(of(CueKind.PULSE_CHECK_SOON, schedule)).containsExactly("110:1", "250:1");
    assertThat(schedule.pulseChecks())
        .containsExactly(
            new PulseCheckDue(120 * SECOND, OptionalLong.of(140 * SECOND), false),
            new PulseCheckDue(260 * SECOND, OptionalLong.empty(), false));
  }

  @Test
  void anEarlyCheckServesItsTimeSoThatNothingAsksForItAnyMore() {
    CueSchedule schedule =
        schedule(5, at(100, Control.Kind.PULSE_CHECK), at(107, Control.Kind.PULSE_CHECK_END));
    assertThat(of(CueKind.PULSE_CHECK_SOON, schedule)).containsExactly("210:1");
    assertThat(schedule.pulseChecks().get(0))
        .isEqualTo(new PulseCheckDue(120 * SECOND, OptionalLong.of(100 * SECOND), false));
  }

  @Test
  void aTimeThatNoCheckServesIsMissedAndTheNextIsASpacingLater() {
    CueSchedule schedule =
        schedule(10, at(185, Control.Kind.PULSE_CHECK), at(192, Control.Kind.PULSE_CHECK_END));
    // 185 s is over 60 s after 120 s, and within 60 s of 240 s.
    assertThat(schedule.pulseChecks().subList(0, 3))
        .containsExactly(
            new PulseCheckDue(120 * SECOND, OptionalLong.empty(), false),
            new PulseCheckDue(240 * SECOND, OptionalLong.of(185 * SECOND), false),
            new PulseCheckDue(305 * SECOND, OptionalLong.empty(), false));
  }

  @Test
  void aCheckExactlySixtySecondsLateStillServes() {
    CueSchedule schedule = schedule(10, at(180, Control.Kind.PULSE_CHECK));
    assertThat(schedule.pulseChecks().get(0))
        .isEqualTo(new PulseCheckDue(120 * SECOND, OptionalLong.of(180 * SECOND), false));
  }

  @Test
  void aCheckThatNothingAskedForIsExtraAndStillStartsTheSpacingAnew() {
    CueSchedule schedule =
        schedule(10, at(30, Control.Kind.PULSE_CHECK), at(37, Control.Kind.PULSE_CHECK_END));
    assertThat(schedule.pulseChecks().subList(0, 2))
        .containsExactly(
            new PulseCheckDue(30 * SECOND, OptionalLong.of(30 * SECOND), true),
            new PulseCheckDue(150 * SECOND, OptionalLong.empty(), false));
  }

  @Test
  void theNextCheckIsTheOneDueOrOverdue() {
    CueSchedule schedule =
        schedule(5, at(140, Control.Kind.PULSE_CHECK), at(147, Control.Kind.PULSE_CHECK_END));
    assertThat(schedule.nextPulseCheckAt(0)).hasValue(120 * SECOND);
    assertThat(schedule.nextPulseCheckAt(130 * SECOND)).hasValue(120 * SECOND);
    assertThat(schedule.nextPulseCheckAt(140 * SECOND)).hasValue(260 * SECOND);
    assertThat(schedule(1).nextPulseCheckAt(0)).isEmpty();
  }

  @Test
  void aRunningCheckIsCountedAndItsLimitIsRepeated() {
    CueSchedule schedule = schedule(5, at(120, Control.Kind.PULSE_CHECK));
    assertThat(of(CueKind.PULSE_CHECK_SECOND, schedule))
        .containsExactly(
            "121:1", "122:2", "123:3", "124:4", "125:5", "126:6", "127:7", "128:8", "129:9");
    assertThat(of(CueKind.PULSE_CHECK_ENOUGH, schedule)).containsExactly("125:1");
    assertThat(of(CueKind.PULSE_CHECK_LIMIT, schedule))
        .startsWith("130:1", "135:2", "140:3")
        .hasSize(34);
  }

  @Test
  void suctionIsWarnedOfBeforeItsLimitAndTheLimitIsRepeated() {
    CueSchedule schedule =
        schedule(5, at(30, Control.Kind.SUCTION), at(57, Control.Kind.SUCTION_END));
    assertThat(of(CueKind.SUCTION_SOON, schedule)).containsExactly("40:1");
    assertThat(of(CueKind.SUCTION_LIMIT, schedule)).containsExactly("45:1", "50:2", "55:3");
    assertThat(of(CueKind.SQUEEZE, schedule))
        .startsWith("0:1", "6:1", "12:1", "18:1", "24:1", "57:1");
  }

  @Test
  void aPauseMovesWhatFollowsIt() {
    CueSchedule schedule = schedule(5, at(100, Control.Kind.PAUSE), at(150, Control.Kind.RESUME));
    assertThat(of(CueKind.PULSE_CHECK_SOON, schedule)).containsExactly("160:1", "280:1");
    assertThat(of(CueKind.PULSE_CHECK_DUE, schedule)).startsWith("170:1");
    assertThat(of(CueKind.LAST_MINUTE, schedule)).containsExactly("290:1");
    assertThat(of(CueKind.SESSION_END, schedule)).containsExactly("350:1");
    assertThat(schedule.practisedAt(120 * SECOND)).isEqualTo(100 * SECOND);
    assertThat(schedule.practisedAt(160 * SECOND)).isEqualTo(110 * SECOND);
  }

  @Test
  void whatWasAnnouncedStaysAnnouncedWhenThePracticeIsHeldOrEnded() {
    assertThat(of(CueKind.PULSE_CHECK_SOON, schedule(5, at(115, Control.Kind.FINISH))))
        .containsExactly("110:1");
    assertThat(of(CueKind.PULSE_CHECK_SOON, schedule(5, at(115, Control.Kind.PAUSE))))
        .containsExactly("110:1");
  }

  @Test
  void whatFallsOnTheStartOfAPauseWaitsForItsEnd() {
    CueSchedule open = schedule(5, at(110, Control.Kind.PAUSE));
    assertThat(of(CueKind.PULSE_CHECK_SOON, open)).isEmpty();
    CueSchedule over = schedule(5, at(110, Control.Kind.PAUSE), at(200, Control.Kind.RESUME));
    assertThat(of(CueKind.PULSE_CHECK_SOON, over)).startsWith("200:1");
  }

  @Test
  void anEarlyCheckBeforeAnOpenPauseKeepsItsTimeAndMakesNoReminderInThePast() {
    CueSchedule schedule =
        schedule(
            5,
            at(100, Control.Kind.PULSE_CHECK),
            at(105, Control.Kind.PULSE_CHECK_END),
            at(106, Control.Kind.PAUSE));
    assertThat(of(CueKind.PULSE_CHECK_SOON, schedule)).isEmpty();
    assertThat(schedule.pulseChecks())
        .containsExactly(new PulseCheckDue(120 * SECOND, OptionalLong.of(100 * SECOND), false));
  }

  @Test
  void aCountInCountsDownAndAControlInsideItLeavesItsCountsAlone() {
    PracticePlan plan =
        new PracticePlan(
            TestPlans.adult(Situation.PULSE_NO_BREATHING), 5 * SECOND, TestPlans.MINUTE, 0);
    CueSchedule whole = CueSchedule.of(plan);
    List<String> counts =
        whole.between(0, 5 * SECOND).stream()
            .map(c -> c.atNanos() / SECOND + ":" + c.count() + " of " + c.of())
            .collect(Collectors.toList());
    assertThat(counts).containsExactly("0:5 of 5", "1:4 of 5", "2:3 of 5", "3:2 of 5", "4:1 of 5");
    CueSchedule finished = whole.with(new Control(2_500 * TestPlans.MILLI, Control.Kind.FINISH));
    assertThat(of(CueKind.COUNT, finished)).containsExactly("0:5", "1:4", "2:3");
    assertThat(finished.endNanos()).hasValue(2_500 * TestPlans.MILLI);
    assertThat(finished.practisedAt(TestPlans.MINUTE)).isZero();
    CueSchedule paused =
        whole
            .with(new Control(2 * SECOND, Control.Kind.PAUSE))
            .with(new Control(4 * SECOND, Control.Kind.RESUME));
    assertThat(of(CueKind.SQUEEZE, paused)).startsWith("4:1", "10:1");
    assertThat(paused.endNanos()).hasValue(67 * SECOND);
  }

  @Test
  void aControlAtTheVeryEndComesTooLate() {
    CueSchedule schedule = schedule(1, at(60, Control.Kind.PAUSE));
    assertThat(schedule.endNanos()).hasValue(60 * SECOND);
    assertThat(schedule.stretchAt(60 * SECOND).kind()).isEqualTo(Segment.Kind.ENDED);
  }

  @Test
  void endsWithoutAStartChangeNothing() {
    CueSchedule schedule =
        schedule(
            1,
            at(10, Control.Kind.PULSE_CHECK_END),
            at(11, Control.Kind.SUCTION_END),
            at(12, Control.Kind.RESUME));
    assertThat(schedule.between(0, TestPlans.HOUR))
        .isEqualTo(schedule(1).between(0, TestPlans.HOUR));
  }

  @Test
  void aDayAtSixSecondsHasFourteenThousandFourHundredSqueezes() {
    CueSchedule schedule = CueSchedule.of(TestPlans.everySixSeconds(24 * TestPlans.HOUR));
    List<Cue> squeezes = schedule.squeezesUntil(24 * TestPlans.HOUR);
    assertThat(squeezes).hasSize(14_400);
    assertThat(squeezes.get(14_399).atNanos()).isEqualTo(14_399L * 6 * SECOND);
  }

  @Test
  void controlsOutOfOrderOrBeyondAYearAreRefused() {
    assertThatThrownBy(() -> schedule(1, at(10, Control.Kind.PAUSE), at(9, Control.Kind.RESUME)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Control(Long.MAX_VALUE, Control.Kind.PAUSE))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theLastControlThatIsAllowedDoesNotOverflow() {
    CueSchedule schedule =
        schedule(
            5, at(10, Control.Kind.PAUSE), new Control(Control.LATEST_NANOS, Control.Kind.RESUME));
    assertThat(schedule.endNanos()).hasValue(Control.LATEST_NANOS + 290 * SECOND);
    assertThat(schedule.between(0, Long.MAX_VALUE)).isNotEmpty();
  }
}
