package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import javax.swing.BorderFactory;
import javax.swing.Box;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.border.Border;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import squeezewell.desktop.parts.Kit;

/** What the parts of the kit screen have in common. */
final class EquipmentParts {
  private static final int UNIT_WIDTH = 104;

  private EquipmentParts() {}

  /** A field or box with its name above it. */
  static JPanel labelled(Kit kit, String name, char mnemonic, JComponent control) {
    return block(kit, name, mnemonic, control, kit.wide(control));
  }

  /** A field with the box of its unit beside it. */
  static JPanel withUnit(Kit kit, String name, char mnemonic, JTextField field, JComponent unit) {
    JPanel row = kit.row();
    kit.wide(field);
    kit.wide(unit);
    width(kit, field, Kit.CONTENT_WIDTH - UNIT_WIDTH - 8);
    width(kit, unit, UNIT_WIDTH);
    unit.getAccessibleContext().setAccessibleName(name + ", unit");
    row.add(field);
    row.add(Box.createHorizontalStrut(kit.look().px(8)));
    row.add(unit);
    row.setMaximumSize(row.getPreferredSize());
    return block(kit, name, mnemonic, field, row);
  }

  private static JPanel block(
      Kit kit, String name, char mnemonic, JComponent control, JComponent shown) {
    JPanel block = kit.column();
    JLabel label = kit.label(name, kit.look().font(13), kit.look().palette().softText());
    label.setLabelFor(control);
    label.setDisplayedMnemonic(mnemonic);
    block.add(label);
    block.add(kit.gap(4));
    block.add(shown);
    block.add(kit.gap(10));
    return block;
  }

  private static void width(Kit kit, JComponent part, int width) {
    Dimension size = new Dimension(kit.look().px(width), kit.look().px(48));
    part.setPreferredSize(size);
    part.setMinimumSize(size);
    part.setMaximumSize(size);
    part.setAlignmentY(Component.CENTER_ALIGNMENT);
  }

  /** Calls back after each change of a field. */
  static void onChange(JTextField field, Runnable changed) {
    field
        .getDocument()
        .addDocumentListener(
            new DocumentListener() {
              @Override
              public void insertUpdate(DocumentEvent e) {
                changed.run();
              }

              @Override
              public void removeUpdate(DocumentEvent e) {
                changed.run();
              }

              @Override
              public void changedUpdate(DocumentEvent e) {
                // Only attributes changed; a plain field has none.
              }
            });
  }

  /** The card of an answer. The keyboard reaches it, so that a screen reader can read it. */
  static JPanel answerCard(Kit kit) {
    JPanel card = kit.card();
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
  static void show(Kit kit, JPanel card, EquipmentAnswer answer) {
    card.removeAll();
    card.add(
        kit.text(
            answer.headline(),
            kit.look().bold(19),
            answer.good() ? kit.look().palette().tide() : kit.look().palette().sand(),
            kit.cardTextWidth()));
    for (String line : answer.lines()) {
      card.add(kit.gap(6));
      card.add(
          kit.text(line, kit.look().font(14), kit.look().palette().text(), kit.cardTextWidth()));
    }
    for (String source : answer.sources()) {
      card.add(kit.gap(6));
      card.add(source(kit, source));
    }
    card.getAccessibleContext().setAccessibleName("Answer");
    card.getAccessibleContext().setAccessibleDescription(answer.spoken());
    card.revalidate();
    card.repaint();
  }

  /** Where something comes from, on a card. */
  static JComponent source(Kit kit, String line) {
    return kit.text(
        "Source: " + line,
        kit.look().font(12),
        kit.look().palette().softText(),
        kit.cardTextWidth());
  }
}
