package squeezewell.desktop.screens;

import java.awt.Color;
import java.awt.Component;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.border.Border;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;

/** What the parts of the kit screen have in common. */
final class EquipmentParts {
  private static final int UNIT_WIDTH = 104;

  private EquipmentParts() {}

  /** A field or box with its name above it and room below it. */
  static Column labelled(Widgets kit, String name, char mnemonic, JComponent control) {
    return kit.named(name, mnemonic, kit.wide(control));
  }

  /** A field with the box of its unit beside it. */
  static Column withUnit(
      Widgets kit, String name, char mnemonic, JTextField field, JComponent unit) {
    kit.control(field, Widgets.CONTENT_WIDTH - UNIT_WIDTH - 8);
    kit.control(unit, UNIT_WIDTH);
    field.setAlignmentY(Component.CENTER_ALIGNMENT);
    unit.setAlignmentY(Component.CENTER_ALIGNMENT);
    unit.getAccessibleContext().setAccessibleName(name + ", unit");
    JPanel row = kit.row(8, field, unit);
    row.setMaximumSize(row.getPreferredSize());
    return kit.named(name, mnemonic, field, row);
  }

  /** The card of an answer. The keyboard reaches it, so that a screen reader can read it. */
  static Column answerCard(Widgets kit) {
    Column card = kit.card();
    Border usual = card.getBorder();
    int ring = kit.look().px(3);
    int pad = kit.look().px(14) - ring;
    Border focused =
        BorderFactory.createCompoundBorder(
            BorderFactory.createLineBorder(kit.look().palette().tide(), ring, true),
            BorderFactory.createEmptyBorder(pad, pad, pad, pad));
    card.setFocusable(true);
    card.addFocusListener(
        new FocusListener() {
          @Override
          public void focusGained(FocusEvent e) {
            card.setBorder(focused);
          }

          @Override
          public void focusLost(FocusEvent e) {
            card.setBorder(usual);
          }
        });
    return kit.comesIntoView(card);
  }

  /** Shows an answer on a card. What must be put right differs by its words and its colour. */
  static void show(Widgets kit, Column card, EquipmentAnswer answer) {
    Palette palette = kit.look().palette();
    Color colour = answer.good() ? palette.tide() : palette.sand();
    card.refill(
        () -> {
          card.put(kit.text(answer.headline(), kit.look().bold(19), colour, kit.cardTextWidth()));
          answer.lines().forEach(line -> card.gap(6).plain(line, 14));
          answer.sources().forEach(source -> card.gap(6).soft("Source: " + source, 12));
        });
    card.getAccessibleContext().setAccessibleName("Answer");
    card.getAccessibleContext().setAccessibleDescription(answer.spoken());
  }
}
