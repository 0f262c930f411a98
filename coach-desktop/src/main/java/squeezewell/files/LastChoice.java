package squeezewell.files;

import java.util.List;
import java.util.Optional;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/**
 * What was practised last, offered again next time.
 *
 * @param protocolId which edition; it may have gone since
 * @param patient age group
 * @param situation what was found
 * @param rescuers how many rescuers the rhythm is for, to {@value #MOST_RESCUERS}; 0 if for any
 *     number, or if it was not kept
 * @param minutes length of the practice, 1 to {@value #LONGEST_MINUTES}
 * @param prompting how far breaths were to be prompted
 */
public record LastChoice(
    String protocolId,
    PatientGroup patient,
    Situation situation,
    int rescuers,
    int minutes,
    Prompting prompting) {
  /** A day, as long as a practice can be. */
  public static final int LONGEST_MINUTES = 1_440;

  /** As many as a protocol can name. */
  public static final int MOST_RESCUERS = 4;

  public LastChoice {
    if (rescuers < 0 || rescuers > MOST_RESCUERS) {
      throw new IllegalArgumentException(
          "rescuers is " + rescuers + "; allowed: 0 to " + MOST_RESCUERS);
    }
    if (minutes < 1 || minutes > LONGEST_MINUTES) {
      throw new IllegalArgumentException(
          "minutes is " + minutes + "; allowed: 1 to " + LONGEST_MINUTES);
    }
  }

  /** A choice with every breath prompted. */
  public LastChoice(
      String protocolId, PatientGroup patient, Situation situation, int rescuers, int minutes) {
    this(protocolId, patient, situation, rescuers, minutes, Prompting.THROUGHOUT);
  }

  /** A choice for any number of rescuers. */
  public LastChoice(String protocolId, PatientGroup patient, Situation situation, int minutes) {
    this(protocolId, patient, situation, 0, minutes);
  }

  /**
   * Which of some rhythms was chosen: that of the same patient, situation and number of rescuers,
   * else the first of the same patient and situation.
   *
   * @return empty if there is none
   */
  public Optional<Guidance> among(List<Guidance> guidance) {
    List<Guidance> same =
        guidance.stream()
            .filter(g -> g.patient() == patient && g.situation() == situation)
            .toList();
    return same.stream()
        .filter(g -> g.rescuers() == rescuers)
        .findFirst()
        .or(() -> same.stream().findFirst());
  }
}
