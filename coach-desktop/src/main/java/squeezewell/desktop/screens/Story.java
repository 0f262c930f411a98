package squeezewell.desktop.screens;

import java.awt.CardLayout;
import javax.swing.JPanel;
import squeezewell.desktop.parts.AdviceCard;
import squeezewell.desktop.parts.PromptWords;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.TideColumn;

/** What is to be done now, and below it what was done: the ribbon, or what was found. */
final class Story {
  private static final String RIBBON = "ribbon";
  private static final String ADVICE = "advice";

  private final CardLayout cards = new CardLayout();
  private final JPanel below = new JPanel(cards);
  private final JPanel prompt;
  private final LivePainter painter;
  private final AdviceCard advice;

  /**
   * @param usual the usual height of the prompt, in density-independent pixels
   * @param least its least height
   */
  Story(RunScreen screen, int usual, int least) {
    TideColumn tide = new TideColumn(screen.look);
    PromptWords words = new PromptWords(screen.look);
    Ribbon ribbon = new Ribbon(screen.look);
    painter = new LivePainter(tide, words, ribbon);
    advice = screen.advice;
    prompt = screen.high(screen.grid(1, 8, tide, words), usual, least);
    below.setOpaque(false);
    below.add(ribbon, RIBBON);
    below.add(advice, ADVICE);
  }

  /** The column and the words. */
  JPanel prompt() {
    return prompt;
  }

  /** The ribbon, or what was found. */
  JPanel below() {
    return below;
  }

  LivePainter painter() {
    return painter;
  }

  /** The card comes in place of the ribbon, or goes. */
  void turn() {
    cards.show(below, advice.isVisible() ? RIBBON : ADVICE);
  }
}
