package squeezewell.report;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import squeezewell.cue.Silence;
import squeezewell.protocol.Judgement;
import squeezewell.review.Review;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.measure.Hold;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.PromptMark;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;

/**
 * The two pictures of a debrief as SVG: the ribbon, with prompts above, breaths and compressions
 * below, in eight rows at most; and the intervals against the range of their part. A tip upwards is
 * too soon, a tip downwards too late; the colour only repeats it. What was found is a line with its
 * number.
 */
final class ReviewSvg {
  private static final double SECOND = 1e9;

  /** How long a row may be, in seconds; the shortest that keeps the rows few enough is taken. */
  private static final int[] ROW_SECONDS = {120, 300, 600, 1200, 1800, 3600, 7200, 10_800};

  /** So many rows leave room on one printed page for what stands above and below. */
  private static final int MOST_ROWS = 8;

  /** An end so little past the last row asks for no other one: it is one instant after its time. */
  private static final long END_NANOS = 1_000_000;

  /** About how wide a letter of a label is. */
  private static final double LETTER = 6;

  private static final double TICK_HEIGHT = 11;
  private static final int WIDTH = 720;
  private static final int LEFT = 44;
  private static final int ROW_HEIGHT = 76;
  private static final int CHART_HEIGHT = 190;
  private static final int CHART_TOP = 12;
  private static final int CHART_BOTTOM = 160;

  private final Review review;
  private final int rowSeconds;
  private final StringBuilder svg = new StringBuilder();

  private ReviewSvg(Review review, int mostRows) {
    this.review = review;
    int longEnough = ROW_SECONDS[ROW_SECONDS.length - 1];
    for (int i = ROW_SECONDS.length - 1; i >= 0; i--) {
      longEnough =
          review.endNanos() - END_NANOS <= mostRows * ROW_SECONDS[i] * SECOND
              ? ROW_SECONDS[i]
              : longEnough;
    }
    this.rowSeconds = longEnough;
  }

  /** What was asked and what was done, over time. */
  static String ribbon(Review review) {
    return ribbon(review, MOST_ROWS);
  }

  /** The same in at most so many rows, if one row of three hours is long enough for that. */
  static String ribbon(Review review, int mostRows) {
    return new ReviewSvg(review, mostRows).ribbon();
  }

  /** The intervals over time; empty if there is none to draw. */
  static String intervals(Review review) {
    return review.intervals().isEmpty() ? "" : new ReviewSvg(review, MOST_ROWS).chart();
  }

  private String ribbon() {
    double end = (review.endNanos() - END_NANOS) / SECOND;
    int rows = (int) Math.max(1, Math.ceil(end / rowSeconds));
    open(
        rows * ROW_HEIGHT,
        "Prompts above, breaths and compressions below, " + rowSeconds / 60 + " minutes a row");
    for (int row = 0; row < rows; row++) {
      int top = row * ROW_HEIGHT;
      text(4, top + 34, "label", Quantities.clock(Math.round((double) row * rowSeconds * SECOND)));
      line(LEFT, top + 36, WIDTH - 8, top + 36, "rule");
    }
    double[] wordEnds = new double[rows];
    for (Hold hold : review.holds()) {
      hold(hold, rows, wordEnds);
    }
    for (Silence silence : review.silences()) {
      silence(silence, rows);
    }
    compressions();
    found(rows);
    for (PromptMark prompt : review.prompts()) {
      double x = x(prompt.atNanos());
      int y = top(prompt.atNanos()) + 16;
      String kind = prompt.outcome() == PromptMark.Outcome.MISSED ? "missed" : "prompt";
      double half = Math.min(4, half());
      add(
          "<path class=\"%s\" d=\"M%s %d h%s l-%s 8 z\"/>\n",
          kind, number(x - half), y, number(2 * half), number(half));
    }
    for (BreathMark breath : review.breaths()) {
      breath(breath);
    }
    return close();
  }

  /** One path for all, since there may be thousands. */
  private void compressions() {
    StringBuilder ticks = new StringBuilder();
    for (CompressionMark mark : review.compressions()) {
      ticks
          .append("M")
          .append(number(x(mark.atNanos())))
          .append(' ')
          .append(top(mark.atNanos()) + 46)
          .append("v8");
    }
    if (ticks.length() > 0) {
      add("<path class=\"tick\" d=\"%s\"/>\n", ticks);
    }
  }

  /** A line for each finding, with its number and, where there is room, what it was. */
  private void found(int rows) {
    List<NotedFinding> found = review.found();
    for (int i = 0; i < found.size(); i++) {
      long at = found.get(i).atNanos();
      int row = (int) (at / SECOND / rowSeconds);
      if (row >= rows) {
        continue;
      }
      double x = x(at);
      boolean sameRow = i + 1 < found.size() && top(found.get(i + 1).atNanos()) == row * ROW_HEIGHT;
      double room = (sameRow ? x(found.get(i + 1).atNanos()) : WIDTH) - x;
      String text = (i + 1) + " " + found.get(i).finding().label();
      boolean fits = room > LETTER * text.length();
      line(x, row * ROW_HEIGHT + 3, x, row * ROW_HEIGHT + 64, "found");
      text(x + 3, row * ROW_HEIGHT + 11, "label", fits ? text : Integer.toString(i + 1));
    }
  }

  private void breath(BreathMark breath) {
    double x = x(breath.startNanos());
    int y = top(breath.startNanos()) + 42;
    double seconds =
        breath.endNanos().isPresent()
            ? (breath.endNanos().getAsLong() - breath.startNanos()) / SECOND
            : 0.5;
    double width = Math.max(2.5, Math.min(seconds, 10) * perSecond());
    String kind = kind(breath.judgement());
    add(
        "<rect class=\"%s\" x=\"%s\" y=\"%d\" width=\"%s\" height=\"16\" rx=\"1.5\"/>\n",
        kind, number(x), y, number(width));
    double middle = x + width / 2;
    if (breath.judgement() == Judgement.FAST) {
      tip(kind, middle, y, -5);
    } else if (breath.judgement() == Judgement.SLOW) {
      tip(kind, middle, y + 16, 5);
    }
  }

  /** Slanting lines above, one path a row, and the words once. */
  private void silence(Silence silence, int rows) {
    double from = silence.startNanos() / SECOND;
    double to = Math.min(silence.endNanos() / SECOND, rows * rowSeconds);
    boolean first = true;
    while (from < to) {
      int row = (int) (from / rowSeconds);
      double rowEnd = Math.min(to, (row + 1) * rowSeconds);
      double left = LEFT + (from - row * rowSeconds) * perSecond();
      double right = LEFT + (rowEnd - row * rowSeconds) * perSecond();
      StringBuilder lines = new StringBuilder();
      for (double x = left; x < right; x += 6) {
        double reach = Math.min(8, right - x);
        lines.append("M").append(number(x)).append(' ').append(row * ROW_HEIGHT + 24);
        lines.append('l').append(number(reach)).append(' ').append(number(-reach));
      }
      add("<path class=\"tick\" d=\"%s\"/>\n", lines);
      if (first && right - left > LETTER * "no prompts".length()) {
        text(left + 2, row * ROW_HEIGHT + 34, "label", "no prompts");
      }
      first = false;
      from = rowEnd;
    }
  }

  /** A tip that points down by a height, or up by a negative one. */
  private void tip(String kind, double middle, int y, int high) {
    double half = Math.min(3, half());
    add(
        "<path class=\"%s\" d=\"M%s %d l%s %d l%s %d z\"/>\n",
        kind, number(middle - half), y, number(half), high, number(half), -high);
  }

  /** Marks on a long row are narrower, so that neighbours stay apart. */
  private double half() {
    return Math.max(1.5, 2.2 * perSecond());
  }

  /**
   * A shade over both lanes, and its word once, in the first row with room for it.
   *
   * @param wordEnds where the last word in each row ends; changed
   */
  private void hold(Hold hold, int rows, double[] wordEnds) {
    String word =
        switch (hold.kind()) {
          case PULSE_CHECK -> "check";
          case SUCTION -> "suction";
          case PAUSE -> "pause";
          case WATCH -> "watched";
          case NO_RATE -> "no rate";
          case HOLE -> "stood still";
        };
    double from = hold.startNanos() / SECOND;
    double to = Math.min(hold.endNanos() / SECOND, rows * rowSeconds);
    boolean told = false;
    while (from < to) {
      int row = (int) (from / rowSeconds);
      double rowEnd = Math.min(to, (row + 1) * rowSeconds);
      double x = LEFT + (from - row * rowSeconds) * perSecond();
      add(
          "<rect class=\"hold\" x=\"%s\" y=\"%d\" width=\"%s\" height=\"%d\"/>\n",
          number(x), row * ROW_HEIGHT + 10, number((rowEnd - from) * perSecond()), ROW_HEIGHT - 16);
      double wordLength = LETTER * word.length();
      double left = Math.min(Math.max(x + 2, wordEnds[row] + LETTER), WIDTH - wordLength);
      boolean free = left >= wordEnds[row] + LETTER;
      // Further along it would seem to be the word of another hold.
      if (!told && free && left <= x + Math.max(2, (rowEnd - from) * perSecond())) {
        text(left, row * ROW_HEIGHT + ROW_HEIGHT - 2, "label", word);
        wordEnds[row] = left + wordLength;
        told = true;
      }
      from = rowEnd;
    }
  }

  private String chart() {
    List<Review> parts =
        review.rhythms().stream()
            .filter(p -> p.asked().intervalSeconds().isPresent() && !p.slip())
            .collect(Collectors.toList());
    double most =
        parts.stream()
            .mapToDouble(p -> 2 * p.asked().intervalSeconds().orElseThrow())
            .max()
            .orElse(1);
    open(CHART_HEIGHT, "Seconds between breaths over time, with the range as a band");
    TreeSet<Double> ticks = new TreeSet<>(List.of(0.0, most));
    for (Review part : parts) {
      band(part, most, ticks);
    }
    double lowest = CHART_HEIGHT;
    for (double tick : ticks) {
      if (y(tick, most) <= lowest - TICK_HEIGHT || tick == 0) {
        text(4, y(tick, most) + 4, "label", Quantities.upTo(tick, 2) + " s");
        lowest = y(tick, most);
      }
    }
    for (int i = 0; i < review.found().size(); i++) {
      double x = chartX(review.found().get(i).atNanos());
      line(x, CHART_TOP, x, CHART_BOTTOM, "found");
      text(x + 2, CHART_TOP + 8, "label", Integer.toString(i + 1));
    }
    for (IntervalPoint point : review.intervals()) {
      if (point.valid()) {
        point(point, most);
      }
    }
    text(LEFT, CHART_HEIGHT - 8, "label", Quantities.clock(review.startNanos()));
    text(WIDTH - 44, CHART_HEIGHT - 8, "label", Quantities.clock(review.endNanos()));
    return close();
  }

  private void band(Review part, double most, Set<Double> ticks) {
    double low = part.asked().breaths().orElseThrow().range().low();
    double high = part.asked().breaths().orElseThrow().range().high();
    double target = part.asked().intervalSeconds().orElseThrow();
    boolean whole = review.parts().isEmpty();
    double from = whole ? LEFT : chartX(part.startNanos());
    double to = whole ? WIDTH - 8 : chartX(part.endNanos());
    add(
        "<rect class=\"band\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"/>\n",
        number(from),
        number(y(high, most)),
        number(to - from),
        number(y(low, most) - y(high, most)));
    line(from, y(target, most), to, y(target, most), "target");
    ticks.addAll(List.of(low, target, high));
  }

  private void point(IntervalPoint point, double most) {
    double x = chartX(point.atNanos());
    double y = y(Math.min(point.seconds(), most), most);
    String kind = kind(point.judgement());
    switch (point.judgement()) {
      case FAST -> path(kind, "M%s %s l4 7 h-8 z", number(x), number(y - 4));
      case SLOW -> path(kind, "M%s %s l4 -7 h-8 z", number(x), number(y + 4));
      default -> path(kind, "M%s %s h6 v6 h-6 z", number(x - 3), number(y - 3));
    }
  }

  private double chartX(long nanos) {
    double length = Math.max(1, review.endNanos() - review.startNanos());
    return LEFT + (nanos - review.startNanos()) / length * (WIDTH - LEFT - 16);
  }

  private static double y(double seconds, double most) {
    return CHART_BOTTOM - seconds / most * (CHART_BOTTOM - CHART_TOP);
  }

  private double perSecond() {
    return (double) (WIDTH - LEFT - 8) / rowSeconds;
  }

  private double x(long nanos) {
    return LEFT + nanos / SECOND % rowSeconds * perSecond();
  }

  private int top(long nanos) {
    return ((int) (nanos / SECOND / rowSeconds)) * ROW_HEIGHT;
  }

  private static String kind(Judgement judgement) {
    return switch (judgement) {
      case FAST -> "fast";
      case SLOW -> "slow";
      case IN_RANGE, UNJUDGED -> "good";
    };
  }

  private void open(int height, String title) {
    add("<svg viewBox=\"0 0 %d %d\" role=\"img\">\n", WIDTH, height);
    add("<title>%s</title>\n", Html.text(title));
  }

  private String close() {
    return svg.append("</svg>\n").toString();
  }

  private void path(String kind, String form, Object... values) {
    add("<path class=\"" + kind + "\" d=\"" + form + "\"/>\n", values);
  }

  private void line(double x1, double y1, double x2, double y2, String kind) {
    add(
        "<line class=\"%s\" x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"/>\n",
        kind, number(x1), number(y1), number(x2), number(y2));
  }

  private void text(double x, double y, String kind, String text) {
    add(
        "<text class=\"%s\" x=\"%s\" y=\"%s\">%s</text>\n",
        kind, number(x), number(y), Html.text(text));
  }

  private void add(String form, Object... values) {
    svg.append(String.format(Locale.ROOT, form, values));
  }

  private static String number(double value) {
    return Quantities.upTo(value, 2);
  }
}
