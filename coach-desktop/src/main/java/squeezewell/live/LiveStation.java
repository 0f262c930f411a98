package squeezewell.live;

import java.util.List;
import java.util.Objects;
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

/**
 * Drives a {@link StationPractice} in real time on a thread of its own, as {@link LivePractice}
 * does a practice. Commands may come from any thread; whoever looks reads the last published state.
 */
public final class LiveStation implements AutoCloseable {
  private static final long LONGEST_WAIT_NANOS = TimeUnit.MILLISECONDS.toNanos(250);

  private final MonotonicClock clock;
  private final StationPractice station;
  private final Consumer<Now> onChange;
  private final Driver<StationPractice> driver;
  private Optional<Slip> lastTap = Optional.empty();
  private volatile Now now;

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
    this.clock = Objects.requireNonNull(clock, "clock");
    this.onChange = Objects.requireNonNull(onChange, "onChange");
    this.station = new StationPractice(station, setup, plan, journal, outputs);
    this.now = look(this.station.practice(), 0);
    this.driver =
        new Driver<>("station", this.station, new Steps(), LONGEST_WAIT_NANOS, clock, journal);
  }

  /** Lets the station run. */
  public void start() {
    driver.start();
  }

  /**
   * Gives a command of the practice.
   *
   * @param command the command
   * @param nanoTime when the person gave it, a reading of {@link System#nanoTime()}
   */
  public void post(Command command, long nanoTime) {
    post((to, at) -> to.command(command, at), nanoTime);
  }

  /**
   * Does something with the station, on its own thread.
   *
   * @param action what; told the session time
   * @param nanoTime when the person did it, a reading of {@link System#nanoTime()}
   */
  public void post(ObjLongConsumer<StationPractice> action, long nanoTime) {
    driver.post(action, nanoTime);
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

  /** Where things stand. */
  public Now now() {
    return now;
  }

  /** Session time. */
  public MonotonicClock clock() {
    return clock;
  }

  /** Ends the station if it still runs, and waits up to two seconds for the last fact's writing. */
  @Override
  public void close() {
    post(Command.FINISH, System.nanoTime());
    driver.await();
  }

  private Now look(CoachState practice, long atNanos) {
    Optional<Slip> slip =
        lastTap.filter(
            tap -> atNanos <= tap.untilNanos() && station.canUndo(tap.taskId(), atNanos));
    return new Now(station.state(), practice, station.breathing(), slip);
  }

  private void publish(CoachState practice) {
    now = look(practice, clock.nanos());
    onChange.accept(now);
  }

  private final class Steps implements Driver.Steps {
    @Override
    public boolean finished() {
      return station.practice().finished();
    }

    @Override
    public OptionalLong nextDueNanos() {
      return station.nextDueNanos();
    }

    @Override
    public void advance(long nowNanos) {
      station.advance(nowNanos);
    }

    @Override
    public void changed() {
      publish(station.practice());
    }

    @Override
    public void ended(String trouble) {
      CoachState last = station.practice();
      publish(last.ended(trouble.isEmpty() ? last.trouble() : trouble));
    }
  }
}
