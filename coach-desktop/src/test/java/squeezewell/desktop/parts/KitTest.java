package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JList;
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
}
