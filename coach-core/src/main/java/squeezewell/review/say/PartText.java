package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.Metrics;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;

/** What was found in a session, and the parts it is cut into, in words. */
public final class PartText {
  private PartText() {}

  /** From when to when a part goes: {@code 2:00 to 3:30}. */
  public static String span(Review part) {
    return Quantities.clock(part.startNanos()) + " to " + Quantities.clock(part.endNanos());
  }

  /** When something was found: {@code 2:00}. */
  public static String at(NotedFinding noted) {
    return Quantities.clock(noted.atNanos());
  }

  /** What was found, and whether it was taken back. */
  public static String label(NotedFinding noted) {
    return noted.finding().label() + (noted.undone() ? " (a slip, taken back)" : "");
  }

  /** What a part asked for: the situation, or that it is a slip. */
  public static String situation(Review part) {
    return part.asked().situation() + (part.slip() ? " (a slip, taken back)" : "");
  }

  /** The most important figures of a part, a line each; none for a slip. */
  public static List<String> figures(Review part) {
    List<String> lines = new ArrayList<>();
    Metrics metrics = part.metrics();
    if (part.slip()) {
      return lines;
    }
    StringBuilder breaths = new StringBuilder(Words.count(metrics.breathCount(), "breath"));
    metrics
        .rate()
        .overallPerMinute()
        .ifPresent(rate -> breaths.append(", ").append(Words.decimal(rate)).append(" a minute"));
    Metrics.Interval interval = metrics.interval();
    if (interval.count() > 0) {
      breaths
          .append("; ")
          .append(interval.inRangeCount())
          .append(" of ")
          .append(Words.count(interval.count(), "interval"))
          .append(" in range");
    }
    lines.add(breaths.toString());
    metrics.compressions().ifPresent(done -> lines.add(compressions(done)));
    return lines;
  }

  private static String compressions(Compressions done) {
    StringBuilder line = new StringBuilder(Words.count(done.count(), "compression"));
    done.ratePerMinute()
        .ifPresent(rate -> line.append(", ").append(Words.decimal(rate)).append(" a minute"));
    if (!done.cycles().isEmpty()) {
      line.append("; ")
          .append(done.goodCycles())
          .append(" of ")
          .append(Words.count(done.cycles().size(), "cycle"))
          .append(" as asked");
    }
    done.longestPauseSeconds()
        .ifPresent(pause -> line.append("; longest pause ").append(Words.seconds(pause)));
    return line.toString();
  }

  /**
   * Where a local protocol differs from its base in a part, as far as that is not told of the
   * whole.
   */
  public static List<String> differences(Review whole, Review part) {
    List<String> more = new ArrayList<>();
    if (part.slip()) {
      return more;
    }
    part.asked().local().ifPresent(label -> more.addAll(label.differences()));
    whole.asked().local().ifPresent(label -> more.removeAll(label.differences()));
    return more;
  }

  /** What the rule says of a part, and in brackets what fell short. */
  public static String verdict(Review part) {
    String reasons = String.join("; ", part.reasons());
    return part.verdict().outcome().label() + (reasons.isEmpty() ? "" : " (" + reasons + ")");
  }
}
