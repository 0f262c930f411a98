package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.GridLayout;
import java.util.List;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JPanel;
import squeezewell.coach.CoachState;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.Segment;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.Focus;
import squeezewell.desktop.parts.Rows;
import squeezewell.desktop.parts.Widgets;
import squeezewell.live.LivePractice;
import squeezewell.protocol.Protocol;

/** The screen of a running practice. */
public final class LiveScreen extends KeyedScreen {
  /** The least width at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_WIDTH = 350;

  /** The least height at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_HEIGHT = 580;

  private static final long serialVersionUID = 1L;
  private static final long TELL_NANOS = 3_000_000_000L;
  private static final String USUAL = "usual";
  private static final String CHOICES = "choices";

  private final transient LivePractice practice;
  private final transient Protocol protocol;
  private final transient Story story;
  private final JLabel elapsed;
  private final JLabel total;
  private final Pads pads;
  private final CardLayout handsCards = new CardLayout();
  private final JPanel hands = new JPanel(handsCards);
  private final JPanel choices;
  private final JPanel answers;
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
  private transient List<CheckAnswer> answered = List.of();
  private int breathsShown;
  private long leftOutAt = -TELL_NANOS;

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
      Widgets kit, LivePractice practice, Protocol protocol, PracticeKeys keys, SoundLine sound) {
    super(kit, keys, sound, 14, 8);
    this.practice = practice;
    this.protocol = protocol;
    elapsed = kit.boldLabel("0:00", 30);
    total = kit.softLabel("", 14);
    asked = kit.softLabel("", 14);
    story = new Story(this, 240, 120);
    pads = new Pads(look, keys, practice::post).high(120, 72);
    choices = new JPanel(new GridLayout(0, 2, look.px(6), look.px(6)));
    choices.setOpaque(false);
    choices.setFocusable(true);
    answers = grid(1, 6);
    answers.setVisible(false);
    check = action("Pulse check", "P", PracticeKeys.Action.PULSE_CHECK);
    suction = action("Suction", "S", PracticeKeys.Action.SUCTION);
    pause = action("Pause", "Esc", PracticeKeys.Action.PAUSE);
    leaveOut = action("Undo breath", "Backspace", PracticeKeys.Action.RETRACT_BREATH);
    findings = action("Findings", "F", PracticeKeys.Action.FINDINGS);
    undoFinding = action("Undo finding", "Z", PracticeKeys.Action.UNDO_FINDING);
    mute = action("Mute", "M", PracticeKeys.Action.MUTE);
    finish = finishButton();
    lay();
    addAncestorListener(Focus.on(pads.forFocus()));
  }

  private void lay() {
    var guidance = practice.state().schedule().plan().guidance();
    JLabel patient = kit.boldLabel(guidance.patient().label(), 22);
    JPanel header = grid(2, 0, ends(patient, elapsed), ends(asked, total));
    JPanel actions =
        grid(2, 6, check, suction, findings, pause, leaveOut, undoFinding, mute, finish);
    JPanel usual = new JPanel();
    usual.setOpaque(false);
    new Rows(usual).add(answers, 0, look.px(6)).add(pads, 1, look.px(12)).add(actions, 0, 0);
    hands.setOpaque(false);
    hands.add(usual, USUAL);
    hands.add(choices, CHOICES);
    new Rows(this)
        .add(header, 0, look.px(10))
        .add(bar, 0, look.px(14))
        .add(story.prompt(), 0.7, look.px(12))
        .add(story.below(), 0, look.px(12))
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
    for (FindingsView.Offer choice : view.choices()) {
      ActionButton button =
          new ActionButton(look, choice.label(), choice.key() + "  ·  " + choice.leads());
      button.addActionListener(e -> choose(choice.key(), keys.at(e.getWhen())));
      button.getAccessibleContext().setAccessibleDescription(choice.spokenHint());
      choices.add(button);
    }
    choices.getAccessibleContext().setAccessibleName(view.spoken());
    choices
        .getAccessibleContext()
        .setAccessibleDescription("Press a digit, or Tab to a finding; F closes the list");
    choices.add(action("Close", "F", PracticeKeys.Action.FINDINGS));
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
    Optional<FindingsView.Offer> chosen = offered.flatMap(view -> view.choice(digit));
    if (chosen.isPresent()) {
      practice.post(chosen.get().finding(), nanoTime);
      closeFindings();
    } else if (digit <= answered.size()) {
      practice.post(answered.get(digit - 1), nanoTime);
    }
  }

  /** Offers what can be answered while a check goes on, all alike in weight. */
  private void showAnswers(List<CheckAnswer> offeredNow) {
    if (offeredNow.equals(answered)) {
      return;
    }
    answered = offeredNow;
    answers.removeAll();
    for (int i = 1; i <= answered.size(); i++) {
      int digit = i;
      ActionButton button =
          new ActionButton(look, answered.get(i - 1).label(), Integer.toString(digit));
      button.addActionListener(e -> choose(digit, keys.at(e.getWhen())));
      answers.add(button);
    }
    answers.setVisible(!answered.isEmpty());
    revalidate();
  }

  /** Two labels at the ends of a line; the left one gives way. */
  private static JPanel ends(JLabel left, JLabel right) {
    JPanel line = new JPanel(new BorderLayout());
    line.setOpaque(false);
    line.add(left, BorderLayout.CENTER);
    line.add(right, BorderLayout.EAST);
    return line;
  }

  @Override
  void frame() {
    LivePainter.Lines lines = story.painter().paint(practice);
    CoachState state = practice.state();
    Widgets.show(elapsed, lines.view().elapsed());
    Widgets.show(total, lines.view().total());
    show(lines.view().bar());
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
    boolean isLeftOut = text.isEmpty() && now - leftOutAt < TELL_NANOS;
    tellOrHint(isLeftOut ? "The last breath is left out." : text);
  }

  private void showRhythm(CoachState state, long now) {
    String situation = state.schedule().guidanceAt(now).situation().label();
    Widgets.show(asked, situation + "  ·  " + Phrases.edition(protocol));
    pads.showCompressions(state, now);
  }

  private void showFindings(CoachState state, long now) {
    if (comesOrGoes(state, now)) {
      story.turn();
    }
    boolean slip = state.undoable(now).isPresent();
    undoFinding.setEnabled(slip);
    undoFinding.show("Undo finding", slip);
  }

  private void showActions(CoachState state, long now) {
    Segment.Kind kind = state.schedule().stretchAt(now).kind();
    boolean paused = kind == Segment.Kind.PAUSED;
    ActiveGuidance inForce = state.schedule().inForceAt(now);
    showAnswers(kind == Segment.Kind.PULSE_CHECK ? CheckAnswer.offered(inForce) : List.of());
    check.show(
        kind == Segment.Kind.PULSE_CHECK ? "Check done" : LiveView.checkButton(inForce.check()),
        kind == Segment.Kind.PULSE_CHECK);
    suction.show(
        kind == Segment.Kind.SUCTION ? "Suction done" : "Suction", kind == Segment.Kind.SUCTION);
    pause.show(paused ? "Go on" : "Pause", paused);
    showMute(mute);
    String word =
        switch (kind) {
          case PULSE_CHECK, SUCTION -> LiveView.goOn(kind, inForce);
          case PAUSED -> "Paused";
          case ENDED -> "Done";
          default -> state.squeezing() ? "Squeezing" : "Hold while you squeeze";
        };
    String hint = paused ? "Go on, or Esc" : keys.squeezeHint();
    pads.showBreath(state.squeezing(), word, kind == Segment.Kind.ENDED ? "" : hint);
  }
}
