package squeezewell.desktop.screens;

import java.util.List;
import javax.swing.JComponent;
import javax.swing.JScrollPane;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.Widgets;
import squeezewell.picture.RibbonMark;
import squeezewell.review.compare.Comparison;
import squeezewell.review.say.Review;

/** Two practices side by side. */
public final class CompareScreen {
  private static final int HALF = Widgets.CONTENT_WIDTH / 2 - 18;

  private final Widgets kit;
  private final Look look;
  private final Palette palette;

  private CompareScreen(Widgets kit) {
    this.kit = kit;
    this.look = kit.look();
    this.palette = look.palette();
  }

  /**
   * Builds the screen.
   *
   * @param labelA who practised A, and when
   * @param labelB the same for B
   * @param onBack leads back to the list
   */
  static JScrollPane build(
      Widgets kit, CompareView view, String labelA, String labelB, Runnable onBack) {
    return new CompareScreen(kit).build(view, labelA, labelB, onBack);
  }

  /** Builds the screen of two reviews. */
  public static JScrollPane build(
      Widgets kit, Review a, String labelA, Review b, String labelB, Runnable onBack) {
    CompareView view = CompareView.of(Comparison.of(a, b), a, b);
    return build(kit, view, labelA, labelB, onBack);
  }

  private JScrollPane build(CompareView view, String labelA, String labelB, Runnable onBack) {
    Column column = kit.column();
    column.put(kit.back(onBack), 12);
    column.note("Two practices side by side").gap(4);
    column.bold(view.sentence(), 18).gap(14);
    ribbon(column, "A", labelA, view.marksA(), view);
    ribbon(column, "B", labelB, view.marksB(), view);
    if (!view.askedDifferently().isEmpty()) {
      column.subheading("Not asked alike", 4).notes(view.askedDifferently(), 3).gap(12);
    }
    view.groups().forEach(group -> group(column, group));
    column.subheading("What is marked", 4).notes(view.targets(), 3);
    column.gap(8).note(Phrases.CAUTION + " Not a medical device.");
    return kit.readPage(column, onBack);
  }

  private void ribbon(
      Column column, String letter, String label, List<RibbonMark> marks, CompareView view) {
    column.bold(letter + ": " + label, 15).gap(4);
    Ribbon ribbon = new Ribbon(look);
    ribbon.show(marks, view.fromNanos(), view.toNanos());
    ribbon
        .getAccessibleContext()
        .setAccessibleName("Ribbon of " + letter + ": prompts above, what was done below");
    kit.fixed(ribbon, Widgets.CONTENT_WIDTH, 86);
    ribbon.setAlignmentX(0);
    column.put(ribbon, 12);
  }

  private void group(Column column, CompareView.Group group) {
    column.subheading(group.heading(), 6);
    Column card = kit.card();
    for (CompareView.Row row : group.rows()) {
      if (card.getComponentCount() > 0) {
        card.gap(8);
      }
      card.put(row(row));
    }
    column.put(card, 14);
  }

  private Column row(CompareView.Row row) {
    Column all = kit.column(kit.cardTextWidth());
    all.getAccessibleContext().setAccessibleName(row.spoken());
    all.note(row.name()).put(kit.row(0, half("A  " + row.a()), half("B  " + row.b())));
    return row.word().isEmpty() ? all : all.bold(row.word(), 13);
  }

  private JComponent half(String text) {
    JComponent area = kit.text(text, look.bold(15), palette.text(), look.px(HALF));
    area.setAlignmentY(0);
    return area;
  }
}
