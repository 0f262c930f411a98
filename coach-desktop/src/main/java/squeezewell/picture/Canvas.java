package squeezewell.picture;

import java.awt.Color;
import java.awt.Shape;

/** What a picture is painted on: a screen, an image, or the text of an SVG. */
public interface Canvas {
  /** Fills a shape. */
  void fill(Color colour, Shape shape);

  /**
   * Draws the outline of a shape.
   *
   * @param width of the line
   * @param dashes lengths of a dash and of the gap after it; none for a whole line
   */
  void draw(Color colour, double width, Shape shape, float... dashes);

  /** Writes small text with the left end of its base line at a place. */
  void text(Color colour, boolean bold, double x, double y, String text);

  /** How long such text is, or about how long. */
  double lengthOf(boolean bold, String text);
}
