package squeezewell.protocol;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * An edition of a guideline, or a service's own version of one.
 *
 * @param id identifier of lower-case letters, digits and hyphens
 * @param title name shown to people
 * @param organisation who publishes it
 * @param year year of publication
 * @param local whether a service wrote it, rather than a guideline body
 * @param guidance what it asks for, one entry for each situation
 * @param ages the age limits of its groups, where they are given
 */
public record Protocol(
    String id,
    String title,
    String organisation,
    int year,
    boolean local,
    List<Guidance> guidance,
    List<AgeBand> ages) {
  public Protocol {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(organisation, "organisation");
    guidance = List.copyOf(guidance);
    ages = List.copyOf(ages);
  }

  /** A protocol that gives no age limits. */
  public Protocol(
      String id,
      String title,
      String organisation,
      int year,
      boolean local,
      List<Guidance> guidance) {
    this(id, title, organisation, year, local, guidance, List.of());
  }

  /** The guidance for a patient and a situation; the first, whatever the number of rescuers. */
  public Optional<Guidance> find(PatientGroup patient, Situation situation) {
    return guidance.stream()
        .filter(g -> g.patient() == patient && g.situation() == situation)
        .findFirst();
  }

  /**
   * The guidance for a patient, a situation and a number of rescuers: the entry for just so many,
   * else the one for the most rescuers that are there, else the one for any number.
   *
   * @param rescuers how many are there, at least 1
   * @throws IllegalArgumentException if there are fewer
   */
  public Optional<Guidance> find(PatientGroup patient, Situation situation, int rescuers) {
    if (rescuers < 1) {
      throw new IllegalArgumentException("nobody is there: " + rescuers);
    }
    return guidance.stream()
        .filter(g -> g.patient() == patient && g.situation() == situation)
        .filter(g -> g.rescuers() <= rescuers)
        .max(Comparator.comparingInt(Guidance::rescuers));
  }
}
