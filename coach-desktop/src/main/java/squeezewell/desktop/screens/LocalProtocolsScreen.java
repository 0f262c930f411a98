package squeezewell.desktop.screens;

import java.util.List;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JScrollPane;
import squeezewell.desktop.parts.Choice;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.files.ProtocolStore;
import squeezewell.protocol.Protocol;

/** The local protocols that there are, and what to copy into a new one. */
public final class LocalProtocolsScreen {
  private LocalProtocolsScreen() {}

  /**
   * Builds the screen.
   *
   * @param store what there is
   */
  public static JScrollPane build(Widgets kit, Navigator navigator, ProtocolStore store) {
    Column column = kit.column().put(kit.back(navigator::toLibrary), 12);
    column.heading("Local protocols", 4);
    column
        .note(
            "If your service does something otherwise than the guideline, copy the guideline and"
                + " change the copy. A local protocol is always shown as such.")
        .gap(12);
    JComboBox<Choice<Protocol>> editions = Widgets.choices();
    store.protocols().forEach(p -> editions.addItem(new Choice<>(p, Phrases.edition(p))));
    column.put(kit.labelled("Guideline to copy", 'G', editions), 8);
    Runnable copy = () -> navigator.toCopy(Choice.of(editions));
    column.put(kit.mainButton("Copy and edit", 'C', Widgets.CONTENT_WIDTH, copy), 16);
    column.subheading("Those of your service", 6);
    List<LocalProtocolsView.Local> locals = LocalProtocolsView.of(store).locals();
    if (locals.isEmpty()) {
      column.note("There is none yet.").gap(8);
    }
    for (LocalProtocolsView.Local local : locals) {
      column.put(card(kit, navigator, local), 10);
    }
    for (String problem : store.problems()) {
      column.note("Left out. " + problem).gap(8);
    }
    column.note(Phrases.CAUTION);
    return kit.page(column, editions, navigator::toLibrary);
  }

  private static Column card(Widgets kit, Navigator navigator, LocalProtocolsView.Local local) {
    Column card = kit.card().bold(local.name(), 15).notes(3, local.lines());
    JButton edit = kit.button("Edit", '\0', 110, () -> navigator.toEdit(local.file()));
    edit.getAccessibleContext().setAccessibleName("Edit " + local.name());
    return card.gap(8).put(edit);
  }
}
