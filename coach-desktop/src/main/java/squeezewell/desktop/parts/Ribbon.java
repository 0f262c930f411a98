package squeezewell.desktop.parts;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import javax.accessibility.AccessibleRole;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.review.Judgement;

/**
 * Two lanes over one time line: above, what was asked; below, what was done. A late breath stands
 * to the right of its prompt. Fast carries a tip upwards, slow a tip downwards.
 */
public final class Ribbon extends Drawn {
  private static final long serialVersionUID = 1L;

  private final transient Look look;
  private transient List<RibbonMark> marks = List.of();
  private long fromNanos;
  private long toNanos = 1;

  public Ribbon(Look look) {
    super(AccessibleRole.PANEL, "Ribbon: prompts above, what was done below");
    this.look = look;
  }

  /**
   * Shows marks.
   *
   * @param newMarks what stands on it
   * @param newFromNanos the instant at the left edge
   * @param newToNanos the instant at the right edge, later
   */
  public void show(List<RibbonMark> newMarks, long newFromNanos, long newToNanos) {
    if (newToNanos <= newFromNanos) {
      throw new IllegalArgumentException("the right edge must be later than the left");
    }
    marks = List.copyOf(newMarks);
    fromNanos = newFromNanos;
    toNanos = newToNanos;
    repaint();
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension(look.px(372), look.px(80));
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(look.px(160), look.px(62));
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = Look.smooth(g);
    try {
      Palette palette = look.palette();
      g2.setColor(palette.card());
      double arc = look.px(20);
      g2.fill(new RoundRectangle2D.Double(0, 0, getWidth(), getHeight(), arc, arc));
      g2.clip(new RoundRectangle2D.Double(0, 0, getWidth(), getHeight(), arc, arc));
      double middle = getHeight() * 0.5;
      for (RibbonMark mark : marks) {
        switch (mark.kind()) {
          case PULSE_CHECK, SUCTION, PAUSE, WATCH -> paintHold(g2, palette, mark);
          case COMPRESSION -> paintCompression(g2, palette, x(mark.startNanos()), middle);
          default -> {
            // Prompts and breaths stand above these.
          }
        }
      }
      g2.setColor(palette.line());
      g2.setStroke(look.stroke(1));
      g2.draw(new Line2D.Double(look.px(8), middle, getWidth() - look.px(8.0), middle));
      int found = 0;
      for (RibbonMark mark : marks) {
        if (mark.kind() == RibbonMark.Kind.FINDING) {
          found++;
          paintFinding(g2, palette, x(mark.startNanos()), found);
        }
      }
      for (RibbonMark mark : marks) {
        if (mark.kind() == RibbonMark.Kind.PROMPT) {
          paintPrompt(g2, palette, x(mark.startNanos()), middle);
        } else if (mark.kind() == RibbonMark.Kind.BREATH) {
          paintBreath(g2, palette, mark, middle);
        }
      }
    } finally {
      g2.dispose();
    }
  }

  private double x(long nanos) {
    double margin = look.px(10);
    double share = (double) (nanos - fromNanos) / (toNanos - fromNanos);
    return margin + share * (getWidth() - 2 * margin);
  }

  /** Marks on a long ribbon are drawn narrower, so that neighbours stay apart. */
  private double half() {
    double seconds = (toNanos - fromNanos) / 1e9;
    return Math.max(look.px(2), Math.min(look.px(6), getWidth() / seconds));
  }

  private void paintHold(Graphics2D g2, Palette palette, RibbonMark mark) {
    double left = x(mark.startNanos());
    double width = Math.max(look.px(3), x(mark.endNanos()) - left);
    g2.setColor(palette.active());
    g2.fill(
        new RoundRectangle2D.Double(
            left, look.px(4), width, getHeight() - look.px(8.0), look.px(6), look.px(6)));
    String word =
        switch (mark.kind()) {
          case PULSE_CHECK -> "check";
          case SUCTION -> "suction";
          case WATCH -> "watch";
          default -> "pause";
        };
    Font font = look.font(11);
    g2.setFont(font);
    g2.setColor(palette.softText());
    int textWidth = g2.getFontMetrics().stringWidth(word);
    double at = left + (width - textWidth) / 2;
    at = Math.max(look.px(4), Math.min(at, getWidth() - textWidth - look.px(4.0)));
    g2.drawString(word, (float) at, (float) look.px(15));
  }

  /** A line over both lanes, with its number at its foot. */
  private void paintFinding(Graphics2D g2, Palette palette, double x, int number) {
    g2.setColor(palette.text());
    g2.setStroke(look.stroke(1.5));
    double foot = getHeight() - look.px(13.0);
    g2.draw(new Line2D.Double(x, look.px(3), x, foot));
    Font font = look.bold(11);
    g2.setFont(font);
    String text = Integer.toString(number);
    double width = g2.getFontMetrics().stringWidth(text);
    double at = Math.max(look.px(3), Math.min(x - width / 2, getWidth() - width - look.px(3.0)));
    g2.drawString(text, (float) at, (float) (getHeight() - look.px(3.0)));
  }

  private void paintPrompt(Graphics2D g2, Palette palette, double x, double middle) {
    double half = half();
    double tip = middle - look.px(4);
    Path2D flag = new Path2D.Double();
    flag.moveTo(x, tip);
    flag.lineTo(x + half, tip - look.px(12));
    flag.lineTo(x - half, tip - look.px(12));
    flag.closePath();
    g2.setColor(palette.softText());
    g2.fill(flag);
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
    double width = Math.max(half(), x(mark.endNanos()) - left);
    double top = middle + look.px(6);
    double height = look.px(15);
    g2.setColor(colour(palette, mark.judgement()));
    g2.fill(new RoundRectangle2D.Double(left, top, width, height, look.px(5), look.px(5)));
    double centre = left + width / 2;
    double half = Math.min(look.px(5), half() + 1);
    if (mark.judgement() == Judgement.FAST) {
      tip(g2, centre, top + height + look.px(2), half, look.px(6));
    } else if (mark.judgement() == Judgement.SLOW) {
      tip(g2, centre, top + height + look.px(8), half, -look.px(6));
    }
  }

  /** A triangle with its point at y and its base so much below (above when negative). */
  static void tip(Graphics2D g2, double x, double y, double half, double height) {
    Path2D shape = new Path2D.Double();
    shape.moveTo(x, y);
    shape.lineTo(x + half, y + height);
    shape.lineTo(x - half, y + height);
    shape.closePath();
    g2.fill(shape);
  }

  /** The colour of a judgement; shape and word always say the same. */
  public static Color colour(Palette palette, Judgement judgement) {
    return switch (judgement) {
      case FAST -> palette.sand();
      case SLOW -> palette.plum();
      case IN_RANGE -> palette.tide();
      case UNJUDGED -> palette.softText();
    };
  }
}
