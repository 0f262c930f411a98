package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.GridLayout;
import java.awt.Toolkit;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import javax.swing.Timer;
import squeezewell.coach.CoachState;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.AdviceCard;
import squeezewell.desktop.parts.Focus;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.Rows;
import squeezewell.desktop.parts.TaskButton;
import squeezewell.desktop.parts.TimeBar;
import squeezewell.live.LiveStation;
import squeezewell.station.file.StationPhase;
import squeezewell.station.run.StationState;

/** The screen of a running station. One tap or one key does each thing. */
public final class StationRunScreen extends JPanel {
  /** The least width at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_WIDTH = 350;

  /** The least height at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_HEIGHT = 640;

  /** The letters that do something here, beside those of a practice. */
  public static final String LETTERS = StationItems.LETTERS + StationRunView.NEXT_KEY;

  private static final long serialVersionUID = 1L;
  private static final int FRAME_MILLIS = 33;
  private static final String PREPARE = "prepare";
  private static final String BREATHE = "breathe";

  private final transient Kit kit;
  private final transient Look look;
  private final transient LiveStation station;
  private final transient PracticeKeys keys;
  private final transient Kept kept;
  private final transient SoundLine sound;
  private final JLabel phase;
  private final JLabel left;
  private final JLabel oxygen;
  private final JLabel noticeLine;
  private final TimeBar bar;
  private final AdviceCard examiner;
  private final AdviceCard advice;
  private final TaskButton next;
  private final transient StationTaskList list;
  private final StationBreathing breathing;
  private final CardLayout lowerCards = new CardLayout();
  private final JPanel lower = new JPanel(lowerCards);
  private final ActionButton undo;
  private final ActionButton leaveOut;
  private final ActionButton mute;
  private final ActionButton pause;
  private final ActionButton finish;
  private final transient Rows rows = new Rows(this);
  private boolean preparing;
  private transient StationRunView view;
  private final Timer frames = new Timer(FRAME_MILLIS, e -> frame());

  /**
   * What outlives the screen when it is made anew in another size.
   *
   * @param finishGuard whether a second press ends the station
   * @param ticks what of the kit is ticked off
   */
  public record Kept(FinishGuard finishGuard, Ticks ticks) {}

  /**
   * Builds the screen.
   *
   * @param kit makes the parts
   * @param station what is shown and told
   * @param keys the keys of a practice; listening while the screen is shown
   * @param kept what outlives the screen
   * @param sound what is told of sound and saving
   */
  public StationRunScreen(
      Kit kit, LiveStation station, PracticeKeys keys, Kept kept, SoundLine sound) {
    this.kit = kit;
    look = kit.look();
    this.station = station;
    this.keys = keys;
    this.kept = kept;
    this.sound = sound;
    setBackground(look.palette().ground());
    int side = look.px(Kit.MARGIN);
    setBorder(BorderFactory.createEmptyBorder(look.px(10), side, look.px(6), side));
    phase = kit.label("", look.bold(15), look.palette().text());
    left = kit.label("0:00", look.bold(34), look.palette().text());
    oxygen = kit.label("", look.bold(13), look.palette().text());
    noticeLine = kit.label(" ", look.bold(13), look.palette().text());
    noticeLine.setHorizontalAlignment(SwingConstants.CENTER);
    bar = new TimeBar(look);
    bar.setPreferredSize(new Dimension(look.px(372), look.px(38)));
    examiner = new AdviceCard(look, "What the examiner says", 12, 19);
    advice = new AdviceCard(look);
    next = new TaskButton(look, 20, true);
    next.addActionListener(e -> choose(StationRunView.NEXT_KEY, EventTime.nanoTimeOf(e.getWhen())));
    list = new StationTaskList(kit, this::tap);
    breathing = new StationBreathing(kit, keys, station::post);
    undo = action("Undo tap", "Z", PracticeKeys.Action.UNDO_FINDING);
    leaveOut = action("Undo breath", "Backspace", PracticeKeys.Action.RETRACT_BREATH);
    pause = action("Stop clock", "Esc", PracticeKeys.Action.PAUSE);
    mute = action("Mute", "M", PracticeKeys.Action.MUTE);
    finish = action("Finish", "End", PracticeKeys.Action.FINISH);
    lay();
    frame();
    addAncestorListener(Focus.on(breathing.forFocus()));
  }

  /** Starts drawing and listening. */
  public void open() {
    keys.listen();
    frames.start();
    frame();
  }

  /** Stops drawing and listening. */
  public void close() {
    frames.stop();
    keys.ignore();
  }

  /** Does what a key stands for, if anything does. */
  public void choose(char key, long nanoTime) {
    view.item(key).ifPresent(item -> tap(item, nanoTime));
  }

  private void tap(StationRunView.Item item, long nanoTime) {
    switch (item.kind()) {
      case TASK -> station.tap(item.id(), nanoTime);
      case ORDER -> station.post((to, at) -> to.order(item.id(), at), nanoTime);
      case BEGIN -> station.post((to, at) -> to.begin(at), nanoTime);
    }
  }

  private ActionButton action(String text, String key, PracticeKeys.Action action) {
    ActionButton button = new ActionButton(look, text, key);
    button.addActionListener(e -> keys.act(action, EventTime.nanoTimeOf(e.getWhen())));
    return button;
  }

  private void lay() {
    JPanel names = new JPanel(new GridLayout(2, 1));
    names.setOpaque(false);
    names.add(phase);
    JPanel second = new JPanel(new BorderLayout());
    second.setOpaque(false);
    second.add(oxygen, BorderLayout.CENTER);
    names.add(second);
    JPanel header = new JPanel(new BorderLayout(look.px(8), 0));
    header.setOpaque(false);
    header.add(names, BorderLayout.CENTER);
    header.add(left, BorderLayout.EAST);

    size(examiner, 372, 74, 60);
    size(advice, 372, 62, 48);
    advice.setVisible(false);
    size(next, 372, 64, 52);

    lower.setOpaque(false);
    lower.add(breathing, BREATHE);
    lower.add(StationPreparation.of(kit, station.now().station().station(), kept.ticks()), PREPARE);
    lower.setMinimumSize(new Dimension(look.px(200), look.px(190)));
    lower.setPreferredSize(new Dimension(look.px(372), look.px(190)));

    JPanel actions = new JPanel(new GridLayout(1, 0, look.px(6), 0));
    actions.setOpaque(false);
    for (Component button : new Component[] {undo, leaveOut, pause, mute, finish}) {
      actions.add(button);
    }
    actions.setMinimumSize(new Dimension(look.px(200), look.px(48)));
    actions.setPreferredSize(new Dimension(look.px(372), look.px(50)));
    JLabel caution = kit.label(Phrases.CAUTION, look.font(11), look.palette().softText());
    caution.setHorizontalAlignment(SwingConstants.CENTER);

    rows.add(header, 0, look.px(6))
        .add(bar, 0, look.px(8))
        .add(examiner, 0, look.px(8))
        // Below, since a card that comes must not move the button under the finger that taps it.
        .add(next, 0, look.px(8))
        .add(advice, 0, look.px(6))
        .add(list.page(), 0.7, look.px(8))
        .add(lower, 0.3, look.px(8))
        .add(actions, 0, look.px(2))
        .add(noticeLine, 0, 0)
        .add(caution, 0, 0);
  }

  private void size(JComponent part, int width, int height, int least) {
    part.setPreferredSize(new Dimension(look.px(width), look.px(height)));
    part.setMinimumSize(new Dimension(look.px(200), look.px(least)));
  }

  private void frame() {
    LiveStation.Now at = station.now();
    long now = station.clock().nanos();
    CoachState practice = at.practice();
    StationState state = at.station();
    view = StationRunView.of(state, now);
    Kit.show(phase, view.phase());
    Kit.show(left, view.left());
    left.setForeground(view.leftUrgent() ? look.palette().sand() : look.palette().text());
    Kit.show(oxygen, view.oxygen());
    showBreathsAndBar(at, now);
    examiner.show(
        view.examiner().isEmpty() ? state.station().title() : view.examinerWhen(),
        view.examiner().isEmpty() ? opening(state) : view.examiner());
    Optional<FindingsView.Told> told = FindingsView.told(practice, now);
    told.ifPresent(t -> advice.show(t.title(), t.text()));
    if (told.isPresent() != advice.isVisible()) {
      advice.setVisible(told.isPresent());
      revalidate();
    }
    showNext(state);
    list.show(view);
    showLower(state.phase() == StationPhase.PREPARATION);
    undo.setEnabled(at.slip().isPresent());
    undo.show("Undo tap", at.slip().isPresent());
    pause.show(state.clockStopped() ? "Run clock" : "Stop clock", state.clockStopped());
    mute.show(sound.muted().getAsBoolean() ? "Sound on" : "Mute", sound.muted().getAsBoolean());
    String trouble = practice.trouble().isEmpty() ? sound.notice().get() : practice.trouble();
    String slip = at.slip().map(s -> "Tapped: " + s.words() + ". Z takes it back.").orElse("");
    boolean ends = kept.finishGuard().waits(System.nanoTime());
    finish.show(ends ? "Really?" : "Finish", ends);
    String text = ends ? StationRunView.finishWarning(state) : trouble.isEmpty() ? slip : trouble;
    Kit.show(noticeLine, text.isEmpty() ? " " : text);
    Toolkit.getDefaultToolkit().sync();
  }

  private static String opening(StationState state) {
    return state.phase() == StationPhase.PREPARATION
        ? "Read what is reported, check the kit, then begin."
        : "Tell what you do, and tap it.";
  }

  /** Before the exercise the kit needs the room, in it the tasks. */
  private void showLower(boolean nowPreparing) {
    if (nowPreparing == preparing) {
      return;
    }
    preparing = nowPreparing;
    lowerCards.show(lower, nowPreparing ? PREPARE : BREATHE);
    rows.share(lower, nowPreparing ? 0.7 : 0.3);
    rows.share(list.page(), nowPreparing ? 0 : 0.7);
    revalidate();
  }

  /** The practice's own checks press too, once breaths are paced. */
  private void showBreathsAndBar(LiveStation.Now at, long now) {
    Optional<LivePainter.Lines> presses =
        breathing.show(at, now).filter(lines -> lines.barUrgent() && !view.barUrgent());
    if (presses.isPresent()) {
      bar.show(presses.get().bar(), presses.get().barFill(), true);
    } else {
      bar.show(view.bar(), view.barFill(), view.barUrgent());
    }
  }

  private void showNext(StationState state) {
    if (view.next().isPresent()) {
      StationRunView.Item item = view.next().get();
      next.show(
          StationRunView.lead(item),
          String.valueOf(StationRunView.NEXT_KEY),
          item.status() + (StationRunView.isRunning(item) ? ", tap when done" : ""),
          false,
          false);
      next.setEnabled(true);
    } else {
      next.show(
          state.complete()
              ? "All is done: breathe on"
              : StationRunView.breathsLeft(state).orElse("Breathe on"),
          "",
          "until the time is up, or Finish",
          false,
          false);
      if (next.isFocusOwner()) {
        breathing.forFocus().requestFocusInWindow();
      }
      next.setEnabled(false);
    }
  }
}
