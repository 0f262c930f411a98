package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/** Where a course leads; who breathes and has a pulse is not compressed (AHA BLS, from memory). */
class PatientCourseTest {
  private static PracticePlan arrest(String edition, PatientGroup patient) {
    var protocol = TestPlans.edition(edition);
    var guidance = protocol.find(patient, Situation.ARREST_NO_ADVANCED_AIRWAY, 2).orElseThrow();
    return PracticePlan.of(protocol, guidance, 0, 10 * TestPlans.MINUTE, 0);
  }

  @Test
  void whoBreathesWellAfterAnArrestIsCheckedAsOneWithAPulse() {
    PracticePlan plan = arrest("aha-2025", PatientGroup.ADULT);
    PatientCourse start = PatientCourse.of(plan);
    Control watch =
        start
            .after(PatientChange.BREATHING_BACK)
            .controlFrom(start, 30 * TestPlans.SECOND)
            .orElseThrow();
    Segment watched = CueSchedule.of(plan, List.of(watch)).stretchAt(40 * TestPlans.SECOND);
    assertThat(watched.kind()).isEqualTo(Segment.Kind.WATCHING);
    assertThat(watched.guidance().situation()).isEqualTo(Situation.PULSE_NO_BREATHING);
  }

  /** ERC 2025 has no breaths for a child with a pulse here; see docs/sources.md. */
  @Test
  void whoHasAPulseIsNotCompressedForWantOfAnotherRhythm() {
    PracticePlan plan = arrest("erc-2025", PatientGroup.CHILD);
    PatientCourse start = PatientCourse.of(plan);
    PatientCourse back = start.after(PatientChange.PULSE_BACK);
    Control control = back.controlFrom(start, 30 * TestPlans.SECOND).orElseThrow();
    CueSchedule schedule = CueSchedule.of(plan, List.of(control));
    assertThat(schedule.between(30 * TestPlans.SECOND, 90 * TestPlans.SECOND))
        .extracting(Cue::kind)
        .doesNotContain(CueKind.COMPRESS);
    assertThat(back.covered()).isFalse();
    PatientCourse lost = back.after(PatientChange.PULSE_LOST);
    assertThat(lost.care().prompted()).isTrue();
    assertThat(lost.covered()).isTrue();
  }
}
