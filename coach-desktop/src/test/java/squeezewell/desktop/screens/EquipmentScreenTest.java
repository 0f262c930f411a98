package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.swing.AbstractButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Widgets;
import squeezewell.equipment.CheckItem;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.EquipmentReader;

class EquipmentScreenTest {
  private static final EquipmentLibrary KIT = EquipmentReader.builtIn();

  private static JScrollPane screen(double scale) {
    Look look = new Look(Palette.lightTheme(), scale);
    look.install();
    Navigator nowhere =
        (Navigator)
            Proxy.newProxyInstance(
                Navigator.class.getClassLoader(),
                new Class<?>[] {Navigator.class},
                (proxy, method, words) -> {
                  throw new AssertionError(method.getName());
                });
    return EquipmentScreen.build(new Widgets(look), nowhere, KIT);
  }

  private static <T extends Component> List<T> all(Container in, Class<T> type, boolean hidden) {
    List<T> found = new ArrayList<>();
    for (Component each : in.getComponents()) {
      if (!each.isVisible() && !hidden) {
        continue;
      }
      if (type.isInstance(each)) {
        found.add(type.cast(each));
      }
      if (each instanceof Container inner && !(each instanceof JComboBox)) {
        found.addAll(all(inner, type, hidden));
      }
    }
    return found;
  }

  private static JToggleButton part(JScrollPane screen, String name) {
    return all(screen, JToggleButton.class, true).stream()
        .filter(b -> b.getText().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static String words(JScrollPane screen) {
    StringBuilder words = new StringBuilder();
    all(screen, JTextArea.class, false).forEach(t -> words.append(t.getText()).append('\n'));
    all(screen, JLabel.class, false).forEach(t -> words.append(t.getText()).append('\n'));
    return words.toString();
  }

  @Test
  void thingsAreTickedAndStayTickedWhileTheScreenIsOpen() {
    JScrollPane screen = screen(1);
    List<JCheckBox> boxes = all(screen, JCheckBox.class, false);
    assertThat(boxes)
        .extracting(AbstractButton::getText)
        .containsExactlyElementsOf(KIT.checkList().stream().map(CheckItem::item).toList());
    assertThat(words(screen)).contains("0 of 13 ready");
    boxes.get(3).doClick();
    part(screen, "Oxygen").doClick();
    assertThat(words(screen)).doesNotContain("ready").contains("minutes at 15 L/min");
    part(screen, "Check list").doClick();
    assertThat(words(screen)).contains("1 of 13 ready");
    boxes.forEach(b -> b.setSelected(false));
    boxes.forEach(AbstractButton::doClick);
    assertThat(words(screen)).contains("All 13 ready");
    assertThat(all(screen(1), JCheckBox.class, false)).noneMatch(AbstractButton::isSelected);
  }

  @Test
  void theAnswerFollowsEachKey() {
    JScrollPane screen = screen(1);
    part(screen, "Oxygen").doClick();
    JTextField gauge = all(screen, JTextField.class, false).get(0);
    gauge.setText("1200");
    // By hand: (1200 - 200) x 0.28 / 15 = 18.67.
    assertThat(words(screen)).contains("18 minutes at 15 L/min");
    gauge.setText("12oo");
    assertThat(words(screen)).contains("Gauge pressure is 12oo; allowed: a number from 0 to 7251");
    part(screen, "Sizes").doClick();
    all(screen, JTextField.class, false).get(0).setText("85");
    assertThat(words(screen)).contains("Size 8 cm (80 mm) or 9 cm (90 mm)");
  }

  @Test
  void onlyTheFieldsThatMatterAreShown() {
    JScrollPane screen = screen(1);
    part(screen, "Breath").doClick();
    JComboBox<?> way = all(screen, JComboBox.class, false).get(0);
    assertThat(words(screen)).contains("Height, in cm").doesNotContain("Weight, in kg");
    way.setSelectedIndex(1);
    assertThat(words(screen)).contains("Age").doesNotContain("Height, in cm");
    // 6 years, 25 kg, 6 to 8 mL/kg.
    assertThat(words(screen)).contains("150 to 200 mL a breath");
    way.setSelectedIndex(2);
    assertThat(words(screen)).contains("Weight, in kg").doesNotContain("Age");
    part(screen, "Oxygen").doClick();
    assertThat(words(screen)).doesNotContain("Water volume, in litres");
    JComboBox<?> size = all(screen, JComboBox.class, false).get(0);
    size.setSelectedIndex(size.getItemCount() - 1);
    assertThat(words(screen)).contains("Water volume, in litres");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 1.5, 2})
  void everythingHasANameAndRoomForItsWords(double scale) {
    JScrollPane screen = screen(scale);
    Look look = new Look(Palette.lightTheme(), scale);
    for (JToggleButton each : all(screen, JToggleButton.class, true)) {
      Dimension needed = each.getUI().getPreferredSize(each);
      assertThat(needed.width).as(each.getText()).isLessThanOrEqualTo(each.getMaximumSize().width);
      assertThat(each.getMaximumSize().height).isGreaterThanOrEqualTo(look.px(48));
    }
    Set<Component> labelled = new HashSet<>();
    all(screen, JLabel.class, true).forEach(l -> labelled.add(l.getLabelFor()));
    List<Component> controls = new ArrayList<>(all(screen, JTextField.class, true));
    controls.addAll(all(screen, JComboBox.class, true));
    assertThat(controls)
        .hasSizeGreaterThan(12)
        .allSatisfy(
            c ->
                assertThat(
                        labelled.contains(c)
                            || c.getAccessibleContext().getAccessibleName() != null)
                    .as("%s", c)
                    .isTrue());
  }

  @Test
  void theKeyboardReachesTheAnswerAndAScreenReaderReadsIt() {
    JScrollPane screen = screen(1);
    for (String part : List.of("Oxygen", "Breath", "Sizes")) {
      part(screen, part).doClick();
      List<JPanel> answers =
          all(screen, JPanel.class, false).stream()
              .filter(p -> "Answer".equals(p.getAccessibleContext().getAccessibleName()))
              .toList();
      assertThat(answers).as(part).hasSize(1);
      assertThat(answers.get(0).getAccessibleContext().getAccessibleDescription())
          .containsAnyOf("minutes at", "mL a breath", "Size 9 cm");
      assertThat(answers.get(0).getFocusListeners()).hasSizeGreaterThanOrEqualTo(2);
    }
  }

  @Test
  void everyTopicOfTheSizesIsShownWithItsSources() {
    JScrollPane screen = screen(1);
    part(screen, "Sizes").doClick();
    assertThat(EquipmentView.topics(KIT))
        .containsExactly("Oral airway (OPA)", "Nasal airway (NPA)", "Mask", "Suction");
    String words = words(screen);
    EquipmentView.topics(KIT).forEach(t -> assertThat(words).contains(t));
    KIT.sizes().forEach(a -> assertThat(words).contains(a.words()).contains(a.source().line()));
    assertThat(words).contains("from memory").contains("Not a medical device");
  }
}
