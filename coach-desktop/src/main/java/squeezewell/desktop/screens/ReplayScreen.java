package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.GridLayout;
import java.awt.event.KeyEvent;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import squeezewell.coach.CoachState;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.DonePanel;
import squeezewell.desktop.parts.Focus;
import squeezewell.desktop.parts.Rows;
import squeezewell.desktop.parts.SessionSlider;
import squeezewell.desktop.parts.Widgets;
import squeezewell.live.ReplayPlayer;

/** A practice played back on the parts of the live screen. */
public final class ReplayScreen extends RunScreen {
  /** The least width at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_WIDTH = 350;

  /** The least height at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_HEIGHT = 640;

  /** The least width for the story and the controls beside each other. */
  public static final int BESIDE_WIDTH = 680;

  /** The least height for the story and the controls beside each other. */
  public static final int BESIDE_HEIGHT = 400;

  private static final long serialVersionUID = 1L;

  /** Letters that still leave room for everything else on the smallest screen. */
  private static final int LONGEST_TITLE = 120;

  private static final long TELL_NANOS = 2_000_000_000L;

  private final transient ReplayPlayer player;
  private final transient ReplayView view;
  private final transient Runnable back;
  private final GridBagLayout below = new GridBagLayout();
  private final JPanel storySide = new JPanel();
  private final JPanel controlSide = new JPanel();
  private final JLabel time;
  private final JLabel speed;
  private final JLabel asked;
  private final transient Story story;
  private final JPanel done;
  private final DonePanel breath;
  private final DonePanel compressions;
  private final SessionSlider slider;
  private final ActionButton play;
  private final ActionButton mute;
  private final ActionButton slower;
  private final ActionButton faster;
  private final ActionButton before;
  private final ActionButton next;
  private boolean showing;
  private boolean beside;
  private String reached = "";
  private long reachedAt;

  /**
   * Builds the screen.
   *
   * @param kit makes the parts
   * @param player what is played
   * @param when the date and time of the practice, and the name if one was given, for people
   * @param sound the sound's state
   * @param back leads back to where the person came from
   */
  public ReplayScreen(
      Widgets kit, ReplayPlayer player, String when, SoundLine sound, Runnable back) {
    super(kit, sound, 12, 8);
    this.player = player;
    this.back = back;
    view = ReplayView.of(player.replay());
    time = kit.boldLabel(" ", 24);
    speed = kit.boldLabel(" ", 24);
    asked = kit.softLabel(" ", 14);
    story = new Story(this, 210, 110);
    breath = new DonePanel(look, "Breaths");
    compressions = new DonePanel(look, "Compressions");
    done = new JPanel(new GridLayout(1, 0, look.px(8), 0));
    slider =
        new SessionSlider(
            look,
            view.endNanos(),
            view.breaths(),
            view.moments().stream()
                .map(m -> new SessionSlider.Span(m.fromNanos(), m.toNanos()))
                .collect(Collectors.toList()));
    slider.addChangeListener(e -> moved());
    play = action("Play", "Space", KeyEvent.VK_SPACE, player::toggle);
    mute = action("Mute", "M", KeyEvent.VK_M, sound.toggleMute());
    slower = action("Slower", "Down", KeyEvent.VK_DOWN, player::slower);
    faster = action("Faster", "Up", KeyEvent.VK_UP, player::faster);
    before = action("Event before", "Page Up", KeyEvent.VK_PAGE_UP, this::goBefore);
    next = action("Event after", "Page Down", KeyEvent.VK_PAGE_DOWN, this::goNext);
    lay(when);
    key(KeyEvent.VK_HOME, () -> player.seek(0));
    key(KeyEvent.VK_END, () -> player.seek(view.endNanos()));
    kit.withBackKeys(this, back);
    addAncestorListener(Focus.on(slider));
  }

  private ActionButton action(String text, String keyName, int key, Runnable act) {
    ActionButton button = new ActionButton(look, text, keyName);
    button.addActionListener(e -> act(act));
    key(key, act);
    return button;
  }

  private void key(int key, Runnable act) {
    registerKeyboardAction(
        e -> act(act), KeyStroke.getKeyStroke(key, 0), JComponent.WHEN_IN_FOCUSED_WINDOW);
  }

  private void act(Runnable act) {
    act.run();
    frame();
  }

  private void goBefore() {
    go(view.before(player.nowNanos()));
  }

  private void goNext() {
    go(view.after(player.nowNanos()));
  }

  private void go(Optional<ReplayView.Moment> to) {
    to.ifPresent(
        moment -> {
          player.seek(moment.fromNanos());
          reached = moment.label();
          reachedAt = moment.fromNanos();
        });
  }

  /** A person moves the slider; the screen's own moves do not count. */
  private void moved() {
    if (showing) {
      return;
    }
    if (slider.getValueIsAdjusting()) {
      player.hold(true);
      player.seek(slider.nanos());
    } else {
      player.seek(slider.nanos());
      player.hold(false);
    }
    frame();
  }

  private void lay(String when) {
    String title = "Replay, " + when;
    int room = look.px(LEAST_WIDTH - 2 * Widgets.MARGIN);
    JComponent told = kit.softLabel(title, 14);
    // Most fit in a line; a long name takes more lines instead of being cut.
    if (told.getPreferredSize().width > room) {
      told = kit.text(shortened(title), look.font(14), look.palette().softText(), room);
      told.getAccessibleContext().setAccessibleName(title);
    }
    JPanel line = new JPanel(new BorderLayout());
    line.setOpaque(false);
    line.add(time, BorderLayout.CENTER);
    line.add(speed, BorderLayout.EAST);
    line.setAlignmentX(LEFT_ALIGNMENT);
    JPanel header = kit.column().put(told).put(line).put(asked);
    done.setOpaque(false);
    done.add(breath);
    ActionButton back10 = action("Back 10 s", "Left", KeyEvent.VK_LEFT, () -> skip(-1));
    ActionButton on10 = action("On 10 s", "Right", KeyEvent.VK_RIGHT, () -> skip(1));
    ActionButton leave = new ActionButton(look, "Close replay", "Esc");
    leave.addActionListener(e -> back.run());
    JPanel actions = grid(3, 6, back10, play, on10, before, mute, next, slower, leave, faster);
    storySide.setOpaque(false);
    new Rows(storySide)
        .add(header, 0, look.px(8))
        .add(bar, 0, look.px(10))
        .add(story.prompt(), 1, look.px(10))
        .add(story.below(), 0, look.px(8));
    controlSide.setOpaque(false);
    new Rows(controlSide)
        .add(done, 1, look.px(4))
        .add(slider, 0, look.px(4))
        .add(actions, 0, look.px(4))
        .add(noticeLine, 0, look.px(2))
        .add(caution, 0, 0);
    add(storySide);
    add(controlSide);
    place();
  }

  /** Where the window is too low for all of it below each other, the controls stand beside. */
  @Override
  public void doLayout() {
    boolean low = getHeight() < look.px(LEAST_HEIGHT) && getWidth() >= look.px(BESIDE_WIDTH);
    if (low != beside) {
      beside = low;
      place();
    }
    super.doLayout();
  }

  private void place() {
    if (beside) {
      // Halves, whatever is written in them.
      setLayout(new GridLayout(1, 2, look.px(16), 0));
      return;
    }
    setLayout(below);
    GridBagConstraints where = new GridBagConstraints();
    where.fill = GridBagConstraints.BOTH;
    where.gridx = 0;
    where.weightx = 1;
    where.weighty = 0.8;
    below.setConstraints(storySide, where);
    where.weighty = 0.2;
    below.setConstraints(controlSide, where);
  }

  private static String shortened(String text) {
    if (text.length() <= LONGEST_TITLE) {
      return text;
    }
    int end = LONGEST_TITLE - 1;
    return text.substring(0, Character.isHighSurrogate(text.charAt(end - 1)) ? end - 1 : end) + "…";
  }

  private void skip(int steps) {
    player.skip(steps * ReplayView.STEP_NANOS);
  }

  @Override
  void frame() {
    CoachState state = player.state();
    long now = player.nowNanos();
    LivePainter.Lines lines = story.painter().paint(state, now);
    Widgets.show(time, view.time(now));
    Widgets.show(speed, player.speed() + "\u00d7");
    Widgets.show(asked, Phrases.capital(lines.asked()));
    show(lines.view().bar());
    showing = true;
    slider.show(now, view.time(now));
    showing = false;
    showDone(state, now);
    if (comesOrGoes(state, now)) {
      story.turn();
    }
    play.show(player.playing() ? "Pause" : "Play", player.playing());
    showMute(mute);
    slower.setEnabled(player.speed() > 1);
    faster.setEnabled(player.speed() < 8);
    before.setEnabled(view.before(now).isPresent());
    next.setEnabled(view.after(now).isPresent());
    tell(notice(state, now));
  }

  private String notice(CoachState state, long now) {
    boolean fresh = !reached.isEmpty() && now >= reachedAt && now - reachedAt < TELL_NANOS;
    if (fresh) {
      return reached;
    }
    String heard = sound.notice().get();
    if (!heard.isEmpty()) {
      return heard;
    }
    if (state.soundLost()) {
      return "In the practice the sound was lost here.";
    }
    return player.speed() > 1 ? "Above 1\u00d7 the words are left out." : "";
  }

  /** The second panel is there while the chest is to be compressed. */
  private void showDone(CoachState state, long now) {
    breath.show(state.squeezing(), ReplayView.breath(state, now), "");
    boolean compresses = CompressionView.asked(state, now);
    boolean shown = compressions.getParent() != null;
    if (compresses && !shown) {
      done.add(compressions, 0);
    } else if (!compresses && shown) {
      done.remove(compressions);
    }
    if (compresses != shown) {
      done.revalidate();
      done.repaint();
    }
    if (compresses) {
      CompressionView pressed = CompressionView.of(state, now);
      String count = pressed.count().isEmpty() ? "No compression yet" : pressed.count();
      compressions.show(pressed.lit(), count, pressed.rate());
    }
  }
}
