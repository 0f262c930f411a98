package squeezewell.live;

import java.io.IOException;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.session.Journal;
import squeezewell.session.MonotonicClock;

/**
 * Drives something in real time on a thread of its own. What is done to it may come from any thread
 * and never waits for the disk; whoever looks reads the last published state.
 *
 * @param <S> how things stand, immutable
 */
public abstract class LiveRun<S> implements Shown, AutoCloseable {
  private static final long CLOSE_MILLIS = 2_000;

  private final String name;
  private final long longestWaitNanos;
  private final MonotonicClock clock;
  private final Journal journal;
  private final Consumer<? super S> onChange;
  private final BlockingQueue<Stamped> commands = new LinkedBlockingQueue<>();
  private final Thread thread;
  private volatile S now;

  private record Stamped(LongConsumer action, long atNanos) {}

  /**
   * Prepares to drive; {@link #start} begins.
   *
   * @param name what is driven, in a word for people
   * @param longestWaitNanos how long it is left alone at most
   * @param clock session time, already running
   * @param journal where the facts go; closed at the end
   * @param onChange told of each new state, on the thread of its own; of the finished one once,
   *     after the journal was closed, also if a fault was the end
   */
  LiveRun(
      String name,
      long longestWaitNanos,
      MonotonicClock clock,
      Journal journal,
      Consumer<? super S> onChange) {
    this.name = name;
    this.longestWaitNanos = longestWaitNanos;
    this.clock = Objects.requireNonNull(clock, "clock");
    this.journal = Objects.requireNonNull(journal, "journal");
    this.onChange = Objects.requireNonNull(onChange, "onChange");
    thread = new Thread(this::run, "squeezewell-" + name);
    thread.setDaemon(true);
  }

  /** Where the practice stands. The abstract methods are called on the thread of its own. */
  abstract CoachState practice();

  /** When it must be given time next at the latest, session time; empty if nothing is due. */
  abstract OptionalLong nextDueNanos();

  /** Gives it time. */
  abstract void advance(long nowNanos);

  /** Gives it a command at an instant of session time. */
  abstract void command(Command command, long atNanos);

  /** How things stand, with a practice that stands so. */
  abstract S look(CoachState practice, long atNanos);

  /** Lets it run. */
  public final void start() {
    thread.start();
  }

  /**
   * Gives a command.
   *
   * @param nanoTime when the person gave it, a reading of {@link System#nanoTime()}
   */
  public final void post(Command command, long nanoTime) {
    act(at -> command(command, at), nanoTime);
  }

  /** Does something, told the session time, on the thread of its own. */
  final void act(LongConsumer action, long nanoTime) {
    commands.add(new Stamped(action, Math.max(0, clock.at(nanoTime))));
  }

  /** Where things stand. */
  public final S now() {
    return now;
  }

  @Override
  public final long nowNanos() {
    return clock.nanos();
  }

  /** Session time. */
  public final MonotonicClock clock() {
    return clock;
  }

  /** Ends it if it still runs, and waits up to two seconds for the last fact's writing. */
  @Override
  public final void close() {
    post(Command.FINISH, System.nanoTime());
    try {
      thread.join(CLOSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Shows how things stand before it runs. */
  final void prepared() {
    now = look(practice(), 0);
  }

  private void publish(CoachState practice) {
    now = look(practice, clock.nanos());
    onChange.accept(now);
  }

  private void run() {
    String trouble = "";
    try {
      while (!practice().finished()) {
        Stamped command = commands.poll(waitNanos(), TimeUnit.NANOSECONDS);
        if (command != null) {
          command.action().accept(command.atNanos());
        }
        advance(clock.nanos());
        if (!practice().finished()) {
          publish(practice());
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException | Error e) {
      trouble = "The " + name + " stopped, since something went wrong inside the program: " + e;
      throw e;
    } finally {
      end(trouble);
    }
  }

  private long waitNanos() {
    OptionalLong due = nextDueNanos();
    long wait = due.isPresent() ? due.getAsLong() - clock.nanos() : longestWaitNanos;
    return Math.max(0, Math.min(wait, longestWaitNanos));
  }

  /** Whatever ended it, those who wait for its end must not wait for ever. */
  private void end(String fault) {
    String trouble = fault;
    try {
      journal.close();
    } catch (IOException e) {
      if (trouble.isEmpty()) {
        trouble = "The session file could not be closed: " + e.getMessage();
      }
    }
    CoachState last = practice();
    publish(last.ended(trouble.isEmpty() ? last.trouble() : trouble));
  }
}
