package squeezewell.desktop.screens;

import java.util.Locale;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Protocol;

/** Numbers and times as people read them. */
final class Words {
  static final String CAUTION = "Practice only. Follow local protocols and medical direction.";

  private static final long SECOND = 1_000_000_000L;

  private Words() {}

  /** Minutes and seconds, such as 2:05; whole seconds, rounded down. */
  static String clock(long nanos) {
    long seconds = Math.max(0, nanos) / SECOND;
    return seconds / 60 + ":" + String.format(Locale.ROOT, "%02d", seconds % 60);
  }

  /** Minutes and seconds still to go, rounded up, so that 0:00 means now. */
  static String clockLeft(long nanos) {
    return clock(nanos + SECOND - 1);
  }

  /** Seconds with at most one decimal, such as 6 or 5.5. */
  static String seconds(double seconds) {
    String text = String.format(Locale.ROOT, "%.1f", seconds);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }

  static String seconds(long nanos) {
    return seconds(nanos / 1e9);
  }

  /** Seconds with one decimal. */
  static String tenths(long nanos) {
    return String.format(Locale.ROOT, "%.1f", nanos / 1e9);
  }

  /** What a guideline asks for, in one line. */
  static String rhythm(Guidance guidance) {
    return guidance
        .rhythm()
        .steadyBreaths()
        .map(Words::interval)
        .orElse("compressions and breaths in turn");
  }

  private static String interval(BreathPlan plan) {
    double target = plan.interval().seconds();
    boolean published = plan.rangeSource().confidence() != squeezewell.protocol.Confidence.HOUSE;
    return published
        ? "one breath every " + seconds(plan.lowNanos()) + " to " + seconds(plan.highNanos()) + " s"
        : "one breath every " + seconds(target) + " s";
  }

  /** The edition with its year, marked when a service wrote it. */
  static String edition(Protocol protocol) {
    String title = protocol.title();
    String year = Integer.toString(protocol.year());
    String full = title.contains(year) ? title : title + " (" + year + ")";
    return protocol.local() ? full + ", local protocol" : full;
  }
}
