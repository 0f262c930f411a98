package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.ExecutionException;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import javax.swing.SwingWorker;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Focus;
import squeezewell.desktop.parts.Widgets;
import squeezewell.input.BadInputException;

/** The list of past practices, newest first. Filled in the background. */
public final class PastScreen {
  private final Widgets kit;
  private final Navigator navigator;
  private final DefaultListModel<Line> lines = new DefaultListModel<>();
  private final JList<Line> list = new JList<>(lines);
  private final JLabel status;
  private JButton compare;
  private boolean choosing;
  private CompareChoice choice = CompareChoice.NONE;

  /**
   * One past practice.
   *
   * @param file where it is kept
   * @param title what stands first
   * @param detail what stands under it
   * @param readable whether it can be opened
   */
  public record Line(Path file, String title, String detail, boolean readable) {
    /** What a screen reader says. */
    @Override
    public String toString() {
      return title + ". " + detail;
    }
  }

  /** Where the lines come from. */
  public interface Source {
    /**
     * Reads the list, handing on each line as it is ready. Not called on the event thread.
     *
     * @throws BadInputException if the folder can't be read
     */
    void read(java.util.function.Consumer<Line> each) throws BadInputException;
  }

  private PastScreen(Widgets kit, Navigator navigator) {
    this.kit = kit;
    this.navigator = navigator;
    this.status = kit.softLabel("Reading …", 13);
  }

  /** Builds the screen and starts to fill it. */
  public static JPanel build(Widgets kit, Navigator navigator, Source source) {
    PastScreen screen = new PastScreen(kit, navigator);
    JPanel panel = screen.build();
    screen.fill(source);
    return panel;
  }

  private JPanel build() {
    Look look = kit.look();
    Column top = kit.column();
    JButton replay = kit.button("Replay", 'Y', 100, this::replaySelected);
    compare = kit.button("Compare two", 'C', 142, this::compare);
    top.put(kit.row(10, kit.back(navigator::toSetup), replay, compare), 12);
    top.heading("Past practices", 4);
    top.put(status, 8);

    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setCellRenderer(new LineRenderer());
    list.setBackground(look.palette().ground());
    list.getAccessibleContext().setAccessibleName("Past practices");
    list.addKeyListener(
        new KeyAdapter() {
          @Override
          public void keyPressed(KeyEvent e) {
            if (e.getKeyCode() == KeyEvent.VK_ENTER || e.getKeyCode() == KeyEvent.VK_SPACE) {
              openSelected();
            }
          }
        });
    list.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mouseClicked(MouseEvent e) {
            if (list.locationToIndex(e.getPoint()) >= 0) {
              openSelected();
            }
          }
        });
    JScrollPane scroll = new JScrollPane(list);
    scroll.setBorder(BorderFactory.createEmptyBorder());
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);

    JPanel panel = new JPanel(new BorderLayout());
    panel.setBackground(look.palette().ground());
    int side = look.px(Widgets.MARGIN);
    panel.setBorder(BorderFactory.createEmptyBorder(side, side, look.px(10), side));
    panel.add(top, BorderLayout.NORTH);
    panel.add(scroll, BorderLayout.CENTER);
    panel.add(kit.note(Phrases.CAUTION), BorderLayout.SOUTH);
    panel.addAncestorListener(Focus.on(list));
    return kit.withBackKeys(panel, navigator::toSetup);
  }

  private void openSelected() {
    Line line = list.getSelectedValue();
    if (line == null || !line.readable()) {
      return;
    }
    if (!choosing) {
      navigator.openDebrief(line.file());
      return;
    }
    choice = choice.toggle(list.getSelectedIndex());
    showChoice();
  }

  /** First to choosing two, then to both side by side. */
  private void compare() {
    if (!choosing) {
      choosing = true;
      // Before the button is disabled, or keys typed at once would be lost with its focus.
      list.requestFocusInWindow();
      showChoice();
      return;
    }
    choice
        .files(Collections.list(lines.elements()).stream().map(Line::file).toList())
        .ifPresent(files -> navigator.toComparison(files.get(0), files.get(1)));
  }

  private void showChoice() {
    compare.setText("Compare");
    compare.setMnemonic('C');
    compare.setEnabled(choice.isComplete());
    status.setText(choice.words());
    // A card grows by its mark; the list asks for heights again only when a line changes.
    for (int i = 0; i < lines.size(); i++) {
      if (choice.has(i) || i == list.getSelectedIndex()) {
        lines.set(i, lines.get(i));
      }
    }
  }

  private void replaySelected() {
    Line line = list.getSelectedValue();
    if (line != null && line.readable()) {
      navigator.openReplay(line.file());
    }
  }

  private void fill(Source source) {
    new SwingWorker<Void, Line>() {
      @Override
      protected Void doInBackground() throws BadInputException {
        source.read(this::publish);
        return null;
      }

      @Override
      protected void process(List<Line> chunk) {
        boolean first = lines.isEmpty();
        chunk.forEach(lines::addElement);
        if (first) {
          list.setSelectedIndex(0);
        }
        if (!choosing) {
          status.setText("Reading … " + lines.size());
        }
      }

      @Override
      protected void done() {
        try {
          get();
          compare.setEnabled(choosing ? choice.isComplete() : lines.size() > 1);
          if (choosing) {
            return;
          }
          status.setText(
              lines.isEmpty()
                  ? "None yet. Your first practice will stand here."
                  : lines.size() + " kept in your own folder. Enter opens one, Replay plays it.");
        } catch (ExecutionException e) {
          status.setText(String.valueOf(e.getCause().getMessage()));
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        }
      }
    }.execute();
  }

  private final class LineRenderer implements ListCellRenderer<Line> {
    @Override
    public Component getListCellRendererComponent(
        JList<? extends Line> in, Line line, int index, boolean selected, boolean focused) {
      Look look = kit.look();
      int width = kit.cardTextWidth() - look.px(Widgets.SCROLL_BAR + 6);
      String mark = choice.mark(index);
      Column texts = kit.column(width);
      if (!mark.isEmpty()) {
        texts.bold(mark, 13).gap(2);
      }
      texts.bold(line.title(), 15).gap(2).note(line.detail());
      Column cell = kit.column().put(kit.card().put(texts));
      cell.setBorder(
          BorderFactory.createCompoundBorder(
              BorderFactory.createEmptyBorder(look.px(3), 0, look.px(3), 0),
              selected
                  ? BorderFactory.createLineBorder(look.palette().tide(), look.px(3), true)
                  : BorderFactory.createEmptyBorder(
                      look.px(3), look.px(3), look.px(3), look.px(3))));
      cell.getAccessibleContext().setAccessibleName((mark.isEmpty() ? "" : mark + ". ") + line);
      return cell;
    }
  }
}
