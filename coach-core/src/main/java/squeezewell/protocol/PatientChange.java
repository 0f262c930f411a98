package squeezewell.protocol;

import java.util.Optional;
import squeezewell.words.Wording;

/** Something that is found in the middle of a practice and may change what the patient needs. */
public enum PatientChange {
  PULSE_LOST("pulse-lost"),
  PULSE_BACK("pulse-back"),
  BREATHING_STOPPED("breathing-stopped"),
  BREATHING_SLOW("breathing-slow"),
  BREATHING_BACK("breathing-back"),
  VOMIT("vomit"),
  NO_CHEST_RISE("no-chest-rise"),
  GAG("gag"),
  ADVANCED_AIRWAY("advanced-airway"),
  /** Only children, infants and newborns: adults are compressed without a pulse only. */
  HEART_RATE_LOW("heart-rate-low"),
  HEART_RATE_UP("heart-rate-up");

  private static final Wording WORDS = Wording.beside(PatientChange.class);

  private final String word;

  PatientChange(String word) {
    this.word = word;
  }

  /** The word used in files and on the command line. */
  public String word() {
    return word;
  }

  /** The words shown to people. */
  public String label() {
    return WORDS.say("finding." + word);
  }

  /** What to do about it in a patient of that age group, one to three clauses. */
  public String advice(PatientGroup patient) {
    String key = "advice." + word;
    String own = key + "." + patient.id();
    return WORDS.say(WORDS.has(own) ? own : key);
  }

  /** Whether it can be found in a patient of that age group. */
  public boolean concerns(PatientGroup patient) {
    return switch (this) {
      case HEART_RATE_LOW, HEART_RATE_UP -> patient.mayHaveSlowHeart();
      case PULSE_LOST, PULSE_BACK, BREATHING_SLOW, GAG -> !patient.isJudgedByHeartRate();
      default -> true;
    };
  }

  /** The finding of that word. */
  public static Optional<PatientChange> of(String word) {
    for (PatientChange finding : values()) {
      if (finding.word.equals(word)) {
        return Optional.of(finding);
      }
    }
    return Optional.empty();
  }
}
