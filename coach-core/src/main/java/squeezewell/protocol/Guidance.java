package squeezewell.protocol;

import java.util.Objects;
import squeezewell.words.Wording;

/**
 * What one guideline asks for in one situation.
 *
 * @param patient age group
 * @param situation what was found
 * @param rescuers how many rescuers the values are for; 0 if for any number
 * @param rhythm the pattern to keep
 * @param limits the time limits to keep
 */
public record Guidance(
    PatientGroup patient, Situation situation, int rescuers, Rhythm rhythm, Limits limits) {
  private static final Wording WORDS = Wording.beside(Guidance.class);
  private static final long TWO_MINUTES_NANOS = 120_000_000_000L;

  public Guidance {
    Objects.requireNonNull(patient, "patient");
    Objects.requireNonNull(situation, "situation");
    Objects.requireNonNull(rhythm, "rhythm");
    Objects.requireNonNull(limits, "limits");
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

  private int rescuersOf(int there) {
    return rescuers == 0 ? there : rescuers;
  }

  /** The patient and the situation, and for how many rescuers, in one line for people. */
  public String words() {
    return words(patient, situation, rescuers);
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
