package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.desktop.screens.Practices.SECOND;

import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.desktop.screens.practice.PlanView;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;

/** The live screen while no breath is prompted: it says so, and nothing on it tells the beat. */
class SilentLiveViewTest {
  private static Coach coach(Prompting prompting) {
    Guidance guidance =
        Practices.protocol("aha-2025")
            .find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING)
            .orElseThrow();
    PracticePlan plan = new PracticePlan(guidance, 3 * SECOND, 600 * SECOND, 0).with(prompting);
    return new Coach(plan, Journal.none(), List.of());
  }

  private static void breathe(Coach coach, double at) {
    long from = Math.round(at * 1e9);
    OptionalLong due = coach.nextDueNanos();
    while (due.isPresent() && due.getAsLong() < from) {
      coach.advance(due.getAsLong());
      due = coach.nextDueNanos();
    }
    coach.command(Command.SQUEEZE, from);
    coach.command(Command.SQUEEZE_END, from + SECOND);
  }

  private static LiveView at(Coach coach, double seconds) {
    return LiveView.of(coach.state(), Math.round(seconds * 1e9));
  }

  @Test
  void aTestSaysThatThereAreNoPromptsAndShowsNoBeat() {
    Coach coach = coach(Prompting.NONE);
    assertThat(at(coach, 1).word()).isEqualTo("Get ready");
    breathe(coach, 3.4);
    breathe(coach, 9.2);
    LiveView early = at(coach, 11);
    assertThat(early.word()).isEqualTo("No prompts now");
    assertThat(early.countNote()).isEqualTo("keep the rhythm");
    assertThat(early.count()).isEmpty();
    assertThat(early.fill()).isZero();
    assertThat(early.notches()).isZero();
    assertThat(early.interval()).as("no result before the end").isEmpty();
    assertThat(early.judgement()).isEqualTo(Judgement.UNJUDGED);
    assertThat(early.elapsed()).isEqualTo("0 min");
    assertThat(early.bar().text()).isEqualTo("Keep the rhythm on your own");
    assertThat(early.bar().fill()).isZero();
    // The same for seconds on end: nothing runs that could be counted by.
    assertThat(at(coach, 12.3)).isEqualTo(early);
    assertThat(at(coach, 18.6)).isEqualTo(early);
  }

  @Test
  void theRibbonShowsTheSilenceAndLeavesTheBreathsInItOut() {
    Coach coach = coach(Prompting.NONE);
    breathe(coach, 3.4);
    breathe(coach, 9.2);
    List<RibbonMark> marks = LiveView.ribbon(coach.state(), 15 * SECOND);
    assertThat(marks).extracting(RibbonMark::kind).containsOnly(RibbonMark.Kind.SILENCE);
  }

  @Test
  void afterASilenceTheBreathsInItAreShown() {
    Coach coach = coach(Prompting.FADING);
    assertThat(at(coach, 1).total()).isEqualTo("of 10:00, level 0 of 5");
    for (int k = 0; k < 13; k++) {
      breathe(coach, 3.1 + 6 * k);
    }
    assertThat(at(coach, 77).total()).isEqualTo("of 10:00, level 1 of 5");
    assertThat(coach(Prompting.NONE).state().fadingLevel()).isEmpty();
    for (int k = 1; k <= 5; k++) {
      breathe(coach, 75.1 + 6.3 * k);
    }
    // The fifth silent breath, at 106.6 s, brings the prompts back.
    long now = 108 * SECOND;
    assertThat(at(coach, 108).word()).isEqualTo("Release");
    assertThat(at(coach, 108).interval()).isEqualTo("6.3 s  in range");
    List<RibbonMark> marks = LiveView.ribbon(coach.state(), now);
    assertThat(marks).extracting(RibbonMark::kind).contains(RibbonMark.Kind.SILENCE);
    assertThat(
            marks.stream()
                .filter(m -> m.kind() == RibbonMark.Kind.BREATH)
                .map(RibbonMark::judgement))
        .hasSizeGreaterThan(2)
        .containsOnly(Judgement.IN_RANGE);
  }

  @Test
  void whatKeepsAPatientSafeIsShownAllTheSame() {
    Coach coach = coach(Prompting.NONE);
    // Nobody has breathed since the start at 3 s.
    assertThat(at(coach, 14).bar().text()).isEqualTo("Squeeze now: no breath for 0:11");
    breathe(coach, 15);
    assertThat(at(coach, 25).bar().text()).isEqualTo("Keep the rhythm on your own");
    assertThat(at(coach, 27).bar().text()).isEqualTo("Squeeze now: no breath for 0:11");
    assertThat(at(coach, 27).bar().urgent()).isTrue();
    breathe(coach, 110);
    assertThat(at(coach, 114).bar().text()).isEqualTo("Pulse check soon");
    breathe(coach, 120);
    assertThat(at(coach, 124).bar().text()).isEqualTo("Pulse check now");
    coach.command(Command.PULSE_CHECK, 125 * SECOND);
    assertThat(at(coach, 128).word() + at(coach, 128).count()).isEqualTo("Check3");
  }

  @Test
  void theChoiceIsExplainedAndNotOfferedWithCompressions() {
    Guidance steady =
        Practices.protocol("aha-2025")
            .find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING)
            .orElseThrow();
    Guidance arrest =
        Practices.protocol("aha-2025")
            .find(PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY)
            .orElseThrow();
    assertThat(PlanView.prompting(steady)).containsExactly(Prompting.values());
    assertThat(PlanView.prompting(arrest)).containsExactly(Prompting.THROUGHOUT);
    assertThat(PlanView.prompts(arrest, Prompting.FADING).get(0)).contains("throughout");
    assertThat(PlanView.prompts(steady, Prompting.THROUGHOUT)).isEmpty();
    // 12 breaths of 6 s are 72 s.
    assertThat(PlanView.prompts(steady, Prompting.FADING).get(0))
        .contains("12 good breaths, some 1 minute");
    assertThat(PlanView.prompts(steady, Prompting.NONE).get(0)).contains("two minutes");
  }
}
