package squeezewell.report;

import java.awt.Color;

/** The colours of {@link ReviewHtml}, for the same page as a picture. */
final class PageColours {
  static final Color GROUND = new Color(0xFAF7EF);
  static final Color CARD = new Color(0xFFFFFF);
  static final Color RULE = new Color(0xDDD8C8);
  static final Color TEXT = new Color(0x14252D);
  static final Color SOFT = new Color(0x50626A);
  static final Color TIDE = new Color(0x1F7A8F);
  static final Color FAST = new Color(0x9A5B00);
  static final Color SLOW = new Color(0x6B3FA0);

  private PageColours() {}
}
