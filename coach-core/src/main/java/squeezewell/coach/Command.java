package squeezewell.coach;

import squeezewell.cue.Segment;

/** What a person or an input can tell the coach. */
public enum Command {
  /** The squeeze begins: the key, button or pedal went down. */
  SQUEEZE,
  /** The squeeze ends. */
  SQUEEZE_END,
  /** A squeeze begins whose end will never be told, as from a terminal's key or a plain contact. */
  BREATH,
  /** One chest compression. */
  COMPRESS,
  /** A pulse check begins. */
  PULSE_CHECK,
  /** The pulse check is over; breathing goes on at once. */
  PULSE_CHECK_END,
  /** Suction begins. */
  SUCTION,
  /** Suction is over; breathing goes on at once. */
  SUCTION_END,
  /** The practice stands still. */
  PAUSE,
  /** The practice goes on. */
  RESUME,
  /** The practice is over. */
  FINISH,
  /** The last breath was a slip. */
  RETRACT_BREATH,
  /** The last finding was a slip; within {@link CoachState#UNDO_FINDING_NANOS} of it. */
  UNDO_FINDING,
  /** Sound stopped. */
  SOUND_LOST,
  /** Sound is there again. */
  SOUND_BACK;

  /** What begins a check, suction or a pause, or, if it goes on already, ends it. */
  public static Command toggle(Segment.Kind hold, boolean goesOn) {
    return switch (hold) {
      case PULSE_CHECK -> goesOn ? PULSE_CHECK_END : PULSE_CHECK;
      case SUCTION -> goesOn ? SUCTION_END : SUCTION;
      case PAUSED -> goesOn ? RESUME : PAUSE;
      default -> throw new IllegalArgumentException("nothing that a person holds up: " + hold);
    };
  }
}
