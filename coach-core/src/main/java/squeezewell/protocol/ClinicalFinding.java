package squeezewell.protocol;

import java.util.Optional;

/** Something that is found in the middle of a practice and may change what the patient needs. */
public enum ClinicalFinding {
  PULSE_LOST("pulse-lost", "No pulse"),
  PULSE_BACK("pulse-back", "Pulse is back"),
  BREATHING_STOPPED("breathing-stopped", "Not breathing"),
  BREATHING_SLOW("breathing-slow", "Breathing too slowly"),
  BREATHING_BACK("breathing-back", "Breathing well again"),
  VOMIT("vomit", "Vomit in the airway"),
  NO_CHEST_RISE("no-chest-rise", "The chest does not rise"),
  GAG("gag", "Gags on the oral airway"),
  ADVANCED_AIRWAY("advanced-airway", "Advanced airway in place"),
  /** Only children, infants and newborns: adults are compressed without a pulse only. */
  HEART_RATE_LOW("heart-rate-low", "Heart rate stays under 60"),
  HEART_RATE_UP("heart-rate-up", "Heart rate 60 or more");

  private final String word;
  private final String label;

  ClinicalFinding(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** The word used in files and on the command line. */
  public String word() {
    return word;
  }

  /** The words shown to people. */
  public String label() {
    return label;
  }

  /** What to do about it in a patient of that age group, one to three clauses. */
  public String advice(PatientGroup patient) {
    return FindingAdvice.of(this, patient);
  }

  /** Whether it can be found in a patient of that age group. */
  public boolean concerns(PatientGroup patient) {
    return switch (this) {
      case HEART_RATE_LOW, HEART_RATE_UP -> patient != PatientGroup.ADULT;
      // The newborn's heart rate decides, not whether a pulse is felt (NRP, 8th edition).
      case PULSE_LOST, PULSE_BACK, BREATHING_SLOW, GAG -> patient != PatientGroup.NEWBORN;
      default -> true;
    };
  }

  /** The finding of that word. */
  public static Optional<ClinicalFinding> of(String word) {
    for (ClinicalFinding finding : values()) {
      if (finding.word.equals(word)) {
        return Optional.of(finding);
      }
    }
    return Optional.empty();
  }
}
