package squeezewell.cue;

import java.util.Objects;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;

/**
 * What is in force at an instant: all that decides which words fit the patient. Immutable.
 *
 * @param guidance the rhythm in force, or to be once a hold is over
 * @param limits the limits of what goes on
 * @param rescuers how many rescuers are there, at least 1
 * @param care what is done for the patient, or will be once a hold is over
 * @param compressing whether the chest is compressed on during suction that goes on
 */
public record ActiveGuidance(
    Guidance guidance, Limits limits, int rescuers, CareKind care, boolean compressing) {
  public ActiveGuidance {
    Objects.requireNonNull(guidance, "guidance");
    Objects.requireNonNull(limits, "limits");
    Objects.requireNonNull(care, "care");
  }

  /** What a check looks for. */
  public CheckKind check() {
    if (guidance.patient().isJudgedByHeartRate()) {
      return CheckKind.HEART_RATE;
    }
    return care == CareKind.COMPRESS ? CheckKind.RHYTHM : CheckKind.PULSE;
  }

  /** Whether a check is also the time to change who compresses. */
  public boolean changesCompressors() {
    return care == CareKind.COMPRESS && guidance.changesCompressorsAtChecks(rescuers);
  }
}
