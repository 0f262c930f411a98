package squeezewell.desktop.look;

import java.awt.Color;
import squeezewell.protocol.Judgement;

/**
 * The colours of a theme. Every text colour has a contrast of at least 4.5 to 1 against the ground
 * and the card; a test computes it.
 *
 * @param dark whether the ground is dark
 * @param ground behind everything
 * @param card behind a group of things
 * @param line around a card
 * @param active behind the part of a card that is in use
 * @param text what is read first
 * @param softText what is read second
 * @param tide in range, and what can be acted on
 * @param sand fast or early
 * @param plum slow or late
 * @param onTide text on a tide-coloured ground
 */
public record Palette(
    boolean dark,
    Color ground,
    Color card,
    Color line,
    Color active,
    Color text,
    Color softText,
    Color tide,
    Color sand,
    Color plum,
    Color onTide) {

  /** For a dim room. */
  public static Palette darkTheme() {
    return new Palette(
        true,
        new Color(0x0E1B22),
        new Color(0x172932),
        new Color(0x2C4450),
        new Color(0x20404C),
        new Color(0xF3F1E9),
        new Color(0xA9BBC2),
        new Color(0x4FB0C6),
        new Color(0xF0B45B),
        new Color(0xC9A0E8),
        new Color(0x0E1B22));
  }

  /** For a bright room. */
  public static Palette lightTheme() {
    return new Palette(
        false,
        new Color(0xFAF7EF),
        new Color(0xFFFFFF),
        new Color(0xD9D3C4),
        new Color(0xD8ECF0),
        new Color(0x14252D),
        new Color(0x50626A),
        new Color(0x1F7A8F),
        new Color(0x9A5B00),
        new Color(0x6B3FA0),
        new Color(0xFFFFFF));
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
