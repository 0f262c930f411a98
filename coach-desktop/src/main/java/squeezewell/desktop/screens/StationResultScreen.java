package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.Dimension;
import java.util.List;
import javax.swing.Box;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Kit;
import squeezewell.report.StationSheet;
import squeezewell.review.Review;
import squeezewell.station.run.StationText;

/** What came of a station: critical faults first, then the tasks, then the breaths. */
public final class StationResultScreen {
  private final Kit kit;
  private final Look look;
  private final Palette palette;

  private StationResultScreen(Kit kit) {
    this.kit = kit;
    this.look = kit.look();
    this.palette = look.palette();
  }

  /**
   * Where the buttons of a result lead.
   *
   * @param onReview to the review of the breaths
   * @param onSave saves the sheet; told where by the person
   * @param onBack to where the person came from
   */
  public record Ways(Runnable onReview, Runnable onSave, Runnable onBack) {}

  /**
   * Builds the screen.
   *
   * @param sheet the words of the result
   * @param review of the breaths in it
   * @param when the date and time, and the name if one was given, for people
   */
  public static JScrollPane build(
      Kit kit, Navigator navigator, StationSheet sheet, Review review, String when, Ways ways) {
    JScrollPane page = new StationResultScreen(kit).build(navigator, sheet, review, when, ways);
    return kit.withBackKeys(page, ways.onBack());
  }

  private JScrollPane build(
      Navigator navigator, StationSheet sheet, Review review, String when, Ways ways) {
    JPanel column = kit.column();
    column.add(kit.note("Station, " + when));
    column.add(kit.gap(6));
    column.add(kit.heading(sheet.outcome()));
    column.add(kit.gap(4));
    if (!sheet.breaths().isEmpty()) {
      column.add(
          kit.text(sheet.breaths(), look.bold(15), palette.text(), look.px(Kit.CONTENT_WIDTH)));
      column.add(kit.gap(4));
    }
    column.add(kit.note(sheet.title()));
    column.add(kit.gap(2));
    column.add(kit.note(sheet.time()));
    for (String way : sheet.ways()) {
      column.add(kit.gap(2));
      column.add(kit.note(way));
    }
    for (String note : review.notes()) {
      column.add(kit.gap(2));
      column.add(kit.note(note));
    }
    column.add(kit.gap(6));
    column.add(
        kit.text(
            StationText.PRACTICE_AID, look.bold(13), palette.text(), look.px(Kit.CONTENT_WIDTH)));
    column.add(kit.gap(14));
    entries(column, "Critical faults", sheet.critical());
    counts(column, sheet.counts());
    tasks(column, sheet.tasks());
    ventilated(column, sheet);
    breaths(column, review, ways);
    entries(column, "Said, found and remarked", sheet.story());
    JButton again = kit.mainButton("Next station", 232, e -> navigator.toStations());
    again.setMnemonic('N');
    JButton save = kit.button("Save sheet", 130, e -> ways.onSave().run());
    save.setMnemonic('S');
    JPanel row = kit.row();
    row.add(again);
    row.add(Box.createHorizontalStrut(look.px(10)));
    row.add(save);
    column.add(row);
    column.add(kit.gap(10));
    JButton past = kit.button("Past practices", Kit.CONTENT_WIDTH, e -> navigator.toPast());
    past.setMnemonic('P');
    column.add(past);
    column.add(kit.gap(14));
    column.add(kit.note(Phrases.CAUTION + " Not a medical device."));
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.onTop(page));
    return page;
  }

  private void counts(JPanel column, List<StationSheet.Count> counts) {
    JPanel card = kit.card();
    for (StationSheet.Count count : counts) {
      JPanel row = kit.row();
      row.add(fixed(Integer.toString(count.number()), look.bold(20), 40));
      JLabel name = kit.label(count.name(), look.font(15), palette.text());
      name.setAlignmentY(Component.TOP_ALIGNMENT);
      name.setPreferredSize(new Dimension(kit.cardTextWidth() - look.px(40), look.px(26)));
      name.setMaximumSize(name.getPreferredSize());
      row.add(name);
      card.add(row);
    }
    column.add(card);
    column.add(kit.gap(16));
  }

  private JLabel fixed(String text, java.awt.Font font, int width) {
    JLabel label = kit.label(text, font, palette.text());
    Dimension size = new Dimension(look.px(width), label.getPreferredSize().height);
    label.setPreferredSize(size);
    label.setMinimumSize(size);
    label.setMaximumSize(size);
    label.setAlignmentY(Component.TOP_ALIGNMENT);
    return label;
  }

  private void tasks(JPanel column, List<StationSheet.Row> rows) {
    column.add(kit.subheading("Tasks"));
    column.add(kit.gap(6));
    JPanel card = kit.card();
    for (StationSheet.Row row : rows) {
      String how = row.how() + (row.length().isEmpty() ? "" : ", " + row.length());
      card.add(
          line(
              row.at(),
              (row.good() ? "" : "! ") + row.words() + (row.critical() ? " *" : ""),
              how,
              !row.good()));
      card.add(kit.gap(6));
    }
    card.add(
        kit.text(
            "* critical if it is missed. Times are those of the station's clock.",
            look.font(12),
            palette.softText(),
            kit.cardTextWidth()));
    column.add(card);
    column.add(kit.gap(16));
  }

  private void ventilated(JPanel column, StationSheet sheet) {
    if (sheet.ventilated().isEmpty()) {
      return;
    }
    column.add(kit.subheading("Time of ventilation"));
    column.add(kit.gap(6));
    JPanel card = kit.card();
    for (StationSheet.Ventilated time : sheet.ventilated()) {
      card.add(line(time.length(), time.words(), "", false));
      card.add(kit.gap(6));
    }
    card.add(
        kit.text(StationSheet.VENTILATED, look.font(12), palette.softText(), kit.cardTextWidth()));
    column.add(card);
    column.add(kit.gap(16));
  }

  private void entries(JPanel column, String heading, List<StationSheet.Entry> entries) {
    if (entries.isEmpty()) {
      return;
    }
    column.add(kit.subheading(heading));
    column.add(kit.gap(6));
    JPanel card = kit.card();
    for (StationSheet.Entry entry : entries) {
      card.add(line(entry.at(), entry.words(), entry.kind(), entry.kind().equals("critical")));
      card.add(kit.gap(6));
    }
    column.add(card);
    column.add(kit.gap(16));
  }

  private JPanel line(String at, String words, String under, boolean bold) {
    JPanel row = kit.row();
    row.add(fixed(at, look.font(14), 48));
    JPanel text = kit.column();
    text.setAlignmentY(Component.TOP_ALIGNMENT);
    int width = kit.cardTextWidth() - look.px(48);
    text.add(kit.text(words, bold ? look.bold(15) : look.font(15), palette.text(), width));
    if (!under.isEmpty()) {
      text.add(kit.text(under, bold ? look.bold(13) : look.font(13), palette.softText(), width));
    }
    row.add(text);
    return row;
  }

  private void breaths(JPanel column, Review review, Ways ways) {
    column.add(kit.subheading("The breaths"));
    column.add(kit.gap(6));
    JPanel card = kit.card();
    int width = kit.cardTextWidth();
    card.add(kit.text(review.headline(), look.bold(15), palette.text(), width));
    for (DebriefView.Figure figure : DebriefView.of(review).figures()) {
      card.add(kit.gap(3));
      card.add(
          kit.text(
              Phrases.capital(figure.name()) + ": " + figure.value() + ", " + figure.askedFor(),
              look.font(13),
              palette.softText(),
              width));
    }
    card.add(kit.gap(8));
    JButton open = kit.button("Review of the breaths", 260, e -> ways.onReview().run());
    open.setMnemonic('R');
    card.add(open);
    column.add(card);
    column.add(kit.gap(16));
  }
}
