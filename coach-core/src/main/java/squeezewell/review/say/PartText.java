package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;

/** What was found in a session, and the parts it is cut into, in words. */
public final class PartText {
  private PartText() {}

  /** From when to when a part goes: {@code 2:00 to 3:30}. */
  public static String span(Review part) {
    return Sayings.WORDS.say(
        "place.between", Quantities.clock(part.startNanos()), Quantities.clock(part.endNanos()));
  }

  /** When something was found: {@code 2:00}. */
  public static String at(NotedFinding noted) {
    return Quantities.clock(noted.atNanos());
  }

  /** What was found, and whether it was taken back. */
  public static String label(NotedFinding noted) {
    return slip(noted.finding().label(), noted.undone());
  }

  /** What a part asked for: the situation, or that it is a slip. */
  public static String situation(Review part) {
    return slip(part.asked().situation(), part.slip());
  }

  private static String slip(String words, boolean slip) {
    return slip ? Sayings.WORDS.say("slip", words) : words;
  }

  /** The most important figures of a part, a line each; none for a slip. */
  public static List<String> figures(Review part) {
    List<String> lines = new ArrayList<>();
    if (!part.slip()) {
      FigureRows rows = FigureRows.ofText(part, (name, text) -> lines.add(text));
      rows.add(
          "part-breaths",
          "breaths.count",
          "rate.overallPerMinute",
          "interval.inRangeCount interval.count interval.inRangeFraction");
      rows.add(
          "part-compressions",
          "compressions.count",
          "compressions.ratePerMinute",
          "compressions.goodCycles compressions.cyclesMade",
          "compressions.longestPauseSeconds");
    }
    return lines;
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
