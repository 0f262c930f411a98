package squeezewell.desktop.screens.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.cue.CueFader;
import squeezewell.cue.Prompting;
import squeezewell.desktop.screens.Phrases;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Confidence;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Situation;
import squeezewell.words.Quantities;

/** What the set-up screen says about a practice. Pure. */
public final class PlanView {
  private PlanView() {}

  /** What will be asked for, a sentence or two a line. */
  public static List<String> lines(Guidance guidance) {
    List<String> lines = new ArrayList<>();
    lines.add(Phrases.capital(Phrases.rhythm(guidance)) + "." + pause(guidance.rhythm()));
    squeezeNanos(guidance.rhythm())
        .ifPresent(
            nanos ->
                lines.add(
                    "Squeeze for "
                        + Phrases.seconds(nanos)
                        + " s, until the chest just rises. Then let it fall."));
    if (guidance.situation() == Situation.PULSE_SLOW_BREATHING) {
      lines.add("Squeeze with the patient's own breaths, and fill in where none comes.");
    }
    Limits limits = guidance.limits();
    lines.add(
        checked(guidance)
            + Phrases.seconds(limits.pulseCheckEvery().seconds() / 60)
            + " min, for "
            + Phrases.seconds(limits.pulseCheckShortest().nanos())
            + " to "
            + Phrases.seconds(limits.pulseCheckLongest().nanos())
            + " s.");
    lines.add("Suction for at most " + Phrases.seconds(limits.suctionLongest().nanos()) + " s.");
    return lines;
  }

  /** How far breaths can be prompted; one choice where prompts can't fall silent. */
  public static List<Prompting> prompting(Guidance guidance) {
    return Prompting.mayFallSilent(guidance)
        ? List.of(Prompting.values())
        : List.of(Prompting.THROUGHOUT);
  }

  /** What the choice of prompts means, a paragraph each. */
  public static List<String> prompts(Guidance guidance, Prompting chosen) {
    if (!Prompting.mayFallSilent(guidance)) {
      return List.of(
          "Prompts are given throughout: with compressions two people keep step by them.");
    }
    double interval = guidance.rhythm().steadyBreaths().get().interval().seconds();
    int breaths = CueFader.breathsBeforeSilence(0);
    long minutes = Math.max(1, Math.round(breaths * interval / 60));
    return switch (chosen) {
      case THROUGHOUT -> List.of();
      case FADING ->
          List.of(
              "Hold the rhythm and prompts fall silent for a while, longer and longer. The first"
                  + " time that is after "
                  + breaths
                  + " good breaths, some "
                  + Quantities.count(minutes, "minute")
                  + ". They come back when you lose it.");
      case NONE ->
          List.of(
              "Three counts, then nothing tells when to squeeze. The first two minutes are judged,"
                  + " from your first breath on.");
    };
  }

  private static String checked(Guidance guidance) {
    return guidance.rhythm().compressions().isPresent() && !guidance.patient().isJudgedByHeartRate()
        ? "Check rhythm and pulse, and change who compresses, every "
        : guidance.patient().isJudgedByHeartRate()
            ? "Check the heart rate every "
            : "Check the pulse every ";
  }

  /** For what else such a patient may need the edition has no rhythm; empty if it has all. */
  public static Optional<String> missing(Protocol protocol, PatientGroup patient) {
    return Optional.of(protocol.missingWords(patient)).filter(words -> !words.isEmpty());
  }

  /** What tells a local protocol from a guideline, a paragraph each; empty for a guideline. */
  public static List<String> local(Protocol protocol, Guidance guidance, List<Protocol> editions) {
    return LocalLabel.of(protocol, List.of(guidance), protocol.baseAmong(editions))
        .map(Phrases::local)
        .orElse(List.of());
  }

  /** Where the rhythm comes from. */
  public static List<Citation> sources(Guidance guidance) {
    Rhythm rhythm = guidance.rhythm();
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      return distinct(cycle.cycleSource(), published(cycle.compressing()));
    }
    List<Citation> sources = new ArrayList<>();
    rhythm.compressions().map(PlanView::published).ifPresent(sources::add);
    rhythm.steadyBreaths().map(PlanView::published).ifPresent(sources::add);
    return distinct(sources.toArray(new Citation[0]));
  }

  private static List<Citation> distinct(Citation... citations) {
    List<Citation> found = new ArrayList<>();
    for (Citation citation : citations) {
      if (found.stream().noneMatch(c -> c.line().equals(citation.line()))) {
        found.add(citation);
      }
    }
    return found;
  }

  /** The longest pause, where a guideline gives one. */
  private static String pause(Rhythm rhythm) {
    return rhythm instanceof Rhythm.CompressionCycle cycle
            && cycle.pauseLimitSource().confidence() != Confidence.HOUSE
        ? " Pause under " + Phrases.seconds(cycle.pauseLimitNanos()) + " s."
        : "";
  }

  private static Optional<Long> squeezeNanos(Rhythm rhythm) {
    return rhythm instanceof Rhythm.CompressionCycle cycle
        ? Optional.of(cycle.inspirationNanos())
        : rhythm.steadyBreaths().map(BreathPlan::inspirationNanos);
  }

  private static Citation published(BreathPlan plan) {
    return plan.intervalSource().confidence() == Confidence.HOUSE
        ? plan.rangeSource()
        : plan.intervalSource();
  }

  private static Citation published(CompressionPlan plan) {
    return plan.rangeSource().confidence() == Confidence.HOUSE ? plan.source() : plan.rangeSource();
  }
}
