package squeezewell.desktop.look;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import com.formdev.flatlaf.fonts.roboto.FlatRobotoFont;
import com.formdev.flatlaf.util.FontUtils;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Stroke;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import javax.swing.UIManager;
import javax.swing.plaf.FontUIResource;

/**
 * Colours, type and sizes of the windows at one theme and one text size. All sizes are given in
 * density-independent pixels and scaled here.
 */
public final class Look {
  private static final double LEAST_SCALE = 0.5;
  private static final double MOST_SCALE = 6;

  private final Palette palette;
  private final double scale;

  /**
   * A look.
   *
   * @param palette the colours
   * @param scale 1 for normal size, 0.5 to 6
   */
  public Look(Palette palette, double scale) {
    this.palette = Objects.requireNonNull(palette, "palette");
    if (!(scale >= LEAST_SCALE && scale <= MOST_SCALE)) {
      throw new IllegalArgumentException("scale is " + scale + "; allowed: 0.5 to 6");
    }
    this.scale = scale;
  }

  /** Makes Swing's own parts follow this look. Call on the event thread. */
  public void install() {
    FlatRobotoFont.install();
    Map<String, String> colours = new HashMap<>();
    colours.put("@background", hex(palette.ground()));
    colours.put("@foreground", hex(palette.text()));
    colours.put("@accentColor", hex(palette.deep()));
    colours.put("@componentBackground", hex(palette.card()));
    colours.put("@menuBackground", hex(palette.card()));
    colours.put("@disabledForeground", hex(palette.softText()));
    colours.put("Component.borderColor", hex(palette.edge()));
    colours.put("Component.focusWidth", "2");
    colours.put("Component.innerFocusWidth", "1");
    colours.put("Component.arc", "12");
    colours.put("Button.arc", "14");
    colours.put("TextComponent.arc", "12");
    // FlatLaf scales this with the default font, which is a quarter larger than its own.
    colours.put("ScrollBar.width", "8");
    colours.put("ScrollBar.thumb", hex(palette.edge()));
    colours.put("ScrollBar.track", hex(palette.ground()));
    FlatLaf.setGlobalExtraDefaults(colours);
    if (palette.dark()) {
      FlatDarkLaf.setup();
    } else {
      FlatLightLaf.setup();
    }
    UIManager.put("defaultFont", new FontUIResource(font(15)));
  }

  public Palette palette() {
    return palette;
  }

  public double scale() {
    return scale;
  }

  /** Device pixels for a number of density-independent pixels. */
  public int px(double size) {
    return (int) Math.round(size * scale);
  }

  /**
   * This look, or a smaller one if a part would not fit into a place.
   *
   * @param width of the place, in device pixels
   * @param height of the place, in device pixels
   * @param leastWidth what the part needs, in density-independent pixels, above 0
   * @param leastHeight what the part needs, in density-independent pixels, above 0
   */
  public Look fitting(int width, int height, double leastWidth, double leastHeight) {
    double most = Math.min(width / leastWidth, height / leastHeight);
    return most >= scale ? this : new Look(palette, Math.max(LEAST_SCALE, most));
  }

  /** Regular type; the size in density-independent pixels. */
  public Font font(double size) {
    return family(Font.PLAIN).deriveFont((float) (size * scale));
  }

  /** Bold type; the size in density-independent pixels. */
  public Font bold(double size) {
    return family(Font.BOLD).deriveFont((float) (size * scale));
  }

  /** A composite font: a name in a script that ours lacks is shown in one that has it. */
  private static Font family(int style) {
    return FontUtils.getCompositeFont(FlatRobotoFont.FAMILY, style, 12);
  }

  /** A line of so many density-independent pixels. */
  public Stroke stroke(double width) {
    return new BasicStroke((float) (width * scale), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  /** The font made smaller, if it must be, for the text to fit a width in device pixels. */
  public static Font fitted(Graphics g, Font font, String text, int width) {
    FontMetrics metrics = g.getFontMetrics(font);
    int needed = metrics.stringWidth(text);
    return needed <= width || needed == 0
        ? font
        : font.deriveFont(font.getSize2D() * Math.max(1, width) / needed);
  }

  /** A copy of the graphics that draws smooth shapes and text; the caller disposes of it. */
  public static Graphics2D smooth(Graphics g) {
    Graphics2D copy = (Graphics2D) g.create();
    copy.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    copy.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    copy.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    return copy;
  }

  /** A colour as FlatLaf and style sheets write it. */
  public static String hex(Color color) {
    return String.format("#%06x", color.getRGB() & 0xFFFFFF);
  }
}
