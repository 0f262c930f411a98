package squeezewell.cue;

import squeezewell.protocol.Guidance;

/**
 * What is looked for when a check falls due, in the trade's words. Where the chest is compressed it
 * is the rhythm of the heart (American Heart Association, basic life support: rhythm check about
 * every 2 minutes); in a newborn it is the heart rate (newborn programme, 8th edition); else the
 * pulse.
 */
public enum CheckKind {
  PULSE("pulse check", "check the pulse", "feel the pulse"),
  RHYTHM("rhythm check", "check the rhythm", "check the rhythm"),
  HEART_RATE("heart rate check", "check the heart rate", "count the heart rate");

  private final String words;
  private final String order;
  private final String task;

  CheckKind(String words, String order, String task) {
    this.words = words;
    this.order = order;
    this.task = task;
  }

  /** What a check looks for while that guidance is followed. */
  public static CheckKind of(Guidance guidance) {
    if (guidance.patient().isJudgedByHeartRate()) {
      return HEART_RATE;
    }
    return guidance.checksRhythm() ? RHYTHM : PULSE;
  }

  /** Its name, in lower case. */
  public String words() {
    return words;
  }

  /** The order to begin it, in lower case. */
  public String order() {
    return order;
  }

  /** What is done while it goes on, in lower case. */
  public String task() {
    return task;
  }
}
