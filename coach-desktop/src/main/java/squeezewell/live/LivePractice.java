package squeezewell.live;

import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import squeezewell.coach.Coach;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.coach.CueOutput;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.PatientChange;
import squeezewell.session.Journal;
import squeezewell.session.MonotonicClock;

/** Drives a {@link Coach} in real time. */
public final class LivePractice extends LiveRun<CoachState> implements Steered {
  private final Coach coach;

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
    super("practice", TimeUnit.SECONDS.toNanos(1), clock, journal, onChange);
    this.coach = new Coach(plan, journal, outputs);
    prepared();
  }

  @Override
  public void post(PatientChange finding, long nanoTime) {
    act(at -> coach.find(finding, at), nanoTime);
  }

  @Override
  public void post(CheckAnswer answer, long nanoTime) {
    act(at -> coach.answer(answer, at), nanoTime);
  }

  @Override
  public CoachState state() {
    return now();
  }

  @Override
  CoachState practice() {
    return coach.state();
  }

  @Override
  OptionalLong nextDueNanos() {
    return coach.nextDueNanos();
  }

  @Override
  void advance(long nowNanos) {
    coach.advance(nowNanos);
  }

  @Override
  void command(Command command, long atNanos) {
    coach.command(command, atNanos);
  }

  @Override
  CoachState look(CoachState practice, long atNanos) {
    return practice;
  }
}
