package squeezewell.desktop.screens;

import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JCheckBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import squeezewell.desktop.parts.Kit;
import squeezewell.kit.CheckItem;
import squeezewell.kit.KitLibrary;

/** What to have ready, to tick off. */
final class CheckListPanel {
  private CheckListPanel() {}

  static JPanel build(Kit kit, KitLibrary library) {
    JPanel column = kit.column();
    List<JCheckBox> boxes = new ArrayList<>();
    JLabel ready = kit.label("", kit.look().bold(17), kit.look().palette().tide());
    column.add(ready);
    String group = "";
    JPanel card = null;
    for (CheckItem item : library.checkList()) {
      if (card == null || !item.group().equals(group)) {
        group = item.group();
        column.add(kit.gap(12));
        column.add(kit.subheading(group));
        column.add(kit.gap(6));
        card = kit.card();
        column.add(card);
      } else {
        card.add(kit.gap(10));
      }
      JCheckBox box = box(kit, item);
      box.addActionListener(e -> count(boxes, ready));
      boxes.add(box);
      card.add(box);
      card.add(
          kit.text(
              item.why(), kit.look().font(14), kit.look().palette().text(), kit.cardTextWidth()));
      card.add(kit.gap(4));
      card.add(EquipmentParts.source(kit, item.source().line()));
    }
    count(boxes, ready);
    return column;
  }

  private static JCheckBox box(Kit kit, CheckItem item) {
    JCheckBox box = new JCheckBox(item.item());
    box.putClientProperty("html.disable", true);
    box.setOpaque(false);
    box.setFont(kit.look().bold(14));
    box.getAccessibleContext().setAccessibleDescription(item.why());
    Dimension size = new Dimension(kit.cardTextWidth(), kit.look().px(48));
    box.setPreferredSize(size);
    box.setMinimumSize(size);
    box.setMaximumSize(size);
    box.setAlignmentX(JCheckBox.LEFT_ALIGNMENT);
    return kit.comesIntoView(box);
  }

  private static void count(List<JCheckBox> boxes, JLabel ready) {
    int ticked = (int) boxes.stream().filter(JCheckBox::isSelected).count();
    ready.setText(EquipmentView.ready(ticked, boxes.size()));
  }
}
