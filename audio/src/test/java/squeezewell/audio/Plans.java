package squeezewell.audio;

import java.util.NoSuchElementException;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/** Plans that tests practise by. */
final class Plans {
  static final long SECOND = 1_000_000_000L;

  private Plans() {}

  static PracticePlan adult(String edition, Situation situation, long lengthNanos) {
    return adult(edition, situation, 0, lengthNanos, 0);
  }

  static PracticePlan adult(
      String edition, Situation situation, long countInNanos, long lengthNanos, long leadNanos) {
    return new PracticePlan(
        guidance(edition, PatientGroup.ADULT, situation), countInNanos, lengthNanos, leadNanos);
  }

  /** What an edition asks of two rescuers. */
  static Guidance guidance(String edition, PatientGroup patient, Situation situation) {
    return GuidelineLibrary.editions().stream()
        .filter(p -> p.id().equals(edition))
        .findFirst()
        .flatMap(p -> p.find(patient, situation, 2))
        .orElseThrow(() -> new NoSuchElementException(edition + " " + situation));
  }
}
