package squeezewell.desktop.screens;

import java.util.List;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Kit;
import squeezewell.files.ProtocolStore;
import squeezewell.protocol.Protocol;

/** The local protocols that there are, and what to copy into a new one. */
public final class LocalProtocolsScreen {
  private LocalProtocolsScreen() {}

  private record Choice(Protocol protocol) {
    @Override
    public String toString() {
      return Phrases.edition(protocol);
    }
  }

  /**
   * Builds the screen.
   *
   * @param store what there is
   */
  public static JScrollPane build(Kit kit, Navigator navigator, ProtocolStore store) {
    Look look = kit.look();
    JPanel column = kit.column();
    JButton back = kit.button("Back", 110, e -> navigator.toLibrary());
    back.setMnemonic('B');
    column.add(back);
    column.add(kit.gap(12));
    column.add(kit.heading("Local protocols"));
    column.add(kit.gap(4));
    column.add(
        kit.note(
            "If your service does something otherwise than the guideline, copy the guideline and"
                + " change the copy. A local protocol is always shown as such."));
    column.add(kit.gap(12));
    JComboBox<Choice> editions = Kit.choices();
    store.protocols().forEach(p -> editions.addItem(new Choice(p)));
    JLabel label = kit.label("Guideline to copy", look.font(13), look.palette().softText());
    label.setLabelFor(editions);
    label.setDisplayedMnemonic('G');
    column.add(label);
    column.add(kit.gap(4));
    column.add(kit.wide(editions));
    column.add(kit.gap(8));
    JButton copy =
        kit.mainButton(
            "Copy and edit",
            Kit.CONTENT_WIDTH,
            e -> navigator.toCopy(((Choice) editions.getSelectedItem()).protocol()));
    copy.setMnemonic('C');
    column.add(copy);
    column.add(kit.gap(16));
    column.add(kit.subheading("Those of your service"));
    column.add(kit.gap(6));
    List<LocalProtocolsView.Local> locals = LocalProtocolsView.of(store).locals();
    if (locals.isEmpty()) {
      column.add(kit.note("There is none yet."));
      column.add(kit.gap(8));
    }
    for (LocalProtocolsView.Local local : locals) {
      column.add(card(kit, navigator, local));
      column.add(kit.gap(10));
    }
    for (String problem : store.problems()) {
      column.add(kit.note("Left out. " + problem));
      column.add(kit.gap(8));
    }
    column.add(kit.note(Phrases.CAUTION));
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.on(editions, page));
    return kit.withBackKeys(page, navigator::toLibrary);
  }

  private static JPanel card(Kit kit, Navigator navigator, LocalProtocolsView.Local local) {
    Look look = kit.look();
    JPanel card = kit.card();
    card.add(kit.text(local.name(), look.bold(15), look.palette().text(), kit.cardTextWidth()));
    for (String line : local.lines()) {
      card.add(kit.gap(3));
      card.add(kit.text(line, look.font(13), look.palette().softText(), kit.cardTextWidth()));
    }
    card.add(kit.gap(8));
    JButton edit = kit.button("Edit", 110, e -> navigator.toEdit(local.file()));
    edit.getAccessibleContext().setAccessibleName("Edit " + local.name());
    card.add(edit);
    return card;
  }
}
