package squeezewell.desktop.screens;

import java.util.List;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JTextField;
import squeezewell.desktop.parts.Kit;
import squeezewell.kit.KitLibrary;
import squeezewell.kit.PressureUnit;

/** How long a cylinder lasts. */
final class OxygenPanel {
  private final Kit kit;
  private final KitLibrary library;
  private final JComboBox<OxygenView.Choice> sizes = Kit.choices();
  private final JTextField water = new JTextField(OxygenView.WATER_LITRES);
  private final JTextField gauge = new JTextField(OxygenView.GAUGE);
  private final JComboBox<PressureUnit> gaugeUnits = units();
  private final JTextField flow;
  private final JTextField reserve;
  private final JComboBox<PressureUnit> reserveUnits = units();
  private final JPanel answer;

  private OxygenPanel(Kit kit, KitLibrary library) {
    this.kit = kit;
    this.library = library;
    this.flow = new JTextField(OxygenView.usualFlow(library));
    this.reserve = new JTextField(OxygenView.usualReserve(library));
    this.answer = EquipmentParts.answerCard(kit);
  }

  static JPanel build(Kit kit, KitLibrary library) {
    return new OxygenPanel(kit, library).build();
  }

  private JPanel build() {
    List<OxygenView.Choice> choices = OxygenView.choices(library);
    choices.forEach(sizes::addItem);
    sizes.setSelectedItem(OxygenView.first(choices));
    JPanel column = kit.column();
    column.add(EquipmentParts.labelled(kit, "Cylinder", 'Y', sizes));
    JPanel volume = EquipmentParts.labelled(kit, "Water volume, in litres", 'W', water);
    column.add(volume);
    column.add(EquipmentParts.withUnit(kit, "Gauge pressure", 'G', gauge, gaugeUnits));
    column.add(EquipmentParts.labelled(kit, "Flow, in L/min", 'F', flow));
    column.add(EquipmentParts.withUnit(kit, "Reserve kept back", 'K', reserve, reserveUnits));
    column.add(kit.gap(4));
    column.add(answer);
    for (JTextField field : List.of(water, gauge, flow, reserve)) {
      EquipmentParts.onChange(field, this::show);
    }
    gaugeUnits.addActionListener(e -> show());
    reserveUnits.addActionListener(e -> show());
    sizes.addActionListener(
        e -> {
          volume.setVisible(size().needsWaterVolume());
          show();
        });
    volume.setVisible(size().needsWaterVolume());
    show();
    return column;
  }

  private OxygenView.Choice size() {
    return sizes.getItemAt(sizes.getSelectedIndex());
  }

  private void show() {
    OxygenView view =
        new OxygenView(
            size(),
            water.getText(),
            gauge.getText(),
            gaugeUnits.getItemAt(gaugeUnits.getSelectedIndex()),
            flow.getText(),
            reserve.getText(),
            reserveUnits.getItemAt(reserveUnits.getSelectedIndex()));
    EquipmentParts.show(kit, answer, view.answer(library));
  }

  private static JComboBox<PressureUnit> units() {
    JComboBox<PressureUnit> box = Kit.choices();
    for (PressureUnit unit : PressureUnit.values()) {
      box.addItem(unit);
    }
    return box;
  }
}
