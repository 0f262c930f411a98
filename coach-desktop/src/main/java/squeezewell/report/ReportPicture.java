package squeezewell.report;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.Canvas;
import squeezewell.picture.MarksView;
import squeezewell.picture.PlotData;
import squeezewell.picture.PlotPainter;
import squeezewell.picture.PlotsView;
import squeezewell.picture.RibbonMark;
import squeezewell.picture.RibbonPainter;
import squeezewell.picture.SvgCanvas;
import squeezewell.review.say.Review;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/**
 * A picture of a debrief on paper, from the painters of the screen in the colors of the light
 * theme: the ribbon in a few rows, or the intervals against the range of their part.
 *
 * @param title what it is, for a screen reader
 * @param height of the picture, which is {@value #WIDTH} wide
 * @param painter paints it
 */
record ReportPicture(String title, int height, Consumer<Canvas> painter) {
  private static final Wording WORDS = Wording.beside(ReportPicture.class);
  static final int WIDTH = 720;
  static final Look LOOK = new Look(Palette.lightTheme(), 1);

  /** So many rows leave room on one printed page for what stands above and below. */
  static final int ROWS_ON_PAPER = 8;

  /** How long a row may be, in seconds; the shortest that keeps the rows few enough is taken. */
  private static final List<Long> ROW_SECONDS =
      List.of(120L, 300L, 600L, 1200L, 1800L, 3600L, 7200L, 10_800L);

  /** An end so little past the last row asks for no other one: it is one instant after its time. */
  private static final long END_NANOS = 1_000_000;

  private static final long SECOND = 1_000_000_000L;
  private static final int ROW_HEIGHT = 76;
  private static final int CHART_HEIGHT = 190;

  /** The marks of a row begin 10 further on, and end 10 before the end of the lanes. */
  private static final int LEFT = 34;

  private static final int LANES = 688;

  /** What was asked and what was done, in at most so many rows if rows of three hours allow it. */
  static ReportPicture ribbon(Review review, int mostRows) {
    long end = Math.max(1, review.endNanos() - END_NANOS);
    long rowSeconds =
        ROW_SECONDS.stream()
            .filter(seconds -> end <= mostRows * seconds * SECOND)
            .findFirst()
            .orElse(ROW_SECONDS.get(ROW_SECONDS.size() - 1));
    long row = rowSeconds * SECOND;
    int rows = (int) ((end + row - 1) / row);
    List<RibbonMark> marks = MarksView.of(review).index().marks();
    return new ReportPicture(
        WORDS.say("ribbon.title", rowSeconds / 60),
        rows * ROW_HEIGHT,
        canvas -> {
          for (int i = 0; i < rows; i++) {
            long to = i == rows - 1 ? Long.MAX_VALUE : (i + 1) * row;
            row(canvas, marks, i, row, to);
          }
        });
  }

  private static void row(Canvas canvas, List<RibbonMark> marks, int place, long row, long to) {
    long from = place * row;
    double top = (double) place * ROW_HEIGHT;
    List<RibbonMark> here =
        marks.stream()
            .filter(mark -> mark.startNanos() < to)
            .filter(mark -> mark.startNanos() >= from || (mark.isSpan() && mark.endNanos() > from))
            .toList();
    long before =
        marks.stream()
            .filter(m -> m.kind() == RibbonMark.Kind.FINDING && m.startNanos() < from)
            .count();
    double middle = top + ROW_HEIGHT / 2.0;
    canvas.text(LOOK.palette().softText(), false, 4, middle + 4, Quantities.clock(from));
    Rectangle2D lanes = new Rectangle2D.Double(LEFT, top, LANES, ROW_HEIGHT);
    new RibbonPainter(LOOK, canvas, lanes, from, from + row).paint(here, (int) before);
  }

  /**
   * The intervals of a practice or of a part over time; empty if there is none to draw.
   *
   * @param originNanos the instant that is 0 on the axis of minutes
   */
  static Optional<ReportPicture> intervals(Review review, long originNanos) {
    if (review.intervals().isEmpty()) {
      return Optional.empty();
    }
    PlotData data = PlotsView.of(review, originNanos).intervals();
    return Optional.of(
        new ReportPicture(
            WORDS.say("intervals.title"),
            CHART_HEIGHT,
            canvas -> new PlotPainter(LOOK, data, canvas, WIDTH, CHART_HEIGHT).paint()));
  }

  /** The picture as an element of a page. */
  String svg() {
    SvgCanvas canvas = new SvgCanvas(HtmlPage::text);
    painter.accept(canvas);
    return "<svg viewBox=\"0 0 "
        + WIDTH
        + " "
        + height
        + "\" role=\"img\">\n<title>"
        + HtmlPage.text(title)
        + "</title>\n"
        + canvas.elements()
        + "</svg>\n";
  }
}
