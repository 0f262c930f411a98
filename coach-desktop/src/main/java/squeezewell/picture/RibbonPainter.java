package squeezewell.picture;

import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.protocol.Judgement;

/**
 * Paints marks on two lanes. Where many fall on the same pixel, only the first of each look is
 * painted: an hour of compressions is then as cheap as a minute.
 */
public final class RibbonPainter {
  private final Look look;
  private final Palette palette;
  private final Canvas canvas;
  private final Rectangle2D lanes;
  private final double middle;
  private final long fromNanos;
  private final long toNanos;

  /**
   * A painter.
   *
   * @param lanes the place, in device pixels
   * @param fromNanos the instant at the left edge
   * @param toNanos the instant at the right edge, later
   */
  public RibbonPainter(Look look, Canvas canvas, Rectangle2D lanes, long fromNanos, long toNanos) {
    this.look = look;
    this.palette = look.palette();
    this.canvas = canvas;
    this.lanes = lanes;
    this.middle = lanes.getCenterY();
    this.fromNanos = fromNanos;
    this.toNanos = toNanos;
  }

  /**
   * Paints marks.
   *
   * @param marks in the order of their numbers
   * @param foundBefore how many findings there were before these
   */
  public void paint(List<RibbonMark> marks, int foundBefore) {
    List<Word> words = new ArrayList<>();
    List<RibbonMark> holds = these(marks, m -> m.kind().hold() && isShown(m));
    holds.forEach(this::hold);
    // A long hold has room for its word beside those of short ones, not the other way round.
    these(holds, m -> isBrief(m.kind())).forEach(m -> addWord(m, words));
    these(holds, m -> !isBrief(m.kind())).forEach(m -> addWord(m, words));
    these(marks, m -> m.kind() == RibbonMark.Kind.SILENCE && isShown(m))
        .forEach(m -> silence(m, words));
    Drawing drawing = new Drawing();
    compressions(these(marks, m -> m.kind() == RibbonMark.Kind.COMPRESSION && drawing.isNew(m)));
    canvas.draw(
        palette.line(),
        px(1),
        new Line2D.Double(lanes.getX() + px(8), middle, lanes.getMaxX() - px(8), middle));
    int found = foundBefore;
    for (RibbonMark mark : these(marks, m -> m.kind() == RibbonMark.Kind.FINDING)) {
      found++;
      if (mark.startNanos() >= fromNanos && mark.startNanos() <= toNanos) {
        finding(x(mark.startNanos()), found);
      }
    }
    for (Word word : words) {
      word(palette.softText(), word.text(), word.left(), lanes.getY() + px(15));
    }
    prompts(these(marks, m -> m.kind().prompt() && drawing.isNew(m)));
    these(marks, m -> m.kind() == RibbonMark.Kind.BREATH && drawing.isNew(m)).forEach(this::breath);
  }

  private static List<RibbonMark> these(List<RibbonMark> marks, Predicate<RibbonMark> wanted) {
    return marks.stream().filter(wanted).collect(Collectors.toList());
  }

  private boolean isShown(RibbonMark mark) {
    return mark.startNanos() <= toNanos && mark.endNanos() >= fromNanos;
  }

  private static boolean isBrief(RibbonMark.Kind kind) {
    return kind == RibbonMark.Kind.PULSE_CHECK || kind == RibbonMark.Kind.SUCTION;
  }

  /** Where a mark is painted, wide enough to be ringed. */
  public Rectangle2D place(RibbonMark mark) {
    double top = lanes.getY();
    double left = x(mark.startNanos());
    double right = Math.max(left, x(mark.endNanos()));
    double half = half();
    return switch (mark.kind()) {
      case PROMPT, MISSED -> new Rectangle2D.Double(left - half, middle - px(16), 2 * half, px(22));
      case BREATH ->
          new Rectangle2D.Double(left, middle + px(6), Math.max(half, right - left), px(24));
      case COMPRESSION -> new Rectangle2D.Double(left - px(1), middle + px(9), px(2), px(9));
      case SILENCE -> new Rectangle2D.Double(left, top + px(4), right - left, middle - top - px(6));
      case FINDING -> new Rectangle2D.Double(left - px(2), top, px(4), lanes.getHeight());
      default -> new Rectangle2D.Double(left, top + px(4), right - left, lanes.getHeight() - px(8));
    };
  }

  /** Remembers the last pixel that each look of a mark was painted on. */
  private final class Drawing {
    private final Map<RibbonMark.Kind, Map<Judgement, Long>> last =
        new EnumMap<>(RibbonMark.Kind.class);

    boolean isNew(RibbonMark mark) {
      long place = Math.round(x(mark.startNanos()));
      Long before =
          last.computeIfAbsent(mark.kind(), k -> new EnumMap<>(Judgement.class))
              .put(mark.judgement(), place);
      return before == null || before != place;
    }
  }

  private double px(double size) {
    return look.px(size);
  }

  private double x(long nanos) {
    double margin = px(10);
    double share = (double) (nanos - fromNanos) / (toNanos - fromNanos);
    return lanes.getX() + margin + share * (lanes.getWidth() - 2 * margin);
  }

  /** Marks on a long ribbon are painted narrower, so that neighbours stay apart. */
  private double half() {
    double seconds = (toNanos - fromNanos) / 1e9;
    return Math.max(px(2), Math.min(px(6), lanes.getWidth() / seconds));
  }

  /** The word of a hold and where it stands. */
  private record Word(String text, double left, double right) {}

  private record Span(double left, double right) {
    double length() {
      return right - left;
    }
  }

  private Span shown(RibbonMark mark) {
    double left = Math.max(lanes.getX(), x(mark.startNanos()));
    double right = Math.min(lanes.getMaxX(), x(mark.endNanos()));
    return new Span(left, Math.max(left + px(3), right));
  }

  private void hold(RibbonMark mark) {
    Span span = shown(mark);
    double high = lanes.getHeight() - px(8);
    double top = lanes.getY() + px(4);
    canvas.fill(
        palette.mist(),
        new RoundRectangle2D.Double(span.left(), top, span.length(), high, px(6), px(6)));
  }

  /**
   * In the middle of its hold or, if another stands there, of the room that is left of the hold;
   * left out where there is none.
   */
  private void addWord(RibbonMark mark, List<Word> words) {
    String word = mark.kind().word();
    Span hold = shown(mark);
    double wide = canvas.lengthOf(false, word);
    double least = lanes.getX() + px(4);
    double most = lanes.getMaxX() - wide - px(4);
    double at = Math.max(least, Math.min((hold.left() + hold.right() - wide) / 2, most));
    double space = px(8);
    double centre = at;
    boolean taken =
        words.stream()
            .anyMatch(w -> centre < w.right() + space && w.left() < centre + wide + space);
    if (taken) {
      Span room = widestRoom(words, hold, space);
      if (room.length() < wide) {
        return;
      }
      at = (room.left() + room.right() - wide) / 2;
    }
    words.add(new Word(word, at, at + wide));
    words.sort(Comparator.comparingDouble(Word::left));
  }

  /** The widest stretch of a span that words leave, with some space to each of them. */
  private static Span widestRoom(List<Word> words, Span span, double space) {
    Span widest = new Span(span.left(), span.left());
    double start = span.left();
    for (int i = 0; i <= words.size(); i++) {
      boolean last = i == words.size();
      double end = last ? span.right() : Math.min(span.right(), words.get(i).left() - space);
      if (end - start > widest.length()) {
        widest = new Span(start, end);
      }
      start = last ? start : Math.max(start, words.get(i).right() + space);
    }
    return widest;
  }

  /** On a ground of its own, so that no line runs through it. */
  private void word(Color colour, String word, double left, double base) {
    double wide = canvas.lengthOf(false, word);
    canvas.fill(
        palette.card(), new Rectangle2D.Double(left - px(3), base - px(13), wide + px(6), px(16)));
    canvas.text(colour, false, left, base, word);
  }

  /** Slanting lines in the lane of the prompts, with the words where there is room for them. */
  private void silence(RibbonMark mark, List<Word> words) {
    Span span = shown(mark);
    double top = lanes.getY() + px(4);
    double high = middle - px(6) - top;
    Rectangle2D lane = new Rectangle2D.Double(span.left(), top, span.length(), high);
    // Fixed to the place, not to time: lines that move would tell the beat.
    canvas.draw(palette.softText(), px(1), PlotPainter.stripes(lane, px(7), true));
    canvas.draw(palette.softText(), px(1), lane);
    String word = mark.kind().word();
    double wide = canvas.lengthOf(false, word);
    // In the widest room that the words of holds leave.
    Span room = widestRoom(words, span, px(3));
    if (wide + px(7) <= room.length()) {
      double at = room.left() + (room.length() - wide) / 2;
      word(palette.text(), word, at, top + high / 2 + px(4));
    }
  }

  /** A line over both lanes, with its number at its foot. */
  private void finding(double x, int number) {
    double foot = lanes.getMaxY();
    canvas.draw(
        palette.text(),
        1.5 * look.scale(),
        new Line2D.Double(x, lanes.getY() + px(3), x, foot - px(13)));
    String text = Integer.toString(number);
    double wide = canvas.lengthOf(true, text);
    double least = lanes.getX() + px(3);
    double at = Math.max(least, Math.min(x - wide / 2, lanes.getMaxX() - wide - px(3)));
    canvas.text(palette.text(), true, at, foot - px(3), text);
  }

  /** A triangle with its point at y and its base so much below (above when negative). */
  public static Path2D tip(double x, double y, double half, double height) {
    Path2D shape = new Path2D.Double();
    shape.moveTo(x, y);
    shape.lineTo(x + half, y + height);
    shape.lineTo(x - half, y + height);
    shape.closePath();
    return shape;
  }

  /** Full where a breath answered, hollow where none did. */
  private void prompts(List<RibbonMark> marks) {
    double tip = middle - px(4);
    Path2D lines = new Path2D.Double();
    for (RibbonMark mark : marks) {
      double x = x(mark.startNanos());
      Path2D flag = tip(x, tip, half(), -px(12));
      if (mark.kind() == RibbonMark.Kind.MISSED) {
        canvas.draw(palette.softText(), px(1), flag);
      } else {
        canvas.fill(palette.softText(), flag);
      }
      lines.append(new Line2D.Double(x, tip, x, middle + px(6)), false);
    }
    // Close together the lines would fill the middle, and dashes take long to draw.
    if (half() > px(2) && !marks.isEmpty()) {
      float dash = look.px(2);
      canvas.draw(palette.softText(), px(1), lines, dash, dash);
    }
  }

  /** A thin tick each, where breaths are thick bars; one path, since there may be thousands. */
  private void compressions(List<RibbonMark> marks) {
    Path2D ticks = new Path2D.Double();
    for (RibbonMark mark : marks) {
      double x = x(mark.startNanos());
      ticks.append(new Line2D.Double(x, middle + px(9), x, middle + px(18)), false);
    }
    if (!marks.isEmpty()) {
      canvas.draw(palette.softText(), 1.2 * look.scale(), ticks);
    }
  }

  private void breath(RibbonMark mark) {
    double left = x(mark.startNanos());
    double right = Math.min(lanes.getMaxX(), x(mark.endNanos()));
    double length = Math.max(half(), right - left);
    double top = middle + px(6);
    double high = px(15);
    Color colour = palette.of(mark.judgement());
    canvas.fill(colour, new RoundRectangle2D.Double(left, top, length, high, px(5), px(5)));
    double centre = left + length / 2;
    double half = Math.min(px(5), half() + 1);
    if (mark.judgement() == Judgement.FAST) {
      canvas.fill(colour, tip(centre, top + high + px(2), half, px(6)));
    } else if (mark.judgement() == Judgement.SLOW) {
      canvas.fill(colour, tip(centre, top + high + px(8), half, -px(6)));
    }
  }
}
