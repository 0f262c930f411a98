package squeezewell.desktop.screens;

import java.awt.Point;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import squeezewell.desktop.parts.ChoiceButton;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.equipment.EquipmentLibrary;

/** The kit: what to have ready, how long the oxygen lasts, how large a breath is, which sizes. */
public final class EquipmentScreen {
  private static final int GAP = 8;

  private final Widgets kit;
  private final Map<EquipmentView.Part, JPanel> panels = new EnumMap<>(EquipmentView.Part.class);

  private JScrollPane page;

  private EquipmentScreen(Widgets kit) {
    this.kit = kit;
  }

  /**
   * Builds the screen. Ticks and figures are forgotten when it is left.
   *
   * @param library what the program knows about kit
   */
  public static JScrollPane build(Widgets kit, Navigator navigator, EquipmentLibrary library) {
    return new EquipmentScreen(kit).build(navigator, library);
  }

  private JScrollPane build(Navigator navigator, EquipmentLibrary library) {
    panels.put(EquipmentView.Part.CHECK_LIST, CheckListPanel.build(kit, library));
    panels.put(EquipmentView.Part.OXYGEN, OxygenPanel.build(kit, library));
    panels.put(EquipmentView.Part.BREATH, BreathPanel.build(kit, library));
    panels.put(EquipmentView.Part.SIZES, SizesPanel.build(kit, library));
    Column column = kit.column();
    column.put(kit.back(navigator::toSetup), 12).heading("Kit", 10);
    List<ChoiceButton> choices =
        Arrays.stream(EquipmentView.Part.values()).map(this::choice).toList();
    column.put(kit.oneOf(GAP, choices), 14);
    panels.values().forEach(column::add);
    column
        .gap(8)
        .note(
            "Values marked “from memory” could not be confirmed. Those marked “our own choice”"
                + " stand in no guideline. "
                + Phrases.CAUTION
                + " Not a medical device.");
    page = kit.page(column, choices.get(0));
    show(EquipmentView.Part.CHECK_LIST);
    return page;
  }

  private ChoiceButton choice(EquipmentView.Part part) {
    int parts = EquipmentView.Part.values().length;
    int width = (Widgets.CONTENT_WIDTH - GAP * (parts - 1)) / parts;
    boolean first = part == EquipmentView.Part.CHECK_LIST;
    ChoiceButton button = new ChoiceButton(kit.look(), part.label(), first, width);
    button.setMnemonic(part.mnemonic());
    button.addActionListener(e -> show(part));
    return button;
  }

  private void show(EquipmentView.Part part) {
    panels.forEach((each, panel) -> panel.setVisible(each == part));
    SwingUtilities.invokeLater(() -> page.getViewport().setViewPosition(new Point(0, 0)));
  }
}
