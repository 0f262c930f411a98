package squeezewell.report;

import com.formdev.flatlaf.fonts.roboto.FlatRobotoFont;
import java.awt.Font;

/** The type of the picture: our own, and the system's for writing that ours does not have. */
final class ReviewFonts {
  private ReviewFonts() {}

  /** Makes our own type known. */
  static void install() {
    FlatRobotoFont.install();
  }

  /** A font that can show that text. */
  static Font of(String text, float size, boolean bold) {
    int style = bold ? Font.BOLD : Font.PLAIN;
    Font own = new Font(FlatRobotoFont.FAMILY, style, 1).deriveFont(size);
    return own.canDisplayUpTo(text) < 0
        ? own
        : new Font(Font.SANS_SERIF, style, 1).deriveFont(size);
  }
}
