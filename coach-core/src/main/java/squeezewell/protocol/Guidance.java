package squeezewell.protocol;

import java.util.Objects;

/**
 * What one guideline asks for in one situation.
 *
 * @param patient age group
 * @param situation what was found
 * @param rescuers how many rescuers the values are for; 0 if for any number
 * @param rhythm the pattern to keep
 * @param limits the time limits to keep
 */
public record Guidance(
    PatientGroup patient, Situation situation, int rescuers, Rhythm rhythm, Limits limits) {
  public Guidance {
    Objects.requireNonNull(patient, "patient");
    Objects.requireNonNull(situation, "situation");
    Objects.requireNonNull(rhythm, "rhythm");
    Objects.requireNonNull(limits, "limits");
  }

  /** The patient and the situation, and for how many rescuers, in one line for people. */
  public String words() {
    String who = rescuers == 0 ? "" : rescuers == 1 ? ", 1 rescuer" : ", " + rescuers + " rescuers";
    return patient.label() + ", " + situation.label() + who;
  }
}
