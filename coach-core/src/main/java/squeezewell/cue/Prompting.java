package squeezewell.cue;

import squeezewell.protocol.Guidance;

/** How far a practice prompts the breaths. Reminders and limits are told in any case. */
public enum Prompting {
  /** Every breath is prompted. */
  THROUGHOUT("throughout", "Throughout"),
  /** Fewer and fewer breaths are prompted while the rhythm is held: see {@link CueFader}. */
  FADING("fading", "Fading while you hold the rhythm"),
  /** No breath is prompted after the count-in: a test of the rhythm. */
  NONE("none", "None after the count-in (a test)");

  private final String word;
  private final String label;

  Prompting(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** The word used in files and on the command line. */
  public String word() {
    return word;
  }

  /** The words shown to people. */
  public String label() {
    return label;
  }

  /**
   * Whether prompts may fall silent in a rhythm: only where breaths come at a steady interval and
   * the chest is not compressed. With compressions two people have to keep step with each other.
   */
  public static boolean mayFallSilent(Guidance guidance) {
    return guidance.rhythm().steadyBreaths().isPresent()
        && !guidance.rhythm().compressions().isPresent();
  }
}
