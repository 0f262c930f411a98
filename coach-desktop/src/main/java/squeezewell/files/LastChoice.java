package squeezewell.files;

import java.util.Objects;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/**
 * What was practised last, offered again next time.
 *
 * @param protocolId which edition; it may have gone since
 * @param patient age group
 * @param situation what was found
 * @param minutes length of the practice, 1 to {@value #LONGEST_MINUTES}
 */
public record LastChoice(
    String protocolId, PatientGroup patient, Situation situation, int minutes) {
  /** A day, as long as a practice can be. */
  public static final int LONGEST_MINUTES = 1_440;

  public LastChoice {
    Objects.requireNonNull(protocolId, "protocolId");
    Objects.requireNonNull(patient, "patient");
    Objects.requireNonNull(situation, "situation");
    if (minutes < 1 || minutes > LONGEST_MINUTES) {
      throw new IllegalArgumentException(
          "minutes is " + minutes + "; allowed: 1 to " + LONGEST_MINUTES);
    }
  }
}
