package squeezewell.desktop.screens;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import javax.swing.BorderFactory;
import javax.swing.JCheckBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.KeyStroke;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Kit;
import squeezewell.station.file.Station;

/** What is read and laid out before the exercise begins. */
final class StationPreparation {
  private StationPreparation() {}

  /** What lies ready, to be ticked; the ticks are for the eye only, and kept for another screen. */
  static JComponent of(Kit kit, Station station, Ticks ticks) {
    Look look = kit.look();
    JPanel column = kit.column();
    column.setOpaque(true);
    column.setBackground(look.palette().ground());
    int width = look.px(Kit.CONTENT_WIDTH - Kit.SCROLL_BAR - 4);
    column.add(kit.text(station.setting(), look.font(14), look.palette().text(), width));
    column.add(kit.gap(4));
    column.add(
        kit.text(
            "Patient: " + station.patient() + ".", look.font(14), look.palette().text(), width));
    column.add(kit.gap(8));
    column.add(kit.subheading("The kit"));
    for (String item : station.kit()) {
      JCheckBox box = new JCheckBox(item, ticks.has(item));
      box.addActionListener(e -> ticks.set(item, box.isSelected()));
      box.putClientProperty("html.disable", true);
      box.setOpaque(false);
      box.setFont(look.font(14));
      Dimension size = new Dimension(width, look.px(48));
      box.setPreferredSize(size);
      box.setMinimumSize(size);
      box.setMaximumSize(size);
      box.setAlignmentX(JComponent.LEFT_ALIGNMENT);
      // The space bar squeezes; Enter ticks.
      box.registerKeyboardAction(
          e -> box.doClick(0),
          KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, 0),
          JComponent.WHEN_FOCUSED);
      column.add(kit.comesIntoView(box));
    }
    JScrollPane scroll = new JScrollPane(column);
    scroll.setBorder(BorderFactory.createEmptyBorder());
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    scroll.getVerticalScrollBar().setUnitIncrement(look.px(32));
    scroll.getViewport().setBackground(look.palette().ground());
    return scroll;
  }
}
