package squeezewell.live;

import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
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

  private final MonotonicClock clock;
  private final Coach coach;
  private final Consumer<CoachState> onChange;
  private final Driver<Coach> driver;
  private volatile CoachState state;

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
    this.onChange = Objects.requireNonNull(onChange, "onChange");
    this.coach = new Coach(plan, journal, outputs);
    this.state = coach.state();
    this.driver = new Driver<>("practice", coach, new Steps(), LONGEST_WAIT_NANOS, clock, journal);
  }

  /** Lets the practice run. */
  public void start() {
    driver.start();
  }

  /**
   * Gives a command.
   *
   * @param command the command
   * @param nanoTime when the person gave it, a reading of {@link System#nanoTime()}
   */
  public void post(Command command, long nanoTime) {
    driver.post((to, at) -> to.command(command, at), nanoTime);
  }

  /**
   * Notes what was found.
   *
   * @param finding what
   * @param nanoTime when the person told it, a reading of {@link System#nanoTime()}
   */
  public void post(ClinicalFinding finding, long nanoTime) {
    driver.post((to, at) -> to.find(finding, at), nanoTime);
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
    driver.await();
  }

  private void publish(CoachState next) {
    state = next;
    onChange.accept(next);
  }

  private final class Steps implements Driver.Steps {
    @Override
    public boolean finished() {
      return coach.state().finished();
    }

    @Override
    public OptionalLong nextDueNanos() {
      return coach.nextDueNanos();
    }

    @Override
    public void advance(long nowNanos) {
      coach.advance(nowNanos);
    }

    @Override
    public void changed() {
      publish(coach.state());
    }

    @Override
    public void ended(String trouble) {
      CoachState last = coach.state();
      publish(last.ended(trouble.isEmpty() ? last.trouble() : trouble));
    }
  }
}
