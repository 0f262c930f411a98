package squeezewell.desktop;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JOptionPane;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.UIManager;
import squeezewell.storage.WholeFile;

/** What is said or asked in a small window of its own, no wider than the window it lies over. */
final class Dialogs {
  /** What the picture beside the text and the edges take, in widths of an m. */
  private static final int BESIDE_TEXT = 10;

  /** A longer line is hard to read, in widths of an m. */
  private static final int LONGEST_LINE = 34;

  private static final int SHORTEST_LINE = 10;

  private Dialogs() {}

  /**
   * Writes a file where a person wants it, after asking if one is there, and says how that went.
   *
   * @param what the file is, in words
   */
  static void save(Component over, String title, Path file, byte[] content, String what) {
    try {
      if (write(over, title, file, content)) {
        JOptionPane.showMessageDialog(
            over,
            words(over, "Saved as " + file + "\n" + what + "."),
            title,
            JOptionPane.INFORMATION_MESSAGE);
      }
    } catch (IOException e) {
      tell(over, title, file + " can't be written: " + e.getMessage());
    }
  }

  /** Whether it was written. */
  private static boolean write(Component over, String title, Path file, byte[] content)
      throws IOException {
    try {
      WholeFile.write(file, content, false);
      return true;
    } catch (FileAlreadyExistsException e) {
      String text = file.getFileName() + " is there already. Replace it?";
      boolean replaces =
          JOptionPane.showConfirmDialog(
                  over, words(over, text), title, JOptionPane.OK_CANCEL_OPTION)
              == JOptionPane.OK_OPTION;
      if (replaces) {
        WholeFile.write(file, content, true);
      }
      return replaces;
    }
  }

  /** Says what went wrong. */
  static void tell(Component over, String title, String text) {
    JOptionPane.showMessageDialog(over, words(over, text), title, JOptionPane.WARNING_MESSAGE);
  }

  /** Asks whether to leave; staying is what Enter and Escape do. */
  static boolean mayGo(Component over, String text, String title) {
    Object[] choices = {"Leave", "Stay"};
    return JOptionPane.showOptionDialog(
            over,
            words(over, text),
            title,
            JOptionPane.YES_NO_OPTION,
            JOptionPane.QUESTION_MESSAGE,
            null,
            choices,
            choices[1])
        == 0;
  }

  /** The text as it is, never as a page, wrapped to fit over a window; long ones scroll. */
  static JComponent words(Component over, String text) {
    Font font = UIManager.getFont("OptionPane.messageFont");
    JTextArea area = new JTextArea(text);
    area.setFont(font == null ? UIManager.getFont("Label.font") : font);
    area.setLineWrap(true);
    area.setWrapStyleWord(true);
    area.setEditable(false);
    area.setFocusable(false);
    area.setOpaque(false);
    area.setBorder(BorderFactory.createEmptyBorder());
    area.setForeground(UIManager.getColor("OptionPane.messageForeground"));
    area.getAccessibleContext().setAccessibleName(text);
    FontMetrics metrics = area.getFontMetrics(area.getFont());
    int m = metrics.charWidth('m');
    int width =
        Math.max(SHORTEST_LINE * m, Math.min(LONGEST_LINE * m, over.getWidth() - BESIDE_TEXT * m));
    area.setSize(width, Short.MAX_VALUE);
    int height = area.getPreferredSize().height;
    int most = Math.max(5 * metrics.getHeight(), over.getHeight() / 2);
    if (height <= most) {
      area.setPreferredSize(new Dimension(width, height));
      return area;
    }
    JScrollPane scroll = new JScrollPane(area);
    scroll.setPreferredSize(new Dimension(width, most));
    return scroll;
  }
}
