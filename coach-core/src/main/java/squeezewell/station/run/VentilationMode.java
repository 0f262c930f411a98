package squeezewell.station.run;

import squeezewell.input.FileWord;
import squeezewell.protocol.PatientState;
import squeezewell.words.Wording;

/** How breaths are given. */
public enum VentilationMode implements FileWord {
  BREATHS,
  /** One breath with each of the patient's own, and more in between. */
  ASSISTED,
  CYCLES,
  CONTINUOUS;

  private static final Wording WORDS = Wording.beside(VentilationMode.class);

  /** The name shown to people, in lower case. */
  public String label() {
    return WORDS.say("ventilation." + word());
  }

  /** How a patient in that state is ventilated. */
  static VentilationMode of(PatientState state) {
    if (state.arrest()) {
      // The newborn programme keeps its cycle with a tube in place.
      boolean goesOn = state.advancedAirway() && !state.patient().isJudgedByHeartRate();
      return goesOn ? CONTINUOUS : CYCLES;
    }
    return state.breathing() == PatientState.Breathing.SLOW ? ASSISTED : BREATHS;
  }
}
