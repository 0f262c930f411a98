package squeezewell.coach;

import java.util.Objects;
import squeezewell.session.ManualClock;

/**
 * A made-up trainee that practises with a real {@link Coach}, faster than time, for demonstrations
 * and tests. The same seed, fault and plan give the same journal. How it behaves is our own choice,
 * not a measured person: it answers a prompt after 0.25 s (SD 0.15 s, never under 0.12 s), squeezes
 * for the time asked (SD 8 %) and starts a pulse check about 2 s after it was due, for 7 s. All of
 * this shrinks with the interval where that is shorter than 6 s.
 */
public final class VirtualTrainee {
  private final long seed;
  private final TraineeFault fault;

  /**
   * A trainee.
   *
   * @param seed any number; chooses the chance variations
   * @param fault what it does wrong
   */
  public VirtualTrainee(long seed, TraineeFault fault) {
    this.seed = seed;
    this.fault = Objects.requireNonNull(fault, "fault");
  }

  /**
   * Practises to the end of the plan.
   *
   * @param coach a practice at its start
   * @param clock moved along as the practice goes on
   */
  public void practise(Coach coach, ManualClock clock) {
    new VirtualTraineeRun(coach, clock, fault, new VirtualTraineeChance(seed)).run();
  }
}
