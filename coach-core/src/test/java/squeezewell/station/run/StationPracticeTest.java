package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Command;
import squeezewell.cue.Segment;
import squeezewell.protocol.Situation;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewText;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;

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

  private static Segment.Kind segment(StationPractice practice, long at) {
    return practice.practice().schedule().stretchAt(at).kind();
  }

  @Test
  void theFirstSqueezeBeginsTheBreathsAndTheTask() throws Exception {
    StationPractice practice = begun("adult-pulse-lost", StationMode.ALONE);
    practice.advance(20 * SECOND);
    assertThat(practice.breathing()).isFalse();
    assertThat(segment(practice, 20 * SECOND)).isEqualTo(Segment.Kind.PAUSED);
    practice.command(Command.SQUEEZE, 21 * SECOND);
    assertThat(practice.practice().breaths()).hasSize(1);
    assertThat(practice.state().task("ventilate").get().progress())
        .isEqualTo(TaskState.Progress.RUNNING);
    assertThat(segment(practice, 21 * SECOND + 1)).isEqualTo(Segment.Kind.PACED);
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
    assertThat(segment(practice, 41 * SECOND)).isEqualTo(Segment.Kind.PULSE_CHECK);
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
    assertThat(StationResult.of(events).state()).isEqualTo(practice.state());
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

  private Review review(StationPractice practice) throws Exception {
    Station station = practice.state().station();
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-01-02T03:04:05Z"),
            SessionHeader.Origin.VIRTUAL,
            "",
            StationRunPropertyTest.edition(station),
            StationRunPropertyTest.plan(station));
    return Reviewer.review(new Session(header, events, List.of()));
  }

  @Test
  void theReviewSaysNothingOfAPlannedLength() throws Exception {
    StationPractice practice = begun("adult-pulse-lost", StationMode.ALONE);
    for (long at : new long[] {60, 66}) {
      practice.advanceByAll(at * SECOND);
      practice.command(Command.SQUEEZE, at * SECOND);
      practice.command(Command.SQUEEZE_END, (at + 1) * SECOND);
    }
    practice.advanceByAll(72 * SECOND);
    practice.end(72 * SECOND);
    Prescription asked = review(practice).asked();
    // The clock stood for nothing: from the first breath at 60 s to the end at 72 s.
    // Up to a nanosecond: the instant of the end belongs to the practice.
    assertThat(asked.practisedNanos()).isCloseTo(12 * SECOND, within(1L));
    assertThat(asked.lengthNanos()).isEqualTo(asked.practisedNanos());
    // What comes before the breaths begin is no gap in them: 61 to 66 s and 67 to 72 s, by hand.
    assertThat(review(practice).metrics().gap().longestSeconds()).isCloseTo(5, within(1e-8));
    assertThat(review(practice).metrics().gap().longestSeconds()).isCloseTo(5, within(1e-8));
  }

  @Test
  void aStationWithoutABreathHasNoLongestGap() throws Exception {
    StationPractice practice = begun("adult-pulse-lost", StationMode.ALONE);
    practice.end(200 * SECOND);
    Review review = review(practice);
    assertThat(review.metrics().gap().happened()).isFalse();
    assertThat(ReviewText.write(review)).contains("the breaths never began");
    assertThat(review.findings().get(0).code()).isEqualTo("no-breaths");
  }

  @Test
  void breathsThatWereBegunAndNeverGivenAreAGap() throws Exception {
    StationPractice practice = begun("adult-pulse-lost", StationMode.ALONE);
    practice.start("ventilate", 50 * SECOND);
    practice.advanceByAll(80 * SECOND);
    practice.end(80 * SECOND);
    assertThat(review(practice).metrics().gap().longestSeconds()).isCloseTo(30, within(1e-8));
  }
}
