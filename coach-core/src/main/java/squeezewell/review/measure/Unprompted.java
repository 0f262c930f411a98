package squeezewell.review.measure;

import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How the rhythm went while no breath was prompted. A breath counts if its own prompt was silent:
 * so the first interval after the prompts fall silent counts, and the first after they come back
 * does not. How breaths stood to the silent prompts is left out: without a prompt the distance to
 * one is a random walk, whose spread grows with each breath, and says nothing of the rhythm.
 *
 * @param silences how many times the prompts were silent
 * @param seconds for how long in all, checks, suction and pauses left out
 * @param breathCount breaths given meanwhile
 * @param plannedCount squeezes that the rhythm asked for meanwhile, unheard
 * @param intervalCount intervals with no hold between
 * @param meanSeconds their mean; empty without one, or if more than one rhythm was in force
 * @param ratePerMinute 60 over the mean
 * @param inRangeCount how many lay in the range
 * @param fastCount how many were shorter
 * @param slowCount how many were longer
 * @param inRangeLow lower end of the 95 % score interval of the share in range (Wilson, 1927)
 * @param inRangeHigh upper end
 * @param driftPercentPerMinute how the interval grew (slowing) or shrank in the silence with the
 *     most intervals; there only if it has at least 25, the 95 % interval leaves out 0 and it is at
 *     least 2 % a minute
 * @param longestGapSeconds longest time without a breath, net, up to the moment at which prompts
 *     came back
 * @param longestGapAtSeconds when that began, seconds since the session began
 * @param highestLevel the highest level of fading that was reached; empty if prompts did not fade
 */
public record Unprompted(
    int silences,
    double seconds,
    int breathCount,
    int plannedCount,
    int intervalCount,
    OptionalDouble meanSeconds,
    OptionalDouble ratePerMinute,
    int inRangeCount,
    int fastCount,
    int slowCount,
    OptionalDouble inRangeLow,
    OptionalDouble inRangeHigh,
    OptionalDouble driftPercentPerMinute,
    double longestGapSeconds,
    double longestGapAtSeconds,
    OptionalInt highestLevel) {
  public Unprompted {
    Objects.requireNonNull(highestLevel, "highestLevel");
  }
}
