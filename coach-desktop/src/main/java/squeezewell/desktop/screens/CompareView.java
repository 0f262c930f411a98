package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import squeezewell.picture.RibbonMark;
import squeezewell.review.compare.Comparison;
import squeezewell.review.say.Review;

/**
 * What the comparison of two practices says. Pure.
 *
 * @param sentence the most important thing
 * @param askedDifferently in what they did not ask for the same
 * @param groups the rows, those outside their target first
 * @param marksA the ribbon of A
 * @param marksB the ribbon of B
 * @param fromNanos left edge of both ribbons
 * @param toNanos right edge of both, so that they have one scale
 * @param targets what is marked
 */
record CompareView(
    String sentence,
    List<String> askedDifferently,
    List<Group> groups,
    List<RibbonMark> marksA,
    List<RibbonMark> marksB,
    long fromNanos,
    long toNanos,
    List<String> targets) {
  private static final long SECOND = 1_000_000_000L;

  /** Rows under a heading. */
  record Group(String heading, List<Row> rows) {}

  /**
   * One figure.
   *
   * @param name what it is
   * @param a in practice A
   * @param b in practice B
   * @param word in which it lies outside its target; empty if in none
   */
  record Row(String name, String a, String b, String word) {
    /** What a screen reader says. */
    String spoken() {
      return name + ": A " + a + ", B " + b + (word.isEmpty() ? "" : ", " + word);
    }
  }

  static CompareView of(Comparison comparison, Review a, Review b) {
    List<Row> outside = new ArrayList<>();
    List<Row> within = new ArrayList<>();
    List<Row> shown = new ArrayList<>();
    for (Comparison.Row row : comparison.rows()) {
      boolean hasTarget = row.a().outside().isPresent() || row.b().outside().isPresent();
      List<Row> group = !row.outside().isEmpty() ? outside : hasTarget ? within : shown;
      group.add(
          new Row(
              Phrases.capital(row.label()),
              row.a().text(),
              row.b().text(),
              row.outside().isEmpty() ? "" : "! outside in " + row.outside()));
    }
    List<Group> groups = new ArrayList<>();
    add(groups, "Outside the target", outside);
    add(groups, "Within the target", within);
    add(groups, "Shown, without a target", shown);
    return new CompareView(
        comparison.sentence(),
        comparison.askedDifferently(),
        groups,
        DebriefView.of(a).marks(),
        DebriefView.of(b).marks(),
        Math.min(a.startNanos(), b.startNanos()),
        Math.max(a.endNanos(), b.endNanos()) + SECOND,
        comparison.targets());
  }

  private static void add(List<Group> groups, String heading, List<Row> rows) {
    if (!rows.isEmpty()) {
      groups.add(new Group(heading, rows));
    }
  }
}
