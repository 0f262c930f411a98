package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static squeezewell.desktop.screens.Practices.SECOND;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;

class LiveViewTest {
  private static LiveView at(Coach coach, double seconds) {
    return LiveView.of(coach.state(), Math.round(seconds * 1e9));
  }

  @Test
  void theCountInCountsDownToTheFirstBreath() {
    Coach coach = Practices.coach(3, 5);
    assertThat(at(coach, 0.1).word()).isEqualTo("Get ready");
    assertThat(at(coach, 0.1).count()).isEqualTo("3");
    assertThat(at(coach, 2.9).count()).isEqualTo("1");
    assertThat(at(coach, 2.9).elapsed()).isEqualTo("0:00");
    assertThat(at(coach, 3).word()).isEqualTo("Squeeze");
  }

  @Test
  void oneIntervalIsSqueezeReleaseReady() {
    Coach coach = Practices.coach(0, 5);
    // Six seconds, the squeeze lasts one: count 1 is the squeeze, the last two lead in.
    assertThat(at(coach, 6.5).word() + at(coach, 6.5).count()).isEqualTo("Squeeze1");
    assertThat(at(coach, 7.5).word() + at(coach, 7.5).count()).isEqualTo("Release2");
    assertThat(at(coach, 9.5).word() + at(coach, 9.5).count()).isEqualTo("Release4");
    assertThat(at(coach, 10.5).word() + at(coach, 10.5).count()).isEqualTo("Ready5");
    assertThat(at(coach, 11.5).word() + at(coach, 11.5).count()).isEqualTo("Ready6");
    assertThat(at(coach, 6.5).fill()).isCloseTo(0.5, within(1e-9));
    assertThat(at(coach, 9.5).fill()).isCloseTo(0.5, within(1e-9));
  }

  @Test
  void thePulseCheckIsCountedDownThenDueThenOverdue() {
    Coach coach = Practices.coach(0, 5);
    assertThat(at(coach, 0).bar().text()).isEqualTo("Pulse check in 2:00");
    assertThat(at(coach, 105.5).bar().text()).isEqualTo("Pulse check in 0:15");
    assertThat(at(coach, 105.5).bar().urgent()).isFalse();
    assertThat(at(coach, 111).bar().urgent()).isTrue();
    assertThat(at(coach, 120.5).bar().text()).isEqualTo("Pulse check now");
    assertThat(at(coach, 132).bar().text()).isEqualTo("Pulse check overdue by 0:12");
  }

  @Test
  void aCheckShowsItsSecondsAndSaysWhenItIsOverItsLimit() {
    Coach coach = Practices.coach(0, 5);
    coach.command(Command.PULSE_CHECK, 121 * SECOND);
    assertThat(at(coach, 125.2).word() + at(coach, 125.2).count()).isEqualTo("Check4");
    assertThat(at(coach, 125.2).bar().text()).isEqualTo("Carotid pulse, 5 to 10 s");
    assertThat(at(coach, 131.5).bar().text())
        .isEqualTo("Decide now. Not sure? No pulse: start CPR");
    assertThat(at(coach, 131.5).bar().urgent()).isTrue();
  }

  @Test
  void aLongTimeWithoutABreathIsTold() {
    Coach coach = Practices.coach(0, 5);
    // Who records no breath at all is not told so.
    assertThat(at(coach, 30).bar().text()).isEqualTo("Pulse check in 1:30");
    breath(coach, 30);
    double end = coach.state().breaths().get(0).endNanos().orElseThrow() / 1e9;
    // The limit of this edition is 10 s.
    assertThat(at(coach, end + 9.9).bar().text()).startsWith("Pulse check in");
    assertThat(at(coach, end + 10.6).bar().text()).isEqualTo("Squeeze now: no breath for 0:10");
    assertThat(at(coach, end + 10.6).bar().urgent()).isTrue();
    coach.command(Command.SUCTION, Math.round((end + 11) * 1e9));
    assertThat(at(coach, end + 12).bar().text()).startsWith("Suction");
    coach.command(Command.SUCTION_END, Math.round((end + 13) * 1e9));
    assertThat(at(coach, end + 14).bar().text()).startsWith("Pulse check in");
  }

  @Test
  void suctionWarnsBeforeItsLimit() {
    Coach coach = Practices.coach(0, 5);
    coach.command(Command.SUCTION, 20 * SECOND);
    assertThat(at(coach, 25).bar().urgent()).isFalse();
    assertThat(at(coach, 31).bar().urgent()).isTrue();
    assertThat(at(coach, 36).bar().text()).isEqualTo("Suction over 15 s: squeeze");
  }

  @Test
  void theLastIntervalIsJudgedInWords() {
    Coach coach = Practices.coach(0, 5);
    breath(coach, 0.2);
    assertThat(at(coach, 1).interval()).isEmpty();
    breath(coach, 6.3);
    assertThat(at(coach, 7).interval()).isEqualTo("6.1 s  in range");
    breath(coach, 10.3);
    assertThat(at(coach, 11).interval()).isEqualTo("4.0 s  fast");
    breath(coach, 18.4);
    assertThat(at(coach, 19).interval()).isEqualTo("8.1 s  slow");
    assertThat(at(coach, 19).judgement()).isEqualTo(Judgement.SLOW);
  }

  @Test
  void anIntervalAcrossACheckIsNotJudged() {
    Coach coach = Practices.coach(0, 5);
    breath(coach, 0.2);
    coach.command(Command.PULSE_CHECK, 3 * SECOND);
    breath(coach, 9.2);
    assertThat(at(coach, 9.5).interval()).isEmpty();
  }

  @Test
  void theRibbonShowsPromptsBreathsAndHolds() {
    Coach coach = Practices.coach(0, 5);
    breath(coach, 0.2);
    breath(coach, 6.2);
    coach.command(Command.SUCTION, 9 * SECOND);
    var marks = LiveView.ribbon(coach.state(), 12 * SECOND);
    assertThat(marks).filteredOn(m -> m.kind() == RibbonMark.Kind.BREATH).hasSize(2);
    assertThat(marks)
        .filteredOn(m -> m.kind() == RibbonMark.Kind.PROMPT)
        .extracting(RibbonMark::startNanos)
        .containsExactly(0L, 6 * SECOND);
    assertThat(marks)
        .filteredOn(m -> m.kind() == RibbonMark.Kind.SUCTION)
        .singleElement()
        .satisfies(m -> assertThat(m.endNanos()).isEqualTo(12 * SECOND));
  }

  @Test
  void aPauseStandsStill() {
    Coach coach = Practices.coach(0, 5);
    coach.command(Command.PAUSE, 10 * SECOND);
    assertThat(at(coach, 75).elapsed()).isEqualTo("0:10");
    assertThat(at(coach, 75).bar().text()).isEqualTo("Paused for 1:05");
    coach.command(Command.RESUME, 80 * SECOND);
    assertThat(at(coach, 90).bar().text()).isEqualTo("Pulse check in 1:40");
  }

  private static Coach coach(String edition, PatientGroup patient, Situation situation) {
    return new Coach(
        Practices.plan(Practices.protocol(edition), patient, situation, 3, 2),
        Journal.none(),
        List.of());
  }

  @Test
  void thirtyToTwoCountsCompressionsThenBreaths() {
    // Worked by hand: 30 compressions at 110 a minute take 16.36 s, from 3 s on; breaths at 19.36
    // and 21.36 s, each squeezed for 1 s; on with compressions at 23.36 s.
    Coach coach = coach("aha-2025", PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY);
    assertThat(at(coach, 1).countNote()).isEqualTo("first compression");
    assertThat(said(at(coach, 3.1))).isEqualTo("Compress 1 of 30 compressions");
    assertThat(said(at(coach, 3.6))).isEqualTo("Compress 2 of 30 compressions");
    assertThat(said(at(coach, 19.3))).isEqualTo("Compress 30 of 30 compressions");
    assertThat(at(coach, 10).fill()).isZero();
    assertThat(said(at(coach, 19.5))).isEqualTo("Squeeze 1 of 2 breaths");
    assertThat(said(at(coach, 20.5))).isEqualTo("Release 1 of 2 breaths");
    assertThat(said(at(coach, 21.5))).isEqualTo("Squeeze 2 of 2 breaths");
    assertThat(said(at(coach, 23.5))).isEqualTo("Compress 1 of 30 compressions");
  }

  @Test
  void threeToOneHasOneBreathOnly() {
    // Worked by hand: half a second each, so the breath comes 1.5 s after the count-in.
    Coach coach = coach("nrp-8", PatientGroup.NEWBORN, Situation.ARREST_NO_ADVANCED_AIRWAY);
    assertThat(said(at(coach, 4.2))).isEqualTo("Compress 3 of 3 compressions");
    assertThat(said(at(coach, 4.6))).isEqualTo("Squeeze 1 of 1 breath");
    assertThat(said(at(coach, 5.1))).isEqualTo("Compress 1 of 3 compressions");
  }

  @Test
  void withAnAdvancedAirwayTheScreenKeepsTheBagHoldersView() {
    Coach coach = coach("aha-2025", PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY);
    assertThat(said(at(coach, 3.5))).isEqualTo("Squeeze 1 count of 6");
    assertThat(said(at(coach, 8.5))).isEqualTo("Ready 6 count of 6");
    assertThat(at(coach, 3.5).fill()).isCloseTo(0.5, within(1e-9));
  }

  @Test
  void whoCompressesGoesOnWithCompressionsAfterALongCheck() {
    Coach coach = coach("aha-2025", PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY);
    coach.command(Command.PULSE_CHECK, 60 * SECOND);
    assertThat(at(coach, 71).bar().text()).isEqualTo("Check over 10 s: compress");
  }

  /**
   * What stands on the bar in a check, over its limit and over that of suction, when a check is
   * ahead, and on the button and the pad. The pulse is felt for 5 to 10 s (AHA course texts); while
   * the chest is compressed it is the rhythm that is checked (AHA, basic life support), and in a
   * newborn the heart rate (newborn programme, 8th edition). Whoever breathes well is watched.
   * Suction limits: 15, 10, 5, 5 s, as docs/sources.md says.
   */
  @ParameterizedTest
  @CsvSource({
    "aha-2020,ADULT,PULSE_NO_BREATHING,2,no,"
        + "'Carotid pulse, 5 to 10 s|Decide now. Not sure? No pulse: start CPR|"
        + "Suction over 15 s: squeeze|"
        + "Pulse check in|Pulse check|Ends the check'",
    "aha-2020,CHILD,PULSE_SLOW_BREATHING,2,no,"
        + "'Carotid or femoral pulse, 5 to 10 s|Decide now. Not sure? No pulse: start CPR|"
        + "Suction over 10 s: squeeze|"
        + "Pulse check in|Pulse check|Ends the check'",
    "aha-2020,ADULT,ARREST_NO_ADVANCED_AIRWAY,2,no,"
        + "'Rhythm check, 10 s max: switch|Check over 10 s: compress|Suction over 15 s: end it|"
        + "Rhythm check in|Rhythm check|Rhythm check'",
    "aha-2020,ADULT,ARREST_NO_ADVANCED_AIRWAY,1,no,"
        + "'Rhythm check, 10 s max|Check over 10 s: compress|Suction over 15 s: compress|"
        + "Rhythm check in|Rhythm check|Rhythm check'",
    "aha-2020,INFANT,ARREST_ADVANCED_AIRWAY,2,no,"
        + "'Rhythm check, 10 s max: switch|Check over 10 s: compress|Suction over 5 s: end it|"
        + "Rhythm check in|Rhythm check|Rhythm check'",
    "nrp-8,NEWBORN,NEWBORN_VENTILATION,2,no,"
        + "'Heart rate?|Check over 10 s: squeeze|Suction over 5 s: squeeze|"
        + "Heart rate check in|Heart rate|Ends the check'",
    "nrp-8,NEWBORN,ARREST_NO_ADVANCED_AIRWAY,2,no,"
        + "'Heart rate?|Check over 10 s: compress|Suction over 5 s: end it|"
        + "Heart rate check in|Heart rate|Ends the check'",
    "aha-2020,ADULT,ARREST_NO_ADVANCED_AIRWAY,2,yes,"
        + "'Carotid pulse, 5 to 10 s|Decide now. Not sure? No pulse: start CPR|"
        + "Suction over 15 s: watch|"
        + "Pulse check in|Pulse check|Ends the check'",
    "nrp-8,NEWBORN,NEWBORN_VENTILATION,2,yes,"
        + "'Heart rate?|Check over 10 s: watch|Suction over 5 s: watch|"
        + "Heart rate check in|Heart rate|Ends the check'",
  })
  void theWordsFitThePatient(
      String edition,
      PatientGroup patient,
      Situation situation,
      int rescuers,
      String watched,
      String words) {
    String[] said = new String[6];
    Coach check = coach(edition, patient, situation, rescuers, watched.equals("yes"));
    said[3] = at(check, 6).bar().text().replaceFirst(" in .*", " in");
    said[4] = LiveView.checkButton(check.state().schedule().inForceAt(6 * SECOND).check());
    check.command(Command.PULSE_CHECK, 7 * SECOND);
    said[0] = at(check, 8).bar().text();
    said[1] = at(check, 18).bar().text();
    said[5] =
        LiveView.goOn(Segment.Kind.PULSE_CHECK, check.state().schedule().inForceAt(8 * SECOND));
    Coach suction = coach(edition, patient, situation, rescuers, watched.equals("yes"));
    suction.command(Command.SUCTION, 7 * SECOND);
    said[2] = at(suction, 23).bar().text();
    assertThat(String.join("|", said)).isEqualTo(words);
  }

  private static Coach coach(
      String edition, PatientGroup patient, Situation situation, int rescuers, boolean watched) {
    Protocol protocol = Practices.protocol(edition);
    PracticePlan plan =
        PracticePlan.of(
            protocol,
            protocol.find(patient, situation, rescuers).orElseThrow(),
            rescuers,
            0,
            300 * SECOND,
            0);
    Coach coach = new Coach(plan, Journal.none(), List.of());
    if (watched) {
      coach.find(PatientChange.BREATHING_BACK, 5 * SECOND);
    }
    return coach;
  }

  @Test
  void onTheRibbonCompressionsAreMarkedAsDoneButNotAsPrompts() {
    Coach coach = coach("aha-2025", PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY);
    for (int i = 0; i < 20; i++) {
      coach.command(Command.COMPRESS, 3 * SECOND + i * SECOND / 2);
    }
    // At 30 s the ribbon reaches from 6 s to 36 s: of 3, 3.5 ... 12.5 s those after 6 s are 13.
    var marks = LiveView.ribbon(coach.state(), 30 * SECOND);
    assertThat(marks).filteredOn(m -> m.kind() == RibbonMark.Kind.COMPRESSION).hasSize(13);
    assertThat(marks).filteredOn(m -> m.kind() == RibbonMark.Kind.PROMPT).hasSize(2);
  }

  private static String said(LiveView view) {
    return view.word() + " " + view.count() + " " + view.countNote();
  }

  private static void breath(Coach coach, double seconds) {
    coach.command(Command.SQUEEZE, Math.round(seconds * 1e9));
    coach.command(Command.SQUEEZE_END, Math.round((seconds + 0.7) * 1e9));
  }
}
