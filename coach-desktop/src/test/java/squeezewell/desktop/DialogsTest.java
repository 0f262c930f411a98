package squeezewell.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

class DialogsTest {
  private static final String FAULT =
      "/home/person/practice/sessions/2026/03/2026-03-01_090000.jsonl: line 3: not JSON at column"
          + " 3; allowed: one JSON value, at most 100 levels deep";

  @Test
  void aMessageIsNoWiderThanTheWindowItLiesOver() {
    for (double scale : new double[] {1, 2}) {
      new Look(Palette.lightTheme(), scale).install();
      JPanel phone = new JPanel();
      phone.setSize(412, 892);
      Dimension size = Dialogs.words(phone, FAULT).getPreferredSize();
      // Beside the text stand a picture and the edges.
      assertThat(size.width).isLessThan(412 - 60);
      assertThat(size.height).as("several lines").isGreaterThan((int) (40 * scale));
    }
  }

  @Test
  void textThatLooksLikeAPageIsShownAsItIs() {
    JPanel phone = new JPanel();
    phone.setSize(412, 892);
    JComponent words = Dialogs.words(phone, "<html><b>Title</b>");
    assertThat(words).isInstanceOf(JTextArea.class);
    assertThat(((JTextArea) words).getText()).isEqualTo("<html><b>Title</b>");
  }

  @Test
  void aVeryLongMessageScrolls() {
    JPanel phone = new JPanel();
    phone.setSize(412, 892);
    JComponent words = Dialogs.words(phone, FAULT.repeat(40));
    assertThat(words).isInstanceOf(JScrollPane.class);
    assertThat(words.getPreferredSize().height).isLessThanOrEqualTo(446);
  }
}
