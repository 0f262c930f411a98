package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Situation;

/**
 * Worked by hand: one breath every 6 s, squeezed for 1 s. The cues of a breath at 0 are the squeeze
 * at 0, the release at 1 and counts at 2, 3, 4 and 5.
 */
class UnpromptedSpanTest {
  private static final long SECOND = TestPlans.SECOND;
  private static final long MINUTE = TestPlans.MINUTE;

  private static final CueSchedule PLAIN = CueSchedule.of(TestPlans.everySixSeconds(5 * MINUTE));

  private static Control off(double seconds) {
    return at(seconds, Control.Kind.PROMPTS_OFF);
  }

  private static Control at(double seconds, Control.Kind kind) {
    return new Control(Math.round(seconds * 1e9), kind);
  }

  private static CueSchedule with(Control... controls) {
    return CueSchedule.of(PLAIN.plan(), List.of(controls));
  }

  /** The cues of breaths in a span as "seconds kind". */
  private static List<String> breaths(CueSchedule schedule, double from, double to) {
    return schedule.between(Math.round(from * 1e9), Math.round(to * 1e9)).stream()
        .filter(
            c ->
                c.kind() == CueKind.SQUEEZE
                    || c.kind() == CueKind.RELEASE
                    || c.kind() == CueKind.COUNT)
        .map(c -> c.atNanos() / 1e9 + " " + c.kind().id())
        .collect(Collectors.toList());
  }

  @Test
  void aBreathThatComesLateKeepsTheCuesBeforeItAndNothingFollows() {
    // The breath of the prompt at 12 s came at 12.3: squeeze at 12 and release at 13 still come.
    CueSchedule schedule = with(off(12.3));
    assertThat(breaths(schedule, 11, 40))
        .containsExactly("11.0 count", "12.0 squeeze", "13.0 release");
    assertThat(schedule.silences()).containsExactly(new UnpromptedSpan(14 * SECOND, 300 * SECOND));
  }

  @Test
  void aBreathThatComesBeforeItsPromptKeepsThatPrompt() {
    CueSchedule schedule = with(off(11.6));
    assertThat(breaths(schedule, 11, 40))
        .containsExactly("11.0 count", "12.0 squeeze", "13.0 release");
  }

  @Test
  void aBreathInTheMiddleOfTheWaitIsFollowedByNothing() {
    assertThat(breaths(with(off(8.5)), 6, 40))
        .containsExactly("6.0 squeeze", "7.0 release", "8.0 count");
  }

  @Test
  void theRhythmIsCountedOnFromTheBreathThatBringsThePromptsBack() {
    // Silent from 14 s on; the breath at 40.7 brings prompts back: release one second after it, the
    // next squeeze six seconds after it.
    CueSchedule schedule = with(off(12.3), at(40.7, Control.Kind.PROMPTS_ON));
    assertThat(breaths(schedule, 13.5, 54))
        .containsExactly(
            "41.7 release",
            "42.7 count",
            "43.7 count",
            "44.7 count",
            "45.7 count",
            "46.7 squeeze",
            "47.7 release",
            "48.7 count",
            "49.7 count",
            "50.7 count",
            "51.7 count",
            "52.7 squeeze",
            "53.7 release");
    assertThat(schedule.silences())
        .containsExactly(new UnpromptedSpan(14 * SECOND, 40_700_000_001L));
  }

  @Test
  void afterALongWaitTheFirstSqueezeIsPromptedAtOnce() {
    CueSchedule schedule = with(off(12.3), at(40.7, Control.Kind.PROMPTS_AT_ONCE));
    assertThat(breaths(schedule, 13.5, 48))
        .containsExactly(
            "40.7 squeeze",
            "41.7 release",
            "42.7 count",
            "43.7 count",
            "44.7 count",
            "45.7 count",
            "46.7 squeeze",
            "47.7 release");
  }

  @Test
  void atestIsSilentFromItsFirstBreathOnAndStillCountsIn() {
    PracticePlan plan =
        new PracticePlan(PLAIN.plan().guidance(), 3 * SECOND, 2 * MINUTE, 0).with(Prompting.NONE);
    CueSchedule schedule = CueSchedule.of(plan, List.of(new Control(0, Control.Kind.PROMPTS_OFF)));
    assertThat(breaths(schedule, 0, 200)).containsExactly("0.0 count", "1.0 count", "2.0 count");
    // Two minutes, two intervals of 6 s and a check of 10 s: a breath at or after 2:00 is in it.
    assertThat(schedule.endNanos()).hasValue((3 + 120 + 12 + 10) * SECOND);
    assertThat(schedule.momentAt(2 * SECOND).act()).isEqualTo(Moment.Act.GET_READY);
    assertThat(schedule.momentAt(3 * SECOND).act()).isEqualTo(Moment.Act.KEEP_RHYTHM);
    assertThat(schedule.momentAt(3 * SECOND).count()).isZero();
    assertThat(schedule.momentAt(5 * SECOND).fill()).isZero();
    assertThat(schedule.momentAt(5 * SECOND).nextSqueezeNanos()).isEmpty();
  }

  @Test
  void whatKeepsAPatientSafeIsToldInSilenceToo() {
    CueSchedule schedule =
        with(
            off(0),
            at(150, Control.Kind.SUCTION),
            at(171, Control.Kind.SUCTION_END),
            at(200, Control.Kind.PULSE_CHECK),
            at(212, Control.Kind.PULSE_CHECK_END));
    assertThat(schedule.between(0, 300 * SECOND + 1))
        .extracting(c -> c.atNanos() / SECOND + " " + c.kind().id())
        .contains(
            "110 pulse-check-soon",
            "120 pulse-check-due",
            "160 suction-soon",
            "165 suction-limit",
            "170 suction-limit",
            "205 pulse-check-enough",
            "210 pulse-check-limit",
            "240 last-minute",
            "300 session-end")
        .noneMatch(line -> line.endsWith("squeeze") || line.endsWith(" release"));
  }

  @Test
  void anotherRhythmStartsWithItsPrompts() {
    Guidance arrest = TestPlans.adult(Situation.ARREST_NO_ADVANCED_AIRWAY);
    CueSchedule schedule = with(off(12.3), Control.change(30 * SECOND, arrest));
    assertThat(schedule.silences()).containsExactly(new UnpromptedSpan(14 * SECOND, 30 * SECOND));
    assertThat(schedule.between(30 * SECOND, 31 * SECOND))
        .extracting(Cue::kind)
        .contains(CueKind.RHYTHM_CHANGED, CueKind.COMPRESS);
  }

  @Test
  void aRhythmThatFollowsASilenceDoesNotWaitForASqueezeThatNobodyHeard() {
    Guidance slow = TestPlans.adult(Situation.PULSE_SLOW_BREATHING);
    CueSchedule schedule = with(off(12.3), Control.change(31 * SECOND, slow));
    // The silent rhythm asked for a squeeze at 30 s; the new one starts at once.
    assertThat(breaths(schedule, 14, 33)).containsExactly("31.0 squeeze", "32.0 release");
  }

  @Test
  void compressionsAreAlwaysPrompted() {
    Guidance arrest = TestPlans.adult(Situation.ARREST_ADVANCED_AIRWAY);
    PracticePlan plan = new PracticePlan(arrest, 0, MINUTE, 0);
    assertThat(CueSchedule.of(plan, List.of(off(10))).between(0, MINUTE))
        .isEqualTo(CueSchedule.of(plan).between(0, MINUTE));
    assertThat(plan.with(Prompting.FADING).prompting()).isEqualTo(Prompting.THROUGHOUT);
  }

  @Test
  void theRhythmGoesOnUnderneath() {
    CueSchedule schedule = with(off(12.3), at(31, Control.Kind.PROMPTS_ON));
    assertThat(schedule.squeezesAsked(0, 300 * SECOND))
        .filteredOn(schedule::silentAt)
        .containsExactly(18 * SECOND, 24 * SECOND, 30 * SECOND, 31 * SECOND);
    assertThat(schedule.squeezesUntil(40 * SECOND))
        .extracting(Cue::atNanos)
        .containsExactly(0L, 6 * SECOND, 12 * SECOND, 37 * SECOND);
    assertThat(schedule.unbroken(12 * SECOND, 37 * SECOND)).isTrue();
  }

  @Test
  void aSoundDoesNotRingIntoTheSilence() {
    CueSchedule schedule = with(off(8.5));
    List<Cue> cues = schedule.between(8 * SECOND, 9 * SECOND);
    assertThat(cues).hasSize(1);
    assertThat(schedule.soundsUntil(cues.get(0))).isEqualTo(9 * SECOND);
  }
}
