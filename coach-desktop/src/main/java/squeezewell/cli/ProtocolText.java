package squeezewell.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.protocol.AgeBand;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.report.Caution;
import squeezewell.words.Quantities;

/** What a guideline asks for, as text for people: each value with the number of its source. */
final class ProtocolText {
  private final SourceMarks sources = new SourceMarks();
  private final StringBuilder text = new StringBuilder();

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
    line(protocol.title() + " (" + protocol.id() + ")");
    line(
        protocol.organisation()
            + ", "
            + protocol.year()
            + (protocol.local() ? "; a local protocol" : ""));
    LocalLabel.of(protocol, base).ifPresent(this::local);
    for (PatientGroup group : PatientGroup.values()) {
      patient(protocol, group);
    }
    line("");
    text.append(sources.list());
    line("");
    text.append(TextWrap.wrap(Caution.TEXT, 78, ""));
    return text.toString();
  }

  private void local(LocalLabel label) {
    line(TextWrap.wrap(label.origin(), 78, ""));
    label.differences().forEach(d -> line(TextWrap.wrap("- " + d, 78, "  ")));
  }

  private void patient(Protocol protocol, PatientGroup group) {
    List<Guidance> covered =
        protocol.guidance().stream().filter(g -> g.patient() == group).collect(Collectors.toList());
    if (covered.isEmpty()) {
      return;
    }
    line("");
    line(group.label());
    for (AgeBand ages : protocol.ages()) {
      if (ages.group() == group) {
        String words = "age: " + ages.words() + ages.judgement().map(j -> "; " + j).orElse("");
        line(TextWrap.wrap(words + " " + mark(ages.source()), 78, "  "));
      }
    }
    Limits usual = covered.get(0).limits();
    limits(usual);
    for (Guidance guidance : covered) {
      guidance(guidance, usual);
    }
    String missing = protocol.missingWords(group);
    if (!missing.isEmpty()) {
      line("");
      line(TextWrap.wrap("  " + missing, 78, "  "));
    }
  }

  private void guidance(Guidance guidance, Limits usual) {
    line("");
    String situation = guidance.situation().label();
    line(
        "  "
            + situation.substring(0, 1).toUpperCase(Locale.ROOT)
            + situation.substring(1)
            + (guidance.rescuers() == 0 ? "" : ", rescuers: " + guidance.rescuers()));
    Rhythm rhythm = guidance.rhythm();
    rhythm.compressions().ifPresent(this::compressions);
    rhythm.steadyBreaths().ifPresent(this::breaths);
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      line(
          "    cycle: "
              + cycle.perCycle()
              + " compressions, then "
              + cycle.breathsPerCycle()
              + (cycle.breathsPerCycle() == 1 ? " breath " : " breaths ")
              + mark(cycle.cycleSource()));
      line("    pause for the breaths: " + value(cycle.pauseNanos(), cycle.pauseSource()));
      line("    longest pause: " + value(cycle.pauseLimitNanos(), cycle.pauseLimitSource()));
      line("    squeeze: " + value(cycle.inspirationNanos(), cycle.inspirationSource()));
    }
    Limits own = guidance.limits();
    if (!own.pulseCheckEvery().equals(usual.pulseCheckEvery())) {
      line("    pulse check every " + every(own) + " here");
    }
    if (!own.gapLongest().equals(usual.gapLongest())) {
      line("    longest time without a breath " + gap(own) + " here");
    }
  }

  private void breaths(BreathPlan breaths) {
    line(
        "    one breath every "
            + value(breaths.interval().nanosAt(1), breaths.intervalSource())
            + ", that is "
            + Quantities.upTo(breaths.interval().perMinute(), 1)
            + " a minute");
    line(
        "    in range: "
            + Quantities.exactSeconds(breaths.lowNanos()).toPlainString()
            + " to "
            + value(breaths.highNanos(), breaths.rangeSource()));
    line("    squeeze: " + value(breaths.inspirationNanos(), breaths.inspirationSource()));
  }

  private void compressions(CompressionPlan plan) {
    line(
        "    compressions: "
            + Quantities.upTo(plan.tempo().perMinute(), 1)
            + " a minute "
            + mark(plan.source())
            + ", in range "
            + Quantities.upTo(plan.lowPerMinute(), 1)
            + " to "
            + Quantities.upTo(plan.highPerMinute(), 1)
            + " "
            + mark(plan.rangeSource()));
  }

  private void limits(Limits limits) {
    line(
        "  pulse check every "
            + every(limits)
            + ", for "
            + value(limits.pulseCheckShortest().nanos(), limits.pulseCheckShortest().source())
            + " to "
            + value(limits.pulseCheckLongest().nanos(), limits.pulseCheckLongest().source()));
    line(
        "  suction for at most "
            + value(limits.suctionLongest().nanos(), limits.suctionLongest().source())
            + "; longest time without a breath "
            + gap(limits));
    line(
        "  reminders: pulse check "
            + value(limits.pulseCheckNotice().nanos(), limits.pulseCheckNotice().source())
            + " ahead, suction "
            + value(limits.suctionNotice().nanos(), limits.suctionNotice().source())
            + " before its limit");
  }

  private String every(Limits limits) {
    return value(limits.pulseCheckEvery().nanos(), limits.pulseCheckEvery().source());
  }

  private String gap(Limits limits) {
    return value(limits.gapLongest().nanos(), limits.gapLongest().source());
  }

  private String value(long nanos, Citation source) {
    return Quantities.seconds(nanos) + " " + mark(source);
  }

  private String mark(Citation source) {
    return sources.mark(source);
  }

  private void line(String line) {
    text.append(line).append('\n');
  }
}
