package squeezewell.desktop.screens;

import java.awt.Dimension;
import java.awt.GridLayout;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.ObjLongConsumer;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.Timer;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.TaskButton;
import squeezewell.desktop.parts.Widgets;
import squeezewell.live.LiveStation;
import squeezewell.station.file.StationPhase;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationRun;
import squeezewell.station.run.StationState;

/** The instructor's console: what the trainee must not see, and what only the instructor does. */
public final class StationConsole {
  private static final int FRAME_MILLIS = 100;
  private static final int REMARKS_SHOWN = 6;
  private static final String END = "End the station";

  private final Widgets kit;
  private final Look look;
  private final LiveStation station;
  private final JScrollPane page;
  private final JLabel clock;
  private final Column said;
  private final Column waysPart;
  private final Marks ways;
  private final Marks findings;
  private final Marks prompts;
  private final Marks tasks;
  private final Column faults;
  private final Column remarks;
  private final JTextField remark = new JTextField();
  private final JLabel remarkTrouble;
  private final JButton begin;
  private final JButton stop;
  private final JButton end;
  private final FinishGuard finishGuard = new FinishGuard();
  private final JButton projector;
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
  public StationConsole(Widgets kit, LiveStation station, Runnable onProjector) {
    this.kit = kit;
    this.look = kit.look();
    this.station = station;
    clock = kit.boldLabel("", 20);
    said = kit.column();
    waysPart = kit.column();
    ways = new Marks(mark -> post((to, at) -> to.choose(mark.id(), at)));
    findings = new Marks(this::toggle);
    prompts = new Marks(mark -> post((to, at) -> to.inject(mark.id(), at)));
    tasks = new Marks(mark -> station.tap(mark.id(), now()));
    faults = kit.column();
    remarks = kit.column();
    remarkTrouble = kit.boldLabel(" ", 13);
    begin = kit.button("Begin exercise", 'B', 181, () -> post((to, at) -> to.begin(at)));
    stop = kit.button("Stop the clock", 'C', 181, this::stopOrRun);
    end = kit.button(END, 'E', 181, this::end);
    projector = kit.button("Projector", 'P', 181, onProjector);
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

  private void post(ObjLongConsumer<StationPractice> action) {
    station.post(action, now());
  }

  private void stopOrRun() {
    boolean stopped = station.now().station().clockStopped();
    post(stopped ? StationPractice::runClock : StationPractice::stopClock);
  }

  private JScrollPane lay() {
    Column column = kit.column();
    column.note("Instructor's console. Not for the trainee's eyes.").gap(4);
    column.heading(station.now().station().station().title(), 4);
    column.put(clock, 8);
    column.put(kit.row(10, begin, stop), 8);
    JButton undo = kit.button("Undo task mark", 'U', 181, () -> station.undo(now()));
    column.put(kit.row(10, undo, projector), 8);
    column.put(end, 12);
    remark.addActionListener(e -> write());
    remark.setName("remark");
    column.put(kit.labelled("Remark, with its time (Enter)", 'R', remark));
    column.put(remarkTrouble).put(remarks, 10).put(said).put(faults);
    part(waysPart, "Ways not reached yet: choose, or leave it", ways);
    column.put(waysPart);
    part(column, "Findings of this station", findings);
    part(column, "Tasks (* critical): press to mark", tasks);
    MarkChanges.put(
        column,
        kit,
        station.now().station().station().tasks(),
        change -> post((to, at) -> to.mark(change, at)));
    part(column, "Other findings, which change the prompts only", prompts);
    column.note(Phrases.CAUTION);
    return kit.page(column, remark);
  }

  private static void part(Column column, String heading, Marks marks) {
    column.subheading(heading, 6).put(marks, 14);
  }

  private void write() {
    String words = remark.getText().trim();
    if (words.length() > StationRun.LONGEST_REMARK) {
      remarkTrouble.setText("At most " + StationRun.LONGEST_REMARK + " characters");
      return;
    }
    remarkTrouble.setText(" ");
    if (!words.isEmpty()) {
      post((to, at) -> to.remark(words, at));
      remark.setText("");
    }
  }

  private void frame() {
    LiveStation.Now at = station.now();
    StationState state = at.station();
    view = StationConsoleView.of(state, at.practice(), station.clock().nanos());
    Widgets.show(clock, view.clock());
    begin.setEnabled(state.phase() == StationPhase.PREPARATION);
    stop.setText(state.clockStopped() ? "Run the clock" : "Stop the clock");
    waysPart.setVisible(!view.ways().isEmpty());
    end.setText(finishGuard.waits(now()) ? "Again to end it" : END);
    ways.show(view.ways());
    findings.show(view.findings());
    prompts.show(view.prompts());
    tasks.show(view.tasks());
    showTexts();
  }

  private void showTexts() {
    if (!view.said().equals(saidShown)) {
      saidShown = view.said();
      list(said, "The examiner says", List.of(saidShown));
    }
    if (!view.faults().equals(faultsShown)) {
      faultsShown = view.faults();
      list(faults, "Broken so far (! critical)", faultsShown);
    }
    if (!view.remarks().equals(remarksShown)) {
      remarksShown = view.remarks();
      list(
          remarks,
          "Written down",
          remarksShown.subList(0, Math.min(REMARKS_SHOWN, remarksShown.size())));
    }
  }

  private void list(Column column, String heading, List<String> lines) {
    column.refill(
        () -> {
          column.bold(heading, 15);
          lines.forEach(line -> column.plain(line, 15));
          column.gap(10);
        });
  }

  private void toggle(StationConsoleView.Mark finding) {
    post(
        (to, at) -> {
          if (finding.on()) {
            to.clear(finding.id(), at);
          } else {
            to.inject(finding.id(), at);
          }
        });
  }

  private void end() {
    if (finishGuard.press(station.now().station().complete(), now())) {
      post((to, at) -> to.end(at));
    }
  }

  /** Buttons of one kind, two beside each other. */
  private final class Marks extends JPanel {
    private static final long serialVersionUID = 1L;

    private final transient Consumer<StationConsoleView.Mark> pressed;
    private final transient List<TaskButton> buttons = new ArrayList<>();
    private transient List<StationConsoleView.Mark> shown = List.of();

    Marks(Consumer<StationConsoleView.Mark> pressed) {
      super(new GridLayout(0, 2, look.px(6), look.px(6)));
      this.pressed = pressed;
      setOpaque(false);
      setAlignmentX(LEFT_ALIGNMENT);
    }

    void show(List<StationConsoleView.Mark> marks) {
      shown = marks;
      while (buttons.size() < marks.size()) {
        TaskButton button = new TaskButton(look, 14, false);
        button.addActionListener(e -> pressed.accept(shown.get(buttons.indexOf(button))));
        buttons.add(button);
        add(kit.comesIntoView(button));
      }
      while (buttons.size() > marks.size()) {
        remove(buttons.remove(buttons.size() - 1));
      }
      int rows = (marks.size() + 1) / 2;
      Dimension size =
          new Dimension(look.px(Widgets.CONTENT_WIDTH), rows * look.px(64) - look.px(6));
      if (!marks.isEmpty() && !size.equals(getPreferredSize())) {
        Widgets.fix(this, size);
        revalidate();
      }
      for (int i = 0; i < marks.size(); i++) {
        StationConsoleView.Mark mark = marks.get(i);
        buttons.get(i).show(mark.words(), "", mark.status(), mark.on(), mark.done());
      }
    }
  }
}
