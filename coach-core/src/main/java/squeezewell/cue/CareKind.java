package squeezewell.cue;

/** What is done for a patient by whoever does not hold it up for a check or suction. */
public enum CareKind {
  /** Breathe for the patient. */
  BREATHE,
  /** Compress the chest, and breathe as the rhythm says. */
  COMPRESS,
  /** Watch: nothing is prompted. */
  WATCH
}
