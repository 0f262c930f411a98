package squeezewell.desktop.screens;

import java.util.List;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JTextField;
import squeezewell.desktop.parts.Kit;
import squeezewell.kit.ChildWeight;
import squeezewell.kit.KitLibrary;
import squeezewell.kit.Sex;
import squeezewell.kit.VolumeRule;
import squeezewell.protocol.AgeUnit;

/** How large a breath should be. */
final class BreathPanel {
  private final Kit kit;
  private final KitLibrary library;
  private final JComboBox<BreathView.By> ways = box(BreathView.By.values());
  private final JTextField height = new JTextField(BreathView.HEIGHT);
  private final JComboBox<Sex> sexes = box(Sex.values());
  private final JTextField age = new JTextField(BreathView.AGE);
  private final JComboBox<Unit> ageUnits = box(new Unit(AgeUnit.YEARS), new Unit(AgeUnit.MONTHS));
  private final JComboBox<ChildWeight> childWeights = box(ChildWeight.values());
  private final JTextField kilograms = new JTextField(BreathView.KILOGRAMS);
  private final JComboBox<VolumeRule> rules = Kit.choices();
  private final JTextField bag = new JTextField();
  private final JPanel answer;
  private boolean filling;

  private record Unit(AgeUnit unit) {
    @Override
    public String toString() {
      return unit.id();
    }
  }

  private BreathPanel(Kit kit, KitLibrary library) {
    this.kit = kit;
    this.library = library;
    this.answer = EquipmentParts.answerCard(kit);
  }

  static JPanel build(Kit kit, KitLibrary library) {
    return new BreathPanel(kit, library).build();
  }

  private JPanel build() {
    JPanel column = kit.column();
    column.add(EquipmentParts.labelled(kit, "Whose breath", 'W', ways));
    JPanel byHeight = kit.column();
    byHeight.add(EquipmentParts.labelled(kit, "Height, in cm", 'H', height));
    byHeight.add(EquipmentParts.labelled(kit, "Sex", 'X', sexes));
    JPanel byAge = kit.column();
    byAge.add(EquipmentParts.withUnit(kit, "Age", 'A', age, ageUnits));
    byAge.add(EquipmentParts.labelled(kit, "Rule for the weight", 'F', childWeights));
    JPanel byWeight = kit.column();
    byWeight.add(EquipmentParts.labelled(kit, "Weight, in kg", 'T', kilograms));
    column.add(byHeight);
    column.add(byAge);
    column.add(byWeight);
    column.add(EquipmentParts.labelled(kit, "Size for each kilogram", 'Z', rules));
    column.add(EquipmentParts.labelled(kit, "Size of the bag in mL, if you like", 'M', bag));
    column.add(kit.gap(4));
    column.add(answer);
    Runnable choose =
        () -> {
          byHeight.setVisible(way() == BreathView.By.HEIGHT);
          byAge.setVisible(way() == BreathView.By.AGE);
          byWeight.setVisible(way() == BreathView.By.WEIGHT);
          fillRules();
          show();
        };
    for (JTextField field : List.of(height, age, kilograms, bag)) {
      EquipmentParts.onChange(field, this::show);
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

  @SafeVarargs
  private static <T> JComboBox<T> box(T... items) {
    JComboBox<T> box = Kit.choices();
    for (T item : items) {
      box.addItem(item);
    }
    return box;
  }
}
