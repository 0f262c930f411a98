package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.event.ActionEvent;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.event.KeyEvent;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollBar;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.plaf.basic.BasicHTML;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

class WidgetsTest {
  @Test
  void aChoiceThatLooksLikeHtmlIsShownAsItIsAndFetchesNothing() {
    String hostile = "<html><b>Title</b><img src=\"file:picture.png\">";
    JComboBox<String> box = Widgets.choices();
    box.addItem(hostile);
    for (int index : new int[] {-1, 0}) {
      Component cell =
          box.getRenderer()
              .getListCellRendererComponent(new JList<>(), hostile, index, false, false);
      assertThat(cell).isInstanceOf(JLabel.class);
      assertThat(((JLabel) cell).getText()).isEqualTo(hostile);
      assertThat(((JLabel) cell).getClientProperty(BasicHTML.propertyKey))
          .as("what Swing would draw as a page")
          .isNull();
    }
  }

  @Test
  void aLongChoiceWrapsAndTheBoxGrowsWithIt() {
    for (double scale : new double[] {1, 2}) {
      Widgets kit = new Widgets(new Look(Palette.lightTheme(), scale));
      JComboBox<String> box = kit.wrappingChoices(Widgets.CONTENT_WIDTH);
      box.addItem("Short");
      box.addItem(
          "Ventilation of adults and children in our service, the third revision of it, "
              .repeat(2));
      box.setSelectedIndex(0);
      assertThat(box.getPreferredSize().height).isEqualTo(kit.look().px(48));
      box.setSelectedIndex(1);
      assertThat(box.getPreferredSize().height).isGreaterThan(kit.look().px(60));
      assertThat(box.getPreferredSize().width).isEqualTo(kit.look().px(Widgets.CONTENT_WIDTH));
    }
  }

  @Test
  void homeAndEndLeadToTheEndsOfAPage() throws Exception {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 1));
    SwingUtilities.invokeAndWait(
        () -> {
          Column column = kit.column();
          column.gap(2_000);
          JScrollPane page = kit.page(column);
          page.setSize(412, 892);
          page.doLayout();
          page.getViewport().doLayout();
          press(page, KeyEvent.VK_END);
          JScrollBar bar = page.getVerticalScrollBar();
          assertThat(bar.getValue()).isPositive().isEqualTo(bar.getMaximum() - bar.getHeight());
          press(page, KeyEvent.VK_HOME);
          assertThat(bar.getValue()).isZero();
        });
  }

  private static void press(JScrollPane page, int key) {
    Object name =
        page.getInputMap(JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT)
            .get(KeyStroke.getKeyStroke(key, 0));
    page.getActionMap().get(name).actionPerformed(new ActionEvent(page, 0, ""));
  }

  @Test
  void aNewTextDoesNotScrollThePageToItself() throws Exception {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 1));
    Column column = kit.column();
    column.gap(5_000);
    JScrollPane page = kit.page(column);
    page.setSize(412, 892);
    SwingUtilities.invokeAndWait(
        () -> {
          column.add(kit.text("A long way down.", kit.look().font(13), Color.BLACK, 200));
          layOut(page);
        });
    SwingUtilities.invokeAndWait(() -> {});
    assertThat(page.getViewport().getViewPosition().y).isZero();
  }

  @Test
  void aTextFieldThatTheKeyboardReachesComesIntoView() throws Exception {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 1));
    Column column = kit.column();
    column.gap(3_000);
    JTextField field = kit.wide(new JTextField("6"));
    column.add(field);
    column.gap(3_000);
    JScrollPane page = kit.page(column);
    page.setSize(412, 892);
    layOut(page);
    SwingUtilities.invokeAndWait(
        () -> {
          FocusEvent gained =
              new FocusEvent(
                  field, FocusEvent.FOCUS_GAINED, false, null, FocusEvent.Cause.TRAVERSAL_FORWARD);
          for (FocusListener listener : field.getFocusListeners()) {
            listener.focusGained(gained);
          }
        });
    int top = page.getViewport().getViewPosition().y;
    assertThat(top).isBetween(3_000 + 48 + 44 - 892, 3_020);
  }

  /**
   * By hand, at twice the usual size: 744 pixels of content need 824 with a margin of 40 at each
   * side; in 412 there are 332.
   */
  @Test
  void inANarrowWindowTextAndControlsFitAndWhatStoodBesideStandsBelow() throws Exception {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 2));
    SwingUtilities.invokeAndWait(
        () -> {
          JTextArea note = kit.note("The rhythm was held for the whole of the time. ".repeat(4));
          JTextArea inner = kit.text("word ".repeat(40), note.getFont(), Color.BLACK, 688);
          Column card = kit.card();
          card.add(inner);
          card.gap(4);
          JButton left = kit.button("Pictures", '\0', 181, () -> {});
          JButton right = kit.button("Replay", '\0', 181, () -> {});
          JPanel row = kit.row();
          row.add(left);
          row.add(right);
          JPanel picture = kit.column();
          picture.setPreferredSize(new Dimension(744, 100));
          Column column = kit.column();
          for (JComponent part : new JComponent[] {note, card, row, picture}) {
            column.add(part);
          }
          JScrollPane page = kit.page(column);
          int wideHeight = note.getPreferredSize().height;
          for (int width : new int[] {824, 412, 824}) {
            page.setSize(width, 892);
            layOut(page);
            boolean narrow = width == 412;
            assertThat(note.getWidth()).isEqualTo(narrow ? 332 : 744);
            // A card has 28 pixels around what is on it.
            assertThat(inner.getWidth()).isEqualTo(narrow ? 332 - 56 : 688);
            assertThat(right.getX()).isEqualTo(narrow ? 0 : 362);
            assertThat(right.getY()).isEqualTo(narrow ? 104 + 16 : 0);
            assertThat(left.getWidth()).isEqualTo(narrow ? 332 : 362);
            assertThat(picture.getPreferredSize().width).isEqualTo(744);
            if (narrow) {
              assertThat(note.getHeight()).isGreaterThanOrEqualTo(2 * wideHeight);
              assertThat(card.getWidth()).isEqualTo(332);
            } else {
              assertThat(note.getHeight()).isEqualTo(wideHeight);
            }
          }
        });
  }

  /**
   * By hand, at twice the usual size: five buttons of 100 with 16 between them, three in a line of
   * 332, and lines of 104 with 16 between them.
   */
  @Test
  void aRowGoesOnInANewLineAndASizeGivenLaterIsKept() throws Exception {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 2));
    SwingUtilities.invokeAndWait(
        () -> {
          JPanel row = kit.row();
          JButton[] buttons = new JButton[5];
          for (int i = 0; i < buttons.length; i++) {
            buttons[i] = kit.button(Integer.toString(i), '\0', Widgets.CONTENT_WIDTH, () -> {});
            Widgets.fix(buttons[i], new Dimension(100, 104));
            row.add(buttons[i]);
          }
          row.setMaximumSize(row.getPreferredSize());
          Column column = kit.column();
          column.add(row);
          JScrollPane page = kit.page(column);
          for (int width : new int[] {824, 412, 824}) {
            page.setSize(width, 892);
            layOut(page);
            for (int i = 0; i < buttons.length; i++) {
              assertThat(buttons[i].getWidth()).isEqualTo(100);
              assertThat(buttons[i].getX()).isEqualTo(width == 412 ? i % 3 * 116 : i * 100);
              assertThat(buttons[i].getY()).isEqualTo(width == 412 ? i / 3 * 120 : 0);
            }
            assertThat(row.getHeight()).isEqualTo(width == 412 ? 224 : 104);
          }
        });
  }

  /** What the box does not show would be lost: it grows by the lines that it then needs. */
  @Test
  void inANarrowWindowAChoiceWrapsInItsNarrowerBox() throws Exception {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 2));
    SwingUtilities.invokeAndWait(
        () -> {
          JComboBox<String> box = kit.wrappingChoices(Widgets.CONTENT_WIDTH);
          box.addItem("An adult with a pulse who does not breathe");
          box.setSelectedIndex(0);
          Column column = kit.column();
          column.add(box);
          JScrollPane page = kit.page(column);
          page.setSize(824, 892);
          layOut(page);
          int wideHeight = box.getHeight();
          page.setSize(412, 892);
          layOut(page);
          assertThat(box.getWidth()).isEqualTo(332);
          assertThat(box.getHeight()).isGreaterThan(wideHeight);
        });
  }

  private static void layOut(Container part) {
    part.doLayout();
    for (Component child : part.getComponents()) {
      if (child instanceof Container inner) {
        layOut(inner);
      }
    }
  }
}
