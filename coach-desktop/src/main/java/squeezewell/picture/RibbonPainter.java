package squeezewell.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.protocol.Judgement;

/**
 * Draws marks on two lanes. Where many fall on the same pixel, only the first of each look is
 * drawn: an hour of compressions is then as cheap as a minute.
 */
public final class RibbonPainter {
  private final Look look;
  private final int width;
  private final int height;
  private final long fromNanos;
  private final long toNanos;

  /**
   * A painter.
   *
   * @param width of the place, in device pixels
   * @param height of the place, in device pixels
   * @param fromNanos the instant at the left edge
   * @param toNanos the instant at the right edge, later
   */
  public RibbonPainter(Look look, int width, int height, long fromNanos, long toNanos) {
    this.look = look;
    this.width = width;
    this.height = height;
    this.fromNanos = fromNanos;
    this.toNanos = toNanos;
  }

  /**
   * Draws marks.
   *
   * @param marks in the order of their numbers
   * @param foundBefore how many findings there were before these
   */
  public void paint(Graphics2D g2, List<RibbonMark> marks, int foundBefore) {
    Palette palette = look.palette();
    double middle = height * 0.5;
    List<Word> words = new ArrayList<>();
    for (RibbonMark mark : marks) {
      if (mark.kind().hold() && isShown(mark)) {
        paintHold(g2, palette, mark);
      }
    }
    // A long hold has room for its word beside those of short ones, not the other way round.
    for (boolean brief : new boolean[] {true, false}) {
      for (RibbonMark mark : marks) {
        if (mark.kind().hold() && isShown(mark) && isBrief(mark.kind()) == brief) {
          addWord(g2, mark, words);
        }
      }
    }
    for (RibbonMark mark : marks) {
      if (mark.kind() == RibbonMark.Kind.SILENCE && isShown(mark)) {
        paintSilence(g2, palette, mark, middle, words);
      }
    }
    Drawing drawing = new Drawing();
    for (RibbonMark mark : marks) {
      if (mark.kind() == RibbonMark.Kind.COMPRESSION && drawing.isNew(mark)) {
        paintCompression(g2, palette, x(mark.startNanos()), middle);
      }
    }
    g2.setColor(palette.line());
    g2.setStroke(look.stroke(1));
    g2.draw(new Line2D.Double(look.px(8), middle, width - look.px(8.0), middle));
    int found = foundBefore;
    for (RibbonMark mark : marks) {
      if (mark.kind() == RibbonMark.Kind.FINDING) {
        found++;
        if (mark.startNanos() >= fromNanos && mark.startNanos() <= toNanos) {
          paintFinding(g2, palette, x(mark.startNanos()), found);
        }
      }
    }
    for (Word word : words) {
      paintWord(g2, palette.softText(), word.text(), word.left(), look.px(15));
    }
    for (RibbonMark mark : marks) {
      if (mark.kind() == RibbonMark.Kind.PROMPT && drawing.isNew(mark)) {
        paintPrompt(g2, palette, x(mark.startNanos()), middle);
      } else if (mark.kind() == RibbonMark.Kind.BREATH && drawing.isNew(mark)) {
        paintBreath(g2, palette, mark, middle);
      }
    }
  }

  private boolean isShown(RibbonMark mark) {
    return mark.startNanos() <= toNanos && mark.endNanos() >= fromNanos;
  }

  private static boolean isBrief(RibbonMark.Kind kind) {
    return kind == RibbonMark.Kind.PULSE_CHECK || kind == RibbonMark.Kind.SUCTION;
  }

  /** Where a mark is drawn, wide enough to be ringed. */
  public Rectangle2D place(RibbonMark mark) {
    double middle = height * 0.5;
    double left = x(mark.startNanos());
    double right = Math.max(left, x(mark.endNanos()));
    double half = half();
    return switch (mark.kind()) {
      case PROMPT ->
          new Rectangle2D.Double(left - half, middle - look.px(16), 2 * half, look.px(22));
      case BREATH ->
          new Rectangle2D.Double(
              left, middle + look.px(6), Math.max(half, right - left), look.px(24));
      case COMPRESSION ->
          new Rectangle2D.Double(left - look.px(1), middle + look.px(9), look.px(2), look.px(9));
      case SILENCE -> new Rectangle2D.Double(left, look.px(4), right - left, middle - look.px(6.0));
      case FINDING -> new Rectangle2D.Double(left - look.px(2), 0, look.px(4), height);
      default -> new Rectangle2D.Double(left, look.px(4), right - left, height - look.px(8.0));
    };
  }

  /** Remembers the last pixel that each look of a mark was drawn on. */
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

  double x(long nanos) {
    double margin = look.px(10);
    double share = (double) (nanos - fromNanos) / (toNanos - fromNanos);
    return margin + share * (width - 2 * margin);
  }

  /** Marks on a long ribbon are drawn narrower, so that neighbours stay apart. */
  private double half() {
    double seconds = (toNanos - fromNanos) / 1e9;
    return Math.max(look.px(2), Math.min(look.px(6), width / seconds));
  }

  /** The word of a hold and where it stands. */
  private record Word(String text, double left, double right) {}

  private void paintHold(Graphics2D g2, Palette palette, RibbonMark mark) {
    double left = Math.max(0, x(mark.startNanos()));
    double length = Math.max(look.px(3), Math.min(width, x(mark.endNanos())) - left);
    g2.setColor(palette.active());
    g2.fill(
        new RoundRectangle2D.Double(
            left, look.px(4), length, height - look.px(8.0), look.px(6), look.px(6)));
  }

  /**
   * In the middle of its hold or, if another stands there, of the room that is left of the hold;
   * left out where there is none.
   */
  private void addWord(Graphics2D g2, RibbonMark mark, List<Word> words) {
    String word =
        switch (mark.kind()) {
          case PULSE_CHECK -> "check";
          case SUCTION -> "suction";
          case WATCH -> "watch";
          case NO_RATE -> "no rate";
          default -> "pause";
        };
    double left = Math.max(0, x(mark.startNanos()));
    double right = left + Math.max(look.px(3), Math.min(width, x(mark.endNanos())) - left);
    g2.setFont(look.font(11));
    double wide = g2.getFontMetrics().stringWidth(word);
    double at = (left + right - wide) / 2;
    at = Math.max(look.px(4), Math.min(at, width - wide - look.px(4.0)));
    double space = look.px(8);
    double middle = at;
    boolean taken =
        words.stream()
            .anyMatch(w -> middle < w.right() + space && w.left() < middle + wide + space);
    if (taken) {
      Span room = widestRoom(words, left, right, space);
      if (room.right() - room.left() < wide) {
        return;
      }
      at = (room.left() + room.right() - wide) / 2;
    }
    words.add(new Word(word, at, at + wide));
    words.sort(Comparator.comparingDouble(Word::left));
  }

  private record Span(double left, double right) {}

  /** The widest stretch between two places that words leave, with some space to each of them. */
  private static Span widestRoom(List<Word> words, double left, double right, double space) {
    Span widest = new Span(left, left);
    double start = left;
    for (int i = 0; i <= words.size(); i++) {
      double end = i < words.size() ? Math.min(right, words.get(i).left() - space) : right;
      if (end - start > widest.right() - widest.left()) {
        widest = new Span(start, end);
      }
      start = i < words.size() ? Math.max(start, words.get(i).right() + space) : start;
    }
    return widest;
  }

  /** On a ground of its own, so that no line runs through it. */
  private void paintWord(Graphics2D g2, Color colour, String word, double left, double base) {
    g2.setFont(look.font(11));
    double wide = g2.getFontMetrics().stringWidth(word);
    g2.setColor(look.palette().card());
    g2.fill(
        new Rectangle2D.Double(
            left - look.px(3), base - look.px(13), wide + look.px(6), look.px(16)));
    g2.setColor(colour);
    g2.drawString(word, (float) left, (float) base);
  }

  /** Slanting lines in the lane of the prompts, with the words where there is room for them. */
  private void paintSilence(
      Graphics2D g2, Palette palette, RibbonMark mark, double middle, List<Word> words) {
    double left = Math.max(0, x(mark.startNanos()));
    double length = Math.max(look.px(3), Math.min(width, x(mark.endNanos())) - left);
    double top = look.px(4);
    double high = middle - look.px(6.0) - top;
    Rectangle2D lane = new Rectangle2D.Double(left, top, length, high);
    java.awt.Shape clip = g2.getClip();
    g2.clip(lane);
    g2.setColor(palette.softText());
    g2.setStroke(look.stroke(1));
    // Fixed to the place, not to time: lines that move would tell the beat.
    double step = look.px(7);
    double first = Math.floor((left - high) / step) * step;
    for (double at = first; at < left + length; at += step) {
      g2.draw(new Line2D.Double(at, top + high, at + high, top));
    }
    g2.setClip(clip);
    g2.draw(lane);
    String word = "no prompts";
    g2.setFont(look.font(11));
    double textWidth = g2.getFontMetrics().stringWidth(word);
    // In the widest room that the words of holds leave.
    Span room = widestRoom(words, left, left + length, look.px(3));
    double free = room.right() - room.left();
    if (textWidth + look.px(7) <= free) {
      double at = room.left() + (free - textWidth) / 2;
      paintWord(g2, palette.text(), word, at, top + high / 2 + look.px(4));
    }
  }

  /** A line over both lanes, with its number at its foot. */
  private void paintFinding(Graphics2D g2, Palette palette, double x, int number) {
    g2.setColor(palette.text());
    g2.setStroke(look.stroke(1.5));
    double foot = height - look.px(13.0);
    g2.draw(new Line2D.Double(x, look.px(3), x, foot));
    Font font = look.bold(11);
    g2.setFont(font);
    String text = Integer.toString(number);
    double wide = g2.getFontMetrics().stringWidth(text);
    double at = Math.max(look.px(3), Math.min(x - wide / 2, width - wide - look.px(3.0)));
    g2.drawString(text, (float) at, (float) (height - look.px(3.0)));
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

  private void paintPrompt(Graphics2D g2, Palette palette, double x, double middle) {
    double half = half();
    double tip = middle - look.px(4);
    g2.setColor(palette.softText());
    g2.fill(tip(x, tip, half, -look.px(12)));
    if (half <= look.px(2)) {
      // Close together the lines would fill the middle, and dashes take long to draw.
      return;
    }
    Stroke before = g2.getStroke();
    g2.setStroke(
        new BasicStroke(
            look.px(1),
            BasicStroke.CAP_BUTT,
            BasicStroke.JOIN_MITER,
            1,
            new float[] {look.px(2), look.px(2)},
            0));
    g2.draw(new Line2D.Double(x, tip, x, middle + look.px(6)));
    g2.setStroke(before);
  }

  /** A thin tick, where breaths are thick bars. */
  private void paintCompression(Graphics2D g2, Palette palette, double x, double middle) {
    g2.setColor(palette.softText());
    g2.setStroke(look.stroke(1.2));
    g2.draw(new Line2D.Double(x, middle + look.px(9), x, middle + look.px(18)));
  }

  private void paintBreath(Graphics2D g2, Palette palette, RibbonMark mark, double middle) {
    double left = x(mark.startNanos());
    double length = Math.max(half(), x(mark.endNanos()) - left);
    double top = middle + look.px(6);
    double high = look.px(15);
    g2.setColor(palette.of(mark.judgement()));
    g2.fill(new RoundRectangle2D.Double(left, top, length, high, look.px(5), look.px(5)));
    double centre = left + length / 2;
    double half = Math.min(look.px(5), half() + 1);
    if (mark.judgement() == Judgement.FAST) {
      g2.fill(tip(centre, top + high + look.px(2), half, look.px(6)));
    } else if (mark.judgement() == Judgement.SLOW) {
      g2.fill(tip(centre, top + high + look.px(8), half, -look.px(6)));
    }
  }
}
