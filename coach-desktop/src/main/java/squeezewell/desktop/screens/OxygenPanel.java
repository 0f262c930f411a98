package squeezewell.desktop.screens;

import java.util.List;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.PressureUnit;

/** How long a cylinder lasts. */
final class OxygenPanel {
  private final Widgets kit;
  private final EquipmentLibrary library;
  private final JComboBox<OxygenView.Size> sizes = Widgets.choices();
  private final JTextField water = new JTextField(OxygenView.WATER_LITRES);
  private final JTextField gauge = new JTextField(OxygenView.GAUGE);
  private final JComboBox<PressureUnit> gaugeUnits = Widgets.choices(PressureUnit.values());
  private final JTextField flow;
  private final JTextField reserve;
  private final JComboBox<PressureUnit> reserveUnits = Widgets.choices(PressureUnit.values());
  private final Column answer;

  private OxygenPanel(Widgets kit, EquipmentLibrary library) {
    this.kit = kit;
    this.library = library;
    this.flow = new JTextField(OxygenView.usualFlow(library));
    this.reserve = new JTextField(OxygenView.usualReserve(library));
    this.answer = EquipmentParts.answerCard(kit);
  }

  static Column build(Widgets kit, EquipmentLibrary library) {
    return new OxygenPanel(kit, library).build();
  }

  private Column build() {
    List<OxygenView.Size> choices = OxygenView.choices(library);
    choices.forEach(sizes::addItem);
    sizes.setSelectedItem(OxygenView.first(choices));
    Column column = kit.column();
    column.put(EquipmentParts.labelled(kit, "Cylinder", 'Y', sizes));
    Column volume = EquipmentParts.labelled(kit, "Water volume, in litres", 'W', water);
    column.put(volume);
    column.put(EquipmentParts.withUnit(kit, "Gauge pressure", 'G', gauge, gaugeUnits));
    column.put(EquipmentParts.labelled(kit, "Flow, in L/min", 'F', flow));
    column.put(EquipmentParts.withUnit(kit, "Reserve kept back", 'K', reserve, reserveUnits), 4);
    column.put(answer);
    for (JTextField field : List.of(water, gauge, flow, reserve)) {
      Widgets.onTyped(field, this::show);
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

  private OxygenView.Size size() {
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
}
