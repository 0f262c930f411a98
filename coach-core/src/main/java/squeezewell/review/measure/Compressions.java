package squeezewell.review.measure;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The figures of the chest compressions. What can't be computed is empty, never 0; sums and counts
 * of nothing are 0.
 *
 * <p>A pause is a gap between two compressions of more than 2 s, or of more than halfway from one
 * compression interval to the planned pause where that is shorter, as for a newborn (our own
 * choice). Gaps that hold a check, suction, pause of the practice or hole are left out of pauses,
 * cycles and the rate.
 *
 * @param count compressions given up to the end
 * @param ratePerMinute 60 over the mean interval between two compressions with no pause between;
 *     where a breath takes the place of a compression in the beat, the share of it that is
 *     compressions, as those rhythms are told (90 of 120)
 * @param eventsPerMinute the whole of it, compressions and breaths; empty elsewhere
 * @param inRangeFraction share of those intervals whose rate lies in the protocol's range, 0 to 1;
 *     empty if the rhythm asks for no compressions
 * @param pauseCount how many pauses lay between compressions
 * @param longestPauseSeconds from the last compression before the longest pause to the first after
 *     it
 * @param pauseLimitSeconds longest good pause: the protocol's limit; where that is less than 1.5
 *     times the gap that the plan itself makes between two compressions, as for newborns, up to
 *     that, but never more than one compression interval above the limit (our own choice); empty if
 *     the rhythm has no pauses
 * @param overLimitPauses how many pauses were longer than that; 0 without a limit
 * @param handsOffSeconds time without compressions, checks and suction within their limits not
 *     counted: before the first compression, in the pauses, after the last. The last compression
 *     before a pause has its own time first, one mean interval (as planned if there is none)
 * @param fraction compression fraction: 1 minus the time hands-off over the effective time, 0 to 1;
 *     empty if there is no such time
 * @param cycles one for each pause, in order; empty if the rhythm has no cycles
 * @param goodCycles cycles with the number of compressions and of breaths asked for and a pause
 *     within the limit
 */
public record Compressions(
    int count,
    OptionalDouble ratePerMinute,
    OptionalDouble eventsPerMinute,
    OptionalDouble inRangeFraction,
    int pauseCount,
    OptionalDouble longestPauseSeconds,
    OptionalDouble pauseLimitSeconds,
    int overLimitPauses,
    double handsOffSeconds,
    OptionalDouble fraction,
    List<Cycle> cycles,
    int goodCycles) {
  public Compressions {
    cycles = List.copyOf(cycles);
  }

  /**
   * Compressions and the pause that ended them.
   *
   * @param compressions how many there were since the pause before
   * @param breaths how many breaths began in the pause
   * @param pauseSeconds length of the pause
   */
  public record Cycle(int compressions, int breaths, double pauseSeconds) {}
}
