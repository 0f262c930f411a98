package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.plaf.basic.BasicHTML;
import org.junit.jupiter.api.Test;

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
}
