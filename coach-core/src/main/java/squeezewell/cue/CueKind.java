package squeezewell.cue;

/**
 * What a cue tells the rescuer. The order is the order in which cues of the same instant are given.
 */
public enum CueKind {
  /** Let go of the bag. */
  RELEASE("release"),
  /** Squeeze the bag, for the cue's length. */
  SQUEEZE("squeeze"),
  /** One count of the interval between two breaths. */
  COUNT("count"),
  /** One chest compression. */
  COMPRESS("compress"),
  /** Another kind of rhythm is in force from now on: its first prompt follows by itself. */
  RHYTHM_CHANGED("rhythm-changed"),
  /** From now on there is nothing to do but watch the patient breathe. */
  WATCH("watch"),
  /** From now on breathe for the patient, at no rate that is known. */
  NO_RATE("no-rate"),
  /** A pulse check will be due soon. */
  PULSE_CHECK_SOON("pulse-check-soon"),
  /** A pulse check is due, or overdue when {@link Cue#count()} is above 1. */
  PULSE_CHECK_DUE("pulse-check-due"),
  /** One second of the running pulse check. */
  PULSE_CHECK_SECOND("pulse-check-second"),
  /** The running pulse check has lasted long enough to tell. */
  PULSE_CHECK_ENOUGH("pulse-check-enough"),
  /** The running pulse check has reached its limit; repeated while it goes on. */
  PULSE_CHECK_LIMIT("pulse-check-limit"),
  /** Suction will reach its limit soon. */
  SUCTION_SOON("suction-soon"),
  /** Suction has reached its limit; repeated while it goes on. */
  SUCTION_LIMIT("suction-limit"),
  /** One minute of the practice is left. */
  LAST_MINUTE("last-minute"),
  /** The practice is over. */
  SESSION_END("session-end");

  private final String id;

  CueKind(String id) {
    this.id = id;
  }

  /** The word used in files. */
  public String id() {
    return id;
  }

  /** Whether it tells a part of a breath: when to squeeze, to let go, or a count. */
  boolean tellsBreath() {
    return this == RELEASE || this == SQUEEZE || this == COUNT;
  }

  /** Whether it tells that something else is to be done from now on. */
  boolean tellsChange() {
    return this == RHYTHM_CHANGED || this == WATCH || this == NO_RATE;
  }
}
