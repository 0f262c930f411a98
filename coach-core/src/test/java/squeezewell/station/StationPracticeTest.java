package squeezewell.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Command;
import squeezewell.cue.Stretch;
import squeezewell.protocol.Situation;
import squeezewell.session.SessionEvent;

/** The station and the practice in it move together. */
class StationPracticeTest {
  private static final long SECOND = Candidate.SECOND;

  private final List<SessionEvent> events = new ArrayList<>();

  private StationPractice begun(String id, StationMode mode) throws Exception {
    Station station =
        StationLibrary.stations().stream().filter(s -> s.id().equals(id)).findFirst().get();
    StationPractice practice =
        new StationPractice(
            station,
            StationSetup.of(station, mode, List.of(), 1),
            StationRunPropertyTest.plan(station),
            new StationRunPropertyTest.InMemory(events),
            List.of());
    practice.done("protect", SECOND);
    practice.begin(2 * SECOND);
    return practice;
  }

  private static Stretch.Kind stretch(StationPractice practice, long at) {
    return practice.practice().schedule().stretchAt(at).kind();
  }

  @Test
  void theFirstSqueezeBeginsTheBreathsAndTheTask() throws Exception {
    StationPractice practice = begun("adult-pulse-lost", StationMode.ALONE);
    practice.advance(20 * SECOND);
    assertThat(practice.breathing()).isFalse();
    assertThat(stretch(practice, 20 * SECOND)).isEqualTo(Stretch.Kind.PAUSED);
    practice.command(Command.SQUEEZE, 21 * SECOND);
    assertThat(practice.practice().breaths()).hasSize(1);
    assertThat(practice.state().task("ventilate").get().progress())
        .isEqualTo(TaskState.Progress.RUNNING);
    assertThat(stretch(practice, 21 * SECOND + 1)).isEqualTo(Stretch.Kind.PACED);
  }

  @Test
  void squeezesBeforeTheExerciseDoNotCount() throws Exception {
    StationPractice practice = begun("adult-pulse-lost", StationMode.PARTNER);
    practice.stopClock(3 * SECOND);
    practice.command(Command.SQUEEZE, 4 * SECOND);
    assertThat(practice.practice().breaths()).isEmpty();
  }

  @Test
  void theSecondCheckChangesTheRhythmAndItsUndoChangesItBack() throws Exception {
    StationPractice practice = begun("adult-pulse-lost", StationMode.ALONE);
    practice.command(Command.BREATH, 20 * SECOND);
    practice.start("recheck-1", 40 * SECOND);
    assertThat(stretch(practice, 41 * SECOND)).isEqualTo(Stretch.Kind.PULSE_CHECK);
    practice.command(Command.PULSE_CHECK_END, 46 * SECOND);
    assertThat(practice.state().task("recheck-1").get().good()).isTrue();
    practice.command(Command.PULSE_CHECK, 160 * SECOND);
    practice.done("recheck-2", 166 * SECOND);
    assertThat(practice.practice().course().guidance().situation())
        .isEqualTo(Situation.ARREST_NO_ADVANCED_AIRWAY);
    assertThat(practice.canUndo("recheck-2", 172 * SECOND)).isFalse();
    assertThat(practice.undo("recheck-2", 168 * SECOND)).isTrue();
    assertThat(practice.practice().course().guidance().situation())
        .isEqualTo(Situation.PULSE_NO_BREATHING);
    assertThat(practice.state().told()).allMatch(StationState.Told::takenBack);
    assertThat(practice.done("recheck-2", 169 * SECOND)).isTrue();
    practice.command(Command.COMPRESS, 172 * SECOND);
    assertThat(practice.state().task("resuscitate").get().progress())
        .isEqualTo(TaskState.Progress.RUNNING);
    practice.end(200 * SECOND);
    assertThat(practice.practice().finished()).isTrue();
    assertThat(StationResult.of(events)).isEqualTo(new StationResult(practice.state()));
  }

  @Test
  void oxygenRunsOutAsTheKitSaysAndStandsWithTheClock() throws Exception {
    StationPractice practice = begun("adult-secretions", StationMode.INSTRUCTOR);
    practice.done("oxygen", 10 * SECOND);
    // D: 0.16 L/psi; (1500 - 200) psi x 0.16 / 15 L/min = 13.8666 min = 832 s (worked by hand).
    assertThat(practice.state().oxygen().get().leftNanos()).isEqualTo(832 * SECOND);
    practice.stopClock(20 * SECOND);
    practice.runClock(50 * SECOND);
    practice.advance(60 * SECOND);
    assertThat(practice.state().oxygen().get().leftNanos()).isEqualTo(812 * SECOND);
  }

  @Test
  void onlySomebodyElseMakesFindingsCome() throws Exception {
    assertThat(begun("adult-vomit", StationMode.ALONE).inject("vomit", 9 * SECOND)).isFalse();
    StationPractice practice = begun("adult-vomit", StationMode.PARTNER);
    assertThat(practice.inject("vomit", 9 * SECOND)).isTrue();
    assertThat(practice.state().holds("vomit")).isTrue();
  }
}
