package squeezewell.desktop.screens;

import java.awt.Component;
import java.util.List;
import javax.swing.Box;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.report.SideBySide;

/** The guideline library: each value side by side across the editions, with its source. */
public final class LibraryScreen {
  private static final int NAME_WIDTH = 196;

  private final Widgets kit;
  private final Look look;
  private final List<Protocol> editions;
  private final Column values;

  private LibraryScreen(Widgets kit, List<Protocol> editions) {
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
      Widgets kit,
      Navigator navigator,
      List<Protocol> editions,
      PatientGroup patient,
      Situation situation) {
    return new LibraryScreen(kit, editions).build(navigator, patient, situation);
  }

  private JScrollPane build(Navigator navigator, PatientGroup patient, Situation situation) {
    Column column = kit.column();
    JPanel top = kit.row(0, kit.back(navigator::toSetup), Box.createHorizontalGlue());
    top.add(kit.button("Local protocols", 'L', 181, navigator::toLocalProtocols));
    column.put(top, 12);
    column.heading("Guidelines side by side", 10);
    JComboBox<SideBySide.Choice> choice = kit.wrappingChoices(Widgets.CONTENT_WIDTH);
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
    column.put(choice, 14);
    column.put(values, 8);
    column.note(
        "Values marked “from memory” could not be confirmed. Those marked “our own choice”"
            + " stand in no guideline. "
            + Phrases.CAUTION);
    fill((SideBySide.Choice) choice.getSelectedItem());
    return kit.page(column, choice);
  }

  private void fill(SideBySide.Choice choice) {
    values.refill(
        () -> {
          for (SideBySide.Value value : SideBySide.of(editions, choice).values()) {
            values.subheading(value.name(), 6).put(card(value), 14);
          }
        });
  }

  private Column card(SideBySide.Value value) {
    Column card = kit.card();
    for (SideBySide.Entry entry : value.entries()) {
      if (card.getComponentCount() > 0) {
        card.gap(10);
      }
      addEntry(card, value.name(), entry);
    }
    return card;
  }

  private void addEntry(Column card, String name, SideBySide.Entry entry) {
    String title = Phrases.edition(entry.protocol());
    JLabel edition = kit.wide(kit.plainLabel(title, 15), NAME_WIDTH);
    JLabel value = kit.boldLabel(entry.value(), 17);
    value.getAccessibleContext().setAccessibleName(name + ", " + title + ": " + entry.value());
    edition.setAlignmentY(Component.CENTER_ALIGNMENT);
    value.setAlignmentY(Component.CENTER_ALIGNMENT);
    card.put(kit.row(0, edition, value, Box.createHorizontalGlue()));
    if (!entry.change().isEmpty()) {
      card.put(kit.label(entry.change(), look.bold(13), look.palette().tide()));
    }
    card.soft(entry.source().line(), 12);
  }
}
