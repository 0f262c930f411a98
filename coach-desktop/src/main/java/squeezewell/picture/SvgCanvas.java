package squeezewell.picture;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RectangularShape;
import java.awt.geom.RoundRectangle2D;
import java.util.function.UnaryOperator;
import squeezewell.desktop.look.Look;
import squeezewell.words.Quantities;

/** Writes the elements of an SVG 1.1 picture; the style of the page sets the size of its text. */
public final class SvgCanvas implements Canvas {
  /** About how wide a letter is, whatever font the reader has. */
  private static final double LETTER = 6;

  private final UnaryOperator<String> escape;
  private final StringBuilder elements = new StringBuilder();

  /** Text is written as the function makes it safe. */
  public SvgCanvas(UnaryOperator<String> escape) {
    this.escape = escape;
  }

  /** What was painted so far. */
  public String elements() {
    return elements.toString();
  }

  @Override
  public void fill(Color colour, Shape shape) {
    shape(shape, attribute("fill", Look.hex(colour)));
  }

  @Override
  public void draw(Color colour, double width, Shape shape, float... dashes) {
    StringBuilder pattern = new StringBuilder();
    for (float dash : dashes) {
      pattern.append(pattern.length() == 0 ? "" : " ").append(number(dash));
    }
    shape(
        shape,
        attribute("fill", "none")
            + attribute("stroke", Look.hex(colour))
            + (width == 1 ? "" : attribute("stroke-width", number(width)))
            + (dashes.length == 0 ? "" : attribute("stroke-dasharray", pattern.toString())));
  }

  @Override
  public void text(Color colour, boolean bold, double x, double y, String text) {
    elements.append("<text").append(place(x, y)).append(attribute("fill", Look.hex(colour)));
    elements.append(bold ? attribute("font-weight", "bold") : "").append('>');
    elements.append(escape.apply(text)).append("</text>\n");
  }

  @Override
  public double lengthOf(boolean bold, String text) {
    return LETTER * text.length();
  }

  private void shape(Shape shape, String style) {
    if (shape instanceof Rectangle2D || shape instanceof RoundRectangle2D) {
      RectangularShape box = (RectangularShape) shape;
      double arc = shape instanceof RoundRectangle2D round ? round.getArcWidth() / 2 : 0;
      elements.append("<rect").append(place(box.getX(), box.getY()));
      elements.append(attribute("width", number(box.getWidth())));
      elements.append(attribute("height", number(box.getHeight())));
      elements.append(arc > 0 ? attribute("rx", number(arc)) : "").append(style).append("/>\n");
      return;
    }
    StringBuilder path = new StringBuilder();
    double[] at = new double[6];
    for (PathIterator step = shape.getPathIterator(null); !step.isDone(); step.next()) {
      int kind = step.currentSegment(at);
      path.append("MLQCZ".charAt(kind));
      int numbers = new int[] {2, 2, 4, 6, 0}[kind];
      for (int i = 0; i < numbers; i++) {
        path.append(i == 0 ? "" : " ").append(number(at[i]));
      }
    }
    elements.append("<path").append(style).append(attribute("d", path.toString())).append("/>\n");
  }

  private static String place(double x, double y) {
    return attribute("x", number(x)) + attribute("y", number(y));
  }

  private static String attribute(String name, String value) {
    return " " + name + "=\"" + value + "\"";
  }

  private static String number(double value) {
    return Quantities.upTo(value, 2);
  }
}
