package squeezewell.review.measure;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.LocalLabel;

/**
 * What was asked for.
 *
 * @param protocolId identifier of the edition
 * @param protocolTitle its name
 * @param organisation who publishes it
 * @param year year of publication
 * @param patient age group, as shown to people
 * @param situation what was found, as shown to people
 * @param breaths how often to give a breath; empty for a rhythm of compressions and pauses and for
 *     several parts together
 * @param compressions compressions and breaths in words, with the range of the rate; empty if the
 *     rhythm has no compressions
 * @param inspirationNanos length of a squeeze
 * @param gapLongestNanos longest time without a breath
 * @param lengthNanos planned length of the practice, count-in and pauses not included; in a station
 *     that came to its end, for which none is planned, as long as was practised
 * @param practisedNanos how much of it was practised
 * @param source where the rhythm comes from
 * @param local how a local protocol is labelled; empty for a guideline
 */
public record Asked(
    String protocolId,
    String protocolTitle,
    String organisation,
    int year,
    String patient,
    String situation,
    Optional<BreathPlan> breaths,
    String compressions,
    long inspirationNanos,
    long gapLongestNanos,
    long lengthNanos,
    long practisedNanos,
    Citation source,
    Optional<LocalLabel> local) {
  /** Start of one breath to start of the next; empty where no steady breaths are asked for. */
  public OptionalDouble intervalSeconds() {
    return breaths.isPresent()
        ? OptionalDouble.of(breaths.get().interval().seconds())
        : OptionalDouble.empty();
  }

  /** The shortest interval in range, as it is written to files; empty likewise. */
  public OptionalLong lowNanos() {
    return breaths.isPresent() ? OptionalLong.of(breaths.get().lowNanos()) : OptionalLong.empty();
  }

  /** The longest interval in range, as it is written to files; empty likewise. */
  public OptionalLong highNanos() {
    return breaths.isPresent() ? OptionalLong.of(breaths.get().highNanos()) : OptionalLong.empty();
  }
}
