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
    Guidance guidance =
        GuidelineLibrary.editions().stream()
            .filter(p -> p.id().equals(edition))
            .findFirst()
            .flatMap(p -> p.find(PatientGroup.ADULT, situation))
            .orElseThrow(() -> new NoSuchElementException(edition + " " + situation));
    return new PracticePlan(guidance, countInNanos, lengthNanos, leadNanos);
  }
}
