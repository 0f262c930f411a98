package squeezewell.live;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.ObjLongConsumer;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.coach.CueOutput;
import squeezewell.cue.PracticePlan;
import squeezewell.session.Journal;
import squeezewell.session.MonotonicClock;
import squeezewell.station.file.Station;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationRun;
import squeezewell.station.run.StationSetup;
import squeezewell.station.run.StationState;

/** Drives a {@link StationPractice} in real time. */
public final class LiveStation extends LiveRun<LiveStation.Now> {
  private final StationPractice station;
  private Optional<Slip> lastTap = Optional.empty();

  /**
   * Where things stand. Immutable.
   *
   * @param station the station
   * @param practice the practice in it
   * @param breathing whether breaths are being paced by now
   * @param slip the last tap, while it can be taken back
   */
  public record Now(
      StationState station, CoachState practice, boolean breathing, Optional<Slip> slip) {}

  /**
   * A tap that can be taken back.
   *
   * @param taskId the task
   * @param words what the task is
   * @param untilNanos until when, session time
   */
  public record Slip(String taskId, String words, long untilNanos) {}

  /**
   * Prepares a station; {@link #start} sets it going.
   *
   * @param station what to run
   * @param setup what was settled for it
   * @param plan what to breathe; {@link StationPractice#plan} makes one
   * @param clock session time, already running
   * @param journal where the facts go; closed at the end
   * @param outputs who gives the prompts
   * @param onChange told of each new state, on the station's own thread; of the finished one once,
   *     after the journal was closed, also if a fault ended the station
   */
  public LiveStation(
      Station station,
      StationSetup setup,
      PracticePlan plan,
      MonotonicClock clock,
      Journal journal,
      List<? extends CueOutput> outputs,
      Consumer<Now> onChange) {
    super("station", TimeUnit.MILLISECONDS.toNanos(250), clock, journal, onChange);
    this.station = new StationPractice(station, setup, plan, journal, outputs);
    prepared();
  }

  /**
   * Does something with the station, on its own thread.
   *
   * @param action what; told the session time
   * @param nanoTime when the person did it, a reading of {@link System#nanoTime()}
   */
  public void post(ObjLongConsumer<StationPractice> action, long nanoTime) {
    act(at -> action.accept(station, at), nanoTime);
  }

  /**
   * A task was tapped: one that is a tap is done, another begins or is done. What was tapped last
   * can be taken back with {@link #undo}.
   */
  public void tap(String taskId, long nanoTime) {
    post(
        (to, at) -> {
          to.advance(at);
          to.state()
              .task(taskId)
              .ifPresent(
                  task -> {
                    boolean begins = task.task().lasts() && task.begunNanos().isEmpty();
                    boolean taken = begins ? to.start(taskId, at) : to.done(taskId, at);
                    if (taken) {
                      lastTap =
                          Optional.of(
                              new Slip(taskId, task.task().words(), at + StationRun.UNDO_NANOS));
                    }
                  });
        },
        nanoTime);
  }

  /** Takes the last tap back, if that is still possible. */
  public void undo(long nanoTime) {
    post(
        (to, at) -> {
          if (lastTap.isPresent() && to.undo(lastTap.get().taskId(), at)) {
            lastTap = Optional.empty();
          }
        },
        nanoTime);
  }

  @Override
  public CoachState state() {
    return now().practice();
  }

  @Override
  CoachState practice() {
    return station.practice();
  }

  @Override
  OptionalLong nextDueNanos() {
    return station.nextDueNanos();
  }

  @Override
  void advance(long nowNanos) {
    station.advance(nowNanos);
  }

  @Override
  void command(Command command, long atNanos) {
    station.command(command, atNanos);
  }

  @Override
  Now look(CoachState practice, long atNanos) {
    Optional<Slip> slip =
        lastTap.filter(
            tap -> atNanos <= tap.untilNanos() && station.canUndo(tap.taskId(), atNanos));
    return new Now(station.state(), practice, station.breathing(), slip);
  }
}
