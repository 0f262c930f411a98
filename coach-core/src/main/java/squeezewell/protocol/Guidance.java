package squeezewell.protocol;

import java.util.Objects;
import java.util.Optional;
import squeezewell.words.Wording;

/**
 * What one guideline asks for in one situation.
 *
 * @param patient age group
 * @param situation what was found
 * @param rescuers how many rescuers the values are for; 0 if for any number
 * @param rhythm the pattern to keep
 * @param limits the time limits to keep
 * @param fromAge the age within the group from which the values hold, where an edition changes them
 *     within it; empty for the group's own
 */
public record Guidance(
    PatientGroup patient,
    Situation situation,
    int rescuers,
    Rhythm rhythm,
    Limits limits,
    Optional<AgeLimit> fromAge) {
  private static final Wording WORDS = Wording.beside(Guidance.class);
  private static final long TWO_MINUTES_NANOS = 120_000_000_000L;

  public Guidance {
    Objects.requireNonNull(patient, "patient");
    Objects.requireNonNull(situation, "situation");
    Objects.requireNonNull(rhythm, "rhythm");
    Objects.requireNonNull(limits, "limits");
    Objects.requireNonNull(fromAge, "fromAge");
  }

  /** Values for the whole group. */
  public Guidance(
      PatientGroup patient, Situation situation, int rescuers, Rhythm rhythm, Limits limits) {
    this(patient, situation, rescuers, rhythm, limits, Optional.empty());
  }

  /** Whether two are for the same patients, whatever they ask for. */
  boolean isLike(Guidance other) {
    return patient == other.patient
        && situation == other.situation
        && rescuers == other.rescuers
        && fromDays() == other.fromDays();
  }

  /** The age from which the values hold, in days; 0 for the group's own. */
  double fromDays() {
    return fromAge.map(AgeLimit::days).orElse(0.0);
  }

  /**
   * Whether the chest is compressed on while the airway is cleared: by somebody else, or with an
   * advanced airway in place. One who is alone can't do both.
   *
   * @param there how many rescuers are there, at least 1; counts where the values are for any
   *     number
   */
  public boolean compressesDuringSuction(int there) {
    return rhythm.compressions().isPresent()
        && (rescuersOf(there) > 1 || rhythm.steadyBreaths().isPresent());
  }

  /**
   * Whether a check is also the time to change who compresses: about every two minutes or five
   * cycles (AHA, adult and paediatric basic life support), so not where checks come more often, as
   * for a newborn, and not for one who is alone.
   *
   * @param there how many rescuers are there, at least 1; counts where the values are for any
   *     number
   */
  public boolean changesCompressorsAtChecks(int there) {
    return rhythm.compressions().isPresent()
        && rescuersOf(there) > 1
        && limits.pulseCheckEvery().nanos() >= TWO_MINUTES_NANOS;
  }

  /** Whether a check looks for the rhythm of the heart: the chest is compressed. */
  public boolean checksRhythm() {
    return rhythm.compressions().isPresent() && !patient.isJudgedByHeartRate();
  }

  private int rescuersOf(int there) {
    return rescuers == 0 ? there : rescuers;
  }

  /** The patient and the situation, and for how many rescuers, in one line for people. */
  public String words() {
    String words = words(patient, situation, rescuers);
    return fromAge.isPresent()
        ? WORDS.say("guidance.from-age", words, fromAge.get().words())
        : words;
  }

  /**
   * A patient and a situation, and for how many rescuers, in one line for people.
   *
   * @param rescuers 0 if for any number
   */
  public static String words(PatientGroup patient, Situation situation, int rescuers) {
    return WORDS.say(
        rescuers == 0 ? "guidance" : "guidance.rescuers",
        patient.label(),
        situation.label(),
        rescuers);
  }
}
