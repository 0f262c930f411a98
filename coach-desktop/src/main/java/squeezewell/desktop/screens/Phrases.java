package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Range;
import squeezewell.protocol.Rhythm;
import squeezewell.words.Quantities;

/** What screens say about a protocol and about time. */
public final class Phrases {
  public static final String CAUTION =
      "Practice only. Follow local protocols and medical direction.";

  private static final long SECOND = 1_000_000_000L;

  private Phrases() {}

  /** Minutes and seconds still to go, rounded up, so that 0:00 means now. */
  public static String clockLeft(long nanos) {
    return Quantities.clock(nanos + SECOND - 1);
  }

  /** Seconds with at most one decimal, such as 6 or 5.5. */
  public static String seconds(double seconds) {
    return Quantities.upTo(seconds, 1);
  }

  public static String seconds(long nanos) {
    return seconds(nanos / 1e9);
  }

  /** What a guideline asks for, in one line. */
  public static String rhythm(Guidance guidance) {
    if (guidance.rhythm() instanceof Rhythm.CompressionCycle cycle) {
      return Quantities.count(cycle.perCycle(), "compression")
          + ", then "
          + Quantities.count(cycle.breathsPerCycle(), "breath")
          + ", at "
          + rate(cycle.compressing(), cycle.compressionShare())
          + " a minute"
          + events(cycle);
    }
    String breaths = guidance.rhythm().steadyBreaths().map(Phrases::interval).orElse("");
    return guidance
        .rhythm()
        .compressions()
        .map(c -> "compressions without a pause at " + rate(c, 1) + " a minute; " + breaths)
        .orElse(breaths);
  }

  /** The same in fewer words, for a line that must stay short. */
  public static String shortRhythm(Guidance guidance) {
    if (guidance.rhythm() instanceof Rhythm.CompressionCycle cycle) {
      return cycle.perCycle()
          + " to "
          + cycle.breathsPerCycle()
          + ", at "
          + rate(cycle.compressing(), cycle.compressionShare())
          + " a minute"
          + events(cycle);
    }
    return guidance.rhythm().steadyBreaths().map(Phrases::interval).orElse("");
  }

  private static String events(Rhythm.CompressionCycle cycle) {
    return cycle.byEvents()
        ? " (" + Quantities.upTo(cycle.compressing().tempo().perMinute(), 1) + " events)"
        : "";
  }

  /** The published range of a rate; where only we gave a range, the rate that is asked for. */
  private static String rate(CompressionPlan plan, double share) {
    return plan.rangeIsPublished()
        ? Quantities.upTo(share * plan.range().low(), 1)
            + " to "
            + Quantities.upTo(share * plan.range().high(), 1)
        : Quantities.upTo(share * plan.tempo().perMinute(), 1);
  }

  /** The range of an interval in seconds, without the unit. */
  public static String range(BreathPlan plan) {
    return seconds(plan.range().low()) + " to " + seconds(plan.range().high());
  }

  private static String interval(BreathPlan plan) {
    if (plan.toleranceNanos() > 0) {
      Range asked = plan.asked();
      return Quantities.upTo(60 / asked.high(), 1)
          + " to "
          + Quantities.upTo(60 / asked.low(), 1)
          + " a minute, each "
          + range(plan)
          + " s";
    }
    return plan.rangeIsPublished()
        ? "one breath every " + range(plan) + " s"
        : "one breath every " + seconds(plan.interval().seconds()) + " s";
  }

  /** The text with a capital letter in front. */
  public static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** What tells a local protocol from the guideline that it is based on, a paragraph each. */
  public static List<String> local(LocalLabel label) {
    List<String> lines = new ArrayList<>();
    lines.add(label.origin());
    label.differences().forEach(difference -> lines.add(capital(difference) + "."));
    return lines;
  }

  /** The edition with its year, marked when a service wrote it. */
  public static String edition(Protocol protocol) {
    String title = protocol.title();
    String year = Integer.toString(protocol.year());
    String full = title.contains(year) ? title : title + " (" + year + ")";
    return protocol.local() ? full + ", local protocol" : full;
  }
}
