package squeezewell.protocol;

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
 */
public record Protocol(
    String id,
    String title,
    String organisation,
    int year,
    boolean local,
    List<Guidance> guidance) {
  public Protocol {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(organisation, "organisation");
    guidance = List.copyOf(guidance);
  }

  /** The guidance for a patient and a situation; the first that fits any number of rescuers. */
  public Optional<Guidance> find(PatientGroup patient, Situation situation) {
    return guidance.stream()
        .filter(g -> g.patient() == patient && g.situation() == situation)
        .findFirst();
  }
}
