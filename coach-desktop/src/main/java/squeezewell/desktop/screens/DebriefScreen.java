package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.Dimension;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JToggleButton;
import javax.swing.SwingConstants;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.PlainChart;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.UnfoldingColumn;
import squeezewell.desktop.parts.Widgets;
import squeezewell.picture.PlotsView;
import squeezewell.protocol.Citation;
import squeezewell.review.judge.Sentence;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;

/** What was done against what was asked, read from the top. */
public final class DebriefScreen {
  /** Of a usual window, in density-independent pixels. */
  private static final int SEEN_HEIGHT = 892;

  private final Widgets kit;
  private final Look look;
  private final Palette palette;

  private DebriefScreen(Widgets kit) {
    this.kit = kit;
    this.look = kit.look();
    this.palette = look.palette();
  }

  /**
   * What the screen asks for, and where its buttons lead.
   *
   * @param next asked once for what to practise next; may tell it later, on the event thread, since
   *     all past practices are read for it and nobody should wait for that
   * @param onReplay plays the practice back
   * @param onSave saves a report; told where by the person
   * @param onPictures leads to the pictures of the practice
   * @param onBack leads back to where the person came from
   */
  public record Actions(
      Consumer<Consumer<Next>> next,
      Runnable onReplay,
      Runnable onSave,
      Runnable onPictures,
      Runnable onBack) {

    /** Leads nowhere. */
    public static Actions none() {
      Runnable nothing = () -> {};
      return new Actions(told -> {}, nothing, nothing, nothing, nothing);
    }
  }

  /**
   * What to practise next.
   *
   * @param lines why, a sentence each; empty where there is no advice
   * @param onNext sets just that up
   */
  public record Next(List<String> lines, Runnable onNext) {
    public Next {
      lines = List.copyOf(lines);
    }
  }

  /**
   * Builds the screen: what is seen at first at once, the rest when that has been painted.
   *
   * @param when the date and time of the practice, and the name if one was given, for people
   */
  public static JScrollPane build(
      Widgets kit, Navigator navigator, Review review, String when, Actions ways) {
    return new DebriefScreen(kit).build(navigator, review, when, ways);
  }

  private JScrollPane build(Navigator navigator, Review review, String when, Actions ways) {
    DebriefView view = DebriefView.of(review);
    UnfoldingColumn column = new UnfoldingColumn(look, SEEN_HEIGHT);
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
    return kit.readPage(column, ways.onBack());
  }

  private void addHead(Column column, DebriefView view, String when) {
    column.note("Debrief, " + when).gap(6);
    column.heading(view.headline(), 4);
    if (!view.first().isEmpty()) {
      column.plain(view.first(), 15).gap(4);
    }
    column.note(view.asked()).notes(2, view.local());
    column.gap(12).put(figures(view.figures()), 16);
  }

  private void addRibbon(Column column, DebriefView view, Review review) {
    column.subheading("What was asked, what you did", 6);
    Ribbon ribbon = new Ribbon(look);
    ribbon.show(view.marks(), review.startNanos(), review.endNanos() + 1_000_000_000L);
    ribbon.setAlignmentX(Component.LEFT_ALIGNMENT);
    column.put(kit.fixed(ribbon, Widgets.CONTENT_WIDTH, 86));
    if (!view.found().isEmpty()) {
      column.gap(6).note("The lines with a number, what was found:").notes(2, view.found());
    }
    column.gap(16);
  }

  private void addChart(Column column, Review review) {
    PlotsView plots = PlotsView.of(review);
    if (!plots.hasRange()) {
      return;
    }
    column.subheading("Seconds between breaths", 6);
    PlainChart chart = new PlainChart(look, plots.intervals());
    column.put(PicturesScreen.framed(kit, chart, 170));
    if (!plots.intervals().holds().isEmpty()) {
      column.gap(4).note(PicturesScreen.HOLDS);
    }
    column.gap(10);
  }

  private void addWaysOn(Column column, Actions ways) {
    JButton pictures = kit.button("Pictures", 'I', 181, ways.onPictures());
    JButton replay = kit.button("Replay", 'Y', 181, ways.onReplay());
    column.put(kit.row(10, pictures, replay), 16);
  }

  private void addVerdict(Column column, Review review) {
    column.subheading(review.verdict().outcome().label(), 4);
    column.note(review.rule());
    for (String reason : review.reasons()) {
      column.gap(2).note(Phrases.capital(reason) + ".");
    }
    column.gap(14);
  }

  private void addFigures(Column column, DebriefView view, Review review) {
    column.subheading("In figures", 4);
    column.notes(view.details(), 2).notes(review.notes(), 2).gap(14);
  }

  private void addNext(Column column, Navigator navigator, Actions ways) {
    Column words = kit.column();
    column.put(words);
    AtomicReference<Runnable> advised = new AtomicReference<>(() -> navigator.toSetup());
    ways.next()
        .accept(
            next -> {
              fill(words, next.lines());
              advised.set(next.onNext());
            });
    // What is made ahead of time leads nowhere.
    JButton again = kit.mainButton("Next practice", 'N', 232, () -> advised.get().run());
    JButton save = kit.button("Save report", 'R', 130, ways.onSave());
    column.put(kit.row(10, again, save), 10);
    column.put(
        kit.button("Past practices", 'P', Widgets.CONTENT_WIDTH, () -> navigator.toPast()), 14);
  }

  private void addSources(Column column, Review review) {
    for (Citation source : review.sources()) {
      column.note("Rhythm from: " + source.line()).gap(2);
    }
    column.gap(6).note("A steady rhythm does not prove that a breath went in: watch the chest.");
    column.gap(6);
    column.note(Phrases.CAUTION + " Not a medical device.");
  }

  private void fill(Column words, List<String> lines) {
    if (lines.isEmpty()) {
      return;
    }
    words.subheading("Next practice", 4).notes(lines, 2).gap(8);
    words.revalidate();
  }

  private void addParts(Column column, List<DebriefView.Part> parts) {
    if (parts.isEmpty()) {
      return;
    }
    column.subheading("Part by part", 6);
    for (DebriefView.Part part : parts) {
      Column card = kit.card().bold(part.title() + ": " + part.asked(), 15);
      part.lines().forEach(line -> card.gap(3).plain(Phrases.capital(line) + ".", 13));
      if (!part.verdict().isEmpty()) {
        card.gap(3).note(part.verdict() + ".");
      }
      column.put(card, 8);
    }
    column.gap(8);
  }

  private void addFindings(Column column, String heading, List<Feedback> findings, boolean number) {
    if (findings.isEmpty()) {
      return;
    }
    column.subheading(heading, 6);
    for (int i = 0; i < findings.size(); i++) {
      column.put(finding(findings.get(i), number ? Integer.toString(i + 1) : "\u2713"), 8);
    }
    column.gap(8);
  }

  private JPanel finding(Feedback finding, String mark) {
    JLabel number = kit.fixed(kit.label(mark, look.bold(20), palette.softText()), 28, 26);
    number.setAlignmentY(Component.TOP_ALIGNMENT);
    Column text = kit.column(kit.cardTextWidth() - look.px(28));
    text.setAlignmentY(Component.TOP_ALIGNMENT);
    text.bold(finding.title() + ".", 15);
    finding.paragraphs(Sentence.Kind.DONE).forEach(done -> text.gap(3).note(done.text()));
    finding.paragraphs(Sentence.Kind.NEXT).forEach(next -> text.gap(5).bold(next.text(), 13));
    List<Feedback.Paragraph> reasons = finding.paragraphs(Sentence.Kind.WHY);
    if (!reasons.isEmpty()) {
      text.gap(4).put(why(finding.title(), reasons));
    }
    return kit.card().put(kit.row(0, number, text));
  }

  /** A reason and what is behind it, folded until it is asked for. */
  private Column why(String title, List<Feedback.Paragraph> reasons) {
    Column folded = kit.column(kit.cardTextWidth() - look.px(28));
    for (Feedback.Paragraph reason : reasons) {
      folded.gap(2).note(reason.text()).gap(2).soft("Source: " + reason.source(), 12);
    }
    folded.setVisible(false);
    JToggleButton ask = kit.fixed(new JToggleButton("Why?"), 84, 48);
    ask.getAccessibleContext().setAccessibleName("Why? " + title);
    ask.addActionListener(e -> folded.setVisible(ask.isSelected()));
    return kit.column().put(ask).put(folded);
  }

  private JPanel figures(List<DebriefView.Figure> figures) {
    return kit.row(6, figures.stream().map(this::figure).toArray(Component[]::new));
  }

  private JPanel figure(DebriefView.Figure figure) {
    Column card = kit.card();
    boolean off = figure.judgement().off();
    JLabel value =
        kit.label(
            figure.value(),
            look.bold(figure.value().length() > 8 ? 19 : figure.value().length() > 7 ? 21 : 23),
            off ? palette.of(figure.judgement()) : palette.text());
    String name = off ? figure.name() + ", " + figure.judgement().label() : figure.name();
    JLabel named = kit.plainLabel(name, 12);
    JLabel asked = kit.softLabel(figure.askedFor(), 11);
    for (JLabel label : new JLabel[] {value, named, asked}) {
      label.setHorizontalAlignment(SwingConstants.CENTER);
      int height = label == value ? look.px(28) : label.getPreferredSize().height;
      label.setPreferredSize(new Dimension(label.getPreferredSize().width, height));
      label.setMaximumSize(new Dimension(Integer.MAX_VALUE, height));
      card.put(label, 2);
    }
    card.setBorder(
        BorderFactory.createEmptyBorder(look.px(10), look.px(4), look.px(8), look.px(4)));
    return kit.fixed(card, 120, 92);
  }
}
