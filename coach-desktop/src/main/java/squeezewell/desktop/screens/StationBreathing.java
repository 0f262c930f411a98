package squeezewell.desktop.screens;

import java.awt.Dimension;
import java.util.Optional;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import squeezewell.coach.CoachState;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.PromptWords;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.Rows;
import squeezewell.desktop.parts.TideColumn;
import squeezewell.desktop.parts.Widgets;
import squeezewell.live.LiveStation;

/** The breaths of a running station: the column, the words, the rhythm asked for and the pads. */
final class StationBreathing extends JPanel {
  private static final long serialVersionUID = 1L;

  private final transient PracticeKeys keys;
  private final transient LivePainter painter;
  private final JLabel asked;
  private final Pads pads;

  StationBreathing(Widgets kit, PracticeKeys keys, Pads.Hands hands) {
    this.keys = keys;
    Look look = kit.look();
    asked = kit.label("", look.font(13), look.palette().softText());
    asked.setHorizontalAlignment(SwingConstants.CENTER);
    TideColumn tide = new TideColumn(look);
    tide.setPreferredSize(new Dimension(look.px(96), look.px(100)));
    tide.setMinimumSize(new Dimension(look.px(96), look.px(80)));
    tide.setMaximumSize(new Dimension(look.px(96), Integer.MAX_VALUE));
    PromptWords words = new PromptWords(look);
    words.setPreferredSize(new Dimension(look.px(268), look.px(100)));
    painter = new LivePainter(tide, words, new Ribbon(look));
    pads = new Pads(look, keys, hands).high(72, 64);
    JPanel prompt = new JPanel();
    prompt.setLayout(new BoxLayout(prompt, BoxLayout.X_AXIS));
    prompt.setOpaque(false);
    prompt.add(tide);
    prompt.add(Box.createHorizontalStrut(look.px(8)));
    prompt.add(words);
    prompt.setMinimumSize(new Dimension(look.px(200), look.px(80)));
    prompt.setPreferredSize(new Dimension(look.px(372), look.px(100)));
    setOpaque(false);
    new Rows(this).add(prompt, 0.5, look.px(2)).add(asked, 0, look.px(4)).add(pads, 0.5, 0);
  }

  /** Where the keyboard belongs while nothing else has it. */
  JComponent forFocus() {
    return pads.forFocus();
  }

  /**
   * Shows the breaths at an instant of session time.
   *
   * @return what the practice has to say; empty before the first breath
   */
  Optional<LivePainter.Lines> show(LiveStation.Now at, long now) {
    CoachState practice = at.practice();
    pads.showCompressions(practice, now);
    boolean stopped = at.station().clockStopped();
    pads.showBreath(
        practice.squeezing(),
        stopped ? "Clock stopped" : practice.squeezing() ? "Squeezing" : "Hold while you squeeze",
        stopped ? "Run clock, or Esc" : keys.squeezeHint());
    if (!at.breathing()) {
      painter.rest();
      Widgets.show(asked, "The first squeeze starts the rhythm");
      return Optional.empty();
    }
    LivePainter.Lines lines = painter.paint(practice, now);
    Widgets.show(asked, lines.asked());
    return Optional.of(lines);
  }
}
