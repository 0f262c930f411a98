package squeezewell.desktop.screens;

import java.awt.Point;
import java.util.EnumMap;
import java.util.Map;
import javax.swing.Box;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JToggleButton;
import javax.swing.SwingUtilities;
import squeezewell.desktop.parts.ChoiceButton;
import squeezewell.desktop.parts.Kit;
import squeezewell.kit.KitLibrary;

/** The kit: what to have ready, how long the oxygen lasts, how large a breath is, which sizes. */
public final class EquipmentScreen {
  private static final int GAP = 8;

  private final Kit kit;
  private final Map<EquipmentView.Part, JPanel> panels = new EnumMap<>(EquipmentView.Part.class);

  private EquipmentScreen(Kit kit) {
    this.kit = kit;
  }

  /**
   * Builds the screen. Ticks and figures are forgotten when it is left.
   *
   * @param library what the program knows about kit
   */
  public static JScrollPane build(Kit kit, Navigator navigator, KitLibrary library) {
    return new EquipmentScreen(kit).build(navigator, library);
  }

  private JScrollPane build(Navigator navigator, KitLibrary library) {
    panels.put(EquipmentView.Part.CHECK_LIST, CheckListPanel.build(kit, library));
    panels.put(EquipmentView.Part.OXYGEN, OxygenPanel.build(kit, library));
    panels.put(EquipmentView.Part.BREATH, BreathPanel.build(kit, library));
    panels.put(EquipmentView.Part.SIZES, SizesPanel.build(kit, library));
    JPanel column = kit.column();
    JButton back = kit.button("Back", 110, e -> navigator.toSetup());
    back.setMnemonic('B');
    column.add(back);
    column.add(kit.gap(12));
    column.add(kit.heading("Kit"));
    column.add(kit.gap(10));
    JPanel choice = kit.row();
    column.add(choice);
    column.add(kit.gap(14));
    panels.values().forEach(column::add);
    column.add(kit.gap(8));
    column.add(
        kit.note(
            "Values marked “from memory” could not be confirmed. Those marked “our own choice”"
                + " stand in no guideline. "
                + Phrases.CAUTION
                + " Not a medical device."));
    JScrollPane page = kit.page(column);
    JToggleButton first = addChoices(choice, page);
    show(EquipmentView.Part.CHECK_LIST, page);
    page.addAncestorListener(Focus.on(first, page));
    return page;
  }

  private JToggleButton addChoices(JPanel row, JScrollPane page) {
    ButtonGroup group = new ButtonGroup();
    EquipmentView.Part[] parts = EquipmentView.Part.values();
    int width = (Kit.CONTENT_WIDTH - GAP * (parts.length - 1)) / parts.length;
    JToggleButton first = null;
    for (EquipmentView.Part part : parts) {
      ChoiceButton button = new ChoiceButton(kit.look(), part.label(), first == null, width);
      button.setMnemonic(part.mnemonic());
      button.addActionListener(e -> show(part, page));
      kit.comesIntoView(button);
      group.add(button);
      if (first == null) {
        first = button;
      } else {
        row.add(Box.createHorizontalStrut(kit.look().px(GAP)));
      }
      row.add(button);
    }
    row.setMaximumSize(row.getPreferredSize());
    return first;
  }

  private void show(EquipmentView.Part part, JScrollPane page) {
    panels.forEach((each, panel) -> panel.setVisible(each == part));
    SwingUtilities.invokeLater(() -> page.getViewport().setViewPosition(new Point(0, 0)));
  }
}
