package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.Box;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Kit;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;

/** Where a local protocol is edited: its values by patient and situation, and its approval. */
public final class ProtocolEditScreen {
  private static final int NUMBER_WIDTH = 96;
  private static final int UNIT_WIDTH = 74;

  private final Kit kit;
  private final Look look;
  private final Saver saver;
  private final BooleanSupplier mayLose;
  private final List<Runnable> detailRefresh = new ArrayList<>();
  private final List<Runnable> valueRefresh = new ArrayList<>();
  private final JPanel values;
  private final JPanel status;
  private ProtocolDraft draft;
  private ProtocolDraft kept;
  private boolean isInFile;
  private String outcome = "";
  private JButton save;
  private JScrollPane page;

  /** Keeps a draft that has no faults. */
  public interface Saver {
    /** Keeps it; returns one sentence on where it is now, or why it is not. */
    Outcome save(ProtocolDraft draft);
  }

  /**
   * How saving went.
   *
   * @param saved whether it is in a file now
   * @param sentence where, or why not
   */
  public record Outcome(boolean saved, String sentence) {}

  private ProtocolEditScreen(
      Kit kit, ProtocolDraft draft, boolean isInFile, Saver saver, BooleanSupplier mayLose) {
    this.kit = kit;
    this.look = kit.look();
    this.draft = draft;
    this.kept = draft;
    this.isInFile = isInFile;
    this.saver = saver;
    this.mayLose = mayLose;
    this.values = kit.column();
    this.status = kit.column();
  }

  /**
   * Builds the screen.
   *
   * @param draft what to edit
   * @param isInFile whether it stands in a file as it is
   * @param saver keeps it
   * @param mayLose asks the person whether what is not saved may be lost
   * @param back leads back, once the person has agreed to leave
   */
  public static ProtocolEditScreen build(
      Kit kit,
      ProtocolDraft draft,
      boolean isInFile,
      Saver saver,
      BooleanSupplier mayLose,
      Runnable back) {
    ProtocolEditScreen screen = new ProtocolEditScreen(kit, draft, isInFile, saver, mayLose);
    screen.page = screen.page(back);
    return screen;
  }

  /** The part to show. */
  public JScrollPane page() {
    return page;
  }

  /** Whether it may go: nothing is unsaved, or the person says that it may be lost. */
  public boolean mayLeave() {
    return !isUnsaved() || mayLose.getAsBoolean();
  }

  private boolean isUnsaved() {
    return !isInFile || !draft.saysTheSameAs(kept);
  }

  private JScrollPane page(Runnable back) {
    Runnable leave =
        () -> {
          if (mayLeave()) {
            back.run();
          }
        };
    JPanel column = kit.column();
    JButton backButton = kit.button("Back", 110, e -> leave.run());
    backButton.setMnemonic('B');
    column.add(backButton);
    column.add(kit.gap(12));
    column.add(kit.heading("Local protocol"));
    column.add(kit.gap(4));
    column.add(kit.note(ProtocolEditView.about(draft)));
    column.add(kit.gap(12));
    JTextField title = addDetail(column, ProtocolDetail.TITLE);
    JTextField organisation = addDetail(column, ProtocolDetail.ORGANISATION);
    addDetail(column, ProtocolDetail.YEAR);
    addDetail(column, ProtocolDetail.ID);
    addValues(column);
    column.add(kit.subheading("Approval"));
    column.add(kit.gap(6));
    addDetail(column, ProtocolDetail.APPROVED_BY);
    addDetail(column, ProtocolDetail.APPROVED_ON);
    addDetail(column, ProtocolDetail.APPROVAL_NOTE);
    column.add(kit.gap(6));
    column.add(status);
    save = kit.mainButton("Save", Kit.CONTENT_WIDTH, e -> save());
    save.setName("save");
    save.setMnemonic('S');
    column.add(save);
    column.add(kit.gap(14));
    column.add(
        kit.note(
            "A local protocol needs your medical director. The program checks ranges, not whether"
                + " a value is right. "
                + Phrases.CAUTION));
    refresh();
    JScrollPane built = kit.page(column);
    built.addAncestorListener(
        Focus.on(draft.text(ProtocolDetail.ORGANISATION).isEmpty() ? organisation : title, built));
    return kit.withBackKeys(built, leave);
  }

  private void addValues(JPanel column) {
    JComboBox<ProtocolEditView.Entry> entries = Kit.choices();
    ProtocolEditView.entries(draft).forEach(entries::addItem);
    entries.addActionListener(e -> fill((ProtocolEditView.Entry) entries.getSelectedItem()));
    column.add(kit.subheading("Values"));
    column.add(kit.gap(6));
    JLabel label = kit.label("Patient and situation", look.font(13), look.palette().softText());
    label.setLabelFor(entries);
    label.setDisplayedMnemonic('P');
    column.add(label);
    column.add(kit.gap(4));
    column.add(kit.wide(entries));
    column.add(kit.gap(10));
    column.add(values);
    column.add(kit.gap(10));
    fill(entries.getItemAt(0));
  }

  private void fill(ProtocolEditView.Entry entry) {
    values.removeAll();
    valueRefresh.clear();
    JPanel rhythm = kit.card();
    JPanel limits = kit.card();
    for (ProtocolValue value : draft.values(entry.place())) {
      addValue(value.isLimit() ? limits : rhythm, entry.place(), value);
    }
    values.add(rhythm);
    values.add(kit.gap(10));
    values.add(limits);
    valueRefresh.forEach(Runnable::run);
    values.revalidate();
    values.repaint();
  }

  private JTextField addDetail(JPanel column, ProtocolDetail detail) {
    JTextField field = kit.wide(new JTextField(draft.text(detail)));
    field.setName(detail.place());
    JPanel around = kit.column();
    Surround surround = new Surround(kit, field, around, kit.look().px(Kit.CONTENT_WIDTH));
    column.add(surround.label());
    column.add(kit.gap(4));
    column.add(field);
    column.add(around);
    column.add(kit.gap(10));
    detailRefresh.add(surround.showing(() -> ProtocolEditView.field(draft, detail)));
    onEdit(field, text -> draft = draft.with(detail, text));
    return field;
  }

  private void addValue(JPanel card, int entry, ProtocolValue value) {
    if (card.getComponentCount() > 0) {
      card.add(kit.gap(10));
    }
    JTextField field = kit.comesIntoView(new JTextField(draft.text(entry, value)));
    field.setName(value.name());
    field.setFont(look.font(15));
    Dimension size = new Dimension(look.px(NUMBER_WIDTH), look.px(48));
    field.setPreferredSize(size);
    field.setMinimumSize(size);
    field.setMaximumSize(size);
    JPanel around = kit.column();
    Surround surround = new Surround(kit, field, around, kit.cardTextWidth());
    JPanel row = kit.row();
    JLabel unit =
        kit.label(
            ProtocolEditView.field(draft, entry, value).unit(),
            look.font(15),
            look.palette().text());
    Dimension unitSize = new Dimension(look.px(UNIT_WIDTH), look.px(24));
    unit.setPreferredSize(unitSize);
    unit.setMinimumSize(unitSize);
    unit.setMaximumSize(unitSize);
    JPanel beside = kit.column();
    for (JComponent part : new JComponent[] {field, unit, beside}) {
      part.setAlignmentY(Component.CENTER_ALIGNMENT);
    }
    row.add(field);
    row.add(Box.createHorizontalStrut(look.px(8)));
    row.add(unit);
    row.add(beside);
    row.add(Box.createHorizontalGlue());
    card.add(surround.label());
    card.add(kit.gap(4));
    card.add(row);
    card.add(around);
    int besideWidth = kit.cardTextWidth() - look.px(NUMBER_WIDTH + UNIT_WIDTH + 12);
    valueRefresh.add(
        surround.showing(() -> ProtocolEditView.field(draft, entry, value), beside, besideWidth));
    onEdit(field, text -> draft = draft.with(entry, value, text));
  }

  private void onEdit(JTextField field, Consumer<String> keep) {
    field
        .getDocument()
        .addDocumentListener(
            new DocumentListener() {
              @Override
              public void insertUpdate(DocumentEvent e) {
                edited();
              }

              @Override
              public void removeUpdate(DocumentEvent e) {
                edited();
              }

              @Override
              public void changedUpdate(DocumentEvent e) {
                edited();
              }

              private void edited() {
                keep.accept(field.getText());
                outcome = "";
                refresh();
              }
            });
  }

  private void refresh() {
    detailRefresh.forEach(Runnable::run);
    valueRefresh.forEach(Runnable::run);
    status.removeAll();
    List<String> lines = new ArrayList<>(ProtocolEditView.status(draft, isUnsaved()));
    if (!outcome.isEmpty()) {
      lines.add(0, outcome);
    }
    for (int i = 0; i < lines.size(); i++) {
      status.add(
          kit.text(
              lines.get(i),
              i == 0 ? look.bold(13) : look.font(13),
              look.palette().text(),
              look.px(Kit.CONTENT_WIDTH)));
      status.add(kit.gap(4));
    }
    status.add(kit.gap(4));
    status.revalidate();
    status.repaint();
    if (save != null) {
      save.setEnabled(ProtocolEditView.canSave(draft));
      save.getAccessibleContext().setAccessibleDescription(String.join(" ", lines));
    }
  }

  private void save() {
    if (!isUnsaved()) {
      return;
    }
    Outcome done = saver.save(draft);
    outcome = done.sentence();
    if (done.saved()) {
      draft = draft.saved();
      kept = draft;
      isInFile = true;
    }
    refresh();
  }

  /** The texts around one field; built anew only when they change, so that the page keeps still. */
  private static final class Surround {
    private final Kit kit;
    private final JTextField field;
    private final JPanel below;
    private final int width;
    private final JLabel label;
    private ProtocolEditView.Field shown;

    Surround(Kit kit, JTextField field, JPanel below, int width) {
      this.kit = kit;
      this.field = field;
      this.below = below;
      this.width = width;
      this.label = kit.label("", kit.look().font(13), kit.look().palette().softText());
      label.setLabelFor(field);
    }

    JLabel label() {
      return label;
    }

    Runnable showing(Supplier<ProtocolEditView.Field> now) {
      return () -> show(now.get(), null, 0);
    }

    Runnable showing(Supplier<ProtocolEditView.Field> now, JPanel beside, int besideWidth) {
      return () -> show(now.get(), beside, besideWidth);
    }

    private void show(ProtocolEditView.Field now, JPanel beside, int besideWidth) {
      if (now.equals(shown)) {
        return;
      }
      shown = now;
      Look look = kit.look();
      label.setText(now.label());
      field.getAccessibleContext().setAccessibleName(now.spokenName());
      field.getAccessibleContext().setAccessibleDescription(now.spoken());
      below.removeAll();
      if (!now.fault().isEmpty()) {
        below.add(kit.gap(3));
        below.add(kit.text(now.fault(), look.bold(13), look.palette().plum(), width));
      } else if (!now.hint().isEmpty()) {
        below.add(kit.gap(3));
        below.add(kit.text(now.hint(), look.font(12), look.palette().softText(), width));
      }
      if (!now.source().isEmpty()) {
        below.add(kit.gap(2));
        below.add(kit.text(now.source(), look.font(12), look.palette().softText(), width));
      }
      if (beside != null) {
        beside.removeAll();
        boolean differs = !now.source().isEmpty();
        beside.add(
            kit.text(
                now.guideline(),
                differs ? look.bold(13) : look.font(13),
                differs ? look.palette().tide() : look.palette().softText(),
                besideWidth));
        beside.revalidate();
        beside.repaint();
      }
      below.revalidate();
      below.repaint();
    }
  }
}
