package squeezewell.protocol;

import squeezewell.words.Wording;

/** What was found: it decides which rhythm the patient needs. */
public enum Situation {
  PULSE_NO_BREATHING("pulse-no-breathing"),
  PULSE_SLOW_BREATHING("pulse-slow-breathing"),
  ARREST_NO_ADVANCED_AIRWAY("arrest-no-advanced-airway"),
  ARREST_ADVANCED_AIRWAY("arrest-advanced-airway"),
  NEWBORN_VENTILATION("newborn-ventilation");

  private static final Wording WORDS = Wording.beside(Situation.class);

  private final String id;

  Situation(String id) {
    this.id = id;
  }

  /** The identifier used in files and on the command line. */
  public String id() {
    return id;
  }

  /** The words shown to people, in lower case. */
  public String label() {
    return WORDS.say("situation." + id);
  }
}
