package squeezewell.protocol;

/** What was found: it decides which rhythm the patient needs. */
public enum Situation {
  PULSE_NO_BREATHING("pulse-no-breathing", "pulse, not breathing"),
  PULSE_SLOW_BREATHING("pulse-slow-breathing", "pulse, breathing too slowly"),
  ARREST_NO_ADVANCED_AIRWAY("arrest-no-advanced-airway", "no pulse, no advanced airway"),
  ARREST_ADVANCED_AIRWAY("arrest-advanced-airway", "no pulse, advanced airway in place"),
  NEWBORN_VENTILATION("newborn-ventilation", "not breathing or gasping");

  private final String id;
  private final String label;

  Situation(String id, String label) {
    this.id = id;
    this.label = label;
  }

  /** The identifier used in files and on the command line. */
  public String id() {
    return id;
  }

  /** The words shown to people, in lower case. */
  public String label() {
    return label;
  }
}
