package squeezewell.desktop.screens;

import squeezewell.desktop.parts.Rows;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.GridLayout;
import java.awt.Toolkit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.SwingConstants;
import javax.swing.Timer;
import squeezewell.coach.CoachState;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.AdviceCard;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.PromptWords;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.TaskButton;
import squeezewell.desktop.parts.TideColumn;
import squeezewell.desktop.parts.TimeBar;
import squeezewell.live.LiveStation;
import squeezewell.station.StationPhase;
import squeezewell.station.StationState;

/** The screen of a running station. One tap or one key does each thing. */
public final class StationRunScreen extends JPanel {
  /** The least width at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_WIDTH = 350;

  /** The least height at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_HEIGHT = 640;

  /** The letters that do something here, beside those of a practice. */
  public static final String LETTERS = StationRunView.LETTERS + StationRunView.NEXT_KEY;

  private static final long serialVersionUID = 1L;
  private static final int FRAME_MILLIS = 33;
  private static final int LARGEST_COUNT_OF_COLUMNS = 2;
  private static final String PREPARE = "prepare";
  private static final String BREATHE = "breathe";

  private final transient Kit kit;
  private final transient Look look;
  private final transient LiveStation station;
  private final transient PracticeKeys keys;
  private final transient FinishGuard finishGuard;
  private final transient Ticks ticks;
  private final transient Supplier<String> notice;
  private final transient BooleanSupplier muted;
  private final transient LivePainter painter;
  private final JLabel phase;
  private final JLabel left;
  private final JLabel oxygen;
  private final JLabel asked;
  private final JLabel noticeLine;
  private final TimeBar bar;
  private final AdviceCard examiner;
  private final AdviceCard advice;
  private final TaskButton next;
  private final JPanel list;
  private final TideColumn tide;
  private final PromptWords words;
  private final Pads pads;
  private final CardLayout lowerCards = new CardLayout();
  private final JPanel lower = new JPanel(lowerCards);
  private final ActionButton undo;
  private final ActionButton leaveOut;
  private final ActionButton mute;
  private final ActionButton pause;
  private final ActionButton finish;
  private final List<TaskButton> buttons = new ArrayList<>();
  private JScrollPane tasks;
  private transient Rows rows;
  private boolean preparing;
  private String nextShown = "";
  private transient StationRunView view;
  private final Timer frames = new Timer(FRAME_MILLIS, e -> frame());

  /**
   * Builds the screen.
   *
   * @param kit makes the parts
   * @param station what is shown and told
   * @param keys the keys of a practice; listening while the screen is shown
   * @param finishGuard whether a second press ends the station
   * @param ticks what of the kit is ticked off
   * @param notice what a person must know about sound or saving; empty if all is well
   * @param muted whether the sound is muted
   */
  public StationRunScreen(
      Kit kit,
      LiveStation station,
      PracticeKeys keys,
      FinishGuard finishGuard,
      Ticks ticks,
      Supplier<String> notice,
      BooleanSupplier muted) {
    this.kit = kit;
    look = kit.look();
    this.station = station;
    this.keys = keys;
    this.finishGuard = finishGuard;
    this.ticks = ticks;
    this.notice = notice;
    this.muted = muted;
    setBackground(look.palette().ground());
    int side = look.px(Kit.MARGIN);
    setBorder(BorderFactory.createEmptyBorder(look.px(10), side, look.px(6), side));
    phase = kit.label("", look.bold(15), look.palette().text());
    left = kit.label("0:00", look.bold(34), look.palette().text());
    oxygen = kit.label("", look.bold(13), look.palette().text());
    asked = kit.label("", look.font(13), look.palette().softText());
    noticeLine = kit.label(" ", look.bold(13), look.palette().text());
    noticeLine.setHorizontalAlignment(SwingConstants.CENTER);
    bar = new TimeBar(look);
    bar.setPreferredSize(new Dimension(look.px(372), look.px(38)));
    examiner = new AdviceCard(look, "What the examiner says", 12, 19);
    advice = new AdviceCard(look);
    next = new TaskButton(look, 20, true);
    next.addActionListener(e -> choose(StationRunView.NEXT_KEY, EventTime.nanoTimeOf(e.getWhen())));
    list = new JPanel(new GridLayout(0, LARGEST_COUNT_OF_COLUMNS, look.px(6), look.px(6)));
    list.setBackground(look.palette().ground());
    list.setBorder(BorderFactory.createEmptyBorder(0, 0, 0, look.px(Kit.SCROLL_BAR)));
    tide = new TideColumn(look);
    words = new PromptWords(look);
    painter = new LivePainter(tide, words, new Ribbon(look));
    pads = new Pads(look, keys, station::post).high(72, 64);
    undo = action("Undo tap", "Z", PracticeKeys.Action.UNDO_FINDING);
    leaveOut = action("Undo breath", "Backspace", PracticeKeys.Action.RETRACT_BREATH);
    pause = action("Stop clock", "Esc", PracticeKeys.Action.PAUSE);
    mute = action("Mute", "M", PracticeKeys.Action.MUTE);
    finish = action("Finish", "End", PracticeKeys.Action.FINISH);
    lay();
    frame();
    addAncestorListener(Focus.on(pads.forFocus()));
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
    view.item(key)
        .ifPresent(
            item -> {
              switch (item.kind()) {
                case TASK -> station.tap(item.id(), nanoTime);
                case ORDER -> station.post((to, at) -> to.order(item.id(), at), nanoTime);
                case BEGIN -> station.post((to, at) -> to.begin(at), nanoTime);
              }
            });
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

    JPanel top = new JPanel(new BorderLayout());
    top.setBackground(look.palette().ground());
    top.add(list, BorderLayout.NORTH);
    JScrollPane scroll = new JScrollPane(top);
    scroll.setBorder(BorderFactory.createEmptyBorder());
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    scroll.getVerticalScrollBar().setUnitIncrement(look.px(32));
    scroll.getViewport().setBackground(look.palette().ground());
    scroll.setMinimumSize(new Dimension(look.px(200), look.px(110)));
    scroll.setPreferredSize(new Dimension(look.px(372), look.px(122)));

    lower.setOpaque(false);
    lower.add(breathing(), BREATHE);
    lower.add(StationPreparation.of(kit, station.now().station().station(), ticks), PREPARE);
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

    tasks = scroll;
    rows = new Rows(this);
    rows.add(header, 0, look.px(6))
        .add(bar, 0, look.px(8))
        .add(examiner, 0, look.px(8))
        // Below, since a card that comes must not move the button under the finger that taps it.
        .add(next, 0, look.px(8))
        .add(advice, 0, look.px(6))
        .add(tasks, 0.7, look.px(8))
        .add(lower, 0.3, look.px(8))
        .add(actions, 0, look.px(2))
        .add(noticeLine, 0, 0)
        .add(caution, 0, 0);
  }

  private void size(JComponent part, int width, int height, int least) {
    part.setPreferredSize(new Dimension(look.px(width), look.px(height)));
    part.setMinimumSize(new Dimension(look.px(200), look.px(least)));
  }

  private JComponent breathing() {
    JPanel prompt = new JPanel();
    prompt.setLayout(new BoxLayout(prompt, BoxLayout.X_AXIS));
    prompt.setOpaque(false);
    tide.setPreferredSize(new Dimension(look.px(96), look.px(100)));
    tide.setMinimumSize(new Dimension(look.px(96), look.px(80)));
    tide.setMaximumSize(new Dimension(look.px(96), Integer.MAX_VALUE));
    words.setPreferredSize(new Dimension(look.px(268), look.px(100)));
    prompt.add(tide);
    prompt.add(Box.createHorizontalStrut(look.px(8)));
    prompt.add(words);
    prompt.setMinimumSize(new Dimension(look.px(200), look.px(80)));
    prompt.setPreferredSize(new Dimension(look.px(372), look.px(100)));
    JPanel whole = new JPanel();
    whole.setOpaque(false);
    new Rows(whole).add(prompt, 0.5, look.px(2)).add(asked, 0, look.px(4)).add(pads, 0.5, 0);
    asked.setHorizontalAlignment(SwingConstants.CENTER);
    return whole;
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
    showBar(at, now);
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
    showItems();
    showLower(state.phase() == StationPhase.PREPARATION);
    showPads(at, now);
    undo.setEnabled(at.slip().isPresent());
    undo.show("Undo tap", at.slip().isPresent());
    pause.show(state.clockStopped() ? "Run clock" : "Stop clock", state.clockStopped());
    mute.show(muted.getAsBoolean() ? "Sound on" : "Mute", muted.getAsBoolean());
    String trouble = practice.trouble().isEmpty() ? notice.get() : practice.trouble();
    String slip = at.slip().map(s -> "Tapped: " + s.words() + ". Z takes it back.").orElse("");
    boolean ends = finishGuard.waits(System.nanoTime());
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
    rows.share(tasks, nowPreparing ? 0 : 0.7);
    revalidate();
  }

  /** The practice's own checks press too, once breaths are paced. */
  private void showBar(LiveStation.Now at, long now) {
    LivePainter.Lines lines = null;
    if (at.breathing()) {
      lines = painter.paint(at.practice(), now);
      Kit.show(asked, lines.asked());
    } else {
      painter.rest();
      Kit.show(asked, "The first squeeze starts the rhythm");
    }
    boolean practicePresses = lines != null && lines.barUrgent() && !view.barUrgent();
    if (practicePresses) {
      bar.show(lines.bar(), lines.barFill(), true);
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
        pads.forFocus().requestFocusInWindow();
      }
      next.setEnabled(false);
    }
  }

  private void showItems() {
    List<StationRunView.Item> items = view.items();
    while (buttons.size() < items.size()) {
      int place = buttons.size();
      TaskButton button = new TaskButton(look, 14, false);
      button.addActionListener(e -> tapped(place, EventTime.nanoTimeOf(e.getWhen())));
      buttons.add(button);
      list.add(kit.comesIntoView(button));
      list.revalidate();
    }
    while (buttons.size() > items.size()) {
      list.remove(buttons.remove(buttons.size() - 1));
      list.revalidate();
      list.repaint();
    }
    for (int i = 0; i < items.size(); i++) {
      StationRunView.Item item = items.get(i);
      buttons.get(i).show(item.words(), item.keyName(), item.status(), item.on(), item.done());
    }
    showWhatIsNext(items);
  }

  /** The list moves to what is next when that changes, and else stays where a person moved it. */
  private void showWhatIsNext(List<StationRunView.Item> items) {
    String id = view.next().map(StationRunView.Item::id).orElse("");
    if (id.equals(nextShown) || !list.isValid()) {
      return;
    }
    nextShown = id;
    for (int i = 0; i < items.size(); i++) {
      if (items.get(i).id().equals(id)) {
        list.scrollRectToVisible(buttons.get(i).getBounds());
      }
    }
  }

  private void tapped(int place, long nanoTime) {
    if (place < view.items().size()) {
      StationRunView.Item item = view.items().get(place);
      if (item.kind() == StationRunView.Kind.ORDER) {
        station.post((to, at) -> to.order(item.id(), at), nanoTime);
      } else {
        station.tap(item.id(), nanoTime);
      }
    }
  }

  private void showPads(LiveStation.Now at, long now) {
    CoachState practice = at.practice();
    pads.showCompressions(practice, now);
    boolean stopped = at.station().clockStopped();
    pads.showBreath(
        practice.squeezing(),
        stopped ? "Clock stopped" : practice.squeezing() ? "Squeezing" : "Hold while you squeeze",
        stopped ? "Run clock, or Esc" : keys.squeezeHint());
  }
}
