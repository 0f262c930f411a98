package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.review.measure.Measure;
import squeezewell.review.measure.Practice;

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
public record Prescription(
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
  /**
   * What a practice asks for; of what differs between its parts nothing is told.
   *
   * @param parts in order; one, if the rhythm never changed
   * @param practisedNanos how much of it was practised
   * @param over whether it is a station's and came to its end: then it lasted as long as it was to
   *     last
   * @param base the edition that a local protocol is based on
   */
  public static Prescription of(
      Protocol protocol,
      List<Practice> parts,
      long practisedNanos,
      boolean over,
      Optional<Protocol> base) {
    Practice first = parts.get(0);
    Guidance guidance = first.guidance();
    boolean alone = parts.size() == 1;
    List<String> situations = new ArrayList<>();
    for (Practice part : parts) {
      String label = part.guidance().situation().label();
      if (situations.isEmpty() || !situations.get(situations.size() - 1).equals(label)) {
        situations.add(label);
      }
    }
    return new Prescription(
        protocol.id(),
        protocol.title(),
        protocol.organisation(),
        protocol.year(),
        guidance.patient().label(),
        String.join(Sayings.WORDS.say("asked.then"), situations),
        alone ? first.breathPlan() : Optional.empty(),
        alone ? compressions(guidance.rhythm()) : "",
        Measure.inspirationNanos(first),
        first.limits().gapLongest().nanos(),
        over ? practisedNanos : first.plan().lengthNanos(),
        practisedNanos,
        source(guidance.rhythm()),
        LocalLabel.of(protocol, List.of(guidance), base));
  }

  private static String compressions(Rhythm rhythm) {
    String range =
        rhythm.compressions().map(plan -> Words.range(plan, rhythm.compressionShare())).orElse("");
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      return Sayings.WORDS.say("asked.cycle", cycle.perCycle(), cycle.breathsPerCycle(), range);
    }
    return range.isEmpty() ? "" : Sayings.WORDS.say("asked.continuous", range);
  }

  private static Citation source(Rhythm rhythm) {
    return rhythm instanceof Rhythm.CompressionCycle cycle
        ? cycle.cycleSource()
        : rhythm.steadyBreaths().get().intervalSource();
  }

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
