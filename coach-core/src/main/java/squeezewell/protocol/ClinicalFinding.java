package squeezewell.protocol;

import java.util.Optional;

/**
 * Something that is found in the middle of a practice and may change what the patient needs. The
 * words of advice are common teaching, in our own words; docs/sources.md says where it comes from.
 */
public enum ClinicalFinding {
  PULSE_LOST("pulse-lost", "No pulse", "Start chest compressions at once."),
  PULSE_BACK("pulse-back", "Pulse is back", "Stop compressing; go on with breaths."),
  BREATHING_STOPPED("breathing-stopped", "Not breathing", "Breathe for the patient."),
  BREATHING_SLOW(
      "breathing-slow",
      "Breathing too slowly",
      "Help: squeeze with the patient's own breath, and fill in where none comes."),
  BREATHING_BACK(
      "breathing-back",
      "Breathing well again",
      "Stop squeezing, hold the airway open and watch the chest."),
  VOMIT("vomit", "Vomit in the airway", "Turn the patient to the side, clear and suction."),
  NO_CHEST_RISE(
      "no-chest-rise",
      "The chest does not rise",
      "Tilt the head or thrust the jaw anew, seal the mask again, think of an adjunct and of"
          + " something in the airway."),
  GAG(
      "gag",
      "Gags on the oral airway",
      "Take it out, have suction ready. A nasal airway is often tolerated."),
  ADVANCED_AIRWAY(
      "advanced-airway",
      "Advanced airway in place",
      "Check its place: the chest rises, and exhaled carbon dioxide is seen."),
  /** Only children, infants and newborns: adults are compressed without a pulse only. */
  HEART_RATE_LOW(
      "heart-rate-low",
      "Heart rate stays under 60",
      "Breaths with oxygen did not raise it: compress."),
  HEART_RATE_UP("heart-rate-up", "Heart rate 60 or more", "Stop compressing; go on with breaths.");

  private final String word;
  private final String label;
  private final String advice;

  ClinicalFinding(String word, String label, String advice) {
    this.word = word;
    this.label = label;
    this.advice = advice;
  }

  /** The word used in files and on the command line. */
  public String word() {
    return word;
  }

  /** The words shown to people. */
  public String label() {
    return label;
  }

  /** What to do about it, one or two clauses. */
  public String advice() {
    return advice;
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
