package squeezewell.desktop.screens;

import java.awt.Dimension;
import java.awt.GridLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.BreathPad;
import squeezewell.desktop.parts.CompressionPad;

/**
 * The pads of something running, side by side and equally large: the one for breaths, and beside it
 * the one for compressions while the chest is to be compressed.
 */
final class Pads extends JPanel {
  private static final long serialVersionUID = 1L;

  private final transient Look look;
  private final transient PracticeKeys keys;
  private final BreathPad breath;
  private final CompressionPad compression;

  /** Takes what the hands do. */
  interface Hands {
    /**
     * Takes a command.
     *
     * @param nanoTime when the person gave it, a reading of {@link System#nanoTime()}
     */
    void post(Command command, long nanoTime);
  }

  Pads(Look look, PracticeKeys keys, Hands hands) {
    super(new GridLayout(1, 0, look.px(8), 0));
    this.look = look;
    this.keys = keys;
    setOpaque(false);
    breath =
        new BreathPad(
            look,
            when -> hands.post(Command.SQUEEZE, keys.at(when)),
            when -> hands.post(Command.SQUEEZE_END, keys.at(when)));
    compression = new CompressionPad(look, when -> hands.post(Command.COMPRESS, keys.at(when)));
    add(breath);
  }

  /** How high they are, and at least, in density-independent pixels. */
  Pads high(int usual, int least) {
    setMinimumSize(new Dimension(look.px(200), look.px(least)));
    setPreferredSize(new Dimension(look.px(372), look.px(usual)));
    return this;
  }

  /** Where the keyboard belongs while nothing else has it. */
  JComponent forFocus() {
    return breath;
  }

  /** What the pad for breaths says. */
  void showBreath(boolean squeezing, String word, String hint) {
    breath.show(squeezing, word, hint);
  }

  /** Shows the pad for compressions where they are asked for, and what was compressed. */
  void showCompressions(CoachState state, long now) {
    boolean asked = CompressionView.asked(state, now);
    boolean shown = compression.getParent() != null;
    if (asked != shown) {
      if (asked) {
        add(compression, 0);
      } else {
        remove(compression);
      }
      revalidate();
      repaint();
    }
    if (asked) {
      CompressionView view = CompressionView.of(state, now);
      String count = view.count().isEmpty() ? keys.compressionHint() : view.count();
      compression.show(view.lit(), count, view.rate(), view.judgement());
    }
  }
}
