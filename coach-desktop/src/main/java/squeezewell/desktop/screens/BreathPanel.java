package squeezewell.desktop.screens;

import java.util.List;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.equipment.ChildWeight;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.Sex;
import squeezewell.equipment.VolumeRule;
import squeezewell.protocol.AgeUnit;

/** How large a breath should be. */
final class BreathPanel {
  private final Widgets kit;
  private final EquipmentLibrary library;
  private final JComboBox<BreathView.By> ways = Widgets.choices(BreathView.By.values());
  private final JTextField height = new JTextField(BreathView.HEIGHT);
  private final JComboBox<Sex> sexes = Widgets.choices(Sex.values());
  private final JTextField age = new JTextField(BreathView.AGE);
  private final JComboBox<Unit> ageUnits =
      Widgets.choices(new Unit(AgeUnit.YEARS), new Unit(AgeUnit.MONTHS));
  private final JComboBox<ChildWeight> childWeights = Widgets.choices(ChildWeight.values());
  private final JTextField kilograms = new JTextField(BreathView.KILOGRAMS);
  private final JComboBox<VolumeRule> rules = Widgets.choices();
  private final JTextField bag = new JTextField();
  private final Column answer;
  private boolean filling;

  private record Unit(AgeUnit unit) {
    @Override
    public String toString() {
      return unit.id();
    }
  }

  private BreathPanel(Widgets kit, EquipmentLibrary library) {
    this.kit = kit;
    this.library = library;
    this.answer = EquipmentParts.answerCard(kit);
  }

  static Column build(Widgets kit, EquipmentLibrary library) {
    return new BreathPanel(kit, library).build();
  }

  private Column build() {
    Column column = kit.column();
    column.put(EquipmentParts.labelled(kit, "Whose breath", 'W', ways));
    Column byHeight = kit.column();
    byHeight.put(EquipmentParts.labelled(kit, "Height, in cm", 'H', height));
    byHeight.put(EquipmentParts.labelled(kit, "Sex", 'X', sexes));
    Column byAge = kit.column();
    byAge.put(EquipmentParts.withUnit(kit, "Age", 'A', age, ageUnits));
    byAge.put(EquipmentParts.labelled(kit, "Rule for the weight", 'F', childWeights));
    Column byWeight = kit.column();
    byWeight.put(EquipmentParts.labelled(kit, "Weight, in kg", 'T', kilograms));
    column.put(byHeight);
    column.put(byAge);
    column.put(byWeight);
    column.put(EquipmentParts.labelled(kit, "Size for each kilogram", 'Z', rules));
    column.put(EquipmentParts.labelled(kit, "Size of the bag in mL, if you like", 'M', bag), 4);
    column.put(answer);
    Runnable choose =
        () -> {
          byHeight.setVisible(way() == BreathView.By.HEIGHT);
          byAge.setVisible(way() == BreathView.By.AGE);
          byWeight.setVisible(way() == BreathView.By.WEIGHT);
          fillRules();
          show();
        };
    for (JTextField field : List.of(height, age, kilograms, bag)) {
      Widgets.onTyped(field, this::show);
    }
    for (JComboBox<?> each : List.of(sexes, ageUnits, childWeights, rules)) {
      each.addActionListener(e -> show());
    }
    ways.addActionListener(e -> choose.run());
    choose.run();
    return column;
  }

  private BreathView.By way() {
    return chosen(ways);
  }

  private void fillRules() {
    filling = true;
    rules.removeAllItems();
    BreathView.rules(library, way()).forEach(rules::addItem);
    filling = false;
  }

  private void show() {
    if (filling) {
      return;
    }
    BreathView view =
        new BreathView(
            way(),
            height.getText(),
            chosen(sexes),
            age.getText(),
            chosen(ageUnits).unit(),
            chosen(childWeights),
            kilograms.getText(),
            chosen(rules),
            bag.getText());
    EquipmentParts.show(kit, answer, view.answer());
  }

  private static <T> T chosen(JComboBox<T> box) {
    return box.getItemAt(box.getSelectedIndex());
  }
}
