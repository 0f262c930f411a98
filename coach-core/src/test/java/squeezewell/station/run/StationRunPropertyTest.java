package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import squeezewell.Tries;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.Protocol;
import squeezewell.session.EventType;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.file.StationPhase;

/** What must hold whatever is done, in whatever order, at whatever time. */
class StationRunPropertyTest {
  private static final long SECOND = Candidate.SECOND;
  private static final List<Station> STATIONS = StationLibrary.stations();

  private static final List<PatientChange> CLINICAL = List.of(PatientChange.values());
  private static final List<Command> COMMANDS = List.of(Command.values());

  /** A clock kept by hand: the sum of what passed while it was not stopped. */
  private static final class HandClock {
    private long session;
    private long station;
    private boolean stopped;

    void pass(long nanos) {
      session += nanos;
      station += stopped ? 0 : nanos;
    }
  }

  @Property(tries = 1_000)
  void anyOrderEndsWithAllFactsAndTheRightClock(@ForAll long seed) throws Exception {
    for (int i = 0; i < Tries.orLong(1, 10); i++) {
      anyOrder(seed + i);
    }
  }

  private void anyOrder(long seed) throws Exception {
    Random random = new Random(seed);
    Station station = STATIONS.get(random.nextInt(STATIONS.size()));
    StationMode mode = List.of(StationMode.values()).get(random.nextInt(3));
    StationSetup setup = StationSetup.of(station, mode, List.of(), seed);
    Facts facts = new Facts();
    StationRun run = new StationRun(station, setup, facts);
    HandClock clock = new HandClock();
    int taken = 0;
    int commands = random.nextInt(120);
    for (int i = 0; i < commands; i++) {
      clock.pass(random.nextInt(4) == 0 ? 0 : (long) (random.nextDouble() * 6 * SECOND));
      if (random.nextBoolean()) {
        run.advance(clock.session);
      }
      boolean before = clock.stopped;
      if (act(run, station, random, clock)) {
        taken++;
        // What was done is written down at once.
        assertThat(byPerson(facts.events)).isEqualTo(taken);
      } else {
        clock.stopped = before;
      }
      run.advance(clock.session);
      if (run.state().phase() != StationPhase.ENDED) {
        assertThat(run.state().nowNanos()).isEqualTo(clock.session);
        assertThat(run.state().clockNanos()).isEqualTo(clock.station);
        assertThat(run.state().clockStopped()).isEqualTo(clock.stopped);
        assertThat(run.state().phaseLeftNanos()).isPositive();
      }
    }
    // No dead end: the clock ends it, once it runs.
    if (run.state().phase() != StationPhase.ENDED) {
      run.runClock(clock.session);
      run.advance(clock.session + station.preparationNanos() + station.exerciseNanos());
      assertThat(run.state().end()).contains(StationState.End.CLOCK);
      assertThat(new StationResult(run.state()).exerciseNanos()).isEqualTo(station.exerciseNanos());
    }
    assertThat(facts.details(EventType.STATION_END)).hasSize(1);
    assertThat(facts.details(EventType.EXAMINER)).hasSize(run.state().lines().size());
    assertThat(run.state().tasks())
        .allMatch(
            t ->
                t.progress() == TaskState.Progress.DONE
                    || t.progress() == TaskState.Progress.MISSED
                    || t.progress() == TaskState.Progress.NOT_NEEDED);
    assertThat(StationResult.of(station, facts.events)).isEqualTo(new StationResult(run.state()));
  }

  private static int byPerson(List<SessionEvent> events) {
    int count = 0;
    for (SessionEvent event : events) {
      boolean byItself =
          event.what() == EventType.STATION
              || event.what() == EventType.EXAMINER
              || event.detail().equals("clock");
      count += byItself ? 0 : 1;
    }
    return count;
  }

  private static boolean act(StationRun run, Station station, Random random, HandClock clock) {
    long now = clock.session;
    String task = station.tasks().get(random.nextInt(station.tasks().size())).id();
    switch (random.nextInt(64)) {
      case 0:
        return run.end(now);
      case 1, 2, 3:
        return run.stopClock(now) && (clock.stopped = true);
      case 4, 5, 6, 7, 8, 9:
        if (run.runClock(now)) {
          clock.stopped = false;
          return true;
        }
        return false;
      case 10, 11, 12, 13, 14:
        return run.remark("said at " + now, now);
      case 15, 16, 17:
        return run.inject(CLINICAL.get(random.nextInt(CLINICAL.size())).word(), now);
      case 18, 19, 20, 21:
        return !station.findings().isEmpty()
            && run.inject(
                station.findings().get(random.nextInt(station.findings().size())).id(), now);
      case 22, 23:
        return !station.findings().isEmpty()
            && run.clear(
                station.findings().get(random.nextInt(station.findings().size())).id(), now);
      case 24, 25, 26:
        return run.begin(now);
      case 27, 28, 29:
        return !station.orders().isEmpty() && run.order(station.orders().get(0).id(), now);
      case 60, 61, 62, 63:
        return run.choose(anyWay(station, random), now);
      case 30, 31, 32, 33, 34, 35, 36:
        boolean can = run.canUndo(task, now);
        boolean undone = run.undo(task, now);
        assertThat(undone).isEqualTo(can);
        return undone;
      default:
        return random.nextInt(3) == 0 ? run.start(task, now) : run.done(task, now);
    }
  }

  private static String anyWay(Station station, Random random) {
    List<BranchOption> ways = new ArrayList<>();
    for (StationBranch branch : station.branches()) {
      branch.ways().forEach(w -> ways.add(new BranchOption(branch.id(), w.id())));
    }
    return ways.isEmpty() ? "none=none" : ways.get(random.nextInt(ways.size())).words();
  }

  @Property(tries = 100)
  void withThePracticeInItOneJournalHoldsAll(@ForAll long seed) throws Exception {
    for (int i = 0; i < Tries.orLong(1, 5); i++) {
      withThePractice(seed + i);
    }
  }

  private void withThePractice(long seed) throws Exception {
    Random random = new Random(seed);
    Station station = STATIONS.get(random.nextInt(STATIONS.size()));
    StationSetup setup = StationSetup.of(station, StationMode.INSTRUCTOR, List.of(), seed);
    List<SessionEvent> events = new ArrayList<>();
    StationPractice practice =
        new StationPractice(station, setup, plan(station), new InMemory(events), List.of());
    HandClock clock = new HandClock();
    for (int i = 0; i < 150; i++) {
      clock.pass((long) (random.nextDouble() * 3 * SECOND));
      // An input is stamped when it came, a little before the program gets to it.
      long at = Math.max(0, clock.session - random.nextInt(50) * 1_000_000L);
      if (random.nextInt(3) > 0) {
        practice.advance(clock.session);
      }
      String task = station.tasks().get(random.nextInt(station.tasks().size())).id();
      switch (random.nextInt(13)) {
        case 0 -> practice.begin(at);
        case 1 -> practice.start(task, at);
        case 2 -> practice.done(task, at);
        case 3 -> practice.undo(task, at);
        case 4 -> practice.stopClock(at);
        case 5, 6 -> practice.runClock(at);
        case 7 -> practice.inject("vomit", at);
        case 8 -> practice.choose(anyWay(station, random), at);
        default -> {
          Command command = COMMANDS.get(random.nextInt(COMMANDS.size()));
          practice.command(command == Command.FINISH ? Command.SQUEEZE : command, at);
        }
      }
    }
    practice.runClock(clock.session);
    practice.advance(clock.session + station.preparationNanos() + station.exerciseNanos());
    assertThat(practice.state().phase()).isEqualTo(StationPhase.ENDED);
    assertThat(practice.practice().finished()).isTrue();
    for (int i = 0; i < events.size(); i++) {
      assertThat(events.get(i).number()).isEqualTo(i + 1);
      assertThat(events.get(i).atNanos())
          .isGreaterThanOrEqualTo(i == 0 ? 0 : events.get(i - 1).atNanos());
    }
    assertThat(StationResult.of(events).state()).isEqualTo(practice.state());
  }

  static PracticePlan plan(Station station) {
    Protocol edition = edition(station);
    Guidance guidance = edition.find(station.group(), station.situation()).get();
    return StationPractice.plan(station, edition, guidance, 0);
  }

  /** The newest edition that covers a station. */
  static Protocol edition(Station station) {
    for (Protocol edition : GuidelineLibrary.editions()) {
      if (edition.find(station.group(), station.situation()).isPresent()) {
        return edition;
      }
    }
    throw new IllegalStateException(station.id());
  }

  /** Keeps the facts in memory. */
  record InMemory(List<SessionEvent> events) implements Journal {
    @Override
    public void append(SessionEvent event) {
      events.add(event);
    }

    @Override
    public void close() {
      // Nothing is open.
    }
  }
}
