package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Dimension;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JPanel;
import squeezewell.coach.CoachState;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.AdviceCard;
import squeezewell.desktop.parts.Focus;
import squeezewell.desktop.parts.Rows;
import squeezewell.desktop.parts.TaskButton;
import squeezewell.desktop.parts.Widgets;
import squeezewell.live.LiveStation;
import squeezewell.station.file.StationPhase;
import squeezewell.station.run.StationState;

/** The screen of a running station. One tap or one key does each thing. */
public final class StationRunScreen extends KeyedScreen {
  /** The least width at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_WIDTH = 350;

  /** The least height at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_HEIGHT = 640;

  /** The letters that do something here, beside those of a practice. */
  public static final String LETTERS = StationItems.LETTERS + StationRunView.NEXT_KEY;

  private static final long serialVersionUID = 1L;
  private static final String PREPARE = "prepare";
  private static final String BREATHE = "breathe";

  private final transient LiveStation station;
  private final transient Ticks ticks;
  private final JLabel phase;
  private final JLabel left;
  private final JLabel oxygen;
  private final AdviceCard examiner;
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

  /**
   * Builds the screen.
   *
   * @param kit makes the parts
   * @param station what is shown and told
   * @param keys the keys of a practice; listening while the screen is shown
   * @param ticks what outlives the screen
   * @param sound what is told of sound and saving
   */
  public StationRunScreen(
      Widgets kit, LiveStation station, PracticeKeys keys, Ticks ticks, SoundLine sound) {
    super(kit, keys, sound, 10, 6);
    this.station = station;
    this.ticks = ticks;
    phase = kit.boldLabel("", 15);
    left = kit.boldLabel("0:00", 34);
    oxygen = kit.boldLabel("", 13);
    bar.setPreferredSize(new Dimension(look.px(Widgets.CONTENT_WIDTH), look.px(38)));
    examiner = new AdviceCard(look, "What the examiner says", 12, 19);
    next = new TaskButton(look, 20, true);
    next.addActionListener(e -> choose(StationRunView.NEXT_KEY, keys.at(e.getWhen())));
    list = new StationTaskList(kit, (item, when) -> tap(item, keys.at(when)));
    breathing = new StationBreathing(kit, keys, station::post);
    undo = action("Undo tap", "Z", PracticeKeys.Action.UNDO_FINDING);
    leaveOut = action("Undo breath", "Backspace", PracticeKeys.Action.RETRACT_BREATH);
    pause = action("Stop clock", "Esc", PracticeKeys.Action.PAUSE);
    mute = action("Mute", "M", PracticeKeys.Action.MUTE);
    finish = finishButton();
    lay();
    frame();
    addAncestorListener(Focus.on(breathing.forFocus()));
  }

  /** Does what a key stands for, if anything does. */
  public void choose(char key, long nanoTime) {
    view.item(key).ifPresent(item -> tap(item, nanoTime));
  }

  private void tap(StationItem item, long nanoTime) {
    switch (item.kind()) {
      case TASK -> station.tap(item.id(), nanoTime);
      case ORDER -> station.post((to, at) -> to.order(item.id(), at), nanoTime);
      case BEGIN -> station.post((to, at) -> to.begin(at), nanoTime);
    }
  }

  private void lay() {
    JPanel second = new JPanel(new BorderLayout());
    second.setOpaque(false);
    second.add(oxygen, BorderLayout.CENTER);
    JPanel header = new JPanel(new BorderLayout(look.px(8), 0));
    header.setOpaque(false);
    header.add(grid(2, 0, phase, second), BorderLayout.CENTER);
    header.add(left, BorderLayout.EAST);
    high(examiner, 74, 60);
    high(advice, 62, 48).setVisible(false);
    high(next, 64, 52);
    lower.setOpaque(false);
    lower.add(breathing, BREATHE);
    lower.add(StationPreparation.of(kit, station.now().station().station(), ticks), PREPARE);
    high(lower, 190, 190);
    JPanel actions = high(grid(1, 6, undo, leaveOut, pause, mute, finish), 50, 48);
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

  @Override
  void frame() {
    LiveStation.Now at = station.now();
    long now = station.clock().nanos();
    CoachState practice = at.practice();
    StationState state = at.station();
    view = StationRunView.of(state, now);
    Widgets.show(phase, view.phase());
    Widgets.show(left, view.left());
    left.setForeground(view.leftUrgent() ? look.palette().sand() : look.palette().text());
    Widgets.show(oxygen, view.oxygen());
    showBreathsAndBar(at, now);
    examiner.show(
        view.examiner().isEmpty() ? state.station().title() : view.examinerWhen(),
        view.examiner().isEmpty() ? opening(state) : view.examiner());
    if (comesOrGoes(practice, now)) {
      advice.setVisible(!advice.isVisible());
      revalidate();
    }
    showNext(state);
    list.show(view);
    showLower(state.phase() == StationPhase.PREPARATION);
    undo.setEnabled(at.slip().isPresent());
    undo.show("Undo tap", at.slip().isPresent());
    pause.show(state.clockStopped() ? "Run clock" : "Stop clock", state.clockStopped());
    showMute(mute);
    String trouble = practice.trouble().isEmpty() ? sound.notice().get() : practice.trouble();
    String slip = at.slip().map(s -> "Tapped: " + s.words() + ". Z takes it back.").orElse("");
    tellOrHint(trouble.isEmpty() ? slip : trouble);
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
    Optional<BarLine> presses = breathing.show(at, now).map(lines -> lines.view().bar());
    show(view.bar().urgent() ? view.bar() : presses.filter(BarLine::urgent).orElse(view.bar()));
  }

  private void showNext(StationState state) {
    if (view.next().isPresent()) {
      StationItem item = view.next().get();
      next.show(
          item.lead(),
          String.valueOf(StationRunView.NEXT_KEY),
          item.status() + (item.runs() ? ", tap when done" : ""),
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
