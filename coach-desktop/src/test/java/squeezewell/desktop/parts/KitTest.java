package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.awt.event.ActionEvent;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.event.KeyEvent;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollBar;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.plaf.basic.BasicHTML;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

class KitTest {
  @Test
  void aChoiceThatLooksLikeHtmlIsShownAsItIsAndFetchesNothing() {
    String hostile = "<html><b>Title</b><img src=\"file:picture.png\">";
    JComboBox<String> box = Kit.choices();
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
      Kit kit = new Kit(new Look(Palette.lightTheme(), scale));
      JComboBox<String> box = kit.wrappingChoices(Kit.CONTENT_WIDTH);
      box.addItem("Short");
      box.addItem(
          "Ventilation of adults and children in our service, the third revision of it, "
              .repeat(2));
      box.setSelectedIndex(0);
      assertThat(box.getPreferredSize().height).isEqualTo(kit.look().px(48));
      box.setSelectedIndex(1);
      assertThat(box.getPreferredSize().height).isGreaterThan(kit.look().px(60));
      assertThat(box.getPreferredSize().width).isEqualTo(kit.look().px(Kit.CONTENT_WIDTH));
    }
  }

  @Test
  void homeAndEndLeadToTheEndsOfAPage() throws Exception {
    Kit kit = new Kit(new Look(Palette.lightTheme(), 1));
    SwingUtilities.invokeAndWait(
        () -> {
          JPanel column = kit.column();
          column.add(kit.gap(2_000));
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
    Kit kit = new Kit(new Look(Palette.lightTheme(), 1));
    JPanel column = kit.column();
    column.add(kit.gap(5_000));
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
    Kit kit = new Kit(new Look(Palette.lightTheme(), 1));
    JPanel column = kit.column();
    column.add(kit.gap(3_000));
    JTextField field = kit.wide(new JTextField("6"));
    column.add(field);
    column.add(kit.gap(3_000));
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

  private static void layOut(Container part) {
    part.doLayout();
    for (Component child : part.getComponents()) {
      if (child instanceof Container inner) {
        layOut(inner);
      }
    }
  }
}
