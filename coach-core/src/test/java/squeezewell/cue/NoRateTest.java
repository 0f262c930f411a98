package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.PatientState;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

/**
 * What is asked for where an edition has no rate for a patient whose heart beats. Such a patient is
 * breathed for all the same: a newborn until the heart rate is over 100 and it breathes (Ghai,
 * Essential Pediatrics; newborn programme: ventilate under 100 or while it does not breathe), a
 * child or infant with a pulse who does not breathe well likewise (AHA and ERC basic life support).
 * Only who breathes well is watched (AHA, opioid algorithm).
 */
class NoRateTest {
  /**
   * Whose rate with a pulse could not be confirmed, typed from docs/sources.md: of ERC 2025 those
   * of the child, the infant and the newborn.
   */
  private static final Map<String, Set<PatientGroup>> WITHOUT_RATE =
      Map.of("erc-2025", Set.of(PatientGroup.CHILD, PatientGroup.INFANT, PatientGroup.NEWBORN));

  /** Every course that findings can lead to, from every beginning, with one rescuer or two. */
  private static void everyCourse(Protocol edition, Consumer<PatientCourse> look) {
    for (Guidance guidance : edition.guidance()) {
      for (int rescuers = Math.max(1, guidance.rescuers()); rescuers <= 2; rescuers++) {
        PracticePlan plan =
            PracticePlan.of(edition, guidance, rescuers, 0, 10 * TestPlans.MINUTE, 0);
        Set<List<Object>> seen = new HashSet<>();
        Deque<PatientCourse> open = new ArrayDeque<>(List.of(PatientCourse.of(plan)));
        while (!open.isEmpty()) {
          PatientCourse course = open.remove();
          if (seen.add(List.of(course.state(), course.guidance(), course.care()))) {
            look.accept(course);
            course.state().possible().forEach(finding -> open.add(course.after(finding)));
          }
        }
      }
    }
  }

  @Test
  void whoNeedsBreathsIsNeverOnlyWatchedAndWhoNeedsNoneIs() {
    Set<String> without = new TreeSet<>();
    for (Protocol edition : GuidelineLibrary.editions()) {
      Set<PatientGroup> noRate = WITHOUT_RATE.getOrDefault(edition.id(), Set.of());
      everyCourse(
          edition,
          course -> {
            PatientState patient = course.state();
            CareKind wanted;
            if (!patient.pulse() || patient.slowHeart()) {
              wanted = CareKind.COMPRESS;
            } else if (patient.breathing() == PatientState.Breathing.ADEQUATE) {
              wanted = CareKind.WATCH;
            } else if (noRate.contains(patient.patient())) {
              wanted = CareKind.BREATHE_NO_RATE;
              without.add(edition.id() + " " + patient.patient());
            } else {
              wanted = CareKind.BREATHE;
            }
            assertThat(course.care()).as("%s, %s", edition.id(), patient).isEqualTo(wanted);
            assertThat(course.covered())
                .as("%s, %s", edition.id(), patient)
                .isEqualTo(wanted != CareKind.BREATHE_NO_RATE);
          });
    }
    assertThat(without).containsExactly("erc-2025 CHILD", "erc-2025 INFANT", "erc-2025 NEWBORN");
  }

  /**
   * Heart back over 60 at 30 s, breathing well at 60 s, not breathing at 90 s, heart under 60 at
   * 120 s: breaths without a rate, watched, breaths without a rate, compressed.
   */
  @Test
  void eachTurnIsToldWhenItComes() {
    Protocol edition = TestPlans.edition("erc-2025");
    Guidance arrest =
        edition.find(PatientGroup.NEWBORN, Situation.ARREST_NO_ADVANCED_AIRWAY, 2).orElseThrow();
    PracticePlan plan = PracticePlan.of(edition, arrest, 0, 10 * TestPlans.MINUTE, 0);
    CueSchedule schedule = CueSchedule.of(plan);
    PatientCourse course = PatientCourse.of(plan);
    long at = 0;
    for (PatientChange found :
        List.of(
            PatientChange.HEART_RATE_UP,
            PatientChange.BREATHING_BACK,
            PatientChange.BREATHING_STOPPED,
            PatientChange.HEART_RATE_LOW)) {
      at += 30 * TestPlans.SECOND;
      PatientCourse next = course.after(found);
      schedule = schedule.with(next.controlFrom(course, at).orElseThrow());
      course = next;
    }
    assertThat(schedule.between(0, 3 * TestPlans.MINUTE))
        .filteredOn(
            c ->
                c.kind() == CueKind.RHYTHM_CHANGED
                    || c.kind() == CueKind.WATCH
                    || c.kind() == CueKind.NO_RATE)
        .extracting(c -> c.atNanos() / TestPlans.SECOND + " " + c.kind().id())
        .containsExactly("30 no-rate", "60 watch", "90 no-rate", "120 rhythm-changed");
    assertThat(schedule.between(30 * TestPlans.SECOND, 120 * TestPlans.SECOND))
        .extracting(Cue::kind)
        .doesNotContain(CueKind.SQUEEZE, CueKind.COMPRESS);
    assertThat(schedule.momentAt(40 * TestPlans.SECOND).act())
        .isEqualTo(Moment.Act.BREATHE_NO_RATE);
    assertThat(schedule.momentAt(70 * TestPlans.SECOND).act()).isEqualTo(Moment.Act.WATCH);
  }
}
