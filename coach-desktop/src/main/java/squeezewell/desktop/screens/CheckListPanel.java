package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JCheckBox;
import javax.swing.JLabel;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.equipment.CheckItem;
import squeezewell.equipment.EquipmentLibrary;

/** What to have ready, to tick off. */
final class CheckListPanel {
  private CheckListPanel() {}

  static Column build(Widgets kit, EquipmentLibrary library) {
    Column column = kit.column();
    List<JCheckBox> boxes = new ArrayList<>();
    JLabel ready = kit.label("", kit.look().bold(17), kit.look().palette().tide());
    column.put(ready);
    String group = "";
    Column card = null;
    for (CheckItem item : library.checkList()) {
      if (card == null || !item.group().equals(group)) {
        group = item.group();
        column.gap(12).subheading(group, 6);
        card = kit.card();
        column.put(card);
      } else {
        card.gap(10);
      }
      JCheckBox box = box(kit, item);
      box.addActionListener(e -> count(boxes, ready));
      boxes.add(box);
      card.put(box).plain(item.why(), 14).gap(4).soft("Source: " + item.source().line(), 12);
    }
    count(boxes, ready);
    return column;
  }

  private static JCheckBox box(Widgets kit, CheckItem item) {
    JCheckBox box = kit.tick(item.item(), kit.look().bold(14), Widgets.CONTENT_WIDTH - 28);
    box.getAccessibleContext().setAccessibleDescription(item.why());
    return kit.comesIntoView(box);
  }

  private static void count(List<JCheckBox> boxes, JLabel ready) {
    int ticked = (int) boxes.stream().filter(JCheckBox::isSelected).count();
    ready.setText(EquipmentView.ready(ticked, boxes.size()));
  }
}
