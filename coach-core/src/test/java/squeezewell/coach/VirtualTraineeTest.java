package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.PulseCheckDue;
import squeezewell.cue.Segment;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Breath;
import squeezewell.session.EventType;
import squeezewell.session.Journal;
import squeezewell.session.ManualClock;
import squeezewell.session.SessionEvent;

/** The figures asked for here are those that the trainee's own description promises. */
class VirtualTraineeTest {
  private static final long SECOND = 1_000_000_000L;

  @ParameterizedTest
  @EnumSource(TraineeFault.class)
  void theSameSeedGivesTheSameJournalAndAnotherSeedAnother(TraineeFault fault) {
    assertThat(practise(7, fault, 300).events).isEqualTo(practise(7, fault, 300).events);
    assertThat(practise(8, fault, 300).events).isNotEqualTo(practise(7, fault, 300).events);
  }

  @Test
  void aSoundTraineeAnswersEveryPromptSoonAndSqueezesForASecond() {
    Run run = practise(1, TraineeFault.NONE, 600);
    List<Cue> prompts = run.schedule().squeezesUntil(600 * SECOND);
    assertThat(run.breaths()).hasSameSizeAs(prompts);
    double[] lags = run.lags(prompts);
    assertThat(DoubleStream.of(lags)).allMatch(lag -> lag >= 0.12 && lag <= 0.7);
    // 90 lags of SD 0.15 s have a mean within 4 x 0.15 / sqrt(90) = 0.063 s of the true one, which
    // the shortest lag moves from 0.25 to a little above it.
    assertThat(DoubleStream.of(lags).average().orElse(0)).isCloseTo(0.27, within(0.065));
    assertThat(run.squeezeSeconds().average().orElse(0)).isCloseTo(1, within(0.04));
  }

  @Test
  void aSoundTraineeChecksThePulseWhenItIsDueForSevenSeconds() {
    Run run = practise(1, TraineeFault.NONE, 600);
    assertThat(run.schedule().pulseChecks()).hasSize(4);
    for (PulseCheckDue due : run.schedule().pulseChecks()) {
      double late = (due.startedNanos().getAsLong() - due.dueNanos()) / 1e9;
      assertThat(late).isBetween(1.0, 4.0);
    }
    for (Segment segment : run.schedule().segments()) {
      if (segment.kind() == Segment.Kind.PULSE_CHECK) {
        assertThat((segment.endNanos() - segment.startNanos()) / 1e9).isBetween(6.0, 8.0);
      }
    }
  }

  @Test
  void aFastTraineeGivesThirtyBreathsAMinute() {
    Run run = practise(3, TraineeFault.FAST, 300);
    assertThat(60 / run.meanInterval()).isCloseTo(30, within(1.0));
  }

  @Test
  void aTraineeWithATempoOfItsOwnKeepsFiveSeconds() {
    Run run = practise(3, TraineeFault.OWN_TEMPO, 110);
    assertThat(run.intervals()).allMatch(i -> i >= 5 && i <= 5.1);
  }

  @Test
  void aSlowingTraineeEndsSlowerThanItBegan() {
    List<Double> intervals = practise(3, TraineeFault.SLOWS, 300).intervals();
    // Half of the way there the interval is 6 s x 1.2 = 7.2 s, at the end 6 s x 1.4 = 8.4 s.
    assertThat(intervals.get(0)).isCloseTo(6, within(0.6));
    assertThat(intervals.get(intervals.size() - 1)).isCloseTo(8.4, within(0.6));
  }

  @Test
  void aSkippingTraineeLeavesOutAboutOneInFiveAndNeverTwoInARow() {
    Run run = practise(3, TraineeFault.SKIPS, 600);
    int prompts = run.schedule().squeezesUntil(600 * SECOND).size();
    assertThat(run.breaths().size()).isBetween(prompts * 3 / 4, prompts * 9 / 10);
    assertThat(run.intervals()).allMatch(i -> i < 13);
  }

  @Test
  void aPausingTraineeStopsForOverTwentySeconds() {
    Run run = practise(3, TraineeFault.LONG_PAUSES, 300);
    assertThat(run.intervals().stream().filter(i -> i > 20)).hasSizeBetween(2, 4);
    assertThat(run.intervals()).allMatch(i -> i < 30);
  }

  @Test
  void aLateTraineeChecksThePulseHalfAMinuteLate() {
    Run run = practise(3, TraineeFault.LATE_CHECK, 300);
    PulseCheckDue first = run.schedule().pulseChecks().get(0);
    assertThat((first.startedNanos().getAsLong() - first.dueNanos()) / 1e9).isBetween(30.0, 41.0);
    assertThat(run.schedule().pulseChecks()).allMatch(d -> d.startedNanos().isPresent());
  }

  @Test
  void aShortSqueezeLastsFourTenthsOfASecond() {
    Run run = practise(3, TraineeFault.SHORT_SQUEEZE, 300);
    assertThat(run.squeezeSeconds().average().orElse(0)).isCloseTo(0.4, within(0.03));
    assertThat(run.breaths()).hasSameSizeAs(run.schedule().squeezesUntil(300 * SECOND));
  }

  @Test
  void anAnticipatingTraineeIsBeforeEveryPromptThatCanBeForeseen() {
    Run run = practise(3, TraineeFault.ANTICIPATES, 110);
    double[] lags = run.lags(run.schedule().squeezesUntil(110 * SECOND));
    assertThat(lags[0]).isPositive();
    for (int i = 1; i < lags.length; i++) {
      assertThat(lags[i]).isBetween(-0.56, -0.09);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 30, 119, 121, 125, 130, 244, 301})
  void everyPracticeComesToItsEnd(long seconds) {
    for (TraineeFault fault : TraineeFault.values()) {
      Run run = practise(11, fault, seconds);
      assertThat(run.finished).isTrue();
      SessionEvent last = run.events.get(run.events.size() - 1);
      assertThat(last.what()).isEqualTo(EventType.FINISH);
      assertThat(last.atNanos()).isEqualTo(seconds * SECOND);
      assertThat(run.events).noneMatch(e -> e.what() == EventType.HOLE);
    }
  }

  @Test
  void everyRhythmOfEveryEditionCanBePractised() {
    for (Protocol protocol : GuidelineLibrary.editions()) {
      for (Guidance guidance : protocol.guidance()) {
        Run run = practise(5, TraineeFault.NONE, new PracticePlan(guidance, 0, 200 * SECOND, 0));
        assertThat(run.breaths())
            .as(protocol.id() + " " + guidance.patient() + " " + guidance.situation())
            .hasSizeGreaterThanOrEqualTo(run.schedule().squeezesUntil(199 * SECOND).size())
            .hasSizeLessThanOrEqualTo(run.schedule().squeezesUntil(200 * SECOND).size());
      }
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Situation.class,
      names = {"ARREST_NO_ADVANCED_AIRWAY", "ARREST_ADVANCED_AIRWAY"})
  void compressionsAreGivenNearEachPromptForOne(Situation situation) {
    Guidance guidance =
        GuidelineLibrary.editions().get(0).find(PatientGroup.ADULT, situation).orElseThrow();
    // Ends before the first pulse check.
    PracticePlan plan = new PracticePlan(guidance, 3 * SECOND, 110 * SECOND, 0);
    Run run = practise(4, TraineeFault.NONE, plan);
    List<Long> prompts =
        run.schedule().between(0, 112 * SECOND).stream()
            .filter(c -> c.kind() == CueKind.COMPRESS)
            .map(Cue::atNanos)
            .collect(Collectors.toList());
    List<Long> given = run.compressions();
    assertThat(given.size()).isBetween(prompts.size(), prompts.size() + 2);
    double sum = 0;
    for (int k = 0; k < prompts.size(); k++) {
      double lag = (given.get(k) - prompts.get(k)) / 1e9;
      assertThat(lag).isBetween(-0.061, 0.101);
      sum += lag;
    }
    // Over 150 lags of SD 0.03 s have a mean within 4 x 0.03 / sqrt(150) = 0.01 s of the true one.
    assertThat(sum / prompts.size()).isCloseTo(0.02, within(0.01));
    assertThat(run.breaths()).isNotEmpty();
    assertThat(run.events).isEqualTo(practise(4, TraineeFault.NONE, plan).events);
    assertThat(run.compressions())
        .isNotEqualTo(practise(5, TraineeFault.NONE, plan).compressions());
  }

  @Test
  void nobodyCompressesDuringACheckOrWhereItIsNotAsked() {
    assertThat(practise(4, TraineeFault.NONE, 300).compressions()).isEmpty();
    Guidance guidance =
        GuidelineLibrary.editions()
            .get(0)
            .find(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY)
            .orElseThrow();
    Run run = practise(4, TraineeFault.NONE, new PracticePlan(guidance, 0, 300 * SECOND, 0));
    assertThat(run.schedule().segments()).anyMatch(s -> s.kind() == Segment.Kind.PULSE_CHECK);
    assertThat(run.compressions())
        .hasSizeGreaterThan(300)
        .allMatch(c -> run.schedule().stretchAt(c).kind() == Segment.Kind.PACED);
  }

  private static Run practise(long seed, TraineeFault fault, long seconds) {
    Guidance guidance =
        GuidelineLibrary.editions()
            .get(0)
            .find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING)
            .orElseThrow();
    return practise(seed, fault, new PracticePlan(guidance, 0, seconds * SECOND, 0));
  }

  private static Run practise(long seed, TraineeFault fault, PracticePlan plan) {
    Kept journal = new Kept();
    Coach coach = new Coach(plan, journal, List.of());
    new VirtualTrainee(seed, fault).practise(coach, new ManualClock());
    return new Run(coach.state(), journal.events, coach.state().finished());
  }

  private static final class Kept implements Journal {
    private final List<SessionEvent> events = new ArrayList<>();

    @Override
    public void append(SessionEvent event) {
      events.add(event);
    }

    @Override
    public void close() {}
  }

  private record Run(CoachState state, List<SessionEvent> events, boolean finished) {
    CueSchedule schedule() {
      return state.schedule();
    }

    List<Breath> breaths() {
      return state.breaths();
    }

    List<Long> compressions() {
      return events.stream()
          .filter(e -> e.what() == EventType.COMPRESSION)
          .map(SessionEvent::atNanos)
          .collect(Collectors.toList());
    }

    double[] lags(List<Cue> prompts) {
      double[] lags = new double[prompts.size()];
      for (int i = 0; i < lags.length; i++) {
        lags[i] = (breaths().get(i).startNanos() - prompts.get(i).atNanos()) / 1e9;
      }
      return lags;
    }

    /** Intervals within one stretch, in seconds. */
    List<Double> intervals() {
      List<Double> intervals = new ArrayList<>();
      for (int i = 1; i < breaths().size(); i++) {
        long from = breaths().get(i - 1).startNanos();
        long to = breaths().get(i).startNanos();
        if (schedule().stretchAt(from).equals(schedule().stretchAt(to))) {
          intervals.add((to - from) / 1e9);
        }
      }
      return intervals;
    }

    double meanInterval() {
      return intervals().stream().collect(Collectors.averagingDouble(i -> i));
    }

    DoubleStream squeezeSeconds() {
      return breaths().stream()
          .filter(b -> b.endNanos().isPresent())
          .mapToDouble(b -> (b.endNanos().getAsLong() - b.startNanos()) / 1e9);
    }
  }
}
