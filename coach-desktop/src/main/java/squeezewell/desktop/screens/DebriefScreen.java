package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.Dimension;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.Box;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.SwingConstants;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.PlainChart;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.UnfoldingColumn;
import squeezewell.picture.PlotsView;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Judgement;
import squeezewell.review.Review;
import squeezewell.review.judge.Finding;

/** What was done against what was asked, read from the top. */
public final class DebriefScreen {
  /** Of a usual window, in density-independent pixels. */
  private static final int SEEN_HEIGHT = 892;

  private final Kit kit;
  private final Look look;
  private final Palette palette;

  private DebriefScreen(Kit kit) {
    this.kit = kit;
    this.look = kit.look();
    this.palette = look.palette();
  }

  /**
   * What the screen asks for, and where its buttons lead.
   *
   * @param next asked once for words on what to practise next, a sentence each; may tell them
   *     later, on the event thread, since all past practices are read for them and nobody should
   *     wait for that
   * @param onReplay plays the practice back
   * @param onSave saves a report; told where by the person
   * @param onPictures leads to the pictures of the practice
   * @param onBack leads back to where the person came from
   */
  public record Ways(
      Consumer<Consumer<List<String>>> next,
      Runnable onReplay,
      Runnable onSave,
      Runnable onPictures,
      Runnable onBack) {

    /** Leads nowhere. */
    public static Ways none() {
      Runnable nothing = () -> {};
      return new Ways(told -> {}, nothing, nothing, nothing, nothing);
    }
  }

  /**
   * Builds the screen: what is seen at first at once, the rest when that has been painted.
   *
   * @param when the date and time of the practice, and the name if one was given, for people
   */
  public static JScrollPane build(
      Kit kit, Navigator navigator, Review review, String when, Ways ways) {
    JScrollPane page = new DebriefScreen(kit).build(navigator, review, when, ways);
    return kit.withBackKeys(page, ways.onBack());
  }

  private JScrollPane build(Navigator navigator, Review review, String when, Ways ways) {
    DebriefView view = DebriefView.of(review);
    UnfoldingColumn column = new UnfoldingColumn(look.px(SEEN_HEIGHT));
    column.then(() -> addHead(column, view, when));
    column.then(() -> addRibbon(column, view, review));
    column.then(() -> addChart(column, review));
    column.then(() -> addWaysOn(column, ways));
    column.then(() -> addFindings(column, "What to change", view.toChange(), true));
    column.then(() -> addFindings(column, "What went well", view.wentWell(), false));
    column.then(() -> addParts(column, view.parts()));
    column.then(() -> addVerdict(column, review));
    column.then(() -> addFigures(column, view, review));
    column.then(() -> addNext(column, navigator, ways));
    column.then(() -> addSources(column, review));
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.onTop(page));
    return page;
  }

  private void addHead(JPanel column, DebriefView view, String when) {
    column.add(kit.note("Debrief, " + when));
    column.add(kit.gap(6));
    column.add(kit.heading(view.headline()));
    column.add(kit.gap(4));
    if (!view.first().isEmpty()) {
      column.add(kit.body(view.first()));
      column.add(kit.gap(4));
    }
    column.add(kit.note(view.asked()));
    for (String line : view.local()) {
      column.add(kit.gap(2));
      column.add(kit.note(line));
    }
    column.add(kit.gap(12));
    column.add(figures(view.figures()));
    column.add(kit.gap(16));
  }

  private void addRibbon(JPanel column, DebriefView view, Review review) {
    column.add(kit.subheading("What was asked, what you did"));
    column.add(kit.gap(6));
    Ribbon ribbon = new Ribbon(look);
    ribbon.show(view.marks(), review.startNanos(), review.endNanos() + 1_000_000_000L);
    fix(ribbon, 372, 86);
    column.add(ribbon);
    if (!view.found().isEmpty()) {
      column.add(kit.gap(6));
      column.add(kit.note("The lines with a number, what was found:"));
      for (String line : view.found()) {
        column.add(kit.gap(2));
        column.add(kit.note(line));
      }
    }
    column.add(kit.gap(16));
  }

  private void addChart(JPanel column, Review review) {
    PlotsView plots = PlotsView.of(review);
    if (!plots.hasRange()) {
      return;
    }
    column.add(kit.subheading("Seconds between breaths"));
    column.add(kit.gap(6));
    PlainChart chart = new PlainChart(look, plots.intervals());
    column.add(PicturesScreen.framed(kit, chart, 170));
    if (!plots.intervals().holds().isEmpty()) {
      column.add(kit.gap(4));
      column.add(kit.note(PicturesScreen.HOLDS));
    }
    column.add(kit.gap(10));
  }

  private void addWaysOn(JPanel column, Ways ways) {
    JButton pictures = kit.button("Pictures", 181, e -> ways.onPictures().run());
    pictures.setMnemonic('I');
    JButton replay = kit.button("Replay", 181, e -> ways.onReplay().run());
    replay.setMnemonic('Y');
    JPanel closer = kit.row();
    closer.add(pictures);
    closer.add(Box.createHorizontalStrut(look.px(10)));
    closer.add(replay);
    column.add(closer);
    column.add(kit.gap(16));
  }

  private void addVerdict(JPanel column, Review review) {
    column.add(kit.subheading(review.verdict().outcome().label()));
    column.add(kit.gap(4));
    column.add(kit.note(review.verdict().rule()));
    for (String reason : review.verdict().reasons()) {
      column.add(kit.gap(2));
      column.add(kit.note(Phrases.capital(reason) + "."));
    }
    column.add(kit.gap(14));
  }

  private void addFigures(JPanel column, DebriefView view, Review review) {
    column.add(kit.subheading("In figures"));
    column.add(kit.gap(4));
    for (String line : view.details()) {
      column.add(kit.note(line));
      column.add(kit.gap(2));
    }
    for (String note : review.notes()) {
      column.add(kit.note(note));
      column.add(kit.gap(2));
    }
    column.add(kit.gap(14));
  }

  private void addNext(JPanel column, Navigator navigator, Ways ways) {
    JPanel words = kit.column();
    column.add(words);
    ways.next().accept(lines -> fill(words, lines));
    JButton again = kit.mainButton("Next practice", 232, e -> navigator.toSetup());
    again.setMnemonic('N');
    JButton save = kit.button("Save report", 130, e -> ways.onSave().run());
    save.setMnemonic('R');
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
  }

  private void addSources(JPanel column, Review review) {
    for (Citation source : review.sources()) {
      column.add(kit.note("Rhythm from: " + source.line()));
      column.add(kit.gap(2));
    }
    column.add(kit.gap(6));
    column.add(kit.note("A steady rhythm does not prove that a breath went in: watch the chest."));
    column.add(kit.gap(6));
    column.add(kit.note(Phrases.CAUTION + " Not a medical device."));
  }

  private void fill(JPanel words, List<String> lines) {
    if (lines.isEmpty()) {
      return;
    }
    words.add(kit.subheading("Next practice"));
    words.add(kit.gap(4));
    for (String line : lines) {
      words.add(kit.note(line));
      words.add(kit.gap(2));
    }
    words.add(kit.gap(8));
    words.revalidate();
  }

  private void addParts(JPanel column, List<DebriefView.Part> parts) {
    if (parts.isEmpty()) {
      return;
    }
    column.add(kit.subheading("Part by part"));
    column.add(kit.gap(6));
    for (DebriefView.Part part : parts) {
      int width = kit.cardTextWidth();
      JPanel card = kit.card();
      card.add(kit.text(part.title() + ": " + part.asked(), look.bold(15), palette.text(), width));
      for (String line : part.lines()) {
        card.add(kit.gap(3));
        card.add(kit.text(Phrases.capital(line) + ".", look.font(13), palette.text(), width));
      }
      if (!part.verdict().isEmpty()) {
        card.add(kit.gap(3));
        card.add(kit.text(part.verdict() + ".", look.font(13), palette.softText(), width));
      }
      column.add(card);
      column.add(kit.gap(8));
    }
    column.add(kit.gap(8));
  }

  private void addFindings(JPanel column, String heading, List<Finding> findings, boolean number) {
    if (findings.isEmpty()) {
      return;
    }
    column.add(kit.subheading(heading));
    column.add(kit.gap(6));
    for (int i = 0; i < findings.size(); i++) {
      column.add(finding(findings.get(i), number ? Integer.toString(i + 1) : "\u2713"));
      column.add(kit.gap(8));
    }
    column.add(kit.gap(8));
  }

  private JPanel finding(Finding finding, String mark) {
    JPanel card = kit.card();
    JPanel row = kit.row();
    JLabel number = kit.label(mark, look.bold(20), palette.softText());
    number.setAlignmentY(Component.TOP_ALIGNMENT);
    Dimension size = new Dimension(look.px(28), look.px(26));
    number.setPreferredSize(size);
    number.setMinimumSize(size);
    number.setMaximumSize(size);
    int width = kit.cardTextWidth() - look.px(28);
    JPanel text = kit.column();
    text.setAlignmentY(Component.TOP_ALIGNMENT);
    text.add(kit.text(finding.title() + ".", look.bold(15), palette.text(), width));
    for (String words : FindingWords.paragraphs(finding)) {
      boolean toDo = FindingWords.tellsWhatToDo(words);
      text.add(kit.gap(toDo ? 5 : 3));
      text.add(
          kit.text(
              words,
              toDo ? look.bold(13) : look.font(13),
              toDo ? palette.text() : palette.softText(),
              width));
    }
    row.add(number);
    row.add(text);
    card.add(row);
    return card;
  }

  private JPanel figures(List<DebriefView.Figure> figures) {
    JPanel row = kit.row();
    for (int i = 0; i < figures.size(); i++) {
      if (i > 0) {
        row.add(Box.createHorizontalStrut(look.px(6)));
      }
      row.add(figure(figures.get(i)));
    }
    return row;
  }

  private JPanel figure(DebriefView.Figure figure) {
    JPanel card = kit.card();
    boolean off = figure.judgement().off();
    JLabel value =
        kit.label(
            figure.value(),
            look.bold(figure.value().length() > 8 ? 19 : figure.value().length() > 7 ? 21 : 23),
            off ? palette.of(figure.judgement()) : palette.text());
    String name = off ? figure.name() + ", " + figure.judgement().label() : figure.name();
    JLabel named = kit.label(name, look.font(12), palette.text());
    JLabel asked = kit.label(figure.askedFor(), look.font(11), palette.softText());
    for (JLabel label : new JLabel[] {value, named, asked}) {
      label.setHorizontalAlignment(SwingConstants.CENTER);
      label.setAlignmentX(Component.LEFT_ALIGNMENT);
      int height = label == value ? look.px(28) : label.getPreferredSize().height;
      label.setPreferredSize(new Dimension(label.getPreferredSize().width, height));
      label.setMaximumSize(new Dimension(Integer.MAX_VALUE, height));
      card.add(label);
      card.add(kit.gap(2));
    }
    card.setBorder(
        javax.swing.BorderFactory.createEmptyBorder(
            look.px(10), look.px(4), look.px(8), look.px(4)));
    fix(card, 120, 92);
    return card;
  }

  private void fix(javax.swing.JComponent part, int width, int height) {
    Dimension size = new Dimension(look.px(width), look.px(height));
    part.setPreferredSize(size);
    part.setMinimumSize(size);
    part.setMaximumSize(size);
    part.setAlignmentX(Component.LEFT_ALIGNMENT);
  }
}
