package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Insets;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JTextArea;
import javax.swing.text.DefaultCaret;

/** Makes lines and blocks of text, none of which is ever read as HTML. */
final class Texts {
  /** Marks text and controls that may become narrower. */
  static final String FITS = "squeezewell.fits";

  private Texts() {}

  /** One line of text. */
  static JLabel label(String text, Font font, Color colour) {
    JLabel label = new JLabel(text);
    label.putClientProperty("html.disable", true);
    label.setFont(font);
    label.setForeground(colour);
    label.setAlignmentX(Component.LEFT_ALIGNMENT);
    return label;
  }

  /** One line of text that is written smaller where it has not the width it wants. */
  static JLabel title(String text, Font font, Color colour) {
    JLabel label =
        new JLabel(text) {
          private static final long serialVersionUID = 1L;

          @Override
          public void setBounds(int x, int y, int width, int height) {
            super.setBounds(x, y, width, height);
            int wanted = getFontMetrics(font).stringWidth(getText());
            float share = wanted > width ? (float) Math.max(1, width - 2) / wanted : 1;
            Font fitted = share == 1 ? font : font.deriveFont(font.getSize2D() * share);
            if (!fitted.equals(getFont())) {
              setFont(fitted);
            }
          }

          @Override
          public Dimension getPreferredSize() {
            var metrics = getFontMetrics(font);
            return new Dimension(metrics.stringWidth(getText()) + 2, metrics.getHeight());
          }
        };
    label.putClientProperty("html.disable", true);
    label.setFont(font);
    label.setForeground(colour);
    return label;
  }

  /** Text that wraps at a width in device pixels. */
  static JTextArea text(String text, Font font, Color colour, int width) {
    JTextArea area = flowing(text, font, colour);
    area.putClientProperty(FITS, true);
    wrap(area, width);
    return area;
  }

  /** Text that wraps at whatever width it is given. */
  static JTextArea flowing(String text, Font font, Color colour) {
    JTextArea area = new JTextArea();
    // Without this, and before the text is set, every new text would scroll the page to itself.
    ((DefaultCaret) area.getCaret()).setUpdatePolicy(DefaultCaret.NEVER_UPDATE);
    area.setText(text);
    area.setLineWrap(true);
    area.setWrapStyleWord(true);
    area.setEditable(false);
    area.setFocusable(false);
    area.setOpaque(false);
    area.setBorder(BorderFactory.createEmptyBorder());
    area.setMargin(new Insets(0, 0, 0, 0));
    area.setFont(font);
    area.setForeground(colour);
    area.setAlignmentX(Component.LEFT_ALIGNMENT);
    return area;
  }

  /** Wraps a text at a width in device pixels. */
  static void wrap(JTextArea area, int width) {
    area.setPreferredSize(null);
    area.setSize(width, Short.MAX_VALUE);
    fix(area, new Dimension(width, area.getPreferredSize().height));
  }

  /** Gives a part a size in device pixels that no layout changes. */
  static void fix(JComponent part, Dimension size) {
    part.setPreferredSize(size);
    part.setMaximumSize(size);
    part.setMinimumSize(size);
    part.invalidate();
  }
}
