package squeezewell.protocol;

/**
 * What to do about a finding, by age group where the teaching differs. Common teaching in our own
 * words; docs/sources.md says for each clause where it comes from and what is from memory.
 */
final class FindingAdvice {
  private FindingAdvice() {}

  static String of(ClinicalFinding finding, PatientGroup patient) {
    boolean newborn = patient == PatientGroup.NEWBORN;
    return switch (finding) {
      case PULSE_LOST -> "Start chest compressions at once, " + depth(patient) + ".";
      case PULSE_BACK ->
          patient == PatientGroup.ADULT
              ? "Stop compressing; go on with breaths."
              : "If it beats 60 a minute or more, stop compressing; go on with breaths.";
      case BREATHING_STOPPED -> "Breathe for the patient: " + breath(patient) + ".";
      case BREATHING_SLOW ->
          "Help: squeeze with the patient's own breath, and fill in where none comes; "
              + breath(patient)
              + ".";
      case BREATHING_BACK -> "Stop squeezing, hold the airway open and watch the chest.";
      case VOMIT ->
          newborn
              ? "Suction gently, the mouth first, then the nose."
              : "Turn the patient to the side, clear the mouth, and suction only as deep as you can"
                  + " see.";
      case NO_CHEST_RISE -> noRise(patient);
      case GAG ->
          patient == PatientGroup.INFANT
              ? "Take it out, have suction ready, and hold the airway open with the head neutral."
              : "Take it out, have suction ready. A nasal airway is often tolerated.";
      case ADVANCED_AIRWAY ->
          "Check its place: the chest rises, and exhaled carbon dioxide is seen.";
      case HEART_RATE_LOW ->
          newborn
              ? "If so after 30 s of breaths that move the chest: compress."
              : "With poor perfusion, in spite of oxygen and breaths: compress, "
                  + depth(patient)
                  + ".";
      case HEART_RATE_UP ->
          newborn
              ? "Stop compressing; go on with breaths until it is over 100 and the newborn breathes."
              : "Stop compressing; go on with breaths.";
    };
  }

  private static String depth(PatientGroup patient) {
    return switch (patient) {
      case ADULT -> "5 to 6 cm deep";
      case CHILD -> "a third of the chest deep, about 5 cm";
      case INFANT -> "a third of the chest deep, about 4 cm";
      case NEWBORN -> "a third of the chest deep";
    };
  }

  private static String breath(PatientGroup patient) {
    return switch (patient) {
      case ADULT, CHILD -> "each breath about 1 s, until the chest just rises";
      case INFANT -> "small breaths of about 1 s, until the chest just rises";
      case NEWBORN -> "gentle breaths, until the chest just moves";
    };
  }

  private static String noRise(PatientGroup patient) {
    return switch (patient) {
      case ADULT ->
          "Tilt the head or thrust the jaw anew, seal the mask again, think of an adjunct and of"
              + " something in the airway.";
      case CHILD ->
          "Tilt the head anew but not too far, or thrust the jaw; seal the mask again, think of an"
              + " adjunct and of something in the airway.";
      case INFANT ->
          "Put the head in the neutral position, no further back; seal the mask again, think of an"
              + " adjunct and of something in the airway.";
      case NEWBORN ->
          "Set the mask and the head anew; then suction mouth and nose and open the mouth; then more"
              + " pressure; then another airway.";
    };
  }
}
