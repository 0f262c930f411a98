package squeezewell.desktop.screens;

import java.awt.Dimension;
import java.awt.GridLayout;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.Timer;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.TaskButton;
import squeezewell.live.LiveStation;
import squeezewell.station.file.StationPhase;
import squeezewell.station.run.StationRun;
import squeezewell.station.run.StationState;

/** The instructor's console: what the trainee must not see, and what only the instructor does. */
public final class StationConsole {
  private static final int FRAME_MILLIS = 100;
  private static final int REMARKS_SHOWN = 6;
  private static final String END = "End the station";

  private final Kit kit;
  private final Look look;
  private final LiveStation station;
  private final JScrollPane page;
  private final JLabel clock;
  private final JPanel said;
  private final JPanel waysPart;
  private final JPanel ways;
  private final JPanel findings;
  private final JPanel prompts;
  private final JPanel tasks;
  private final JPanel faults;
  private final JPanel remarks;
  private final JTextField remark = new JTextField();
  private final JLabel remarkTrouble;
  private final JButton begin;
  private final JButton stop;
  private final JButton end;
  private final FinishGuard finishGuard = new FinishGuard();
  private final JButton projector;
  private final List<TaskButton> wayButtons = new ArrayList<>();
  private final List<TaskButton> findingButtons = new ArrayList<>();
  private final List<TaskButton> promptButtons = new ArrayList<>();
  private final List<TaskButton> taskButtons = new ArrayList<>();
  private StationConsoleView view;
  private String saidShown = "";
  private List<String> faultsShown = List.of();
  private List<String> remarksShown = List.of();
  private final Timer frames = new Timer(FRAME_MILLIS, e -> frame());

  /**
   * Builds the console of a running station; {@link #open} sets it going.
   *
   * @param onProjector opens or closes the window for the class
   */
  public StationConsole(Kit kit, LiveStation station, Runnable onProjector) {
    this.kit = kit;
    this.look = kit.look();
    this.station = station;
    clock = kit.label("", look.bold(20), look.palette().text());
    said = kit.column();
    waysPart = kit.column();
    ways = grid();
    findings = grid();
    prompts = grid();
    tasks = grid();
    faults = kit.column();
    remarks = kit.column();
    remarkTrouble = kit.label(" ", look.bold(13), look.palette().text());
    begin = kit.button("Begin exercise", 181, e -> station.post((to, at) -> to.begin(at), now()));
    stop =
        kit.button(
            "Stop the clock",
            181,
            e -> {
              boolean stopped = station.now().station().clockStopped();
              station.post(
                  (to, at) -> {
                    if (stopped) {
                      to.runClock(at);
                    } else {
                      to.stopClock(at);
                    }
                  },
                  now());
            });
    end = kit.button(END, 181, e -> end());
    begin.setMnemonic('B');
    stop.setMnemonic('C');
    end.setMnemonic('E');
    projector = kit.button("Projector", 181, e -> onProjector.run());
    projector.setMnemonic('P');
    page = lay();
    frame();
  }

  /** The whole console, to be put into a window. */
  public JScrollPane page() {
    return page;
  }

  /** Starts drawing. */
  public void open() {
    frames.start();
  }

  /** Stops drawing. */
  public void close() {
    frames.stop();
  }

  private static long now() {
    return System.nanoTime();
  }

  private JPanel grid() {
    JPanel grid = new JPanel(new GridLayout(0, 2, look.px(6), look.px(6)));
    grid.setOpaque(false);
    grid.setAlignmentX(JComponent.LEFT_ALIGNMENT);
    return grid;
  }

  private JScrollPane lay() {
    JPanel column = kit.column();
    column.add(kit.note("Instructor's console. Not for the trainee's eyes."));
    column.add(kit.gap(4));
    column.add(kit.heading(station.now().station().station().title()));
    column.add(kit.gap(4));
    column.add(clock);
    column.add(kit.gap(8));
    JPanel first = kit.row();
    first.add(begin);
    first.add(javax.swing.Box.createHorizontalStrut(look.px(10)));
    first.add(stop);
    column.add(first);
    column.add(kit.gap(8));
    JButton undo = kit.button("Undo task mark", 181, e -> station.undo(now()));
    undo.setMnemonic('U');
    JPanel second = kit.row();
    second.add(undo);
    second.add(javax.swing.Box.createHorizontalStrut(look.px(10)));
    second.add(projector);
    column.add(second);
    column.add(kit.gap(8));
    column.add(end);
    column.add(kit.gap(12));
    JLabel name =
        kit.label("Remark, with its time (Enter)", look.font(13), look.palette().softText());
    name.setLabelFor(remark);
    name.setDisplayedMnemonic('R');
    column.add(name);
    column.add(kit.gap(4));
    remark.addActionListener(e -> write());
    remark.setName("remark");
    column.add(kit.wide(remark));
    column.add(remarkTrouble);
    column.add(remarks);
    column.add(kit.gap(10));
    column.add(said);
    column.add(faults);
    part(waysPart, "Ways not reached yet: choose, or leave it", ways);
    column.add(waysPart);
    part(column, "Findings of this station", findings);
    part(column, "Tasks (* critical): press to mark", tasks);
    part(column, "Other findings, which change the prompts only", prompts);
    column.add(kit.note(Phrases.CAUTION));
    JScrollPane scroll = kit.page(column);
    scroll.addAncestorListener(Focus.on(remark, scroll));
    return scroll;
  }

  private void part(JPanel column, String heading, JPanel grid) {
    column.add(kit.subheading(heading));
    column.add(kit.gap(6));
    column.add(grid);
    column.add(kit.gap(14));
  }

  private void write() {
    String words = remark.getText().trim();
    if (words.length() > StationRun.LONGEST_REMARK) {
      remarkTrouble.setText("At most " + StationRun.LONGEST_REMARK + " characters");
      return;
    }
    remarkTrouble.setText(" ");
    if (!words.isEmpty()) {
      station.post((to, at) -> to.remark(words, at), now());
      remark.setText("");
    }
  }

  private void frame() {
    LiveStation.Now at = station.now();
    StationState state = at.station();
    view = StationConsoleView.of(state, at.practice(), station.clock().nanos());
    if (!view.clock().equals(clock.getText())) {
      clock.setText(view.clock());
    }
    begin.setEnabled(state.phase() == StationPhase.PREPARATION);
    stop.setText(state.clockStopped() ? "Run the clock" : "Stop the clock");
    waysPart.setVisible(!view.ways().isEmpty());
    end.setText(finishGuard.waits(now()) ? "Again to end it" : END);
    fill(ways, wayButtons, view.ways().size(), this::choose);
    for (int i = 0; i < view.ways().size(); i++) {
      StationConsoleView.Toggle each = view.ways().get(i);
      wayButtons.get(i).show(each.words(), "", each.status(), each.on(), false);
    }
    fill(findings, findingButtons, view.findings().size(), this::toggle);
    for (int i = 0; i < view.findings().size(); i++) {
      StationConsoleView.Toggle each = view.findings().get(i);
      findingButtons.get(i).show(each.words(), "", each.status(), each.on(), false);
    }
    fill(prompts, promptButtons, view.prompts().size(), this::tell);
    for (int i = 0; i < view.prompts().size(); i++) {
      StationConsoleView.Toggle each = view.prompts().get(i);
      promptButtons.get(i).show(each.words(), "", each.status(), false, false);
    }
    fill(tasks, taskButtons, view.tasks().size(), this::mark);
    for (int i = 0; i < view.tasks().size(); i++) {
      StationConsoleView.Mark each = view.tasks().get(i);
      taskButtons.get(i).show(each.words(), "", each.status(), each.on(), each.done());
    }
    showTexts();
  }

  private void showTexts() {
    if (!view.said().equals(saidShown)) {
      saidShown = view.said();
      list(said, "The examiner says", List.of(saidShown));
    }
    if (!view.faults().equals(faultsShown)) {
      faultsShown = view.faults();
      list(faults, "Critical faults so far", faultsShown);
    }
    if (!view.remarks().equals(remarksShown)) {
      remarksShown = view.remarks();
      list(
          remarks,
          "Written down",
          remarksShown.subList(0, Math.min(REMARKS_SHOWN, remarksShown.size())));
    }
  }

  private void list(JPanel column, String heading, List<String> lines) {
    column.removeAll();
    column.add(kit.subheading(heading));
    for (String line : lines) {
      column.add(kit.body(line));
    }
    column.add(kit.gap(10));
    column.revalidate();
    column.repaint();
  }

  private void fill(
      JPanel grid, List<TaskButton> buttons, int wanted, IntFunction<Runnable> action) {
    while (buttons.size() < wanted) {
      TaskButton button = new TaskButton(look, 14, false);
      button.addActionListener(e -> action.apply(buttons.indexOf(button)).run());
      buttons.add(button);
      grid.add(kit.comesIntoView(button));
    }
    while (buttons.size() > wanted) {
      grid.remove(buttons.remove(buttons.size() - 1));
    }
    int rows = (wanted + 1) / 2;
    Dimension size = new Dimension(look.px(Kit.CONTENT_WIDTH), rows * look.px(64) - look.px(6));
    if (wanted > 0 && !size.equals(grid.getPreferredSize())) {
      grid.setPreferredSize(size);
      grid.setMaximumSize(size);
      grid.setMinimumSize(size);
      grid.revalidate();
    }
  }

  private Runnable toggle(int place) {
    StationConsoleView.Toggle each = view.findings().get(place);
    return () ->
        station.post(
            (to, at) -> {
              if (each.on()) {
                to.clear(each.word(), at);
              } else {
                to.inject(each.word(), at);
              }
            },
            now());
  }

  private void end() {
    if (finishGuard.press(station.now().station().complete(), now())) {
      station.post((to, at) -> to.end(at), now());
    }
  }

  private Runnable choose(int place) {
    String way = view.ways().get(place).word();
    return () -> station.post((to, at) -> to.choose(way, at), now());
  }

  private Runnable tell(int place) {
    String word = view.prompts().get(place).word();
    return () -> station.post((to, at) -> to.inject(word, at), now());
  }

  private Runnable mark(int place) {
    String id = view.tasks().get(place).id();
    return () -> station.tap(id, now());
  }
}
