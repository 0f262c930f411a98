package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.Dimension;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.report.StationSheet;
import squeezewell.review.say.Review;
import squeezewell.session.Fact;
import squeezewell.station.file.StationTask;
import squeezewell.station.run.StationText;

/** What came of a station: critical faults first, then the tasks, then the breaths. */
public final class StationResultScreen {
  private final Widgets kit;
  private final Look look;
  private final Palette palette;

  private StationResultScreen(Widgets kit) {
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
   * @param tasks whose marks may be changed; empty if none may
   * @param onMark keeps a change of a mark
   */
  public record Actions(
      Runnable onReview,
      Runnable onSave,
      Runnable onBack,
      List<StationTask> tasks,
      Consumer<Fact.MarkChange> onMark) {}

  /**
   * Builds the screen.
   *
   * @param sheet the words of the result
   * @param review of the breaths in it
   * @param when the date and time, and the name if one was given, for people
   */
  public static JScrollPane build(
      Widgets kit,
      Navigator navigator,
      StationSheet sheet,
      Review review,
      String when,
      Actions ways) {
    return new StationResultScreen(kit).build(navigator, sheet, review, when, ways);
  }

  private JScrollPane build(
      Navigator navigator, StationSheet sheet, Review review, String when, Actions ways) {
    Column column = kit.column();
    column.note("Station, " + when).gap(6);
    column.heading(sheet.outcome(), 4);
    if (!sheet.breaths().isEmpty()) {
      column.bold(sheet.breaths(), 15).gap(4);
    }
    column.note(sheet.title()).gap(2);
    column.note(sheet.time()).notes(2, sheet.ways()).notes(2, review.notes());
    column.gap(6).bold(StationText.PRACTICE_AID, 13).gap(14);
    entries(column, "Critical faults", sheet.critical());
    entries(column, "To improve", sheet.improve());
    counts(column, sheet.counts());
    tasks(column, sheet.tasks());
    ventilated(column, sheet);
    breaths(column, review, ways);
    entries(column, "Said, found and remarked", sheet.story());
    if (!ways.tasks().isEmpty()) {
      MarkChanges.put(column, kit, ways.tasks(), ways.onMark());
    }
    JButton again = kit.mainButton("Next station", 'N', 232, navigator::toStations);
    column.put(kit.row(10, again, kit.button("Save sheet", 'S', 130, ways.onSave())), 10);
    column.put(kit.button("Past practices", 'P', Widgets.CONTENT_WIDTH, navigator::toPast), 14);
    column.note(Phrases.CAUTION + " Not a medical device.");
    return kit.readPage(column, ways.onBack());
  }

  private void counts(Column column, List<StationSheet.Count> counts) {
    Column card = kit.card();
    for (StationSheet.Count count : counts) {
      JLabel name = kit.plainLabel(count.name(), 15);
      name.setAlignmentY(Component.TOP_ALIGNMENT);
      name.setPreferredSize(new Dimension(kit.cardTextWidth() - look.px(40), look.px(26)));
      name.setMaximumSize(name.getPreferredSize());
      JLabel number = kit.boldLabel(Integer.toString(count.number()), 20);
      card.put(kit.row(0, first(number, 40), name));
    }
    column.put(card, 16);
  }

  private JLabel first(JLabel label, int width) {
    label.setAlignmentY(Component.TOP_ALIGNMENT);
    return kit.wide(label, width);
  }

  private void tasks(Column column, List<StationSheet.Row> rows) {
    column.subheading("Tasks", 6);
    Column card = kit.card();
    for (StationSheet.Row row : rows) {
      String how = row.how() + (row.length().isEmpty() ? "" : ", " + row.length());
      String words = (row.good() ? "" : "! ") + row.words() + (row.critical() ? " *" : "");
      card.put(line(row.at(), words, how, !row.good()), 6);
    }
    card.soft("* critical if it is missed. Times are those of the station's clock.", 12);
    column.put(card, 16);
  }

  private void ventilated(Column column, StationSheet sheet) {
    if (sheet.ventilated().isEmpty()) {
      return;
    }
    column.subheading("Time of ventilation", 6);
    Column card = kit.card();
    for (StationSheet.Ventilated time : sheet.ventilated()) {
      card.put(line(time.length(), time.words(), "", false), 6);
    }
    card.soft(StationSheet.VENTILATED, 12);
    column.put(card, 16);
  }

  private void entries(Column column, String heading, List<StationSheet.Entry> entries) {
    if (entries.isEmpty()) {
      return;
    }
    column.subheading(heading, 6);
    Column card = kit.card();
    for (StationSheet.Entry entry : entries) {
      card.put(line(entry.at(), entry.words(), entry.kind(), entry.critical()), 6);
    }
    column.put(card, 16);
  }

  private JPanel line(String at, String words, String under, boolean bold) {
    int width = kit.cardTextWidth() - look.px(48);
    Column text = kit.column(width);
    text.setAlignmentY(Component.TOP_ALIGNMENT);
    text.put(kit.text(words, bold ? look.bold(15) : look.font(15), palette.text(), width));
    if (!under.isEmpty()) {
      text.put(kit.text(under, bold ? look.bold(13) : look.font(13), palette.softText(), width));
    }
    return kit.row(0, first(kit.plainLabel(at, 14), 48), text);
  }

  private void breaths(Column column, Review review, Actions ways) {
    column.subheading("The breaths", 6);
    Column card = kit.card().bold(review.headline(), 15);
    for (DebriefView.Figure figure : DebriefView.of(review).figures()) {
      String name = Phrases.capital(figure.name());
      card.gap(3).note(name + ": " + figure.value() + ", " + figure.askedFor());
    }
    card.gap(8).put(kit.button("Review of the breaths", 'R', 260, ways.onReview()));
    column.put(card, 16);
  }
}
