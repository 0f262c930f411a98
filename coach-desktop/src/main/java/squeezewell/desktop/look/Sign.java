package squeezewell.desktop.look;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Our own signs, drawn on a grid of 24 with a stroke of 2. A path is written as in SVG, with the
 * commands M, L, H, V, C and Z, absolute or relative; one that is filled says so.
 */
public enum Sign {
  BACK("M20 12H5M11 5l-7 7 7 7"),
  NEXT("M9 5l7 7-7 7"),
  DOWN("M5 9l7 7 7-7"),
  UP("M5 15l7-7 7 7"),
  CLOSE("M6 6l12 12M18 6L6 18"),
  SETTINGS("M3 7h8M17 7h4M3 17h3M12 17h9M11 4h6v6h-6zM6 14h6v6h-6z"),
  LIST("M4 6h16M4 12h16M4 18h9"),
  PRACTICE("M6 3h12v18h-12zM6 13c2-2 4-2 6 0c2 2 4 2 6 0"),
  STATIONS("M5 4h14v17h-14zM9 2h6v4h-6zM9 11h7M9 16h7"),
  HISTORY("M3 5h18M5 11v5M10 11v8M15 11v4M20 11v9"),
  EQUIPMENT("M9 2h6v4h-6zM7 9c0-2 1-3 2-3h6c1 0 2 1 2 3v13h-10zM7 14h10"),
  CHECK("M2 13h5l3-8l4 14l3-6h5"),
  SUCTION("M2 18l4 4l7-7l-4-4zM11 13l4-4c3-3 5-2 6-7"),
  CHANGES("M4 12h6M10 12l6-6h5M10 12l6 6h5M18 3l3 3l-3 3M18 15l3 3l-3 3"),
  MORE("fill M4 10h4v4h-4zM10 10h4v4h-4zM16 10h4v4h-4z"),
  PAUSE("M8 5v14M16 5v14"),
  STOP("M6 6h12v12h-12z"),
  MUTE("M4 9h4l5-4v14l-5-4h-4zM17 9l5 6M22 9l-5 6"),
  UNDO("M8 5l-5 5l5 5M3 10h11c4 0 7 2 7 6v3"),
  NOTE("M4 20l1-5L16 4l4 4L9 19zM13 7l4 4"),
  LUNGS("M12 3v9M12 9l-3 3M12 9l3 3M9 12c-4 0-6 4-6 9h6zM15 12c4 0 6 4 6 9h-6z"),
  DROP("M12 3c4 6 6 8 6 11c0 3.3-2.7 6-6 6c-3.3 0-6-2.7-6-6c0-3 2-5 6-11z"),
  TUBE("M7 3h10M10 3v10c0 4 2 8 2 8c0 0 2-4 2-8v-10"),
  NO_RISE("M3 17h18M5 17c2-4 4-6 7-6c3 0 5 2 7 6M8 4l8 5M16 4l-8 5"),
  NO_PULSE("M2 12h7M15 12h7M9 8l6 8M15 8l-6 8"),
  GAG("M4 6c4-3 12-3 16 0v6c-2 5-14 5-16 0zM9 20h6M4 9h16"),
  TICK("M4 13l5 5L20 6"),
  SHARE("M12 15V3M7 8l5-5 5 5M5 13v8h14v-8"),
  AGAIN("M4 6v5h5M4 11c2-5 9-7 13-3c4 4 3 11-3 12c-3 .6-6-.5-8-3"),
  PERSON("M8 3h8v8h-8zM4 21c0-5 3-7 8-7c5 0 8 2 8 7"),
  CLOCK("M5 3h14M5 21h14M7 3c0 6 10 12 10 18M17 3c0 6-10 12-10 18"),
  SCREEN("M3 4h18v12h-18zM8 21h8M12 16v5"),
  INFO("M5 3h14v18h-14zM12 10v7M12 6v1"),
  CRITICAL("fill M12 2l10 10-10 10L2 12z"),
  IN_RANGE("fill M4 4h16v16h-16z"),
  NEEDS_WORK("fill M3 3h18v18h-18zM6 6v6h12v-6z"),
  EARLY("fill M12 3l10 18h-20z"),
  LATE("fill M2 3h20L12 21z"),
  ADULT(
      "fill M8 -7c4.4 0 8 3.6 8 8c0 4.4-3.6 8-8 8c-4.4 0-8-3.6-8-8c0-4.4 3.6-8 8-8zM-3 12h22l3 20h-6l-2 16h-12l-2-16h-6z"),
  CHILD(
      "fill M8 4c4.4 0 8 3.6 8 8c0 4.4-3.6 8-8 8c-4.4 0-8-3.6-8-8c0-4.4 3.6-8 8-8zM0 22h16l4 12h-6l-1 14h-10l-1-14h-6z"),
  INFANT(
      "fill M8 9.5c5.2 0 9.5 4.3 9.5 9.5c0 5.2-4.3 9.5-9.5 9.5c-5.2 0-9.5-4.3-9.5-9.5c0-5.2 4.3-9.5 9.5-9.5zM-1 30h18l3 8c6 1 8 4 8 9h-40c0-5 2-8 8-9z"),
  NEWBORN(
      "fill M8 12.5c4.7 0 8.5 3.8 8.5 8.5c0 4.7-3.8 8.5-8.5 8.5c-4.7 0-8.5-3.8-8.5-8.5c0-4.7 3.8-8.5 8.5-8.5zM-4 33c0-3 24-3 24 0c0 9-4 15-8 15h-8c-4 0-8-6-8-15z");

  @SuppressWarnings("ImmutableEnumChecker") // built once, never handed out
  private final Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);

  private final boolean filled;

  Sign(String text) {
    filled = text.startsWith("fill ");
    read(filled ? text.substring(5) : text);
  }

  private void read(String text) {
    String[] parts =
        Pattern.compile("[A-Za-z]|-?[0-9]*[.]?[0-9]+")
            .matcher(text)
            .results()
            .map(MatchResult::group)
            .toArray(String[]::new);
    {
      double x = 0;
      double y = 0;
      char command = 'M';
      for (int i = 0; i < parts.length; ) {
        if (Character.isLetter(parts[i].charAt(0))) {
          command = parts[i++].charAt(0);
        }
        boolean relative = Character.isLowerCase(command);
        double fromX = relative ? x : 0;
        double fromY = relative ? y : 0;
        switch (Character.toUpperCase(command)) {
          case 'H' -> x = fromX + Double.parseDouble(parts[i++]);
          case 'V' -> y = fromY + Double.parseDouble(parts[i++]);
          case 'C' -> {
            double[] c = new double[6];
            for (int k = 0; k < 6; k++) {
              c[k] = Double.parseDouble(parts[i++]) + (k % 2 == 0 ? fromX : fromY);
            }
            path.curveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
            x = c[4];
            y = c[5];
            continue;
          }
          case 'Z' -> {
            path.closePath();
            x = path.getCurrentPoint().getX();
            y = path.getCurrentPoint().getY();
            continue;
          }
          default -> {
            x = fromX + Double.parseDouble(parts[i++]);
            y = fromY + Double.parseDouble(parts[i++]);
          }
        }
        if (Character.toUpperCase(command) == 'M') {
          path.moveTo(x, y);
          command = relative ? 'l' : 'L';
        } else {
          path.lineTo(x, y);
        }
      }
    }
  }

  /** Paints it with its upper left corner at a place; all in device pixels. */
  public void paint(Graphics2D g2, double x, double y, double size, Color colour) {
    double scale = size / 24;
    AffineTransform at = AffineTransform.getTranslateInstance(x, y);
    at.scale(scale, scale);
    g2.setColor(colour);
    if (filled) {
      g2.fill(at.createTransformedShape(path));
    } else {
      g2.setStroke(
          new BasicStroke((float) (2 * scale), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
      g2.draw(at.createTransformedShape(path));
    }
  }
}
