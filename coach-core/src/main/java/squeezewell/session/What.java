package squeezewell.session;

import java.util.Optional;
import squeezewell.cue.Control;

/** What can happen in a session. */
public enum What {
  /** A squeeze began. */
  BREATH("breath", null),
  /** The squeeze ended; the detail may hold the volume, such as {@code 450 mL}. */
  BREATH_END("breath-end", null),
  /** One chest compression. */
  COMPRESSION("compression", null),
  PULSE_CHECK("pulse-check", Control.Kind.PULSE_CHECK),
  PULSE_CHECK_END("pulse-check-end", Control.Kind.PULSE_CHECK_END),
  SUCTION("suction", Control.Kind.SUCTION),
  SUCTION_END("suction-end", Control.Kind.SUCTION_END),
  PAUSE("pause", Control.Kind.PAUSE),
  RESUME("resume", Control.Kind.RESUME),
  /**
   * Something was found or noticed; the detail says what. A word of {@link
   * squeezewell.protocol.ClinicalFinding} may change the prompts.
   */
  FINDING("finding", null),
  /** The last finding was a slip; the detail is the number of its event. */
  FINDING_UNDONE("finding-undone", null),
  /** The practice was ended, by the clock or by command. */
  FINISH("finish", Control.Kind.FINISH),
  /** The program stood still; the detail says for how long. No prompts were given meanwhile. */
  HOLE("hole", null),
  SOUND_LOST("sound-lost", null),
  SOUND_BACK("sound-back", null),
  /** An earlier event was a slip; the detail is its number. */
  RETRACT("retract", null);

  private final String word;
  private final Control.Kind control;

  What(String word, Control.Kind control) {
    this.word = word;
    this.control = control;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** What it changes about the prompts by itself, whatever its detail; empty if nothing. */
  public Optional<Control.Kind> control() {
    return Optional.ofNullable(control);
  }

  /** The event of that word. */
  public static Optional<What> of(String word) {
    for (What what : values()) {
      if (what.word.equals(word)) {
        return Optional.of(what);
      }
    }
    return Optional.empty();
  }
}
