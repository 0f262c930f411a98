package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.Dimension;
import java.util.List;
import javax.swing.Box;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Kit;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.report.SideBySide;

/** The guideline library: each value side by side across the editions, with its source. */
public final class LibraryScreen {
  private static final int NAME_WIDTH = 196;

  private final Kit kit;
  private final Look look;
  private final List<Protocol> editions;
  private final JPanel values;

  private LibraryScreen(Kit kit, List<Protocol> editions) {
    this.kit = kit;
    this.look = kit.look();
    this.editions = editions;
    this.values = kit.column();
  }

  /**
   * Builds the screen.
   *
   * @param editions the editions to compare, newest first
   * @param patient whose values are shown first
   * @param situation in which situation
   */
  public static JScrollPane build(
      Kit kit,
      Navigator navigator,
      List<Protocol> editions,
      PatientGroup patient,
      Situation situation) {
    return new LibraryScreen(kit, editions).build(navigator, patient, situation);
  }

  private JScrollPane build(Navigator navigator, PatientGroup patient, Situation situation) {
    JPanel column = kit.column();
    JButton back = kit.button("Back", 110, e -> navigator.toSetup());
    back.setMnemonic('B');
    JButton own = kit.button("Local protocols", 181, e -> navigator.toLocalProtocols());
    own.setMnemonic('L');
    JPanel top = kit.row();
    top.add(back);
    top.add(Box.createHorizontalGlue());
    top.add(own);
    column.add(top);
    column.add(kit.gap(12));
    column.add(kit.heading("Guidelines side by side"));
    column.add(kit.gap(10));
    JComboBox<SideBySide.Choice> choice = kit.wrappingChoices(Kit.CONTENT_WIDTH);
    for (SideBySide.Choice each : SideBySide.choices(editions)) {
      choice.addItem(each);
      if (choice.getSelectedIndex() <= 0
          && each.patient() == patient
          && each.situation() == situation) {
        choice.setSelectedItem(each);
      }
    }
    choice.getAccessibleContext().setAccessibleName("Patient and situation");
    choice.addActionListener(e -> fill((SideBySide.Choice) choice.getSelectedItem()));
    column.add(choice);
    column.add(kit.gap(14));
    column.add(values);
    column.add(kit.gap(8));
    column.add(
        kit.note(
            "Values marked “from memory” could not be confirmed. Those marked “our own choice”"
                + " stand in no guideline. "
                + Phrases.CAUTION));
    fill((SideBySide.Choice) choice.getSelectedItem());
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.on(choice, page));
    return page;
  }

  private void fill(SideBySide.Choice choice) {
    values.removeAll();
    for (LibraryView.Value value : LibraryView.of(editions, choice).values()) {
      values.add(kit.subheading(value.name()));
      values.add(kit.gap(6));
      JPanel card = kit.card();
      for (int i = 0; i < value.entries().size(); i++) {
        if (i > 0) {
          card.add(kit.gap(10));
        }
        addEntry(card, value.name(), value.entries().get(i));
      }
      values.add(card);
      values.add(kit.gap(14));
    }
    values.revalidate();
    values.repaint();
  }

  private void addEntry(JPanel card, String name, LibraryView.Entry entry) {
    JPanel row = kit.row();
    JLabel edition = kit.label(entry.edition(), look.font(15), look.palette().text());
    Dimension size = new Dimension(look.px(NAME_WIDTH), edition.getPreferredSize().height);
    edition.setPreferredSize(size);
    edition.setMinimumSize(size);
    edition.setMaximumSize(size);
    JLabel value = kit.label(entry.value(), look.bold(17), look.palette().text());
    value
        .getAccessibleContext()
        .setAccessibleName(name + ", " + entry.edition() + ": " + entry.value());
    edition.setAlignmentY(Component.CENTER_ALIGNMENT);
    value.setAlignmentY(Component.CENTER_ALIGNMENT);
    row.add(edition);
    row.add(value);
    row.add(Box.createHorizontalGlue());
    card.add(row);
    if (!entry.change().isEmpty()) {
      card.add(kit.label(entry.change(), look.bold(13), look.palette().tide()));
    }
    JTextArea source =
        kit.text(entry.source(), look.font(12), look.palette().softText(), kit.cardTextWidth());
    card.add(source);
  }
}
