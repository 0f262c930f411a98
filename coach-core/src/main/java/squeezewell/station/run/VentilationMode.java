package squeezewell.station.run;

import squeezewell.protocol.PatientState;

/** How breaths are given. */
public enum VentilationMode {
  BREATHS("breaths", "breaths"),
  /** One breath with each of the patient's own, and more in between. */
  ASSISTED("assisted", "assisted breaths"),
  CYCLES("cycles", "compressions and breaths in turn"),
  CONTINUOUS("continuous", "breaths while compressions go on");

  private final String word;
  private final String label;

  VentilationMode(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** The name shown to people, in lower case. */
  public String label() {
    return label;
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
