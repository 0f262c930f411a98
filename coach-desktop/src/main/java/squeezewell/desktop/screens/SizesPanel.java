package squeezewell.desktop.screens;

import javax.swing.JTextField;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.equipment.Advice;
import squeezewell.equipment.EquipmentLibrary;

/** Which size of airway, mask and suction, and how to measure. */
final class SizesPanel {
  private static final String FIRST_LENGTH = "88";

  private SizesPanel() {}

  static Column build(Widgets kit, EquipmentLibrary library) {
    Column column = kit.column();
    JTextField measured = new JTextField(FIRST_LENGTH);
    column.put(EquipmentParts.labelled(kit, "Length measured for an OPA, in mm", 'L', measured));
    Column answer = EquipmentParts.answerCard(kit);
    column.put(answer);
    Runnable show =
        () ->
            EquipmentParts.show(kit, answer, EquipmentView.oralAirway(library, measured.getText()));
    Widgets.onTyped(measured, show);
    show.run();
    for (String topic : EquipmentView.topics(library)) {
      column.gap(14).subheading(topic, 6);
      Column card = kit.card();
      for (Advice advice : library.sizes()) {
        if (advice.topic().equals(topic)) {
          if (card.getComponentCount() > 0) {
            card.gap(12);
          }
          add(kit, card, advice);
        }
      }
      column.put(card);
    }
    return column;
  }

  private static void add(Widgets kit, Column card, Advice advice) {
    card.put(kit.boldLabel(advice.name(), 14), 2);
    card.plain(advice.words(), 14).gap(2);
    card.soft("Source: " + advice.source().line(), 12);
  }
}
