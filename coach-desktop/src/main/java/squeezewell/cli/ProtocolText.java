package squeezewell.cli;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.report.Caution;
import squeezewell.report.Words;

/** What a guideline asks for, as text for people: each value with the number of its source. */
final class ProtocolText {
  private final List<Citation> sources = new ArrayList<>();
  private final StringBuilder text = new StringBuilder();

  private ProtocolText() {}

  /** The whole edition. */
  static String of(Protocol protocol) {
    return new ProtocolText().protocol(protocol);
  }

  private String protocol(Protocol protocol) {
    line(protocol.title() + " (" + protocol.id() + ")");
    line(
        protocol.organisation()
            + ", "
            + protocol.year()
            + (protocol.local() ? "; a local protocol" : ""));
    for (Guidance guidance : protocol.guidance()) {
      guidance(guidance);
    }
    line("");
    line("Sources, and how each value was checked");
    for (int i = 0; i < sources.size(); i++) {
      String mark = "  [" + (i + 1) + "] ";
      String indent = " ".repeat(mark.length());
      String words = sources.get(i).document() + " — " + sources.get(i).confidence().meaning();
      line(mark + TextWrap.wrap(words, 78, indent).trim());
    }
    line("");
    text.append(TextWrap.wrap(Caution.TEXT, 78, ""));
    return text.toString();
  }

  private void guidance(Guidance guidance) {
    line("");
    line(
        guidance.patient().label()
            + ": "
            + guidance.situation().label()
            + (guidance.rescuers() == 0 ? "" : ", rescuers: " + guidance.rescuers()));
    Rhythm rhythm = guidance.rhythm();
    rhythm.compressions().ifPresent(this::compressions);
    rhythm.steadyBreaths().ifPresent(this::breaths);
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      line(
          "  cycle: "
              + cycle.perCycle()
              + " compressions, then "
              + cycle.breathsPerCycle()
              + (cycle.breathsPerCycle() == 1 ? " breath " : " breaths ")
              + mark(cycle.cycleSource()));
      line("  pause for the breaths: " + value(cycle.pauseNanos(), cycle.pauseSource()));
      line("  longest pause: " + value(cycle.pauseLimitNanos(), cycle.pauseLimitSource()));
      line("  squeeze: " + value(cycle.inspirationNanos(), cycle.inspirationSource()));
    }
    limits(guidance.limits());
  }

  private void breaths(BreathPlan breaths) {
    line(
        "  one breath every "
            + value(breaths.interval().nanosAt(1), breaths.intervalSource())
            + ", that is "
            + Words.upTo(breaths.interval().perMinute(), 1)
            + " a minute");
    line(
        "  in range: "
            + Words.exactSeconds(breaths.lowNanos()).toPlainString()
            + " to "
            + value(breaths.highNanos(), breaths.rangeSource()));
    line("  squeeze: " + value(breaths.inspirationNanos(), breaths.inspirationSource()));
  }

  private void compressions(CompressionPlan plan) {
    line(
        "  compressions: "
            + Words.upTo(plan.tempo().perMinute(), 1)
            + " a minute "
            + mark(plan.source())
            + ", in range "
            + Words.upTo(plan.lowPerMinute(), 1)
            + " to "
            + Words.upTo(plan.highPerMinute(), 1)
            + " "
            + mark(plan.rangeSource()));
  }

  private void limits(Limits limits) {
    line(
        "  pulse check every "
            + value(limits.pulseCheckEvery().nanos(), limits.pulseCheckEvery().source())
            + ", for "
            + value(limits.pulseCheckShortest().nanos(), limits.pulseCheckShortest().source())
            + " to "
            + value(limits.pulseCheckLongest().nanos(), limits.pulseCheckLongest().source()));
    line(
        "  suction for at most "
            + value(limits.suctionLongest().nanos(), limits.suctionLongest().source())
            + "; longest time without a breath "
            + value(limits.gapLongest().nanos(), limits.gapLongest().source()));
    line(
        "  reminders: pulse check "
            + value(limits.pulseCheckNotice().nanos(), limits.pulseCheckNotice().source())
            + " ahead, suction "
            + value(limits.suctionNotice().nanos(), limits.suctionNotice().source())
            + " before its limit");
  }

  private String value(long nanos, Citation source) {
    return Words.seconds(nanos) + " " + mark(source);
  }

  private String mark(Citation source) {
    if (!sources.contains(source)) {
      sources.add(source);
    }
    return "[" + (sources.indexOf(source) + 1) + "]";
  }

  private void line(String line) {
    text.append(line).append('\n');
  }
}
