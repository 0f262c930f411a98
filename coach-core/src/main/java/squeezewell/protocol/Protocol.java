package squeezewell.protocol;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import squeezewell.words.Wording;

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
 * @param basedOn identifier of the edition that it was copied from; empty if none is known
 * @param approval who approved it and when; empty if that was not said
 * @param supersededBy what its issuer published in its place; empty if it is the latest
 */
public record Protocol(
    String id,
    String title,
    String organisation,
    int year,
    boolean local,
    List<Guidance> guidance,
    List<AgeBand> ages,
    String basedOn,
    Optional<Approval> approval,
    String supersededBy) {
  private static final Wording WORDS = Wording.beside(Protocol.class);

  public Protocol {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(organisation, "organisation");
    guidance = List.copyOf(guidance);
    ages = List.copyOf(ages);
    Objects.requireNonNull(basedOn, "basedOn");
    Objects.requireNonNull(approval, "approval");
    Objects.requireNonNull(supersededBy, "supersededBy");
  }

  /** A protocol that nothing has superseded. */
  public Protocol(
      String id,
      String title,
      String organisation,
      int year,
      boolean local,
      List<Guidance> guidance,
      List<AgeBand> ages,
      String basedOn,
      Optional<Approval> approval) {
    this(id, title, organisation, year, local, guidance, ages, basedOn, approval, "");
  }

  /** A protocol that was copied from no other, and whose approval was not said. */
  public Protocol(
      String id,
      String title,
      String organisation,
      int year,
      boolean local,
      List<Guidance> guidance,
      List<AgeBand> ages) {
    this(id, title, organisation, year, local, guidance, ages, "", Optional.empty());
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

  /**
   * Situations in which such a patient may be found and for which it has no rhythm; empty if it has
   * none for the patient at all. With an advanced airway a newborn keeps its cycle.
   */
  public List<Situation> missing(PatientGroup patient) {
    boolean covered = guidance.stream().anyMatch(g -> g.patient() == patient);
    return covered
        ? patient.situations().stream()
            .filter(situation -> !find(patient, situation).isPresent())
            .collect(Collectors.toList())
        : List.of();
  }

  /** What is missing for a patient, in words; empty if nothing is. */
  public String missingWords(PatientGroup patient) {
    String situations =
        missing(patient).stream().map(Situation::label).collect(Collectors.joining("; "));
    return situations.isEmpty()
        ? ""
        : WORDS.say(local ? "missing.local" : "missing.edition", situations);
  }

  /**
   * The same protocol for a patient of that age: where values change within a group, those of the
   * age stay. Without it the group's own hold, which are those of its youngest.
   *
   * @param days the age in days
   */
  public Protocol atAge(double days) {
    return withGuidance(
        guidance.stream()
            .filter(g -> g.fromDays() <= days)
            .filter(g -> guidance.stream().noneMatch(o -> isNearer(o, g, days)))
            .collect(Collectors.toList()));
  }

  /** The same protocol for the age that one of its entries is for. */
  public Protocol atAgeOf(Guidance entry) {
    return atAge(entry.fromDays());
  }

  /** Whether an entry is like another, but for an age that is nearer. */
  private static boolean isNearer(Guidance entry, Guidance other, double days) {
    return entry.patient() == other.patient()
        && entry.situation() == other.situation()
        && entry.rescuers() == other.rescuers()
        && entry.fromDays() <= days
        && entry.fromDays() > other.fromDays();
  }

  /** The guidance for a patient and a situation; the first, whatever the number of rescuers. */
  public Optional<Guidance> find(PatientGroup patient, Situation situation) {
    return entries(patient, situation).findFirst();
  }

  /** The entries for a patient and a situation, those for the whole group first. */
  private Stream<Guidance> entries(PatientGroup patient, Situation situation) {
    return guidance.stream()
        .filter(g -> g.patient() == patient && g.situation() == situation)
        .sorted(Comparator.comparingDouble(Guidance::fromDays));
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
    return entries(patient, situation)
        .filter(g -> g.rescuers() <= rescuers)
        .min(Comparator.comparingInt(g -> -g.rescuers()));
  }

  /**
   * What this says where another says {@code other}: the entry for the same patient, situation and
   * number of rescuers, else the first for the same patient and situation.
   */
  Optional<Guidance> findLike(Guidance other) {
    Optional<Guidance> same = guidance.stream().filter(other::isLike).findFirst();
    return same.isPresent() ? same : find(other.patient(), other.situation());
  }

  /**
   * The same protocol with other guidance. Age limits of groups that are no longer in it go with
   * them, since a file can't hold those.
   */
  public Protocol withGuidance(List<Guidance> others) {
    List<AgeBand> kept =
        ages.stream()
            .filter(a -> others.stream().anyMatch(g -> g.patient() == a.group()))
            .collect(Collectors.toList());
    return new Protocol(
        id, title, organisation, year, local, others, kept, basedOn, approval, supersededBy);
  }

  /** The guideline that this stems from: itself if it is one; empty if it is none of those. */
  public Optional<Protocol> baseAmong(List<Protocol> editions) {
    return local
        ? editions.stream().filter(p -> !p.local() && p.id().equals(basedOn)).findFirst()
        : Optional.of(this);
  }

  /** The same protocol, marked as one that a service wrote. */
  public Protocol asLocal() {
    return new Protocol(id, title, organisation, year, true, guidance, ages, basedOn, approval);
  }
}
