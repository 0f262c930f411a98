package squeezewell.desktop.screens.live;

import java.awt.Component;
import java.awt.Rectangle;
import java.awt.Toolkit;
import java.awt.event.ActionEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongConsumer;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.JLayeredPane;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.Segment;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.look.Sign;
import squeezewell.desktop.parts.Focus;
import squeezewell.desktop.screens.CompressionView;
import squeezewell.desktop.screens.FindingsView;
import squeezewell.desktop.screens.Phrases;
import squeezewell.desktop.screens.RunningView;
import squeezewell.desktop.screens.SoundLine;
import squeezewell.desktop.screens.live.LiveFace.Ground;
import squeezewell.files.Comfort;
import squeezewell.live.Steered;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.Protocol;
import squeezewell.session.Breath;
import squeezewell.words.Quantities;

/**
 * The screen of a running practice. The hands stay where they are: the pads and what lies below
 * them never move, and what opens slides over the rest.
 */
public final class LiveScreen extends JLayeredPane implements RunningView {
  private static final long serialVersionUID = 1L;
  private static final int FRAME_MILLIS = 33;
  private static final long TELL_NANOS = 3_000_000_000L;

  /** The ribbon moves some ten pixels a second; more frames than this can't be seen. */
  private static final long RIBBON_FRAME_NANOS = 90_000_000L;

  private final transient Look look;
  private final transient Steered practice;
  private final transient PracticeKeys keys;
  private final transient SoundLine sound;
  private final transient Comfort comfort;
  private final transient Runnable projector;
  private final String edition;
  private final LiveStage stage;
  private final LivePad breath;
  private final LivePad compression;
  private final LiveAction undo;
  private final LivePanel.Finish atRest;
  private final List<LiveAction> actions = new ArrayList<>();
  private final Timer frames = new Timer(FRAME_MILLIS, e -> frame());
  private transient Optional<LivePanel> panel = Optional.empty();
  private transient Optional<LivePanel.Finish> finish = Optional.empty();
  private transient Optional<FindingsView> offered = Optional.empty();
  private transient List<CheckAnswer> answers = List.of();
  private transient LiveFace face;
  private transient LivePlaces places;
  private String actionsShown = "";
  private String notice = "";
  private boolean compressing;
  private int breathsShown;
  private long removedAt = -TELL_NANOS;
  private long ribbonAt = -RIBBON_FRAME_NANOS;
  private long finishShortAt = System.nanoTime() - TELL_NANOS;

  /**
   * Builds the screen.
   *
   * @param practice what is shown and told
   * @param protocol the edition that is followed
   * @param keys the keys of a practice; listening while the screen is shown
   * @param sound what is told of sound and saving
   * @param comfort what suits a person's eyes and hands
   * @param projector opens the projector window, or closes it
   */
  public LiveScreen(
      Look look,
      Steered practice,
      Protocol protocol,
      PracticeKeys keys,
      SoundLine sound,
      Comfort comfort,
      Runnable projector) {
    this.look = look;
    this.practice = practice;
    this.keys = keys;
    this.sound = sound;
    this.comfort = comfort;
    this.projector = projector;
    edition = Phrases.edition(protocol);
    setOpaque(true);
    setBackground(look.palette().ground());
    stage = new LiveStage(look);
    breath =
        new LivePad(
            look,
            Faces.say("pad.name"),
            Faces.say("pad.description"),
            when -> post(Command.SQUEEZE, when),
            when -> post(Command.SQUEEZE_END, when));
    compression =
        new LivePad(
            look,
            Faces.say("compress.name"),
            Faces.say("compress.description"),
            when -> post(Command.COMPRESS, when),
            when -> {});
    undo = new LiveAction(look, Sign.UNDO, Faces.say("undo"), "Z", "");
    undo.addActionListener(e -> keys.act(PracticeKeys.Action.UNDO_FINDING, keys.at(e.getWhen())));
    undo.setVisible(false);
    compression.setVisible(false);
    atRest = finish();
    atRest.setVisible(false);
    add(stage, DEFAULT_LAYER);
    add(breath, PALETTE_LAYER);
    add(compression, PALETTE_LAYER);
    add(undo, PALETTE_LAYER);
    add(atRest, PALETTE_LAYER);
    see(practice.nowNanos());
    showActions(practice.state(), practice.nowNanos());
    addAncestorListener(Focus.on(breath));
  }

  private void post(Command command, long whenMillis) {
    if (comfort.touchSqueezes() || command == Command.COMPRESS) {
      practice.post(command, keys.at(whenMillis));
    }
  }

  @Override
  public void open() {
    keys.listen();
    frames.start();
    frame();
  }

  @Override
  public void close() {
    frames.stop();
    keys.ignore();
  }

  @Override
  public void finishWasShort() {
    finishShortAt = System.nanoTime();
  }

  @Override
  public boolean isOptimizedDrawingEnabled() {
    return false;
  }

  @Override
  public void doLayout() {
    layOut();
  }

  private void layOut() {
    if (getWidth() == 0 || getHeight() == 0) {
      return;
    }
    int lines = adviceLines();
    places =
        LivePlaces.of(
            new LivePlaces.Room(
                getWidth(), getHeight(), look.scale(), true, lines, notice.isEmpty() ? 0 : 1));
    if (comfort.leftHanded()) {
      places = places.mirrored();
    }
    stage.setBounds(0, 0, getWidth(), getHeight());
    stage.place(places);
    Rectangle pads = places.pads();
    int between = (int) (8 * places.unit());
    int half = (pads.width - between) / 2;
    compression.setVisible(compressing);
    compression.setBounds(pads.x, pads.y, half, pads.height);
    breath.setBounds(
        compressing ? pads.x + half + between : pads.x,
        pads.y,
        compressing ? pads.width - half - between : pads.width,
        pads.height);
    layOutActions();
    Rectangle told = places.feedback();
    int wide = Math.min(told.width / 3, look.px(112));
    undo.setBounds(told.x + told.width - wide - 6, told.y + 3, wide, told.height - 6);
    Rectangle end = new Rectangle(told);
    if (!places.wide() && places.ribbon().height > 0) {
      end.add(places.ribbon());
    }
    atRest.setBounds(end);
    panel.ifPresent(open -> open.setBounds(panelPlace()));
    panel.ifPresent(LivePanel::doLayout);
  }

  private int adviceLines() {
    if (!face.advice().isPresent()) {
      return 0;
    }
    int room = Math.max(120, Math.min(getWidth(), 420) - 60);
    var metrics = getFontMetrics(look.font(16));
    int lines =
        squeezewell.words.WrappedText.lines(face.advice().get().text(), room, metrics::stringWidth)
            .size();
    return Math.min(lines, getHeight() < 700 ? 2 : 5);
  }

  private void layOutActions() {
    Rectangle at = places.actions();
    int shown = actions.size();
    if (shown == 0) {
      return;
    }
    boolean answering = !answers.isEmpty();
    int columns = answering ? Math.min(shown, places.columns() == 2 ? 2 : 3) : places.columns();
    int rows = (shown + columns - 1) / columns;
    int between = (int) (8 * places.unit());
    int wide = (at.width - (columns - 1) * between) / columns;
    int high = (at.height - (rows - 1) * between) / rows;
    for (int i = 0; i < shown; i++) {
      boolean alone = i == shown - 1 && i % columns == 0;
      actions
          .get(i)
          .setBounds(
              at.x + (i % columns) * (wide + between),
              at.y + (i / columns) * (high + between),
              alone ? at.width : wide,
              high);
    }
  }

  /** Over column and ribbon. */
  private Rectangle panelPlace() {
    if (places.wide()) {
      int top = places.vessel().y;
      int left = places.touch().x > 0 ? 0 : places.touch().width;
      return new Rectangle(left, top, getWidth() - places.touch().width, getHeight() - top);
    }
    int top = places.strip().y + places.strip().height / 2 + (int) (38 * places.unit());
    return new Rectangle(0, top, getWidth(), places.pads().y - 8 - top);
  }

  /** Offers what may have changed, or takes the offer away. */
  public void toggleChanges() {
    boolean wasOffered = offered.isPresent();
    closePanel();
    if (wasOffered || practice.state().finished()) {
      return;
    }
    FindingsView view = FindingsView.of(practice.state());
    offered = Optional.of(view);
    LivePanel open = new LivePanel(look, Faces.say("changes.title"), 2, this::closePanel);
    for (FindingsView.Offer choice : view.choices()) {
      open.tile(
          sign(choice.finding()),
          choice.label(),
          Integer.toString(choice.key()),
          choice.leads(),
          e -> choose(choice.key(), keys.at(e.getWhen())));
    }
    open.getAccessibleContext().setAccessibleName(view.spoken());
    show(open);
    // Not the first button: a change is noted by its digit or by going to it.
    open.requestFocusInWindow();
  }

  private static Sign sign(PatientChange change) {
    return switch (change) {
      case PULSE_LOST -> Sign.NO_PULSE;
      case PULSE_BACK, HEART_RATE_LOW, HEART_RATE_UP -> Sign.CHECK;
      case BREATHING_BACK, BREATHING_STOPPED, BREATHING_SLOW -> Sign.LUNGS;
      case VOMIT -> Sign.DROP;
      case NO_CHEST_RISE -> Sign.NO_RISE;
      case GAG -> Sign.GAG;
      case ADVANCED_AIRWAY -> Sign.TUBE;
    };
  }

  /** Opens what else there is, or closes what is open. */
  public void toggleMore() {
    if (panel.isPresent()) {
      closePanel();
      return;
    }
    LivePanel open = new LivePanel(look, Faces.say("more.title"), 1, this::closePanel);
    boolean paused = kind() == Segment.Kind.PAUSED;
    LiveAction pause =
        open.tile(
            Sign.PAUSE,
            Faces.say(paused ? "action.resume" : "more.pause"),
            "",
            Faces.say("more.pause.hint"),
            e -> togglePause(keys.at(e.getWhen())));
    open.tile(
        Sign.UNDO,
        Faces.say("more.remove"),
        "Backspace",
        "",
        e -> act(PracticeKeys.Action.RETRACT_BREATH, e));
    open.tile(Sign.MUTE, muteWord(), "M", "", e -> act(PracticeKeys.Action.MUTE, e));
    open.tile(
        Sign.SCREEN,
        Faces.say("more.projector"),
        "",
        Faces.say("more.projector.hint"),
        e -> {
          closePanel();
          projector.run();
        });
    LivePanel.Finish end = finish();
    finish = Optional.of(end);
    open.also(end);
    show(open);
    pause.requestFocusInWindow();
  }

  private LivePanel.Finish finish() {
    return new LivePanel.Finish(
        look,
        PracticeKeys.HOLD_TO_FINISH_NANOS,
        new LivePanel.Finish.Holding() {
          @Override
          public void pressed(long whenMillis) {
            keys.holdFinish(keys.at(whenMillis));
          }

          @Override
          public void released(long whenMillis) {
            keys.letGoFinish(keys.at(whenMillis));
          }
        });
  }

  private String muteWord() {
    return Faces.say(sound.muted().getAsBoolean() ? "more.sound" : "more.mute");
  }

  private void act(PracticeKeys.Action action, ActionEvent e) {
    closePanel();
    keys.act(action, keys.at(e.getWhen()));
  }

  /** Stands still, or goes on. */
  public void togglePause(long nanoTime) {
    closePanel();
    practice.post(Command.toggle(Segment.Kind.PAUSED, kind() == Segment.Kind.PAUSED), nanoTime);
  }

  private Segment.Kind kind() {
    return practice.state().schedule().stretchAt(practice.nowNanos()).kind();
  }

  private void show(LivePanel open) {
    panel = Optional.of(open);
    open.registerKeyboardAction(
        e -> closePanel(),
        KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
        JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
    open.tiles().forEach(LiveScreen::pressedByEnter);
    add(open, MODAL_LAYER);
    stage.cover(true);
    layOut();
    repaint();
  }

  private static void pressedByEnter(LiveAction button) {
    KeyStroke enter = KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, 0);
    button.getInputMap(JComponent.WHEN_FOCUSED).put(enter, "press");
    button
        .getActionMap()
        .put(
            "press",
            new AbstractAction() {
              private static final long serialVersionUID = 1L;

              @Override
              public void actionPerformed(ActionEvent e) {
                button.doClick(0);
              }
            });
  }

  /**
   * Closes what is open over the rest.
   *
   * @return whether something was
   */
  public boolean closePanel() {
    if (!panel.isPresent()) {
      return false;
    }
    remove(panel.get());
    panel = Optional.empty();
    finish = Optional.empty();
    offered = Optional.empty();
    stage.cover(false);
    breath.requestFocusInWindow();
    repaint();
    return true;
  }

  /** Notes the change of a digit, if changes are offered, or answers the check that goes on. */
  public void choose(int digit, long nanoTime) {
    Optional<FindingsView.Offer> chosen = offered.flatMap(view -> view.choice(digit));
    if (chosen.isPresent()) {
      practice.post(chosen.get().finding(), nanoTime);
      closePanel();
    } else if (digit <= answers.size()) {
      practice.post(answers.get(digit - 1), nanoTime);
    }
  }

  private void see(long now) {
    LiveFace next = Faces.of(practice.state(), edition, now);
    boolean still = comfort.reducedMotion() && face != null && face.count().equals(next.count());
    face = still ? next.withVesselOf(face) : next;
  }

  /** Shows the present moment. */
  void frame() {
    long now = practice.nowNanos();
    CoachState state = practice.state();
    LiveFace before = face;
    see(now);
    String told = told(state, now);
    boolean compresses = CompressionView.asked(state, now);
    boolean anew =
        places == null
            || compresses != compressing
            || told.isEmpty() != notice.isEmpty()
            || !before.advice().equals(face.advice());
    compressing = compresses;
    notice = told;
    if (anew) {
      layOut();
    }
    if (places == null) {
      return;
    }
    stage.show(face, told);
    if (now - ribbonAt >= RIBBON_FRAME_NANOS || now < ribbonAt) {
      ribbonAt = now;
      long span = LiveMarks.spanNanos(state, now);
      long from = LiveMarks.from(now, span);
      stage.ribbon(LiveMarks.around(state, now), from, from + span);
    }
    showActions(state, now);
    showPads(state, now);
    undo.setVisible(!face.noted().isEmpty() && face.ground() == Ground.PLAIN && panel.isEmpty());
    Palette palette = stage.palette();
    boolean rows = places.columns() == 2 && actions.stream().noneMatch(a -> a.getHeight() > 110);
    double text = places.text();
    for (LiveAction action : actions) {
      text = Math.min(text, action.mostText(places.text(), rows));
    }
    for (LiveAction action : actions) {
      action.show(palette, text, places.brief(), rows);
    }
    undo.show(look.palette(), Math.min(places.text(), 1.4), true, true);
    finish.ifPresent(LivePanel.Finish::frame);
    atRest.frame();
    Toolkit.getDefaultToolkit().sync();
  }

  private String told(CoachState state, long now) {
    int breaths = state.breaths().size();
    if (breaths < breathsShown) {
      removedAt = now;
    }
    breathsShown = breaths;
    if (System.nanoTime() - finishShortAt < TELL_NANOS) {
      return Faces.say("more.finish");
    }
    String trouble = state.trouble().isEmpty() ? sound.notice().get() : state.trouble();
    boolean removed = trouble.isEmpty() && now - removedAt < TELL_NANOS;
    return removed ? Faces.say("told.removed") : trouble;
  }

  private void showActions(CoachState state, long now) {
    Segment.Kind kind = state.schedule().stretchAt(now).kind();
    ActiveGuidance inForce = state.schedule().inForceAt(now);
    answers = kind == Segment.Kind.PULSE_CHECK ? CheckAnswer.offered(inForce) : List.of();
    String check = inForce.check().name().toLowerCase(Locale.ROOT).replace('_', '-');
    String shown = kind.name() + check + answers;
    if (shown.equals(actionsShown)) {
      return;
    }
    actionsShown = shown;
    Component focused = actions.stream().filter(Component::isFocusOwner).findFirst().orElse(null);
    actions.forEach(this::remove);
    actions.clear();
    if (!answers.isEmpty()) {
      showAnswers();
    } else if (kind == Segment.Kind.PAUSED) {
      add(Sign.PRACTICE, "action.resume", "Enter", this::togglePause);
      add(Sign.UNDO, "action.undo-breath", "Bksp", PracticeKeys.Action.RETRACT_BREATH);
      add(Sign.MUTE, "action.mute", "M", PracticeKeys.Action.MUTE);
      add(Sign.MORE, "action.more", "Esc", at -> toggleMore());
    } else {
      boolean suction = kind == Segment.Kind.SUCTION;
      add(Sign.CHECK, "action.check." + check, "P", PracticeKeys.Action.PULSE_CHECK);
      add(
          suction ? Sign.CLOSE : Sign.SUCTION,
          suction ? "action.stop" : "action.suction",
          "S",
          PracticeKeys.Action.SUCTION);
      add(Sign.CHANGES, "action.changes", "F", PracticeKeys.Action.FINDINGS);
      add(Sign.MORE, "action.more", "Esc", at -> toggleMore());
    }
    if (places != null) {
      layOutActions();
    }
    atRest.setVisible(kind == Segment.Kind.PAUSED);
    if (kind == Segment.Kind.PAUSED) {
      actions.get(0).requestFocusInWindow();
    } else if (focused != null) {
      breath.requestFocusInWindow();
    }
    repaint();
  }

  /** All alike in weight; that of two that leads on with breaths stands first. */
  private void showAnswers() {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < answers.size(); i++) {
      order.add(i);
    }
    if (answers.size() > 1 && answers.get(1) == CheckAnswer.PULSE_FELT) {
      order.set(0, 1);
      order.set(1, 0);
    }
    for (int i : order) {
      CheckAnswer answer = answers.get(i);
      Sign sign =
          switch (answer) {
            case PULSE_FELT, PULSE_RETURNED -> Sign.TICK;
            case NO_PULSE -> Sign.NO_PULSE;
            default -> Sign.CHECK;
          };
      int digit = i + 1;
      LiveAction button = new LiveAction(look, sign, answer.label(), Integer.toString(digit), "");
      button.addActionListener(e -> choose(digit, keys.at(e.getWhen())));
      put(button);
    }
  }

  private void add(Sign sign, String word, String key, PracticeKeys.Action action) {
    add(
        sign,
        word,
        key,
        at -> {
          if (action != PracticeKeys.Action.FINDINGS) {
            closePanel();
          }
          keys.act(action, at);
        });
  }

  private void add(Sign sign, String word, String key, LongConsumer action) {
    LiveAction button = new LiveAction(look, sign, Faces.say(word), key, "");
    button.addActionListener(e -> action.accept(keys.at(e.getWhen())));
    put(button);
  }

  private void put(LiveAction button) {
    pressedByEnter(button);
    actions.add(button);
    add(button, PALETTE_LAYER);
  }

  private void showPads(CoachState state, long now) {
    Segment.Kind kind = state.schedule().stretchAt(now).kind();
    Palette palette = stage.palette();
    String word;
    String hint = keys.squeezeHint();
    boolean filled = face.ground() == Ground.GAP;
    boolean resting = face.cells().isPresent();
    if (state.squeezing()) {
      word = Faces.say("pad.squeezing");
      hint = squeezeHint(state, now);
    } else if (kind == Segment.Kind.PAUSED) {
      word = Faces.say("pad.resume");
      hint = Faces.say("pad.resume.hint");
    } else if (kind == Segment.Kind.ENDED) {
      word = Faces.say("pad.done");
      hint = "";
    } else if (resting) {
      word = Faces.say("pad.squeeze");
      hint = Faces.say(kind == Segment.Kind.SUCTION ? "pad.ends.suction" : "pad.ends.check");
      if (compressing) {
        word = Faces.say("pad.hold.short");
        hint = keys.squeezeHint();
      }
    } else if (filled) {
      word = Faces.say("pad.missing");
    } else {
      word = Faces.say(compressing ? "pad.hold.short" : "pad.hold");
    }
    breath.show(new LivePad.Shown(word, hint, state.squeezing(), filled), palette, places);
    if (compressing) {
      CompressionView view = CompressionView.of(state, now);
      String rate = view.rate().isEmpty() ? keys.compressionHint() : view.rate();
      compression.show(
          new LivePad.Shown(Faces.say("compress.word"), rate, view.lit(), false), palette, places);
    }
  }

  /** How long the squeeze has lasted by now, and how long it should; in the test nothing. */
  private String squeezeHint(CoachState state, long now) {
    if (Faces.isTest(state)) {
      return "";
    }
    List<Breath> breaths = state.breaths();
    if (breaths.isEmpty()) {
      return "";
    }
    long lasts = Math.max(0, now - breaths.get(breaths.size() - 1).startNanos());
    String seconds = Quantities.decimals(lasts / 1e9, 1);
    Optional<BreathPlan> plan = state.schedule().guidanceAt(now).rhythm().steadyBreaths();
    return plan.map(p -> Faces.say("pad.target", seconds, Phrases.seconds(p.inspirationNanos())))
        .orElseGet(() -> Faces.say("pad.squeezing.hint", seconds));
  }
}
