package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

/**
 * What is done for a patient, and what a check looks for. While the chest is compressed: the
 * rhythm, about every 2 minutes, with a change of compressor where there are two (American Heart
 * Association, basic life support, table of 2010 and since). A newborn: the heart rate (newborn
 * programme, 8th edition; AHA 2020, Part 5). Anybody else with a pulse: the pulse, about every 2
 * minutes (AHA, basic life support texts). That nobody who is watched is told to squeeze is plain.
 */
class ActiveGuidanceTest {
  private static final long SECOND = TestPlans.SECOND;

  @ParameterizedTest
  @CsvSource({
    "ADULT, PULSE_NO_BREATHING, 1, BREATHE, PULSE, false",
    "ADULT, PULSE_NO_BREATHING, 2, BREATHE, PULSE, false",
    "ADULT, PULSE_SLOW_BREATHING, 2, BREATHE, PULSE, false",
    "ADULT, ARREST_NO_ADVANCED_AIRWAY, 1, COMPRESS, RHYTHM, false",
    "ADULT, ARREST_NO_ADVANCED_AIRWAY, 2, COMPRESS, RHYTHM, true",
    "ADULT, ARREST_ADVANCED_AIRWAY, 1, COMPRESS, RHYTHM, false",
    "ADULT, ARREST_ADVANCED_AIRWAY, 2, COMPRESS, RHYTHM, true",
    "CHILD, PULSE_NO_BREATHING, 2, BREATHE, PULSE, false",
    "CHILD, PULSE_SLOW_BREATHING, 2, BREATHE, PULSE, false",
    "CHILD, ARREST_NO_ADVANCED_AIRWAY, 1, COMPRESS, RHYTHM, false",
    "CHILD, ARREST_NO_ADVANCED_AIRWAY, 2, COMPRESS, RHYTHM, true",
    "CHILD, ARREST_ADVANCED_AIRWAY, 2, COMPRESS, RHYTHM, true",
    "INFANT, PULSE_NO_BREATHING, 2, BREATHE, PULSE, false",
    "INFANT, PULSE_SLOW_BREATHING, 2, BREATHE, PULSE, false",
    "INFANT, ARREST_NO_ADVANCED_AIRWAY, 1, COMPRESS, RHYTHM, false",
    "INFANT, ARREST_NO_ADVANCED_AIRWAY, 2, COMPRESS, RHYTHM, true",
    "INFANT, ARREST_ADVANCED_AIRWAY, 2, COMPRESS, RHYTHM, true",
    "NEWBORN, NEWBORN_VENTILATION, 2, BREATHE, HEART_RATE, false",
    "NEWBORN, ARREST_NO_ADVANCED_AIRWAY, 2, COMPRESS, HEART_RATE, false",
  })
  void eachSituationOfEachPatientHasItsCareAndItsCheck(
      PatientGroup patient,
      Situation situation,
      int rescuers,
      CareKind care,
      CheckKind check,
      boolean changes) {
    int editions = 0;
    for (Protocol edition : GuidelineLibrary.editions()) {
      var guidance = edition.find(patient, situation, rescuers);
      if (guidance.isEmpty()) {
        continue;
      }
      editions++;
      PracticePlan plan =
          PracticePlan.of(edition, guidance.get(), rescuers, 0, 10 * TestPlans.MINUTE, 0);
      ActiveGuidance begun = CueSchedule.of(plan).inForceAt(5 * SECOND);
      assertThat(begun.care()).as(edition.id()).isEqualTo(care);
      assertThat(begun.check()).as(edition.id()).isEqualTo(check);
      assertThat(begun.changesCompressors()).as(edition.id()).isEqualTo(changes);

      CueSchedule watched =
          CueSchedule.of(plan, List.of(Control.watch(3 * SECOND, guidance.get())));
      assertThat(watched.inForceAt(3 * SECOND - 1)).isEqualTo(begun);
      ActiveGuidance watching = watched.inForceAt(3 * SECOND);
      assertThat(watching.care()).isEqualTo(CareKind.WATCH);
      assertThat(watching.check())
          .isEqualTo(patient == PatientGroup.NEWBORN ? CheckKind.HEART_RATE : CheckKind.PULSE);
      assertThat(watching.changesCompressors()).isFalse();
    }
    assertThat(editions).isPositive();
  }

  @Test
  void theTableLeavesOutNoSituationOfAnyEdition() {
    Set<Situation> newborn = EnumSet.noneOf(Situation.class);
    Set<Situation> others = EnumSet.noneOf(Situation.class);
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance guidance : edition.guidance()) {
        (guidance.patient() == PatientGroup.NEWBORN ? newborn : others).add(guidance.situation());
      }
    }
    assertThat(newborn)
        .containsExactlyInAnyOrder(
            Situation.NEWBORN_VENTILATION, Situation.ARREST_NO_ADVANCED_AIRWAY);
    assertThat(others)
        .containsExactlyInAnyOrder(
            Situation.PULSE_NO_BREATHING,
            Situation.PULSE_SLOW_BREATHING,
            Situation.ARREST_NO_ADVANCED_AIRWAY,
            Situation.ARREST_ADVANCED_AIRWAY);
  }

  /** The suction is finished first, so its stretch still has the rhythm of before. */
  @Test
  void whatWasFoundDuringSuctionCountsAtOnce() {
    Protocol edition = TestPlans.edition("aha-2020");
    Guidance arrest = TestPlans.adult(Situation.ARREST_NO_ADVANCED_AIRWAY);
    Guidance pulse = TestPlans.adult(Situation.PULSE_NO_BREATHING);
    PracticePlan plan = PracticePlan.of(edition, arrest, 1, 0, 10 * TestPlans.MINUTE, 0);
    CueSchedule schedule =
        CueSchedule.of(
            plan,
            List.of(
                new Control(10 * SECOND, Control.Kind.SUCTION),
                Control.change(15 * SECOND, pulse),
                new Control(30 * SECOND, Control.Kind.SUCTION_END)));
    assertThat(schedule.inForceAt(14 * SECOND).care()).isEqualTo(CareKind.COMPRESS);
    assertThat(schedule.stretchAt(20 * SECOND).guidance()).isEqualTo(arrest);
    assertThat(schedule.inForceAt(20 * SECOND).care()).isEqualTo(CareKind.BREATHE);
    assertThat(schedule.inForceAt(20 * SECOND).check()).isEqualTo(CheckKind.PULSE);
    assertThat(schedule.inForceAt(31 * SECOND).care()).isEqualTo(CareKind.BREATHE);
  }
}
