package squeezewell.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Paints the pictures of {@link ReviewSvg} with Java2D, so that the page and the picture file can
 * never differ. It knows the few elements, commands and kinds that are used there; anything else is
 * an error and not a gap in the picture.
 */
final class SvgPainter {
  private final Element svg;
  private final double width;
  private final double height;

  /** How one kind of mark looks. */
  private record Ink(Color fill, Color line, float width, float dash) {}

  private SvgPainter(Element svg) {
    this.svg = svg;
    String[] box = svg.getAttribute("viewBox").split(" ", -1);
    this.width = Double.parseDouble(box[2]);
    this.height = Double.parseDouble(box[3]);
  }

  /** Reads a picture that {@link ReviewSvg} wrote. */
  static SvgPainter of(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      return new SvgPainter(
          factory
              .newDocumentBuilder()
              .parse(new InputSource(new StringReader(svg)))
              .getDocumentElement());
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new IllegalStateException("a picture of our own can't be read", e);
    }
  }

  /** How high the picture gets at a width. */
  double heightAt(double drawnWidth) {
    return height * drawnWidth / width;
  }

  /** Paints the picture with its upper left corner at a place. */
  void paint(Graphics2D to, double x, double y, double drawnWidth) {
    Graphics2D g = (Graphics2D) to.create();
    try {
      g.transform(AffineTransform.getTranslateInstance(x, y));
      g.scale(drawnWidth / width, drawnWidth / width);
      for (Node child = svg.getFirstChild(); child != null; child = child.getNextSibling()) {
        if (child instanceof Element element) {
          element(g, element);
        }
      }
    } finally {
      g.dispose();
    }
  }

  private static void element(Graphics2D g, Element element) {
    switch (element.getTagName()) {
      case "rect" ->
          shape(
              g,
              element,
              new RoundRectangle2D.Double(
                  number(element, "x"),
                  number(element, "y"),
                  number(element, "width"),
                  number(element, "height"),
                  2 * number(element, "rx"),
                  2 * number(element, "rx")));
      case "line" ->
          shape(
              g,
              element,
              new Line2D.Double(
                  number(element, "x1"),
                  number(element, "y1"),
                  number(element, "x2"),
                  number(element, "y2")));
      case "path" -> shape(g, element, path(element.getAttribute("d")));
      case "text" -> {
        g.setColor(PageColours.SOFT);
        g.setFont(ReviewFonts.of(element.getTextContent(), 11, false));
        g.drawString(
            element.getTextContent(), (float) number(element, "x"), (float) number(element, "y"));
      }
      case "title" -> {}
      default -> throw new IllegalArgumentException("no such element: " + element.getTagName());
    }
  }

  private static void shape(Graphics2D g, Element element, Shape shape) {
    Ink ink = ink(element.getAttribute("class"));
    if (ink.fill() != null) {
      g.setColor(ink.fill());
      g.fill(shape);
    }
    if (ink.line() != null) {
      g.setColor(ink.line());
      g.setStroke(
          ink.dash() == 0
              ? new BasicStroke(ink.width())
              : new BasicStroke(
                  ink.width(),
                  BasicStroke.CAP_BUTT,
                  BasicStroke.JOIN_MITER,
                  10,
                  new float[] {1.5f * ink.dash(), ink.dash()},
                  0));
      g.draw(shape);
    }
  }

  private static Ink ink(String kind) {
    Color soft = PageColours.SOFT;
    Color tide = PageColours.TIDE;
    return switch (kind) {
      case "rule" -> new Ink(null, PageColours.RULE, 1, 0);
      case "target" -> new Ink(null, tide, 1, 4);
      case "band" -> new Ink(faint(tide), null, 0, 0);
      case "hold" -> new Ink(faint(soft), null, 0, 0);
      case "prompt" -> new Ink(soft, null, 0, 0);
      case "missed" -> new Ink(null, soft, 1, 0);
      case "tick" -> new Ink(null, soft, 1, 0);
      case "found" -> new Ink(null, PageColours.TEXT, 1, 2);
      case "good" -> new Ink(tide, null, 0, 0);
      case "fast" -> new Ink(PageColours.FAST, null, 0, 0);
      case "slow" -> new Ink(PageColours.SLOW, null, 0, 0);
      default -> throw new IllegalArgumentException("no such kind: " + kind);
    };
  }

  private static Color faint(Color colour) {
    return new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), 36);
  }

  private static Path2D path(String form) {
    Path2D path = new Path2D.Double();
    List<String> words =
        Arrays.asList(form.replaceAll("([A-Za-z])", " $1 ").trim().split("\\s+", -1));
    Deque<String> rest = new ArrayDeque<>(words);
    double x = 0;
    double y = 0;
    while (!rest.isEmpty()) {
      String command = rest.remove();
      switch (command) {
        case "M" -> {
          x = next(rest);
          y = next(rest);
          path.moveTo(x, y);
        }
        case "l" -> {
          // A command may be followed by more than one point.
          while (!rest.isEmpty() && !Character.isLetter(rest.peek().charAt(0))) {
            x += next(rest);
            y += next(rest);
            path.lineTo(x, y);
          }
        }
        case "h" -> {
          x += next(rest);
          path.lineTo(x, y);
        }
        case "v" -> {
          y += next(rest);
          path.lineTo(x, y);
        }
        case "z" -> path.closePath();
        default -> throw new IllegalArgumentException("no such command: " + command);
      }
    }
    return path;
  }

  private static double next(Deque<String> rest) {
    return Double.parseDouble(rest.remove());
  }

  private static double number(Element element, String name) {
    String text = element.getAttribute(name);
    return text.isEmpty() ? 0 : Double.parseDouble(text);
  }
}
