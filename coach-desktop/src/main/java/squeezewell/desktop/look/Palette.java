package squeezewell.desktop.look;

import java.awt.Color;
import squeezewell.protocol.Judgement;

/**
 * The colours of a theme. Text has a contrast of at least 4.5 to 1 against what it stands on,
 * shapes and the edges of controls 3 to 1; a test computes both.
 *
 * @param dark whether the ground is dark
 * @param ground behind everything
 * @param card behind a group of things
 * @param text what is read first
 * @param softText what is read second
 * @param line a hairline, for decoration only
 * @param edge around a control
 * @param deep what acts
 * @param onDeep text on deep
 * @param softOnDeep secondary text on deep
 * @param tide in range, and what is done
 * @param mist behind what is chosen, and the pad
 * @param onMist text on mist
 * @param sand fast, early, short
 * @param sandMist behind what is fast
 * @param plum slow, late, long, critical
 * @param plumMist behind what is slow
 * @param rest the ground while the bag rests
 * @param onRest text on rest
 * @param softOnRest secondary text on rest
 * @param gap the ground while a breath is missing
 * @param onGap text on gap
 * @param softOnGap secondary text on gap
 */
public record Palette(
    boolean dark,
    Color ground,
    Color card,
    Color text,
    Color softText,
    Color line,
    Color edge,
    Color deep,
    Color onDeep,
    Color softOnDeep,
    Color tide,
    Color mist,
    Color onMist,
    Color sand,
    Color sandMist,
    Color plum,
    Color plumMist,
    Color rest,
    Color onRest,
    Color softOnRest,
    Color gap,
    Color onGap,
    Color softOnGap) {

  private static final int[] LIGHT = {
    0xFAF7EF, 0xFFFFFF, 0x10232B, 0x4A5C64, 0xDAD4C5, 0x74848A, 0x0E5263, 0xFFFFFF, 0xCFE6EA,
    0x1F7A8F, 0xDCECEF, 0x0B3F4D, 0x8A5000, 0xFBE9CC, 0x6B3FA0, 0xEFE6F8, 0x0B4656, 0xFFFFFF,
    0xC4E0E6, 0x4A2A78, 0xFFFFFF, 0xDDCDF2
  };

  private static final int[] DARK = {
    0x0E1B22, 0x172932, 0xF3F1E9, 0xA9BBC2, 0x2C424C, 0x7C929B, 0x7CCBDC, 0x06222B, 0x16414D,
    0x46B3B8, 0x21414B, 0xD6F0F5, 0xF0B45B, 0x3E3016, 0xB892F0, 0x35264A, 0xBFE3EA, 0x08262F,
    0x1C4653, 0xDCC3F3, 0x26104A, 0x432B68
  };

  /** The grounds of both are one colour; what is told apart is told by shape and edge too. */
  private static final int[] CONTRAST = {
    0xFFFFFF, 0xFFFFFF, 0x000000, 0x000000, 0x000000, 0x000000, 0x003B4A, 0xFFFFFF, 0xFFFFFF,
    0x004D5C, 0xE3F2F5, 0x000000, 0x5C3300, 0xFFF1DA, 0x4A1F7A, 0xF3EAFF, 0x002A35, 0xFFFFFF,
    0xFFFFFF, 0x2E0F55, 0xFFFFFF, 0xFFFFFF
  };

  private static final int[] DARK_CONTRAST = {
    0x000000, 0x000000, 0xFFFFFF, 0xFFFFFF, 0xFFFFFF, 0xFFFFFF, 0x9BE4F5, 0x000000, 0x000000,
    0x6FD6DB, 0x0C2E36, 0xFFFFFF, 0xFFC97A, 0x2B1D00, 0xD9BEFF, 0x1F0F33, 0xC9F3FC, 0x000000,
    0x000000, 0xE8D9FF, 0x000000, 0x000000
  };

  private static Palette of(boolean dark, int[] rgb) {
    Color[] c = new Color[rgb.length];
    for (int i = 0; i < rgb.length; i++) {
      c[i] = new Color(rgb[i]);
    }
    return new Palette(
        dark, c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], c[9], c[10], c[11], c[12],
        c[13], c[14], c[15], c[16], c[17], c[18], c[19], c[20], c[21]);
  }

  /** For a dim room. */
  public static Palette darkTheme() {
    return of(true, DARK);
  }

  /** For a bright room. */
  public static Palette lightTheme() {
    return of(false, LIGHT);
  }

  /** For eyes that need the most contrast. */
  public static Palette highContrast(boolean dark) {
    return of(dark, dark ? DARK_CONTRAST : CONTRAST);
  }

  /** The same theme on the ground of a rest: one colour, its text and its soft text. */
  public Palette resting() {
    return on(rest, onRest, softOnRest);
  }

  /** The same theme on the ground of a breath that is missing. */
  public Palette missing() {
    return on(gap, onGap, softOnGap);
  }

  private Palette on(Color under, Color first, Color second) {
    return new Palette(
        dark,
        under,
        under,
        first,
        second,
        second,
        second,
        first,
        under,
        second,
        first,
        under,
        first,
        first,
        under,
        first,
        under,
        rest,
        onRest,
        softOnRest,
        gap,
        onGap,
        softOnGap);
  }

  /** The colour of a judgement; shape and word always say the same. */
  public Color of(Judgement judgement) {
    return switch (judgement) {
      case FAST -> sand;
      case SLOW -> plum;
      case IN_RANGE -> tide;
      case UNJUDGED -> softText;
    };
  }

  /**
   * The contrast of two colours, 1 to 21, as the Web Content Accessibility Guidelines 2.1 set it.
   */
  public static double contrast(Color a, Color b) {
    double lighter = Math.max(luminance(a), luminance(b));
    double darker = Math.min(luminance(a), luminance(b));
    return (lighter + 0.05) / (darker + 0.05);
  }

  private static double luminance(Color color) {
    return 0.2126 * linear(color.getRed())
        + 0.7152 * linear(color.getGreen())
        + 0.0722 * linear(color.getBlue());
  }

  private static double linear(int channel) {
    double share = channel / 255.0;
    return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }
}
