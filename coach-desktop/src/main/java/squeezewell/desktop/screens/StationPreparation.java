package squeezewell.desktop.screens;

import java.awt.event.KeyEvent;
import javax.swing.JCheckBox;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.station.file.Station;

/** What is read and laid out before the exercise begins. */
final class StationPreparation {
  private StationPreparation() {}

  /** What lies ready, to be ticked; the ticks are for the eye only, and kept for another screen. */
  static JComponent of(Widgets kit, Station station, Ticks ticks) {
    Look look = kit.look();
    int width = Widgets.CONTENT_WIDTH - Widgets.SCROLL_BAR - 4;
    Column texts = kit.column(look.px(width)).plain(station.setting(), 14).gap(4);
    texts.plain("Patient: " + station.patient() + ".", 14).gap(8);
    Column column = kit.column().put(texts).bold("The kit", 15);
    column.setOpaque(true);
    column.setBackground(look.palette().ground());
    for (String item : station.kit()) {
      JCheckBox box = kit.tick(item, look.font(14), width);
      box.setSelected(ticks.has(item));
      box.addActionListener(e -> ticks.set(item, box.isSelected()));
      // The space bar squeezes; Enter ticks.
      box.registerKeyboardAction(
          e -> box.doClick(0),
          KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, 0),
          JComponent.WHEN_FOCUSED);
      column.put(kit.comesIntoView(box));
    }
    return kit.scrolling(column);
  }
}
