package squeezewell.protocol;

import java.util.Objects;
import java.util.Optional;

/**
 * The ages that a guideline counts as one age group. Bands may overlap: there the numbers can't
 * tell, and a person has to judge.
 *
 * @param group the age group
 * @param from youngest age, included
 * @param to oldest age, not included; empty if there is none
 * @param words the limits as the guideline words them, such as "1 year to the start of puberty"
 * @param judgement what decides where the next older group overlaps, if it does
 * @param source where the words come from
 */
public record AgeBand(
    PatientGroup group,
    AgeLimit from,
    Optional<AgeLimit> to,
    String words,
    Optional<String> judgement,
    Citation source) {
  public AgeBand {
    Objects.requireNonNull(group, "group");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(judgement, "judgement");
    Objects.requireNonNull(source, "source");
    if (to.isPresent() && to.get().days() <= from.days()) {
      throw new IllegalArgumentException("the group ends before it begins");
    }
  }

  /** Whether an age in days lies in the band. */
  public boolean contains(double days) {
    return days >= from.days() && (!to.isPresent() || days < to.get().days());
  }
}
