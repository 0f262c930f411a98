package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.ChoiceButton;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.PlainChart;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.parts.ZoomRibbon;
import squeezewell.picture.MarksView;
import squeezewell.picture.PlotData;
import squeezewell.picture.PlotsView;
import squeezewell.review.say.Review;
import squeezewell.words.Quantities;

/** The pictures of a practice, one at a time, to look at closely. */
public final class PicturesScreen {
  private static final int GAP = 4;
  private static final List<String> CHART_KEYS =
      List.of(
          "Comma and full stop: the mark before and the next one.",
          "< and >: the one before and the next one that was not as asked.",
          "Home and End, on the chart: the first and the last.",
          "With the mouse: point at a mark.");
  private static final String POINTS =
      "Square: as asked. Tip upwards: too soon. Tip downwards: too late. Dash: not judged.";
  private static final String BARS =
      "Full: in range. Stripes rising to the right: too soon. Stripes falling: too late.";
  static final String HOLDS =
      "Bars at the foot: no breaths asked for, as in checks, suction and pauses.";
  private static final List<String> RIBBON_KEYS =
      List.of(
          "+ and −: zoom in and out. 0: show all.",
          "Left and right arrow, on the ribbon: move. Home and End: to the ends.",
          "Comma and full stop: the mark before and the next one.",
          "< and >: the one before and the next one that was not as asked.",
          "With the mouse: turn the wheel, drag, point at a mark.");

  private final Widgets kit;
  private final Look look;
  private final Review review;
  private final Column place;

  /** The pictures, in the order of their buttons. */
  private enum Picture {
    RIBBON("Ribbon", 'R', 66),
    INTERVALS("Intervals", 'I', 82),
    RATE("Rate", 'T', 52),
    LATENESS("Lateness", 'L', 78),
    HISTOGRAM("Lengths", 'G', 78);

    private final String label;
    private final char mnemonic;
    private final int width;

    Picture(String label, char mnemonic, int width) {
      this.label = label;
      this.mnemonic = mnemonic;
      this.width = width;
    }
  }

  private PicturesScreen(Widgets kit, Review review) {
    this.kit = kit;
    this.look = kit.look();
    this.review = review;
    this.place = kit.column();
  }

  /**
   * Builds the screen. Each picture is made when it is asked for.
   *
   * @param when the date and time of the practice, for people
   * @param onBack leads back to the debrief
   */
  public static JScrollPane build(Widgets kit, Review review, String when, Runnable onBack) {
    return new PicturesScreen(kit, review).build(when, onBack);
  }

  private JScrollPane build(String when, Runnable onBack) {
    Column column = kit.column();
    column.put(kit.back(onBack), 12);
    column.heading("Pictures", 2);
    column.note(when).gap(10);
    List<ChoiceButton> choices = Arrays.stream(Picture.values()).map(this::choice).toList();
    column.put(kit.oneOf(GAP, choices), 12).put(place);
    addLines(column, "Parts, each with its own rhythm", partLines());
    column.gap(12).note(Phrases.CAUTION + " Not a medical device.");
    show(Picture.RIBBON);
    return kit.page(column, choices.get(0), onBack);
  }

  private void addLines(Column column, String heading, List<String> lines) {
    if (!lines.isEmpty()) {
      column.gap(8).subheading(heading, 2);
      lines.forEach(column::note);
    }
  }

  private void addFound() {
    addLines(place, "The lines with a number, what was found", DebriefView.found(review));
  }

  private List<String> partLines() {
    List<String> lines = new ArrayList<>();
    for (DebriefView.Part part : DebriefView.of(review).parts()) {
      lines.add(Quantities.letters(lines.size()) + ": " + part.title() + ", " + part.asked());
    }
    return lines;
  }

  private ChoiceButton choice(Picture picture) {
    boolean first = picture == Picture.RIBBON;
    ChoiceButton button = new ChoiceButton(look, picture.label, first, picture.width);
    button.setMnemonic(picture.mnemonic);
    button.addActionListener(e -> show(picture));
    return button;
  }

  private void show(Picture picture) {
    PlotsView plots = PlotsView.of(review);
    place.refill(
        () -> {
          switch (picture) {
            case RIBBON -> addRibbon();
            case INTERVALS -> addChart("Seconds between breaths", plots.intervals());
            case RATE -> addChart("Breaths a minute, over the last minute", plots.rate());
            case LATENESS -> addChart("Seconds after the prompt", plots.lateness());
            case HISTOGRAM -> addChart("How many intervals of each length", plots.histogram());
          }
        });
  }

  private void addRibbon() {
    MarksView marks = MarksView.of(review);
    ZoomRibbon ribbon =
        new ZoomRibbon(
            look,
            marks.index(),
            marks.parts(),
            marks::words,
            marks::notAsAsked,
            review.startNanos(),
            Math.max(review.endNanos(), review.startNanos()) + 1_000_000_000L);
    JTextArea span = kit.note(" ");
    JTextArea words = words("Choose a mark, or point at one.");
    ribbon.tell(text -> words.setText(text), text -> span.setText(text));
    place.subheading("What was asked above, what you did below", 2);
    place.put(span, 6);
    place.put(fixed(ribbon, Widgets.CONTENT_WIDTH, marks.parts().isEmpty() ? 132 : 152), 8);
    place.put(
        oneLine(
            button("−", "Zoom out", ribbon::zoomOut),
            button("+", "Zoom in", ribbon::zoomIn),
            button("All", "Show all", ribbon::showAll),
            button("‹", "Move left", () -> ribbon.move(-0.25)),
            button("›", "Move right", () -> ribbon.move(0.25))),
        6);
    JButton before = kit.button("Mark before", '\0', 182, () -> ribbon.step(-1));
    JButton next = kit.button("Next mark", '\0', 182, () -> ribbon.step(1));
    place.put(oneLine(before, next), 8).put(words);
    addLines(place, "By keys and mouse", RIBBON_KEYS);
    addFound();
  }

  private JPanel oneLine(JButton... buttons) {
    JPanel row = kit.row(8, buttons);
    row.setMaximumSize(row.getPreferredSize());
    return row;
  }

  private JButton button(String sign, String name, Runnable action) {
    JButton button = kit.button(sign, '\0', 68, action);
    button.setToolTipText(name);
    button.getAccessibleContext().setAccessibleName(name);
    return button;
  }

  private void addChart(String title, PlotData data) {
    PlainChart chart = new PlainChart(look, data);
    JTextArea words = words("Choose a mark, or point at one.");
    chart.tell(words::setText);
    place.subheading(title, 2);
    place.note(data.summary()).gap(6);
    place.put(framed(kit, chart, 250));
    if (!data.joined()) {
      place.gap(4).note(data.bars().isEmpty() ? POINTS : BARS);
    }
    if (!data.holds().isEmpty()) {
      place.gap(2).note(HOLDS);
    }
    place.gap(8).put(words);
    addLines(place, "By keys and mouse", CHART_KEYS);
    if (!data.found().isEmpty()) {
      addFound();
    }
  }

  /** Room for the longest words, so that nothing jumps when another mark is chosen. */
  private JTextArea words(String text) {
    JTextArea area = kit.body("\n\n\n");
    area.setText(text);
    area.getAccessibleContext().setAccessibleName("The mark in words");
    return area;
  }

  /** A chart on a card. */
  static JPanel framed(Widgets kit, PlainChart chart, int height) {
    Look look = kit.look();
    Column card = kit.card();
    card.setLayout(new BorderLayout());
    // Less, and the chart would cover the round corners.
    int pad = look.px(6);
    card.setBorder(BorderFactory.createEmptyBorder(pad, pad, pad, pad));
    card.add(chart);
    Dimension size = new Dimension(look.px(Widgets.CONTENT_WIDTH), look.px(height) + 2 * pad);
    Widgets.fix(card, size);
    kit.comesIntoView(chart);
    return card;
  }

  private JComponent fixed(JComponent part, int width, int height) {
    kit.fixed(part, width, height);
    part.setAlignmentX(Component.LEFT_ALIGNMENT);
    return kit.comesIntoView(part);
  }
}
