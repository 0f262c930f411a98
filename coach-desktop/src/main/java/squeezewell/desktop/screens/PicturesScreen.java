package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.Box;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JToggleButton;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.ChoiceButton;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.PlainChart;
import squeezewell.desktop.parts.ZoomRibbon;
import squeezewell.picture.MarksView;
import squeezewell.picture.PlotData;
import squeezewell.picture.PlotsView;
import squeezewell.review.Review;
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

  private final Kit kit;
  private final Look look;
  private final Review review;
  private final JPanel place;

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

  private PicturesScreen(Kit kit, Review review) {
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
  public static JScrollPane build(Kit kit, Review review, String when, Runnable onBack) {
    JScrollPane page = new PicturesScreen(kit, review).build(when, onBack);
    return kit.withBackKeys(page, onBack);
  }

  private JScrollPane build(String when, Runnable onBack) {
    JPanel column = kit.column();
    JButton back = kit.button("Back", 110, e -> onBack.run());
    back.setMnemonic('B');
    column.add(back);
    column.add(kit.gap(12));
    column.add(kit.heading("Pictures"));
    column.add(kit.gap(2));
    column.add(kit.note(when));
    column.add(kit.gap(10));
    JPanel row = kit.row();
    JToggleButton first = addChoices(row);
    column.add(row);
    column.add(kit.gap(12));
    column.add(place);
    addLines(column, "Parts, each with its own rhythm", partLines());
    column.add(kit.gap(12));
    column.add(kit.note(Phrases.CAUTION + " Not a medical device."));
    show(Picture.RIBBON);
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.on(first, page));
    return page;
  }

  private void addLines(JPanel column, String heading, List<String> lines) {
    if (!lines.isEmpty()) {
      column.add(kit.gap(8));
      column.add(kit.subheading(heading));
      column.add(kit.gap(2));
      lines.forEach(line -> column.add(kit.note(line)));
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

  private JToggleButton addChoices(JPanel row) {
    ButtonGroup group = new ButtonGroup();
    JToggleButton first = null;
    for (Picture picture : Picture.values()) {
      ChoiceButton button = new ChoiceButton(look, picture.label, first == null, picture.width);
      button.setMnemonic(picture.mnemonic);
      kit.comesIntoView(button);
      button.addActionListener(e -> show(picture));
      group.add(button);
      if (first == null) {
        first = button;
      } else {
        row.add(Box.createHorizontalStrut(look.px(GAP)));
      }
      row.add(button);
    }
    row.setMaximumSize(row.getPreferredSize());
    return first;
  }

  private void show(Picture picture) {
    place.removeAll();
    PlotsView plots = PlotsView.of(review);
    switch (picture) {
      case RIBBON -> addRibbon();
      case INTERVALS -> addChart("Seconds between breaths", plots.intervals());
      case RATE -> addChart("Breaths a minute, over the last minute", plots.rate());
      case LATENESS -> addChart("Seconds after the prompt", plots.lateness());
      case HISTOGRAM -> addChart("How many intervals of each length", plots.histogram());
    }
    place.revalidate();
    place.repaint();
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
    place.add(kit.subheading("What was asked above, what you did below"));
    place.add(kit.gap(2));
    place.add(span);
    place.add(kit.gap(6));
    place.add(fixed(ribbon, Kit.CONTENT_WIDTH, marks.parts().isEmpty() ? 132 : 152));
    place.add(kit.gap(8));
    JPanel row = kit.row();
    addButton(row, "−", "Zoom out", ribbon::zoomOut);
    addButton(row, "+", "Zoom in", ribbon::zoomIn);
    addButton(row, "All", "Show all", ribbon::showAll);
    addButton(row, "‹", "Move left", () -> ribbon.move(-0.25));
    addButton(row, "›", "Move right", () -> ribbon.move(0.25));
    row.setMaximumSize(row.getPreferredSize());
    place.add(row);
    place.add(kit.gap(6));
    JPanel steps = kit.row();
    steps.add(kit.button("Mark before", 182, e -> ribbon.step(-1)));
    steps.add(Box.createHorizontalStrut(look.px(8)));
    steps.add(kit.button("Next mark", 182, e -> ribbon.step(1)));
    steps.setMaximumSize(steps.getPreferredSize());
    place.add(steps);
    place.add(kit.gap(8));
    place.add(words);
    addLines(place, "By keys and mouse", RIBBON_KEYS);
    addFound();
  }

  private void addButton(JPanel row, String sign, String name, Runnable action) {
    if (row.getComponentCount() > 0) {
      row.add(Box.createHorizontalStrut(look.px(8)));
    }
    JButton button = kit.button(sign, 68, e -> action.run());
    button.setToolTipText(name);
    button.getAccessibleContext().setAccessibleName(name);
    row.add(button);
  }

  private void addChart(String title, PlotData data) {
    PlainChart chart = new PlainChart(look, data);
    JTextArea words = words("Choose a mark, or point at one.");
    chart.tell(words::setText);
    place.add(kit.subheading(title));
    place.add(kit.gap(2));
    place.add(kit.note(data.summary()));
    place.add(kit.gap(6));
    place.add(framed(kit, chart, 250));
    if (!data.joined()) {
      place.add(kit.gap(4));
      place.add(kit.note(data.bars().isEmpty() ? POINTS : BARS));
    }
    if (!data.holds().isEmpty()) {
      place.add(kit.gap(2));
      place.add(kit.note(HOLDS));
    }
    place.add(kit.gap(8));
    place.add(words);
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
  static JPanel framed(Kit kit, PlainChart chart, int height) {
    Look look = kit.look();
    JPanel card = kit.card();
    card.setLayout(new BorderLayout());
    // Less, and the chart would cover the round corners.
    int pad = look.px(6);
    card.setBorder(BorderFactory.createEmptyBorder(pad, pad, pad, pad));
    card.add(chart);
    Dimension size = new Dimension(look.px(Kit.CONTENT_WIDTH), look.px(height) + 2 * pad);
    card.setPreferredSize(size);
    card.setMinimumSize(size);
    card.setMaximumSize(size);
    kit.comesIntoView(chart);
    return card;
  }

  private JComponent fixed(JComponent part, int width, int height) {
    Dimension size = new Dimension(look.px(width), look.px(height));
    part.setPreferredSize(size);
    part.setMinimumSize(size);
    part.setMaximumSize(size);
    part.setAlignmentX(Component.LEFT_ALIGNMENT);
    return kit.comesIntoView(part);
  }
}
