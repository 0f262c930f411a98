package squeezewell.desktop.screens;

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
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.AdviceCard;
import squeezewell.desktop.parts.TimeBar;
import squeezewell.desktop.parts.Widgets;

/** The screen of what runs: a practice, a station or a replay. It is drawn anew at each frame. */
public abstract class RunScreen extends JPanel implements RunningView {
  private static final long serialVersionUID = 1L;
  private static final int FRAME_MILLIS = 33;

  final transient Widgets kit;
  final transient Look look;
  final transient SoundLine sound;
  final TimeBar bar;
  final AdviceCard advice;
  final JLabel noticeLine;
  final JLabel caution;
  private final Timer frames = new Timer(FRAME_MILLIS, e -> frame());

  /**
   * @param sound what is told of sound and saving
   * @param top room above what is on it, in density-independent pixels
   * @param bottom room below
   */
  RunScreen(Widgets kit, SoundLine sound, int top, int bottom) {
    this.kit = kit;
    this.sound = sound;
    look = kit.look();
    setBackground(look.palette().ground());
    int side = look.px(Widgets.MARGIN);
    setBorder(BorderFactory.createEmptyBorder(look.px(top), side, look.px(bottom), side));
    bar = new TimeBar(look);
    advice = new AdviceCard(look);
    noticeLine = kit.boldLabel(" ", 13);
    noticeLine.setHorizontalAlignment(SwingConstants.CENTER);
    caution = kit.softLabel(Phrases.CAUTION, 11);
    caution.setHorizontalAlignment(SwingConstants.CENTER);
  }

  @Override
  public void open() {
    frames.start();
    frame();
  }

  @Override
  public void close() {
    frames.stop();
  }

  /** Shows the present moment. */
  abstract void frame();

  final void show(BarLine line) {
    bar.show(line.text(), line.fill(), line.urgent());
  }

  /** Takes what was found to the card; tells whether it must come or go. */
  final boolean comesOrGoes(CoachState state, long now) {
    Optional<FindingsView.Told> told = FindingsView.told(state, now);
    told.ifPresent(t -> advice.show(t.title(), t.text()));
    return told.isPresent() != advice.isVisible();
  }

  /** Shows whether the sound is muted. */
  final void showMute(ActionButton mute) {
    boolean muted = sound.muted().getAsBoolean();
    mute.show(muted ? "Sound on" : "Mute", muted);
  }

  /** Ends a frame with what is to be told. */
  final void tell(String text) {
    Widgets.show(noticeLine, text.isEmpty() ? " " : text);
    Toolkit.getDefaultToolkit().sync();
  }

  /** Parts of one size in some rows. */
  final JPanel grid(int rows, int between, Component... parts) {
    JPanel grid = new JPanel(new GridLayout(rows, 0, look.px(between), look.px(between)));
    grid.setOpaque(false);
    for (Component part : parts) {
      grid.add(part);
    }
    return grid;
  }

  /** A part over the width, with its usual and its least height. */
  final <T extends JComponent> T high(T part, int usual, int least) {
    part.setPreferredSize(new Dimension(look.px(Widgets.CONTENT_WIDTH), look.px(usual)));
    part.setMinimumSize(new Dimension(look.px(200), look.px(least)));
    return part;
  }
}
