package squeezewell.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.protocol.AgeBand;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limit;
import squeezewell.protocol.Limits;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** What a guideline asks for, as text for people: each value with the number of its source. */
final class ProtocolText {
  private static final Wording WORDS = Wording.beside(ProtocolText.class);

  private final SourcedText text = new SourcedText();

  private ProtocolText() {}

  /**
   * The whole edition.
   *
   * @param base the guideline that it stems from
   */
  static String of(Protocol protocol, Optional<Protocol> base) {
    return new ProtocolText().protocol(protocol, base);
  }

  private String protocol(Protocol protocol, Optional<Protocol> base) {
    text.line(WORDS.say("edition.title", protocol.title(), protocol.id()));
    text.line(
        WORDS.say(
            protocol.local() ? "edition.publisher.local" : "edition.publisher",
            protocol.organisation(),
            protocol.year()));
    if (!protocol.supersededBy().isEmpty()) {
      text.line(WORDS.say("edition.superseded", protocol.supersededBy()));
    }
    LocalLabel.of(protocol, base)
        .ifPresent(
            label -> {
              text.paragraph(label.origin(), "");
              label.differences().forEach(d -> text.paragraph("- " + d, "  "));
            });
    for (PatientGroup group : PatientGroup.values()) {
      patient(protocol, group);
    }
    return text.end();
  }

  private void patient(Protocol protocol, PatientGroup group) {
    List<Guidance> covered =
        protocol.guidance().stream().filter(g -> g.patient() == group).collect(Collectors.toList());
    if (covered.isEmpty()) {
      return;
    }
    text.line("");
    text.line(group.label());
    for (AgeBand ages : protocol.ages()) {
      if (ages.group() == group) {
        String words =
            WORDS.say(
                ages.judgement().isPresent() ? "edition.age.judged" : "edition.age",
                ages.words(),
                mark(ages.source()),
                ages.judgement().orElse(""));
        text.paragraph(words, "  ");
      }
    }
    Limits usual = covered.get(0).limits();
    limits(usual);
    for (Guidance guidance : covered) {
      guidance(guidance, usual);
    }
    String missing = protocol.missingWords(group);
    if (!missing.isEmpty()) {
      text.line("");
      text.paragraph(missing, "  ");
    }
  }

  private void guidance(Guidance guidance, Limits usual) {
    text.line("");
    String situation = guidance.situation().label();
    text.line(
        "  "
            + WORDS.say(
                guidance.rescuers() == 0 ? "edition.situation" : "edition.situation.rescuers",
                situation.substring(0, 1).toUpperCase(Locale.ROOT) + situation.substring(1),
                guidance.rescuers())
            + guidance
                .fromAge()
                .map(age -> WORDS.say("edition.from-age", age.words(), mark(age.source())))
                .orElse(""));
    Rhythm rhythm = guidance.rhythm();
    rhythm.compressions().ifPresent(plan -> compressions(plan, rhythm.compressionShare()));
    rhythm.steadyBreaths().ifPresent(this::breaths);
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      value("edition.cycle", cycle.perCycle(), cycle.breathsPerCycle(), mark(cycle.cycleSource()));
      value("edition.pause", value(cycle.pauseNanos(), cycle.pauseSource()));
      value("edition.pause-limit", value(cycle.pauseLimitNanos(), cycle.pauseLimitSource()));
      value("edition.squeeze", value(cycle.inspirationNanos(), cycle.inspirationSource()));
    }
    Limits own = guidance.limits();
    if (!own.pulseCheckEvery().equals(usual.pulseCheckEvery())) {
      value("edition.check-here", value(own.pulseCheckEvery()));
    }
    if (!own.gapLongest().equals(usual.gapLongest())) {
      value("edition.gap-here", value(own.gapLongest()));
    }
  }

  private void breaths(BreathPlan breaths) {
    value(
        "edition.interval",
        value(breaths.interval().nanosAt(1), breaths.intervalSource()),
        Quantities.upTo(breaths.interval().perMinute(), 1));
    value(
        "edition.in-range",
        Quantities.exactSeconds(breaths.lowNanos()).toPlainString(),
        value(breaths.highNanos(), breaths.rangeSource()));
    if (breaths.toleranceNanos() > 0) {
      value("edition.tolerance", value(breaths.toleranceNanos(), breaths.intervalSource()));
    }
    value("edition.squeeze", value(breaths.inspirationNanos(), breaths.inspirationSource()));
  }

  private void compressions(CompressionPlan plan, double share) {
    value(
        "edition.compressions",
        Quantities.upTo(share * plan.tempo().perMinute(), 1),
        mark(plan.source()),
        Quantities.upTo(share * plan.lowPerMinute(), 1),
        Quantities.upTo(share * plan.highPerMinute(), 1),
        mark(plan.rangeSource()));
    if (share < 1) {
      value("edition.events", Quantities.upTo(plan.tempo().perMinute(), 1));
    }
  }

  private void limits(Limits limits) {
    limit(
        "edition.checks",
        limits.pulseCheckEvery(),
        limits.pulseCheckShortest(),
        limits.pulseCheckLongest());
    limit("edition.suction", limits.suctionLongest(), limits.gapLongest());
    limit("edition.reminders", limits.pulseCheckNotice(), limits.suctionNotice());
  }

  private void limit(String key, Limit... limits) {
    text.line("  " + WORDS.say(key, Arrays.stream(limits).map(this::value).toArray()));
  }

  private void value(String key, Object... values) {
    text.line("    " + WORDS.say(key, values));
  }

  private String value(Limit limit) {
    return value(limit.nanos(), limit.source());
  }

  private String value(long nanos, Citation source) {
    return Quantities.seconds(nanos) + " " + mark(source);
  }

  private String mark(Citation source) {
    return text.mark(source);
  }
}
