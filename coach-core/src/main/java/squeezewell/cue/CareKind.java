package squeezewell.cue;

import squeezewell.protocol.Guidance;

/** What is done for a patient by whoever does not hold it up for a check or suction. */
public enum CareKind {
  /** Breathe for the patient. */
  BREATHE,
  /** Compress the chest, and breathe as the rhythm says. */
  COMPRESS,
  /** Watch: nothing is prompted. */
  WATCH,
  /** Breathe for the patient; the edition gives no rate for it, so nothing is prompted. */
  BREATHE_NO_RATE;

  /** What that guidance asks for. */
  public static CareKind of(Guidance guidance) {
    return guidance.rhythm().compressions().isPresent() ? COMPRESS : BREATHE;
  }

  /** Whether a rhythm is prompted. */
  public boolean prompted() {
    return this == BREATHE || this == COMPRESS;
  }
}
