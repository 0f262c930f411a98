package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import squeezewell.picture.RibbonMark;
import squeezewell.review.compare.Comparison;
import squeezewell.review.compare.ComparisonText;
import squeezewell.review.say.Review;

/**
 * What the comparison of two practices says. Pure.
 *
 * @param sentence the most important thing
 * @param askedDifferently in what they did not ask for the same
 * @param groups the rows, those with a clear difference first
 * @param marksA the ribbon of A
 * @param marksB the ribbon of B
 * @param fromNanos left edge of both ribbons
 * @param toNanos right edge of both, so that they have one scale
 * @param rules how a difference is found to be clear
 */
record CompareView(
    String sentence,
    List<String> askedDifferently,
    List<Group> groups,
    List<RibbonMark> marksA,
    List<RibbonMark> marksB,
    long fromNanos,
    long toNanos,
    List<String> rules) {
  private static final long SECOND = 1_000_000_000L;

  /** Rows under a heading. */
  record Group(String heading, List<Row> rows) {}

  /**
   * One figure.
   *
   * @param name what it is
   * @param a in practice A
   * @param b in practice B
   * @param word what can be said, with a mark if it is clear
   */
  record Row(String name, String a, String b, String word) {
    /** What a screen reader says. */
    String spoken() {
      return name + ": A " + a + ", B " + b + (word.isEmpty() ? "" : ", " + word);
    }
  }

  static CompareView of(Comparison comparison, Review a, Review b) {
    List<Row> clear = new ArrayList<>();
    List<Row> unclear = new ArrayList<>();
    List<Row> few = new ArrayList<>();
    List<Row> untested = new ArrayList<>();
    for (Comparison.Row row : comparison.rows()) {
      List<Row> group =
          row.outcome().isClear()
              ? clear
              : switch (row.outcome()) {
                case NOT_TESTED -> untested;
                case TOO_FEW -> few;
                default -> unclear;
              };
      group.add(
          new Row(
              Phrases.capital(row.label()), row.a().text(), row.b().text(), word(row.outcome())));
      if (row.code().equals("interval.inRange")) {
        group.add(
            new Row(
                "In range, likely share (95 %)",
                ComparisonText.share(row.a()), ComparisonText.share(row.b()), ""));
      }
    }
    List<Group> groups = new ArrayList<>();
    add(groups, "Clearly different", clear);
    add(groups, "No clear difference", unclear);
    add(groups, "Too few to tell", few);
    add(groups, "Shown, not tested", untested);
    return new CompareView(
        comparison.sentence(),
        comparison.askedDifferently(),
        groups,
        DebriefView.of(a).marks(),
        DebriefView.of(b).marks(),
        Math.min(a.startNanos(), b.startNanos()),
        Math.max(a.endNanos(), b.endNanos()) + SECOND,
        comparison.rules());
  }

  private static String word(Comparison.Outcome outcome) {
    return switch (outcome) {
      case BETTER -> "\u2191 " + outcome.label();
      case WORSE -> "\u2193 " + outcome.label();
      case NO_CLEAR_DIFFERENCE, TOO_FEW, NOT_TESTED -> "";
    };
  }

  private static void add(List<Group> groups, String heading, List<Row> rows) {
    if (!rows.isEmpty()) {
      groups.add(new Group(heading, rows));
    }
  }
}
