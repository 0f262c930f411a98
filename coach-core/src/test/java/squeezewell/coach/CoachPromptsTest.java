package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.CueFader;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Moment;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Session;

/** Prompts that fall silent and come back by what the trainee does. */
class CoachPromptsTest {
  private static final long SECOND = TestPlans.SECOND;
  private static final long MILLI = TestPlans.MILLI;

  private final MemoryJournal journal = new MemoryJournal();
  private final Recorder output = new Recorder();
  private PracticePlan plan = plan(Prompting.FADING, 20);
  private Coach coach = new Coach(plan, journal, List.of(output));
  private long now;

  private static PracticePlan plan(Prompting prompting, int minutes) {
    return PracticePlan.of(
            TestPlans.edition("aha-2025"),
            TestPlans.adult(Situation.PULSE_NO_BREATHING),
            0,
            minutes * TestPlans.MINUTE,
            0)
        .with(prompting);
  }

  private void use(Prompting prompting, int minutes) {
    plan = plan(prompting, minutes);
    journal.events.clear();
    coach = new Coach(plan, journal, List.of(output));
  }

  /** Lets time pass with a call whenever something is due. */
  private void passTo(long to) {
    OptionalLong due = coach.nextDueNanos();
    while (due.isPresent() && due.getAsLong() <= to) {
      coach.advance(due.getAsLong());
      due = coach.nextDueNanos();
    }
    coach.advance(to);
    now = to;
  }

  private void breathe(long at) {
    passTo(at);
    coach.command(Command.SQUEEZE, at);
    passTo(at + SECOND);
    coach.command(Command.SQUEEZE_END, at + SECOND);
  }

  /** Breaths every 6 s, a tenth of a second after the prompts. */
  private void breathe(int count, long from) {
    for (int k = 0; k < count; k++) {
      breathe(from + 6L * k * SECOND);
    }
  }

  private List<String> prompts() {
    List<String> found = new ArrayList<>(journal.lines());
    found.removeIf(line -> !line.contains("prompts"));
    return found;
  }

  private Session session() {
    return new Session(TestPlans.header(plan), journal.events, List.of());
  }

  @Test
  void theFirstSilentBreathsComeAfterTwelveGoodIntervals() {
    breathe(12, 100 * MILLI);
    assertThat(prompts()).isEmpty();
    assertThat(coach.state().fadingLevel()).hasValue(0);
    breathe(72_100 * MILLI);
    // 12 intervals end with the breath at 72.1 s.
    assertThat(prompts()).containsExactly("72100 prompts-off level 1");
    assertThat(coach.state().fadingLevel()).hasValue(1);
    passTo(75 * SECOND);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).last().isEqualTo(72 * SECOND);
    assertThat(coach.state().schedule().momentAt(now).act()).isEqualTo(Moment.Act.KEEP_RHYTHM);
    assertThat(CueFader.breathsBeforeSilence(0)).isEqualTo(12);
  }

  /**
   * Level 3 has 3 prompted breaths and 12 silent ones. The first breath begins the count, so the
   * breath at 18.1 s ends the third prompted interval, and the 12 silent ones end with that at 18.1
   * + 72 = 90.1 s. Two such blocks, 30 breaths, lead to level 4 at 180.1 s.
   */
  @Test
  void aPracticeThatBeginsWithALevelFallsSilentAtOnceAsThatLevelSays() {
    plan = plan(Prompting.FADING, 20).withStartLevel(3);
    journal.events.clear();
    coach = new Coach(plan, journal, List.of(output));
    breathe(31, 100 * MILLI);
    assertThat(prompts())
        .containsExactly(
            "18100 prompts-off level 3",
            "90100 prompts-on level 3",
            "108100 prompts-off level 3",
            "180100 prompts-on level 4");
    assertThat(session().schedule().silences()).isEqualTo(coach.state().schedule().silences());
    // Another rhythm begins with its lowest level.
    coach.find(PatientChange.BREATHING_SLOW, 181 * SECOND);
    breathe(13, 182 * SECOND);
    assertThat(prompts()).last().asString().contains("prompts-off level 1");
  }

  /**
   * Level 3 falls silent with the breath at 18.1 s. The eighth second of a check from 20 s on is
   * told at the very instant of the command that ends it, so the check ends a nanosecond later. The
   * longest wait of 10 s counts from there. Before, the next thing that was thought due was the
   * check after 20 + 120 s, announced at 130 s, and the wait up to then was put down to a program
   * that stood still, so that it was excused.
   */
  @Test
  void aWaitAfterACheckThatEndsAtTheInstantOfACueIsNoticedInTime() {
    plan = plan(Prompting.FADING, 20).withStartLevel(3);
    journal.events.clear();
    coach = new Coach(plan, journal, List.of(output));
    breathe(4, 100 * MILLI);
    passTo(20 * SECOND);
    coach.command(Command.PULSE_CHECK, 20 * SECOND);
    passTo(28 * SECOND);
    coach.command(Command.PULSE_CHECK_END, 28 * SECOND);
    assertThat(coach.nextDueNanos().getAsLong()).isLessThanOrEqualTo(38 * SECOND + 10);
    passTo(135 * SECOND);
    assertThat(prompts()).last().asString().startsWith("38000 prompts-at-once");
    assertThat(journal.events).noneMatch(e -> e.what() == EventType.HOLE);
  }

  @Test
  void afterFiveSilentBreathsPromptsGoOnFromTheLastOfThem() {
    breathe(13, 100 * MILLI);
    for (int k = 1; k <= 5; k++) {
      breathe(72_100 * MILLI + 6_200L * k * MILLI);
    }
    // The fifth silent breath lies at 72.1 + 31 = 103.1 s.
    assertThat(prompts()).last().isEqualTo("103100 prompts-on level 1");
    passTo(110 * SECOND);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).last().isEqualTo(109_100 * MILLI);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).doesNotContain(78 * SECOND);
  }

  @Test
  void twoFastBreathsBringThePromptsBack() {
    breathe(13, 100 * MILLI);
    breathe(76 * SECOND);
    breathe(80 * SECOND);
    assertThat(prompts()).last().isEqualTo("80000 prompts-on level 1, rescue");
    passTo(87 * SECOND);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).last().isEqualTo(86 * SECOND);
  }

  @Test
  void aLongWaitBringsThemBackAtOnce() {
    breathe(13, 100 * MILLI);
    // The last squeeze ended at 73.1 s; the edition allows 10 s without a breath.
    passTo(83 * SECOND);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).last().isEqualTo(72 * SECOND);
    passTo(84 * SECOND);
    assertThat(prompts()).last().isEqualTo("83100 prompts-at-once level 1, gap");
    assertThat(output.instantsOf(CueKind.SQUEEZE)).last().isEqualTo(83_100_000_001L);
  }

  @Test
  void aCheckHoldsTheWaitUpAndCountsForNothing() {
    breathe(13, 100 * MILLI);
    passTo(76 * SECOND);
    coach.command(Command.PULSE_CHECK, 76 * SECOND);
    passTo(85 * SECOND);
    coach.command(Command.PULSE_CHECK_END, 85 * SECOND);
    breathe(86 * SECOND);
    assertThat(prompts()).last().isEqualTo("72100 prompts-off level 1");
    passTo(96 * SECOND);
    assertThat(prompts()).last().isEqualTo("72100 prompts-off level 1");
    passTo(98 * SECOND);
    assertThat(prompts()).last().isEqualTo("97000 prompts-at-once level 1, gap");
  }

  @Test
  void aSlipThatIsTakenBackDoesNotCount() {
    breathe(13, 100 * MILLI);
    breathe(74_500 * MILLI);
    coach.command(Command.RETRACT_BREATH, now);
    // 78.1 − 72.1 is in range. Had the slip counted, 2.4 and 3.6 s would bring prompts back.
    breathe(78_100 * MILLI);
    assertThat(prompts()).last().isEqualTo("72100 prompts-off level 1");
  }

  @Test
  void anotherRhythmStartsPromptedAtTheLowestLevel() {
    breathe(13, 100 * MILLI);
    passTo(82 * SECOND);
    coach.find(PatientChange.PULSE_LOST, 82 * SECOND);
    passTo(83 * SECOND);
    assertThat(output.instantsOf(CueKind.COMPRESS)).isNotEmpty();
    coach.find(PatientChange.PULSE_BACK, 92 * SECOND);
    breathe(10, 92 * SECOND + 500 * MILLI);
    assertThat(coach.state().fadingLevel()).hasValue(0);
    assertThat(prompts()).last().isEqualTo("72100 prompts-off level 1");
    assertThat(coach.state().schedule().silentAt(now)).isFalse();
  }

  @Test
  void aTestIsSilentAndNothingBringsPromptsBack() {
    use(Prompting.NONE, 2);
    breathe(4, 200 * MILLI);
    passTo(60 * SECOND);
    assertThat(prompts()).containsExactly("0 prompts-off test");
    assertThat(output.instantsOf(CueKind.SQUEEZE)).isEmpty();
    assertThat(output.instantsOf(CueKind.RELEASE)).isEmpty();
    passTo(200 * SECOND);
    assertThat(coach.state().finished()).isTrue();
    assertThat(output.instantsOf(CueKind.PULSE_CHECK_DUE)).startsWith(120 * SECOND);
    assertThat(output.instantsOf(CueKind.SESSION_END)).containsExactly(142 * SECOND);
  }

  @Test
  void promptsAreThroughoutWhereNothingElseIsAsked() {
    use(Prompting.THROUGHOUT, 2);
    breathe(20, 100 * MILLI);
    assertThat(prompts()).isEmpty();
  }

  /**
   * Whatever a trainee does, the journal alone gives the same prompts, and a session played back
   * stands as it stood.
   */
  @Test
  void theJournalTellsEveryDecision() {
    int silences = 0;
    for (int seed = 0; seed < 12; seed++) {
      Random chance = new Random(seed);
      now = 0;
      use(seed % 3 == 0 ? Prompting.NONE : Prompting.FADING, 30);
      CoachState middle = null;
      long middleAt = 0;
      while (!coach.state().finished()) {
        double steady = seed % 2 == 0 ? 0.3 : 1.2;
        long wait = Math.round((6 + steady * chance.nextGaussian()) * 1e9);
        breathe(Math.max(now + 100 * MILLI, now - SECOND + wait));
        int event = chance.nextInt(60);
        if (event == 0) {
          coach.command(Command.PULSE_CHECK, now);
          passTo(now + 7 * SECOND);
          coach.command(Command.PULSE_CHECK_END, now);
        } else if (event == 1) {
          passTo(now + 14 * SECOND);
        } else if (event == 2) {
          coach.command(Command.RETRACT_BREATH, now);
        } else if (event == 3) {
          coach.find(PatientChange.BREATHING_SLOW, now);
        }
        if (now > 600 * SECOND && middle == null) {
          middle = coach.state();
          middleAt = now;
        }
      }
      CueSchedule live = coach.state().schedule();
      CueSchedule read = session().schedule();
      assertThat(read.silences()).isEqualTo(live.silences());
      silences += live.silences().size();
      assertThat(read.between(0, TestPlans.HOUR)).isEqualTo(live.between(0, TestPlans.HOUR));
      Replay replay = new Replay(session());
      assertThat(replay.stateAt(middleAt).schedule().silences())
          .isEqualTo(middle.schedule().silences());
      assertThat(replay.stateAt(middleAt).schedule().segments())
          .isEqualTo(middle.schedule().segments());
      assertThat(replay.stateAt(middleAt).fadingLevel()).isEqualTo(middle.fadingLevel());
      assertThat(replay.stateAt(middleAt).lastIntervalNanos())
          .isEqualTo(middle.lastIntervalNanos());
    }
    assertThat(silences).as("something was tried").isGreaterThan(20);
  }
}
