package squeezewell.coach;

import java.util.List;
import java.util.Objects;
import squeezewell.session.ManualClock;

/**
 * A made-up trainee that practises with a real {@link Coach}, faster than time, for demonstrations
 * and tests. The same seed, fault and plan give the same journal. How it behaves is our own choice,
 * not a measured person: it answers a prompt after 0.25 s (SD 0.15 s, never under 0.12 s), squeezes
 * for the time asked (SD 8 %) and starts a pulse check about 2 s after it was due, for 7 s. All of
 * this shrinks with the interval where that is shorter than 6 s. Where compressions are prompted,
 * it compresses 0.02 s after each prompt (SD 0.03 s, from 0.06 s before to 0.1 s after).
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
    practise(coach, clock, List.of());
  }

  /**
   * Practises to the end of the plan, and finds what it is told to find: it notes it at that time,
   * suctions vomit for about half the limit, and follows the new prompts.
   *
   * @param coach a practice at its start
   * @param clock moved along as the practice goes on
   * @param script what is found when, in order of time
   */
  public void practise(Coach coach, ManualClock clock, List<ScriptedFinding> script) {
    // Compressions draw from a chance of their own, so that breaths are the same with and without.
    VirtualTraineeChance hands = new VirtualTraineeChance(~seed);
    new VirtualTraineeRun(coach, clock, fault, new VirtualTraineeChance(seed), hands, script).run();
  }
}
