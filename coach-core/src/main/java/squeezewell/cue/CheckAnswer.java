package squeezewell.cue;

import java.util.List;
import java.util.Optional;
import squeezewell.protocol.PatientChange;
import squeezewell.words.Wording;

/** What ended a check: what was felt or seen, or what was done instead of an answer. */
public enum CheckAnswer {
  NO_PULSE("no-pulse", PatientChange.PULSE_LOST),
  PULSE_FELT("pulse-felt", null),
  /** A child's or an infant's heart is slow and the blood does not flow well. */
  UNDER_60_POOR_PERFUSION("under-60-poor-perfusion", PatientChange.HEART_RATE_LOW),
  PULSE_RETURNED("pulse-returned", PatientChange.PULSE_BACK),
  UNDER_60("under-60", PatientChange.HEART_RATE_LOW),
  FROM_60("60-to-99", PatientChange.HEART_RATE_UP),
  FROM_100("100-or-more", PatientChange.HEART_RATE_UP),
  /** A squeeze ended it, which says nothing about the pulse. */
  SQUEEZE("squeeze", null),
  COMPRESSION("compression", null);

  private static final Wording WORDS = Wording.beside(CheckAnswer.class);

  private final String word;
  private final PatientChange change;

  CheckAnswer(String word, PatientChange change) {
    this.word = word;
    this.change = change;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** The words shown to people. */
  public String label() {
    return WORDS.say("answer." + word);
  }

  /** What it says has changed in the patient, if that is news. */
  public Optional<PatientChange> change() {
    return Optional.ofNullable(change);
  }

  /** What can be answered to a check, in the order of its keys, from 1 on. */
  public static List<CheckAnswer> offered(ActiveGuidance inForce) {
    return switch (inForce.check()) {
      case PULSE ->
          inForce.guidance().patient().mayHaveSlowHeart()
              ? List.of(NO_PULSE, PULSE_FELT, UNDER_60_POOR_PERFUSION)
              : List.of(NO_PULSE, PULSE_FELT);
      case RHYTHM -> List.of(PULSE_RETURNED);
      case HEART_RATE -> List.of(UNDER_60, FROM_60, FROM_100);
    };
  }
}
