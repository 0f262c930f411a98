package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Dimension;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.GridLayout;
import java.awt.Toolkit;
import java.awt.event.KeyEvent;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import javax.swing.SwingConstants;
import javax.swing.Timer;
import squeezewell.coach.CoachState;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.AdviceCard;
import squeezewell.desktop.parts.DonePanel;
import squeezewell.desktop.parts.Focus;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.PromptWords;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.Rows;
import squeezewell.desktop.parts.SessionSlider;
import squeezewell.desktop.parts.TideColumn;
import squeezewell.desktop.parts.TimeBar;
import squeezewell.live.ReplayPlayer;

/** A practice played back on the parts of the live screen. */
public final class ReplayScreen extends JPanel {
  /** The least width at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_WIDTH = 350;

  /** The least height at which everything on the screen is seen, in density-independent pixels. */
  public static final int LEAST_HEIGHT = 640;

  /** The least width for the story and the controls beside each other. */
  public static final int BESIDE_WIDTH = 680;

  /** The least height for the story and the controls beside each other. */
  public static final int BESIDE_HEIGHT = 400;

  private static final long serialVersionUID = 1L;
  private static final int FRAME_MILLIS = 33;

  /** Letters that still leave room for everything else on the smallest screen. */
  private static final int LONGEST_TITLE = 120;

  private static final long TELL_NANOS = 2_000_000_000L;
  private static final String RIBBON = "ribbon";
  private static final String ADVICE = "advice";

  private final transient ReplayPlayer player;
  private final transient ReplayView view;
  private final transient Sound sound;
  private final transient Runnable back;
  private final transient LivePainter painter;
  private final transient Look look;
  private final GridBagLayout below = new GridBagLayout();
  private final JPanel storySide = new JPanel();
  private final JPanel controlSide = new JPanel();
  private final JLabel time;
  private final JLabel speed;
  private final JLabel asked;
  private final JLabel noticeLine;
  private final TimeBar bar;
  private final TideColumn tide;
  private final PromptWords words;
  private final Ribbon ribbon;
  private final AdviceCard advice;
  private final CardLayout storyCards = new CardLayout();
  private final JPanel story = new JPanel(storyCards);
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
  private final Timer frames = new Timer(FRAME_MILLIS, e -> frame());
  private boolean showing;
  private boolean beside;
  private String reached = "";
  private long reachedAt;

  /**
   * What the screen needs of the sound.
   *
   * @param notice what a person must know; empty if all is well
   * @param muted whether it is muted
   * @param toggleMute mutes it, or not
   */
  public record Sound(Supplier<String> notice, BooleanSupplier muted, Runnable toggleMute) {}

  /**
   * Builds the screen.
   *
   * @param kit makes the parts
   * @param player what is played
   * @param when the date and time of the practice, and the name if one was given, for people
   * @param sound the sound's state
   * @param back leads back to where the person came from
   */
  public ReplayScreen(Kit kit, ReplayPlayer player, String when, Sound sound, Runnable back) {
    this.player = player;
    this.sound = sound;
    this.back = back;
    view = ReplayView.of(player.replay());
    look = kit.look();
    setBackground(look.palette().ground());
    int side = look.px(Kit.MARGIN);
    setBorder(BorderFactory.createEmptyBorder(look.px(12), side, look.px(8), side));
    time = kit.label(" ", look.bold(24), look.palette().text());
    speed = kit.label(" ", look.bold(24), look.palette().text());
    asked = kit.label(" ", look.font(14), look.palette().softText());
    noticeLine = kit.label(" ", look.bold(13), look.palette().text());
    noticeLine.setHorizontalAlignment(SwingConstants.CENTER);
    bar = new TimeBar(look);
    tide = new TideColumn(look);
    words = new PromptWords(look);
    ribbon = new Ribbon(look);
    painter = new LivePainter(tide, words, ribbon);
    advice = new AdviceCard(look);
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
    lay(kit, when);
    key(KeyEvent.VK_HOME, () -> player.seek(0));
    key(KeyEvent.VK_END, () -> player.seek(view.endNanos()));
    kit.withBackKeys(this, back);
    addAncestorListener(Focus.on(slider));
  }

  /** Starts drawing. */
  public void open() {
    frames.start();
    frame();
  }

  /** Stops drawing. */
  public void close() {
    frames.stop();
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

  private void lay(Kit kit, String when) {
    JPanel header = kit.column();
    String title = "Replay, " + when;
    int room = look.px(LEAST_WIDTH - 2 * Kit.MARGIN);
    JComponent told = kit.label(title, look.font(14), look.palette().softText());
    // Most fit in a line; a long name takes more lines instead of being cut.
    if (told.getPreferredSize().width > room) {
      told = kit.text(shortened(title), look.font(14), look.palette().softText(), room);
      told.getAccessibleContext().setAccessibleName(title);
    }
    header.add(told);
    JPanel line = new JPanel(new BorderLayout());
    line.setOpaque(false);
    line.add(time, BorderLayout.CENTER);
    line.add(speed, BorderLayout.EAST);
    line.setAlignmentX(LEFT_ALIGNMENT);
    header.add(line);
    header.add(asked);

    JPanel prompt = new JPanel(new GridLayout(1, 2, look.px(8), 0));
    prompt.setOpaque(false);
    prompt.add(tide);
    prompt.add(words);
    prompt.setMinimumSize(new Dimension(look.px(200), look.px(110)));
    prompt.setPreferredSize(new Dimension(look.px(372), look.px(210)));

    story.setOpaque(false);
    story.add(ribbon, RIBBON);
    story.add(advice, ADVICE);
    done.setOpaque(false);
    done.add(breath);

    JPanel actions = new JPanel(new GridLayout(3, 3, look.px(6), look.px(6)));
    actions.setOpaque(false);
    actions.add(action("Back 10 s", "Left", KeyEvent.VK_LEFT, () -> skip(-1)));
    actions.add(play);
    actions.add(action("On 10 s", "Right", KeyEvent.VK_RIGHT, () -> skip(1)));
    actions.add(before);
    actions.add(mute);
    actions.add(next);
    actions.add(slower);
    ActionButton leave = new ActionButton(look, "Close replay", "Esc");
    leave.addActionListener(e -> back.run());
    actions.add(leave);
    actions.add(faster);
    JLabel caution = kit.label(Phrases.CAUTION, look.font(11), look.palette().softText());
    caution.setHorizontalAlignment(SwingConstants.CENTER);

    storySide.setOpaque(false);
    new Rows(storySide)
        .add(header, 0, look.px(8))
        .add(bar, 0, look.px(10))
        .add(prompt, 1, look.px(10))
        .add(story, 0, look.px(8));
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

  private void frame() {
    CoachState state = player.state();
    long now = player.nowNanos();
    LivePainter.Lines lines = painter.paint(state, now);
    Kit.show(time, view.time(now));
    Kit.show(speed, player.speed() + "\u00d7");
    Kit.show(asked, Phrases.capital(lines.asked()));
    bar.show(lines.bar(), lines.barFill(), lines.barUrgent());
    showing = true;
    slider.show(now, view.time(now));
    showing = false;
    showDone(state, now);
    Optional<FindingsView.Told> told = FindingsView.told(state, now);
    told.ifPresent(t -> advice.show(t.title(), t.text()));
    if (told.isPresent() != advice.isVisible()) {
      storyCards.show(story, told.isPresent() ? ADVICE : RIBBON);
    }
    play.show(player.playing() ? "Pause" : "Play", player.playing());
    mute.show(sound.muted().getAsBoolean() ? "Sound on" : "Mute", sound.muted().getAsBoolean());
    slower.setEnabled(player.speed() > 1);
    faster.setEnabled(player.speed() < 8);
    before.setEnabled(view.before(now).isPresent());
    next.setEnabled(view.after(now).isPresent());
    String notice = notice(state, now);
    Kit.show(noticeLine, notice.isEmpty() ? " " : notice);
    Toolkit.getDefaultToolkit().sync();
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
