package squeezewell.live;

import java.io.IOException;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.ObjLongConsumer;
import squeezewell.session.Journal;
import squeezewell.session.MonotonicClock;

/**
 * Drives something in real time on a thread of its own. What is done to it may come from any thread
 * and never waits for the disk.
 *
 * @param <T> what is driven; only this thread touches it
 */
final class Driver<T> {
  private static final long CLOSE_MILLIS = 2_000;

  private final T driven;
  private final Steps steps;
  private final MonotonicClock clock;
  private final Journal journal;
  private final String what;
  private final long longestWaitNanos;
  private final BlockingQueue<Stamped<T>> commands = new LinkedBlockingQueue<>();
  private final Thread thread;

  private record Stamped<T>(ObjLongConsumer<T> action, long atNanos) {}

  /** What is driven, as far as time goes. Called on the driver's thread. */
  interface Steps {
    /** Whether it is over. */
    boolean finished();

    /** When it must be given time next at the latest, session time; empty if nothing is due. */
    OptionalLong nextDueNanos();

    /** Gives it time. */
    void advance(long nowNanos);

    /** It may have changed. */
    void changed();

    /**
     * It is over and the journal is closed.
     *
     * @param trouble what went wrong, for people; empty if nothing
     */
    void ended(String trouble);
  }

  /**
   * Prepares to drive; {@link #start} begins.
   *
   * @param what what is driven, in a word for people
   * @param longestWaitNanos how long it is left alone at most
   * @param journal closed at the end
   */
  Driver(
      String what,
      T driven,
      Steps steps,
      long longestWaitNanos,
      MonotonicClock clock,
      Journal journal) {
    this.what = what;
    this.driven = driven;
    this.steps = steps;
    this.longestWaitNanos = longestWaitNanos;
    this.clock = Objects.requireNonNull(clock, "clock");
    this.journal = Objects.requireNonNull(journal, "journal");
    thread = new Thread(this::run, "squeezewell-" + what);
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /**
   * Does something, on the driver's thread.
   *
   * @param action what; told the session time
   * @param nanoTime when the person did it, a reading of {@link System#nanoTime()}
   */
  void post(ObjLongConsumer<T> action, long nanoTime) {
    commands.add(new Stamped<>(action, Math.max(0, clock.at(nanoTime))));
  }

  /** Waits up to two seconds for the end and the last fact's writing. */
  void await() {
    try {
      thread.join(CLOSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    String trouble = "";
    try {
      while (!steps.finished()) {
        Stamped<T> command = commands.poll(waitNanos(), TimeUnit.NANOSECONDS);
        if (command != null) {
          command.action().accept(driven, command.atNanos());
        }
        steps.advance(clock.nanos());
        if (!steps.finished()) {
          steps.changed();
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException | Error e) {
      trouble = "The " + what + " stopped, since something went wrong inside the program: " + e;
      throw e;
    } finally {
      end(trouble);
    }
  }

  private long waitNanos() {
    OptionalLong due = steps.nextDueNanos();
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
    steps.ended(trouble);
  }
}
