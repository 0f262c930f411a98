package squeezewell.desktop.screens;

import java.util.List;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.session.Fact;
import squeezewell.session.Fact.MarkChange.Change;
import squeezewell.station.file.StationTask;
import squeezewell.station.run.StationRun;

/** Where an examiner changes the mark of a task, with the reason. */
final class MarkChanges {
  private static final long SECOND = 1_000_000_000L;

  private final Widgets kit;
  private final Consumer<Fact.MarkChange> onChange;
  private final JComboBox<Choice> task = Widgets.choices();
  private final JComboBox<Earlier> earlier =
      Widgets.choices(new Earlier(5), new Earlier(10), new Earlier(20), new Earlier(60));
  private final JTextField reason = new JTextField();

  private record Choice(StationTask task) {
    @Override
    public String toString() {
      return task.words();
    }
  }

  private record Earlier(int seconds) {
    @Override
    public String toString() {
      return seconds + " s earlier";
    }
  }

  private MarkChanges(Widgets kit, Consumer<Fact.MarkChange> onChange) {
    this.kit = kit;
    this.onChange = onChange;
  }

  /**
   * Adds it to a page.
   *
   * @param tasks the station's tasks
   * @param onChange takes what was changed
   */
  static void put(
      Column column, Widgets kit, List<StationTask> tasks, Consumer<Fact.MarkChange> onChange) {
    new MarkChanges(kit, onChange).lay(column, tasks);
  }

  private void lay(Column column, List<StationTask> tasks) {
    tasks.forEach(each -> task.addItem(new Choice(each)));
    reason.setName("reason");
    column.subheading("Change a mark", 6);
    column.put(kit.labelled("Task", 'K', task));
    column.put(kit.labelled("Reason", 'W', reason));
    column.put(kit.labelled("By how much", 'Y', earlier));
    JButton late = button("Late", 'L', Change.LATE);
    JButton before = button("Earlier", 'A', Change.EARLIER);
    JButton improper = button("Not done properly", 'O', Change.IMPROPER);
    JButton words = button("Remark on it", 'M', Change.REMARK);
    JButton back = button("Take the mark back", 'T', Change.WITHDRAWN);
    column.put(kit.row(10, late, before), 8);
    column.put(kit.row(10, improper, words), 8);
    column.put(back, 14);
  }

  private JButton button(String words, char mnemonic, Change change) {
    return kit.button(words, mnemonic, 181, () -> change(change));
  }

  private void change(Change change) {
    String words = reason.getText().trim();
    boolean silent = change == Change.REMARK && words.isEmpty();
    if (task.getSelectedItem() instanceof Choice chosen && !silent) {
      long nanos =
          change == Change.EARLIER
              ? earlier.getItemAt(earlier.getSelectedIndex()).seconds() * SECOND
              : 0;
      int length = Math.min(words.length(), StationRun.LONGEST_REMARK);
      onChange.accept(
          new Fact.MarkChange(chosen.task().id(), change, nanos, words.substring(0, length)));
      reason.setText("");
    }
  }
}
