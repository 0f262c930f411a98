package squeezewell.desktop.screens;

import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
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
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Choice;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;

/** Where a local protocol is edited: its values by patient and situation, and its approval. */
public final class ProtocolEditScreen {
  private static final int NUMBER_WIDTH = 96;
  private static final int UNIT_WIDTH = 74;

  private final Widgets kit;
  private final Look look;
  private final Saver saver;
  private final BooleanSupplier mayLose;
  private final List<Runnable> detailRefresh = new ArrayList<>();
  private final List<Runnable> valueRefresh = new ArrayList<>();
  private final Column values;
  private final Column status;
  private ProtocolDraft draft;
  private ProtocolDraft kept;
  private boolean isInFile;
  private String outcome = "";
  private JButton save;
  private JScrollPane page;

  /** Keeps a draft that has no faults. */
  public interface Saver {
    /** Keeps it; returns one sentence on where it is now, or why it is not. */
    Saving save(ProtocolDraft draft);
  }

  /**
   * How saving went.
   *
   * @param saved whether it is in a file now
   * @param sentence where, or why not
   */
  public record Saving(boolean saved, String sentence) {}

  private ProtocolEditScreen(
      Widgets kit, ProtocolDraft draft, boolean isInFile, Saver saver, BooleanSupplier mayLose) {
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
      Widgets kit,
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
    Column column = kit.column();
    column.put(kit.back(leave), 12);
    column.heading("Local protocol", 4);
    column.note(ProtocolEditView.about(draft)).gap(12);
    JTextField title = addDetail(column, ProtocolDetail.TITLE);
    JTextField organisation = addDetail(column, ProtocolDetail.ORGANISATION);
    addDetail(column, ProtocolDetail.YEAR);
    addDetail(column, ProtocolDetail.ID);
    addValues(column);
    column.subheading("Approval", 6);
    addDetail(column, ProtocolDetail.APPROVED_BY);
    addDetail(column, ProtocolDetail.APPROVED_ON);
    addDetail(column, ProtocolDetail.APPROVAL_NOTE);
    column.gap(6).put(status);
    save = kit.mainButton("Save", 'S', Widgets.CONTENT_WIDTH, this::save);
    save.setName("save");
    column.put(save, 14);
    column.note(
        "A local protocol needs your medical director. The program checks ranges, not whether"
            + " a value is right. "
            + Phrases.CAUTION);
    refresh();
    JTextField first = draft.text(ProtocolDetail.ORGANISATION).isEmpty() ? organisation : title;
    return kit.page(column, first, leave);
  }

  private void addValues(Column column) {
    JComboBox<Choice<Integer>> entries = Widgets.choices();
    ProtocolEditView.entries(draft).forEach(entries::addItem);
    entries.addActionListener(e -> fill(Choice.of(entries)));
    column.subheading("Values", 6);
    column.put(kit.labelled("Patient and situation", 'P', entries), 10);
    column.put(values, 10);
    fill(Choice.of(entries));
  }

  private void fill(int entry) {
    valueRefresh.clear();
    Column rhythm = kit.card();
    Column limits = kit.card();
    for (ProtocolValue value : draft.values(entry)) {
      addValue(value.isLimit() ? limits : rhythm, entry, value);
    }
    valueRefresh.forEach(Runnable::run);
    values.refill(() -> values.put(rhythm, 10).put(limits));
  }

  private JTextField addDetail(Column column, ProtocolDetail detail) {
    JTextField field = kit.wide(new JTextField(draft.text(detail)));
    field.setName(detail.place());
    Column around = kit.column();
    Surround surround = new Surround(kit, field, around, kit.look().px(Widgets.CONTENT_WIDTH));
    column.put(surround.label(), 4).put(field).put(around, 10);
    detailRefresh.add(surround.showing(() -> ProtocolEditView.field(draft, detail)));
    onEdit(field, text -> draft = draft.with(detail, text));
    return field;
  }

  private void addValue(Column card, int entry, ProtocolValue value) {
    if (card.getComponentCount() > 0) {
      card.gap(10);
    }
    JTextField field = kit.comesIntoView(new JTextField(draft.text(entry, value)));
    field.setName(value.name());
    field.setFont(look.font(15));
    kit.fixed(field, NUMBER_WIDTH, 48);
    Column around = kit.column(kit.cardTextWidth());
    Surround surround = new Surround(kit, field, around, kit.cardTextWidth());
    JLabel unit = kit.plainLabel(ProtocolEditView.field(draft, entry, value).unit(), 15);
    kit.fixed(unit, UNIT_WIDTH, 24);
    Column beside = kit.column();
    for (JComponent part : new JComponent[] {field, unit, beside}) {
      part.setAlignmentY(Component.CENTER_ALIGNMENT);
    }
    JPanel row = kit.row(8, field, unit);
    row.add(beside);
    row.add(Box.createHorizontalGlue());
    card.put(surround.label(), 4).put(row).put(around);
    int besideWidth = kit.cardTextWidth() - look.px(NUMBER_WIDTH + UNIT_WIDTH + 12);
    valueRefresh.add(
        surround.showing(() -> ProtocolEditView.field(draft, entry, value), beside, besideWidth));
    onEdit(field, text -> draft = draft.with(entry, value, text));
  }

  private void onEdit(JTextField field, Consumer<String> keep) {
    Widgets.onTyped(
        field,
        () -> {
          keep.accept(field.getText());
          outcome = "";
          refresh();
        });
  }

  private void refresh() {
    detailRefresh.forEach(Runnable::run);
    valueRefresh.forEach(Runnable::run);
    List<String> lines = new ArrayList<>(ProtocolEditView.status(draft, isUnsaved()));
    if (!outcome.isEmpty()) {
      lines.add(0, outcome);
    }
    status.refill(() -> showStatus(lines));
    if (save != null) {
      save.setEnabled(ProtocolEditView.canSave(draft));
      save.getAccessibleContext().setAccessibleDescription(String.join(" ", lines));
    }
  }

  private void showStatus(List<String> lines) {
    for (int i = 0; i < lines.size(); i++) {
      (i == 0 ? status.bold(lines.get(i), 13) : status.plain(lines.get(i), 13)).gap(4);
    }
    status.gap(4);
  }

  private void save() {
    if (!isUnsaved()) {
      return;
    }
    Saving done = saver.save(draft);
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
    private final Widgets kit;
    private final JTextField field;
    private final Column below;
    private final int width;
    private final JLabel label;
    private ProtocolEditView.Field shown;

    Surround(Widgets kit, JTextField field, Column below, int width) {
      this.kit = kit;
      this.field = field;
      this.below = below;
      this.width = width;
      this.label = kit.softLabel("", 13);
      label.setLabelFor(field);
    }

    JLabel label() {
      return label;
    }

    Runnable showing(Supplier<ProtocolEditView.Field> now) {
      return () -> show(now.get(), null, 0);
    }

    Runnable showing(Supplier<ProtocolEditView.Field> now, Column beside, int besideWidth) {
      return () -> show(now.get(), beside, besideWidth);
    }

    private void show(ProtocolEditView.Field now, Column beside, int besideWidth) {
      if (now.equals(shown)) {
        return;
      }
      shown = now;
      Look look = kit.look();
      label.setText(now.label());
      field.getAccessibleContext().setAccessibleName(now.spokenName());
      field.getAccessibleContext().setAccessibleDescription(now.spoken());
      below.refill(() -> fill(now));
      if (beside != null) {
        boolean differs = !now.source().isEmpty();
        Font font = differs ? look.bold(13) : look.font(13);
        Color colour = differs ? look.palette().tide() : look.palette().softText();
        beside.refill(() -> beside.put(kit.text(now.guideline(), font, colour, besideWidth)));
      }
    }

    private void fill(ProtocolEditView.Field now) {
      Look look = kit.look();
      if (!now.fault().isEmpty()) {
        below.gap(3).put(kit.text(now.fault(), look.bold(13), look.palette().plum(), width));
      } else if (!now.hint().isEmpty()) {
        below.gap(3).soft(now.hint(), 12);
      }
      if (!now.source().isEmpty()) {
        below.gap(2).soft(now.source(), 12);
      }
    }
  }
}
