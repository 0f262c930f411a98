package squeezewell.station.run;

import java.util.List;
import java.util.OptionalLong;
import java.util.function.LongPredicate;
import squeezewell.coach.Coach;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.coach.CueOutput;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.Protocol;
import squeezewell.session.Fact;
import squeezewell.session.Journal;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;

/**
 * A station with the live practice in it: one time, one journal. Nothing is prompted before the
 * first squeeze or the first paced task; then a {@link Coach} paces, checks and suction of the
 * station hold it up, and findings change its rhythm. It has no clock and no thread.
 *
 * <p>The same words about time hold as for {@link StationRun}. Not thread-safe.
 */
public final class StationPractice implements StationCommands {
  /** Longer than any station can need, so that the practice never ends before the station. */
  private static final long SPARE_NANOS = 60_000_000_000L;

  private final StationRun run;
  private final Coach coach;
  private boolean breathing;

  /**
   * Begins at session time 0.
   *
   * @param station what to run
   * @param setup what was settled for it
   * @param plan what to breathe; {@link #plan} makes one
   * @param journal where the facts go
   * @param outputs who gives the prompts
   */
  public StationPractice(
      Station station,
      StationSetup setup,
      PracticePlan plan,
      Journal journal,
      List<? extends CueOutput> outputs) {
    coach = new Coach(plan, journal, outputs);
    coach.command(Command.PAUSE, 0);
    run = new StationRun(station, setup, new ToCoach());
  }

  /** The plan for a station: long enough, without a count-in. */
  public static PracticePlan plan(
      Station station, Protocol protocol, Guidance guidance, long leadNanos) {
    long length = station.preparationNanos() + station.exerciseNanos() + SPARE_NANOS;
    return PracticePlan.of(protocol, guidance, 0, length, leadNanos);
  }

  /** Where the station stands. */
  public StationState state() {
    return run.state();
  }

  /** Where the practice in it stands. */
  public CoachState practice() {
    return coach.state();
  }

  /** Whether breaths are being paced by now. */
  public boolean breathing() {
    return breathing;
  }

  /** The instant at which {@link #advance} should be called next at the latest. */
  public OptionalLong nextDueNanos() {
    OptionalLong station = run.nextDueNanos();
    OptionalLong practice = coach.nextDueNanos();
    if (!station.isPresent() || !practice.isPresent()) {
      return station.isPresent() ? station : practice;
    }
    return OptionalLong.of(Math.min(station.getAsLong(), practice.getAsLong()));
  }

  /** Lets time pass. */
  public void advance(long nowNanos) {
    long beforeItsEnd = advanceCoach(nowNanos);
    run.advance(nowNanos);
    if (beforeItsEnd < nowNanos) {
      coach.advance(nowNanos);
    }
  }

  /**
   * Lets time pass for the practice, but not to its end: it keeps the journal, so a clock that
   * leaps past both ends must find it open until the station's own end is written down.
   *
   * @return up to when it passed
   */
  private long advanceCoach(long nowNanos) {
    OptionalLong end = coach.state().schedule().endNanos();
    long to = end.isPresent() ? Math.min(nowNanos, end.getAsLong() - 1) : nowNanos;
    coach.advance(to);
    return to;
  }

  /**
   * Lets time pass as a caller does who is never late: up to an instant, from one thing that falls
   * due to the next.
   */
  public void advanceByAll(long nowNanos) {
    OptionalLong due = nextDueNanos();
    while (due.isPresent() && due.getAsLong() < nowNanos) {
      advance(due.getAsLong());
      OptionalLong next = nextDueNanos();
      // What is due may not come before the clock has moved on.
      due =
          next.isPresent() && next.getAsLong() <= due.getAsLong()
              ? OptionalLong.of(due.getAsLong() + 1)
              : next;
    }
    advance(nowNanos);
  }

  /** While the clock of the station stands, the practice does too. */
  @Override
  public boolean act(StationAction action, String words, long nowNanos) {
    return tell(at -> run.act(action, words, at), nowNanos);
  }

  @Override
  public boolean canUndo(String taskId, long nowNanos) {
    return run.canUndo(taskId, nowNanos);
  }

  /**
   * A command of the practice. Squeezes before the exercise and while the clock stands are not
   * counted. A check or suction begins or ends the task of the station that is one, if any. Pause
   * and resume stop and run the station's clock; finish ends it. Findings come from the station.
   */
  public void command(Command command, long atNanos) {
    switch (command) {
      case SQUEEZE, BREATH, COMPRESS -> squeeze(command, atNanos);
      case PULSE_CHECK -> hold(Segment.Kind.PULSE_CHECK, atNanos);
      case SUCTION -> hold(Segment.Kind.SUCTION, atNanos);
      case PULSE_CHECK_END -> holdEnd(Segment.Kind.PULSE_CHECK, atNanos);
      case SUCTION_END -> holdEnd(Segment.Kind.SUCTION, atNanos);
      case PAUSE -> stopClock(atNanos);
      case RESUME -> runClock(atNanos);
      case FINISH -> end(atNanos);
      case UNDO_FINDING -> {
        // Only the station tells findings, so only it takes them back.
      }
      case SQUEEZE_END -> {
        coach.command(command, atNanos);
        run.recorded(StationAction.BREATH_END, Math.max(atNanos, coach.lastEventNanos()));
      }
      case RETRACT_BREATH -> {
        int before = coach.state().breaths().size();
        coach.command(command, atNanos);
        if (coach.state().breaths().size() < before) {
          run.recorded(StationAction.RETRACT, Math.max(atNanos, coach.lastEventNanos()));
        }
      }
      case SOUND_LOST, SOUND_BACK -> coach.command(command, atNanos);
    }
  }

  private void squeeze(Command command, long atNanos) {
    advance(atNanos);
    if (run.state().phase() != StationPhase.EXERCISE || run.state().clockStopped()) {
      return;
    }
    goOn(atNanos);
    int before = given();
    int breathsBefore = coach.state().breaths().size();
    coach.command(command, atNanos);
    if (given() > before) {
      boolean breath = coach.state().breaths().size() > breathsBefore;
      run.recorded(
          breath ? StationAction.BREATH : StationAction.COMPRESSION, lastGiven(breathsBefore));
    }
    endHoldsThatGaveWay(atNanos);
    if (given() > before) {
      advanceCoach(atNanos);
      run.breath(Math.max(atNanos, coach.lastEventNanos()));
    }
  }

  /** When the last squeeze or compression was written down, which is before what followed. */
  private long lastGiven(int breathsBefore) {
    CoachState now = coach.state();
    int breaths = now.breaths().size();
    return breaths > breathsBefore
        ? now.breaths().get(breaths - 1).startNanos()
        : now.recentCompressions().get(now.recentCompressions().size() - 1);
  }

  private int given() {
    return coach.state().breaths().size() + coach.state().compressionCount();
  }

  /** Who squeezes again ends a check or suction without saying so. */
  private void endHoldsThatGaveWay(long atNanos) {
    for (TaskState task : run.state().tasks()) {
      boolean holds =
          task.progress() == TaskState.Progress.RUNNING && task.task().hold().isPresent();
      if (holds && !isHeldBy(task.task().hold().get())) {
        done(task.task().id(), atNanos);
      }
    }
  }

  private boolean isHeldBy(Segment.Kind hold) {
    return hold == coach.state().schedule().stretchAt(coach.lastEventNanos()).kind();
  }

  private void hold(Segment.Kind hold, long atNanos) {
    advance(atNanos);
    for (TaskState task : run.state().tasks()) {
      boolean isOne = task.isToDo() && task.task().hold().filter(hold::equals).isPresent();
      if (isOne && start(task.task().id(), atNanos)) {
        return;
      }
    }
    pass(Command.toggle(hold, false), atNanos);
  }

  private void holdEnd(Segment.Kind hold, long atNanos) {
    advance(atNanos);
    for (TaskState task : run.state().tasks()) {
      if (task.isHolding(hold) && done(task.task().id(), atNanos)) {
        return;
      }
    }
    pass(Command.toggle(hold, true), atNanos);
  }

  /** Breaths can be held up only once there are some. */
  private void pass(Command command, long atNanos) {
    if (breathing && !run.state().clockStopped()) {
      coach.command(command, atNanos);
    }
  }

  private void goOn(long atNanos) {
    if (!breathing) {
      breathing = true;
      coach.command(Command.RESUME, atNanos);
    }
  }

  /** The run is told no time before the last event, so that the journal holds the very same. */
  private boolean tell(LongPredicate action, long atNanos) {
    advanceCoach(atNanos);
    return action.test(Math.max(atNanos, coach.lastEventNanos()));
  }

  /** Carries what the station gives out to the practice and its journal. */
  private final class ToCoach implements StationOutput {
    @Override
    public void fact(Fact fact, long atNanos) {
      coach.note(fact, atNanos);
    }

    @Override
    public void find(PatientChange finding, long atNanos) {
      coach.find(finding, atNanos);
      if (!breathing) {
        coach.command(Command.PAUSE, atNanos);
      }
    }

    @Override
    public void undoFinding(long atNanos) {
      coach.command(Command.UNDO_FINDING, atNanos);
    }

    @Override
    public void started(StationTask task, long atNanos) {
      if (task.kind() == TaskKind.PACED) {
        goOn(atNanos);
      }
      task.hold().ifPresent(hold -> pass(Command.toggle(hold, false), atNanos));
    }

    @Override
    public void done(StationTask task, long atNanos) {
      task.hold().ifPresent(hold -> pass(Command.toggle(hold, true), atNanos));
    }

    @Override
    public void clock(boolean stopped, long atNanos) {
      if (breathing) {
        coach.command(Command.toggle(Segment.Kind.PAUSED, !stopped), atNanos);
      }
    }

    @Override
    public void ended(long atNanos) {
      coach.command(Command.FINISH, atNanos);
    }
  }
}
