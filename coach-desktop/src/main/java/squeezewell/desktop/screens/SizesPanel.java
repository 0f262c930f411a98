package squeezewell.desktop.screens;

import javax.swing.JPanel;
import javax.swing.JTextField;
import squeezewell.desktop.parts.Kit;
import squeezewell.kit.Advice;
import squeezewell.kit.KitLibrary;

/** Which size of airway, mask and suction, and how to measure. */
final class SizesPanel {
  private static final String FIRST_LENGTH = "88";

  private SizesPanel() {}

  static JPanel build(Kit kit, KitLibrary library) {
    JPanel column = kit.column();
    JTextField measured = new JTextField(FIRST_LENGTH);
    column.add(EquipmentParts.labelled(kit, "Length measured for an OPA, in mm", 'L', measured));
    JPanel answer = EquipmentParts.answerCard(kit);
    column.add(answer);
    Runnable show =
        () ->
            EquipmentParts.show(kit, answer, EquipmentView.oralAirway(library, measured.getText()));
    EquipmentParts.onChange(measured, show);
    show.run();
    for (String topic : EquipmentView.topics(library)) {
      column.add(kit.gap(14));
      column.add(kit.subheading(topic));
      column.add(kit.gap(6));
      JPanel card = kit.card();
      boolean first = true;
      for (Advice advice : library.sizes()) {
        if (advice.topic().equals(topic)) {
          if (!first) {
            card.add(kit.gap(12));
          }
          add(kit, card, advice);
          first = false;
        }
      }
      column.add(card);
    }
    return column;
  }

  private static void add(Kit kit, JPanel card, Advice advice) {
    card.add(kit.label(advice.name(), kit.look().bold(14), kit.look().palette().text()));
    card.add(kit.gap(2));
    card.add(
        kit.text(
            advice.words(), kit.look().font(14), kit.look().palette().text(), kit.cardTextWidth()));
    card.add(kit.gap(2));
    card.add(EquipmentParts.source(kit, advice.source().line()));
  }
}
