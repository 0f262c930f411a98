package squeezewell.desktop.screens;

import java.awt.Dimension;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.picture.RibbonMark;
import squeezewell.review.Review;
import squeezewell.review.compare.Comparison;

/** Two practices side by side. */
public final class CompareScreen {
  private static final int HALF = Kit.CONTENT_WIDTH / 2 - 18;

  private final Kit kit;
  private final Look look;
  private final Palette palette;

  private CompareScreen(Kit kit) {
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
      Kit kit, CompareView view, String labelA, String labelB, Runnable onBack) {
    JScrollPane page = new CompareScreen(kit).build(view, labelA, labelB, onBack);
    return kit.withBackKeys(page, onBack);
  }

  /** Builds the screen of two reviews. */
  public static JScrollPane build(
      Kit kit, Review a, String labelA, Review b, String labelB, Runnable onBack) {
    CompareView view = CompareView.of(Comparison.of(a, b), a, b);
    return build(kit, view, labelA, labelB, onBack);
  }

  private JScrollPane build(CompareView view, String labelA, String labelB, Runnable onBack) {
    JPanel column = kit.column();
    JButton back = kit.button("Back", 110, e -> onBack.run());
    back.setMnemonic('B');
    column.add(back);
    column.add(kit.gap(12));
    column.add(kit.note("Two practices side by side"));
    column.add(kit.gap(4));
    column.add(
        kit.text(view.sentence(), look.bold(18), palette.text(), look.px(Kit.CONTENT_WIDTH)));
    column.add(kit.gap(14));
    ribbon(column, "A", labelA, view.marksA(), view);
    ribbon(column, "B", labelB, view.marksB(), view);
    if (!view.askedDifferently().isEmpty()) {
      column.add(kit.subheading("Not asked alike"));
      column.add(kit.gap(4));
      notes(column, view.askedDifferently());
      column.add(kit.gap(12));
    }
    view.groups().forEach(group -> group(column, group));
    column.add(kit.subheading("When a difference is clear"));
    column.add(kit.gap(4));
    notes(column, view.rules());
    column.add(kit.gap(8));
    column.add(kit.note(Phrases.CAUTION + " Not a medical device."));
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.onTop(page));
    return page;
  }

  private void ribbon(
      JPanel column, String letter, String label, List<RibbonMark> marks, CompareView view) {
    column.add(
        kit.text(letter + ": " + label, look.bold(15), palette.text(), look.px(Kit.CONTENT_WIDTH)));
    column.add(kit.gap(4));
    Ribbon ribbon = new Ribbon(look);
    ribbon.show(marks, view.fromNanos(), view.toNanos());
    ribbon
        .getAccessibleContext()
        .setAccessibleName("Ribbon of " + letter + ": prompts above, what was done below");
    Dimension size = new Dimension(look.px(Kit.CONTENT_WIDTH), look.px(86));
    ribbon.setPreferredSize(size);
    ribbon.setMinimumSize(size);
    ribbon.setMaximumSize(size);
    ribbon.setAlignmentX(0);
    column.add(ribbon);
    column.add(kit.gap(12));
  }

  private void group(JPanel column, CompareView.Group group) {
    column.add(kit.subheading(group.heading()));
    column.add(kit.gap(6));
    JPanel card = kit.card();
    for (int i = 0; i < group.rows().size(); i++) {
      if (i > 0) {
        card.add(kit.gap(8));
      }
      row(card, group.rows().get(i));
    }
    column.add(card);
    column.add(kit.gap(14));
  }

  private void row(JPanel card, CompareView.Row row) {
    int width = kit.cardTextWidth();
    JPanel all = kit.column();
    all.getAccessibleContext().setAccessibleName(row.spoken());
    all.add(kit.text(row.name(), look.font(13), palette.softText(), width));
    JPanel values = kit.row();
    values.add(half("A  " + row.a()));
    values.add(half("B  " + row.b()));
    all.add(values);
    if (!row.word().isEmpty()) {
      all.add(kit.text(row.word(), look.bold(13), palette.text(), width));
    }
    card.add(all);
  }

  private JComponent half(String text) {
    JComponent area = kit.text(text, look.bold(15), palette.text(), look.px(HALF));
    area.setAlignmentY(0);
    return area;
  }

  private void notes(JPanel column, List<String> lines) {
    for (String line : lines) {
      column.add(kit.note(line));
      column.add(kit.gap(3));
    }
  }
}
