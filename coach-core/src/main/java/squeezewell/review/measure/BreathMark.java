package squeezewell.review.measure;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import squeezewell.protocol.Judgement;

/**
 * One breath as the debrief shows it.
 *
 * @param startNanos when the squeeze began, nanoseconds since the session began
 * @param endNanos when it ended; empty if that is not known
 * @param millilitres volume; empty if it was not measured
 * @param judgement of the interval before it; {@link Judgement#UNJUDGED} for a first breath
 * @param prompt index of the prompt it met; empty for an extra breath and an unprompted one
 * @param errorNanos breath minus prompt, positive if late; empty likewise
 * @param unprompted whether breaths were not prompted then
 */
public record BreathMark(
    long startNanos,
    OptionalLong endNanos,
    OptionalDouble millilitres,
    Judgement judgement,
    OptionalInt prompt,
    OptionalLong errorNanos,
    boolean unprompted) {
  /** Whether it answered a prompt; else it was extra or not prompted. */
  public boolean met() {
    return prompt.isPresent();
  }

  /** Whether it came where a prompt could have asked for it and none did. */
  public boolean extra() {
    return !prompt.isPresent() && !unprompted;
  }
}
