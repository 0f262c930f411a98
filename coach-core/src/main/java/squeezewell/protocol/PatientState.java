package squeezewell.protocol;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * What is known of the patient, as far as it decides which rhythm is needed. Immutable.
 *
 * @param patient age group
 * @param pulse whether there is a pulse
 * @param breathing how the patient breathes by themselves
 * @param advancedAirway whether a tube or supraglottic airway is in place
 * @param slowHeart whether the heart beats too slowly to count as a pulse for the age: under 60 a
 *     minute in children, infants and newborns (AHA PALS 2020; NRP, 8th edition); never in adults
 */
public record PatientState(
    PatientGroup patient,
    boolean pulse,
    Breathing breathing,
    boolean advancedAirway,
    boolean slowHeart) {
  public PatientState {
    Objects.requireNonNull(patient, "patient");
    Objects.requireNonNull(breathing, "breathing");
  }

  /** How the patient breathes by themselves. */
  public enum Breathing {
    NONE,
    SLOW,
    ADEQUATE
  }

  /** The state that a situation describes. */
  public static PatientState of(PatientGroup patient, Situation situation) {
    boolean arrest =
        situation == Situation.ARREST_NO_ADVANCED_AIRWAY
            || situation == Situation.ARREST_ADVANCED_AIRWAY;
    return new PatientState(
        patient,
        !arrest,
        situation == Situation.PULSE_SLOW_BREATHING ? Breathing.SLOW : Breathing.NONE,
        situation == Situation.ARREST_ADVANCED_AIRWAY,
        false);
  }

  /** The state once that was found. What can't be found in such a patient changes nothing. */
  public PatientState after(PatientChange finding) {
    if (!finding.concerns(patient)) {
      return this;
    }
    return switch (finding) {
      // Without a pulse nobody breathes well for long; what was known of breathing is void.
      case PULSE_LOST -> new PatientState(patient, false, Breathing.NONE, advancedAirway, false);
      // A heart known to be slow had a pulse all along: only its rate is news.
      case PULSE_BACK -> new PatientState(patient, true, breathing, advancedAirway, slowHeart);
      case BREATHING_STOPPED -> breathing(Breathing.NONE);
      case BREATHING_SLOW -> breathing(Breathing.SLOW);
      case BREATHING_BACK -> breathing(Breathing.ADEQUATE);
      case ADVANCED_AIRWAY -> new PatientState(patient, pulse, breathing, true, slowHeart);
      // So slow a heart beats, and nobody who is compressed for it breathes well.
      case HEART_RATE_LOW -> new PatientState(patient, true, Breathing.NONE, advancedAirway, true);
      case HEART_RATE_UP -> new PatientState(patient, true, breathing, advancedAirway, false);
      case VOMIT, NO_CHEST_RISE, GAG -> this;
    };
  }

  /** One who breathes well has a heart that beats; slow breaths may be gasps and prove nothing. */
  private PatientState breathing(Breathing found) {
    boolean well = found == Breathing.ADEQUATE;
    return new PatientState(patient, pulse || well, found, advancedAirway, slowHeart && !well);
  }

  /**
   * What may be found in this state and tells something new, in the order in which it is offered:
   * pulse, breathing, airway.
   */
  public List<PatientChange> possible() {
    List<PatientChange> found = new ArrayList<>();
    for (PatientChange finding : PatientChange.values()) {
      // Breathing is not looked at again before there is a pulse, except that it comes back.
      boolean later =
          arrest()
              && (finding == PatientChange.BREATHING_SLOW
                  || finding == PatientChange.BREATHING_STOPPED);
      boolean tells =
          switch (finding) {
            case VOMIT, NO_CHEST_RISE -> true;
            // Nobody without a pulse gags, and a tube lies beyond where one would.
            case GAG -> pulse && !advancedAirway;
            default -> !after(finding).equals(this);
          };
      if (finding.concerns(patient) && tells && !later) {
        found.add(finding);
      }
    }
    return List.copyOf(found);
  }

  /** Whether the chest has to be compressed. */
  public boolean arrest() {
    return !pulse || slowHeart;
  }

  /** Whether nothing has to be done but to watch. */
  public boolean watching() {
    return !arrest() && breathing == Breathing.ADEQUATE;
  }

  /**
   * The situations that fit, the closest first: an edition that has no rhythm of its own for one is
   * followed by the next. Empty when there is only to watch.
   */
  public List<Situation> situations() {
    if (watching()) {
      return List.of();
    }
    if (arrest()) {
      // The newborn programme keeps its cycle with a tube in place.
      return advancedAirway
          ? List.of(Situation.ARREST_ADVANCED_AIRWAY, Situation.ARREST_NO_ADVANCED_AIRWAY)
          : List.of(Situation.ARREST_NO_ADVANCED_AIRWAY);
    }
    if (patient.isJudgedByHeartRate()) {
      return List.of(Situation.NEWBORN_VENTILATION);
    }
    return breathing == Breathing.SLOW
        ? List.of(Situation.PULSE_SLOW_BREATHING, Situation.PULSE_NO_BREATHING)
        : List.of(Situation.PULSE_NO_BREATHING);
  }
}
