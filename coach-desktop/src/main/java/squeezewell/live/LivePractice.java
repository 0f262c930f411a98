package squeezewell.live;

import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.ObjLongConsumer;
import squeezewell.coach.Coach;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.coach.CueOutput;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.ClinicalFinding;
import squeezewell.session.Journal;
import squeezewell.session.MonotonicClock;

/**
 * Drives a {@link Coach} in real time on a thread of its own. Commands may come from any thread and
 * never wait for the disk; whoever looks reads the last published state.
 */
public final class LivePractice implements Shown, AutoCloseable {
  private static final long LONGEST_WAIT_NANOS = TimeUnit.SECONDS.toNanos(1);
  private static final long CLOSE_MILLIS = 2_000;

  private final MonotonicClock clock;
  private final Journal journal;
  private final Coach coach;
  private final Consumer<CoachState> onChange;
  private final BlockingQueue<Stamped> commands = new LinkedBlockingQueue<>();
  private final Thread thread;
  private volatile CoachState state;

  private record Stamped(ObjLongConsumer<Coach> action, long atNanos) {}

  /**
   * Prepares a practice; {@link #start} sets it going.
   *
   * @param plan what to practise
   * @param clock session time, already running
   * @param journal where the facts go; closed at the end
   * @param outputs who gives the prompts
   * @param onChange told of each new state, on the practice's own thread; of the finished one once,
   *     after the journal was closed, also if a fault ended the practice
   */
  public LivePractice(
      PracticePlan plan,
      MonotonicClock clock,
      Journal journal,
      List<? extends CueOutput> outputs,
      Consumer<CoachState> onChange) {
    this.clock = Objects.requireNonNull(clock, "clock");
    this.journal = Objects.requireNonNull(journal, "journal");
    this.onChange = Objects.requireNonNull(onChange, "onChange");
    this.coach = new Coach(plan, journal, outputs);
    this.state = coach.state();
    this.thread = new Thread(this::run, "squeezewell-coach");
    thread.setDaemon(true);
  }

  /** Lets the practice run. */
  public void start() {
    thread.start();
  }

  /**
   * Gives a command.
   *
   * @param command the command
   * @param nanoTime when the person gave it, a reading of {@link System#nanoTime()}
   */
  public void post(Command command, long nanoTime) {
    post((to, at) -> to.command(command, at), nanoTime);
  }

  /**
   * Notes what was found.
   *
   * @param finding what
   * @param nanoTime when the person told it, a reading of {@link System#nanoTime()}
   */
  public void post(ClinicalFinding finding, long nanoTime) {
    post((to, at) -> to.find(finding, at), nanoTime);
  }

  private void post(ObjLongConsumer<Coach> action, long nanoTime) {
    commands.add(new Stamped(action, Math.max(0, clock.at(nanoTime))));
  }

  @Override
  public CoachState state() {
    return state;
  }

  @Override
  public long nowNanos() {
    return clock.nanos();
  }

  /** Session time. */
  public MonotonicClock clock() {
    return clock;
  }

  /**
   * Ends the practice if it still runs, and waits up to two seconds for the last fact's writing.
   */
  @Override
  public void close() {
    post(Command.FINISH, System.nanoTime());
    boolean interrupted = false;
    try {
      thread.join(CLOSE_MILLIS);
    } catch (InterruptedException e) {
      interrupted = true;
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    String trouble = "";
    try {
      while (!coach.state().finished()) {
        Stamped command = commands.poll(waitNanos(), TimeUnit.NANOSECONDS);
        if (command != null) {
          command.action().accept(coach, command.atNanos());
        }
        coach.advance(clock.nanos());
        if (!coach.state().finished()) {
          publish(coach.state());
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException | Error e) {
      trouble = "The practice stopped, since something went wrong inside the program: " + e;
      throw e;
    } finally {
      end(trouble);
    }
  }

  private long waitNanos() {
    OptionalLong due = coach.nextDueNanos();
    long wait = due.isPresent() ? due.getAsLong() - clock.nanos() : LONGEST_WAIT_NANOS;
    return Math.max(0, Math.min(wait, LONGEST_WAIT_NANOS));
  }

  private void publish(CoachState next) {
    state = next;
    onChange.accept(next);
  }

  /** Whatever ended the practice, those who wait for its end must not wait for ever. */
  private void end(String fault) {
    String trouble = fault;
    try {
      journal.close();
    } catch (IOException e) {
      if (trouble.isEmpty()) {
        trouble = "The session file could not be closed: " + e.getMessage();
      }
    }
    CoachState last = coach.state();
    publish(last.ended(trouble.isEmpty() ? last.trouble() : trouble));
  }
}
