package squeezewell.coach;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import squeezewell.cue.CueFader;
import squeezewell.cue.PatientCourse;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.session.EventType;
import squeezewell.session.Fact;

/**
 * Lets the prompts fade as the trainee holds the rhythm. It decides; the coach writes each decision
 * down, so that nobody has to decide again.
 */
final class Fading {
  private Optional<CueFader> fader;

  /** What the fader was before the last breath, which may yet be retracted. */
  private Optional<CueFader> before = Optional.empty();

  private Fading(Optional<CueFader> fader) {
    this.fader = fader;
  }

  /**
   * A change of the prompts or of the level of fading.
   *
   * @param prompts whether breaths are prompted from now on
   * @param level the level from now on
   * @param cause why
   */
  record Turn(boolean prompts, int level, Fact.Prompts.Cause cause) {
    /**
     * It as a fact.
     *
     * @param on how prompts come on, if they do
     */
    Fact fact(EventType on) {
      return new Fact.Prompts(prompts ? on : EventType.PROMPTS_OFF, OptionalInt.of(level), cause);
    }
  }

  /** Begins anew where a rhythm begins; where prompts may not fall silent, they never fade. */
  static Fading start(PracticePlan plan, PatientCourse course, int level) {
    boolean fades =
        plan.prompting() == Prompting.FADING
            && course.care().prompted()
            && Prompting.mayFallSilent(course.guidance());
    return new Fading(
        fades
            ? course.guidance().rhythm().steadyBreaths().map(p -> CueFader.start(p, level))
            : Optional.empty());
  }

  /** The level, 0 to {@link CueFader#HIGHEST}; empty where prompts do not fade. */
  OptionalInt level() {
    return fader.isPresent() ? OptionalInt.of(fader.get().level()) : OptionalInt.empty();
  }

  /** Whether the prompts have faded and are silent now. */
  boolean isSilent() {
    return fader.isPresent() && !fader.get().prompts();
  }

  /**
   * A breath was given in the rhythm.
   *
   * @param afterGap whether it came after a wait that was too long
   * @param intervalNanos since the breath before; empty if something held them apart
   */
  Optional<Turn> breath(boolean afterGap, OptionalLong intervalNanos) {
    before = fader.isPresent() ? fader : before;
    if (afterGap) {
      return gap();
    }
    if (!fader.isPresent() || !intervalNanos.isPresent()) {
      return Optional.empty();
    }
    CueFader next = fader.get().after(intervalNanos.getAsLong());
    return turnTo(next, next.rescues() ? Fact.Prompts.Cause.RESCUE : Fact.Prompts.Cause.PLANNED);
  }

  /** A wait in a silence grew too long. */
  Optional<Turn> gap() {
    return fader.isPresent()
        ? turnTo(fader.get().afterGap(), Fact.Prompts.Cause.GAP)
        : Optional.empty();
  }

  private Optional<Turn> turnTo(CueFader next, Fact.Prompts.Cause cause) {
    CueFader old = fader.get();
    fader = Optional.of(next);
    boolean turns = next.prompts() != old.prompts() || next.level() != old.level();
    return turns ? Optional.of(new Turn(next.prompts(), next.level(), cause)) : Optional.empty();
  }

  /** The last breath was a slip and is not counted, unless something was decided by it. */
  void forgetLastBreath() {
    boolean same =
        fader.isPresent()
            && before.isPresent()
            && fader.get().prompts() == before.get().prompts()
            && fader.get().level() == before.get().level();
    if (same) {
      fader = before;
    }
    before = Optional.empty();
  }
}
