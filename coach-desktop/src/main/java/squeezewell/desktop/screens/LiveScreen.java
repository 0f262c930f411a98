package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.GridLayout;
import java.awt.Toolkit;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import javax.swing.Timer;
import squeezewell.coach.CoachState;
import squeezewell.cue.InForce;
import squeezewell.cue.Stretch;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.AdviceCard;
import squeezewell.desktop.parts.Focus;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.PromptWords;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.Rows;
import squeezewell.desktop.parts.TideColumn;
import squeezewell.desktop.parts.TimeBar;
import squeezewell.live.LivePractice;
import squeezewell.protocol.Protocol;

/** The screen of a running practice. */
public final class LiveScreen extends JPanel {
  /** The least width at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_WIDTH = 350;

  /** The least height at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_HEIGHT = 580;

  private static final long serialVersionUID = 1L;
  private static final int FRAME_MILLIS = 33;
  private static final long TELL_NANOS = 3_000_000_000L;
  private static final String RIBBON = "ribbon";
  private static final String ADVICE = "advice";
  private static final String USUAL = "usual";
  private static final String CHOICES = "choices";

  private final transient Look look;
  private final transient LivePractice practice;
  private final transient Protocol protocol;
  private final transient SoundLine sound;
  private final transient PracticeKeys keys;
  private final transient LivePainter painter;
  private final JLabel elapsed;
  private final JLabel total;
  private final JLabel noticeLine;
  private final TimeBar bar;
  private final TideColumn tide;
  private final PromptWords words;
  private final Ribbon ribbon;
  private final Pads pads;
  private final AdviceCard advice;
  private final CardLayout storyCards = new CardLayout();
  private final JPanel story = new JPanel(storyCards);
  private final CardLayout handsCards = new CardLayout();
  private final JPanel hands = new JPanel(handsCards);
  private final JPanel choices;
  private final JLabel asked;
  private final ActionButton check;
  private final ActionButton suction;
  private final ActionButton pause;
  private final ActionButton leaveOut;
  private final ActionButton findings;
  private final ActionButton undoFinding;
  private final ActionButton mute;
  private final ActionButton finish;
  private transient Optional<FindingsView> offered = Optional.empty();
  private int breathsShown;
  private long leftOutAt = -TELL_NANOS;
  private final Timer frames = new Timer(FRAME_MILLIS, e -> frame());

  /**
   * Builds the screen.
   *
   * @param kit makes the parts
   * @param practice what is shown and told
   * @param protocol the edition that is followed
   * @param keys the keys of a practice; listening while the screen is shown
   * @param sound what is told of sound and saving
   */
  public LiveScreen(
      Kit kit, LivePractice practice, Protocol protocol, PracticeKeys keys, SoundLine sound) {
    look = kit.look();
    this.practice = practice;
    this.protocol = protocol;
    this.sound = sound;
    this.keys = keys;
    setBackground(look.palette().ground());
    int side = look.px(Kit.MARGIN);
    setBorder(BorderFactory.createEmptyBorder(look.px(14), side, look.px(8), side));
    elapsed = kit.label("0:00", look.bold(30), look.palette().text());
    total = kit.label("", look.font(14), look.palette().softText());
    noticeLine = kit.label(" ", look.bold(13), look.palette().text());
    noticeLine.setHorizontalAlignment(SwingConstants.CENTER);
    bar = new TimeBar(look);
    tide = new TideColumn(look);
    words = new PromptWords(look);
    ribbon = new Ribbon(look);
    painter = new LivePainter(tide, words, ribbon);
    pads = new Pads(look, keys, practice::post).high(120, 72);
    advice = new AdviceCard(look);
    choices = new JPanel(new GridLayout(0, 2, look.px(6), look.px(6)));
    choices.setOpaque(false);
    choices.setFocusable(true);
    asked = kit.label("", look.font(14), look.palette().softText());
    check = action(look, "Pulse check", "P", PracticeKeys.Action.PULSE_CHECK);
    suction = action(look, "Suction", "S", PracticeKeys.Action.SUCTION);
    pause = action(look, "Pause", "Esc", PracticeKeys.Action.PAUSE);
    leaveOut = action(look, "Undo breath", "Backspace", PracticeKeys.Action.RETRACT_BREATH);
    findings = action(look, "Findings", "F", PracticeKeys.Action.FINDINGS);
    undoFinding = action(look, "Undo finding", "Z", PracticeKeys.Action.UNDO_FINDING);
    mute = action(look, "Mute", "M", PracticeKeys.Action.MUTE);
    finish = action(look, "Finish", "End", PracticeKeys.Action.FINISH);
    lay(kit);
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

  private ActionButton action(Look look, String text, String key, PracticeKeys.Action action) {
    ActionButton button = new ActionButton(look, text, key);
    button.addActionListener(e -> keys.act(action, EventTime.nanoTimeOf(e.getWhen())));
    return button;
  }

  private void lay(Kit kit) {
    Look look = kit.look();
    JPanel header = new JPanel(new GridLayout(2, 1));
    header.setOpaque(false);
    var guidance = practice.state().schedule().plan().guidance();
    header.add(
        ends(kit.label(guidance.patient().label(), look.bold(22), look.palette().text()), elapsed));
    header.add(ends(asked, total));

    JPanel prompt = new JPanel(new GridLayout(1, 2, look.px(8), 0));
    prompt.setOpaque(false);
    prompt.add(tide);
    prompt.add(words);
    prompt.setMinimumSize(new Dimension(look.px(200), look.px(120)));
    prompt.setPreferredSize(new Dimension(look.px(372), look.px(240)));

    story.setOpaque(false);
    story.add(ribbon, RIBBON);
    story.add(advice, ADVICE);

    JPanel actions = new JPanel(new GridLayout(2, 4, look.px(6), look.px(6)));
    actions.setOpaque(false);
    for (Component button :
        new Component[] {check, suction, findings, pause, leaveOut, undoFinding, mute, finish}) {
      actions.add(button);
    }
    JPanel usual = new JPanel();
    usual.setOpaque(false);
    new Rows(usual).add(pads, 1, look.px(12)).add(actions, 0, 0);
    hands.setOpaque(false);
    hands.add(usual, USUAL);
    hands.add(choices, CHOICES);
    JLabel caution = kit.label(Phrases.CAUTION, look.font(11), look.palette().softText());
    caution.setHorizontalAlignment(SwingConstants.CENTER);

    new Rows(this)
        .add(header, 0, look.px(10))
        .add(bar, 0, look.px(14))
        .add(prompt, 0.7, look.px(12))
        .add(story, 0, look.px(12))
        .add(hands, 0.3, look.px(4))
        .add(noticeLine, 0, look.px(2))
        .add(caution, 0, 0);
  }

  /** Offers what may be found in place of the pads, or takes the offer away. */
  public void toggleFindings() {
    if (closeFindings() || practice.state().finished()) {
      return;
    }
    FindingsView view = FindingsView.of(practice.state());
    offered = Optional.of(view);
    choices.removeAll();
    for (FindingsView.Choice choice : view.choices()) {
      ActionButton button =
          new ActionButton(look, choice.label(), choice.key() + "  ·  " + choice.leads());
      button.addActionListener(e -> choose(choice.key(), EventTime.nanoTimeOf(e.getWhen())));
      button.getAccessibleContext().setAccessibleDescription(choice.spokenHint());
      choices.add(button);
    }
    choices.getAccessibleContext().setAccessibleName(view.spoken());
    choices
        .getAccessibleContext()
        .setAccessibleDescription("Press a digit, or Tab to a finding; F closes the list");
    choices.add(action(look, "Close", "F", PracticeKeys.Action.FINDINGS));
    handsCards.show(hands, CHOICES);
    revalidate();
    // Not the first button: the space bar that squeezes would note what stands on it.
    choices.requestFocusInWindow();
  }

  /**
   * Takes the offer of findings away.
   *
   * @return whether it stood
   */
  public boolean closeFindings() {
    if (!offered.isPresent()) {
      return false;
    }
    offered = Optional.empty();
    handsCards.show(hands, USUAL);
    pads.forFocus().requestFocusInWindow();
    return true;
  }

  /** Notes the finding of a digit, if findings are offered. */
  public void choose(int digit, long nanoTime) {
    Optional<FindingsView.Choice> chosen = offered.flatMap(view -> view.choice(digit));
    if (chosen.isPresent()) {
      practice.post(chosen.get().finding(), nanoTime);
      closeFindings();
    }
  }

  /** Two labels at the ends of a line; the left one gives way. */
  private static JPanel ends(JLabel left, JLabel right) {
    JPanel line = new JPanel(new BorderLayout());
    line.setOpaque(false);
    line.add(left, BorderLayout.CENTER);
    line.add(right, BorderLayout.EAST);
    return line;
  }

  private void frame() {
    LivePainter.Lines lines = painter.paint(practice);
    CoachState state = practice.state();
    Kit.show(elapsed, lines.elapsed());
    Kit.show(total, lines.total());
    bar.show(lines.bar(), lines.barFill(), lines.barUrgent());
    showActions(state, practice.clock().nanos());
    long now = practice.clock().nanos();
    showRhythm(state, now);
    showFindings(state, now);
    int breaths = state.breaths().size();
    if (breaths < breathsShown) {
      leftOutAt = now;
    }
    breathsShown = breaths;
    String text = state.trouble().isEmpty() ? sound.notice().get() : state.trouble();
    if (text.isEmpty() && now - leftOutAt < TELL_NANOS) {
      text = "The last breath is left out.";
    }
    Kit.show(noticeLine, text.isEmpty() ? " " : text);
    Toolkit.getDefaultToolkit().sync();
  }

  private void showRhythm(CoachState state, long now) {
    String situation = state.schedule().guidanceAt(now).situation().label();
    Kit.show(asked, situation + "  ·  " + Phrases.edition(protocol));
    pads.showCompressions(state, now);
  }

  private void showFindings(CoachState state, long now) {
    Optional<FindingsView.Told> told = FindingsView.told(state, now);
    told.ifPresent(t -> advice.show(t.title(), t.text()));
    if (told.isPresent() != advice.isVisible()) {
      storyCards.show(story, told.isPresent() ? ADVICE : RIBBON);
    }
    boolean slip = state.undoable(now).isPresent();
    undoFinding.setEnabled(slip);
    undoFinding.show("Undo finding", slip);
  }

  private void showActions(CoachState state, long now) {
    Stretch.Kind kind = state.schedule().stretchAt(now).kind();
    boolean paused = kind == Stretch.Kind.PAUSED;
    InForce inForce = state.schedule().inForceAt(now);
    check.show(
        kind == Stretch.Kind.PULSE_CHECK ? "Check done" : LiveView.checkButton(inForce.check()),
        kind == Stretch.Kind.PULSE_CHECK);
    suction.show(
        kind == Stretch.Kind.SUCTION ? "Suction done" : "Suction", kind == Stretch.Kind.SUCTION);
    pause.show(paused ? "Go on" : "Pause", paused);
    mute.show(sound.muted().getAsBoolean() ? "Sound on" : "Mute", sound.muted().getAsBoolean());
    String word =
        switch (kind) {
          case PULSE_CHECK, SUCTION -> LiveView.goOn(inForce);
          case PAUSED -> "Paused";
          case ENDED -> "Done";
          default -> state.squeezing() ? "Squeezing" : "Hold while you squeeze";
        };
    String hint = paused ? "Go on, or Esc" : keys.squeezeHint();
    pads.showBreath(state.squeezing(), word, kind == Stretch.Kind.ENDED ? "" : hint);
  }
}
