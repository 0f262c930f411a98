package squeezewell.cue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientState;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

/**
 * What a practice asks for.
 *
 * @param guidance the rhythm and limits in force at the start
 * @param alternatives what the same edition asks of the same patient in other situations, one entry
 *     each, without the one that is in force at the start; findings lead there
 * @param countInNanos from the start of the session to the first prompt, nanoseconds, 0 to 60 s
 * @param lengthNanos time from the end of the planned count-in to the end of the practice,
 *     nanoseconds, positive, at most 24 h; time held by {@link Control.Kind#PAUSE} does not count.
 *     A hold inside the count-in takes the place of the rest of it.
 * @param leadNanos from a command that makes breathing go on to the prompt for it, nanoseconds, 0
 *     to 1 s. Sound needs a moment to reach the loudspeaker; with a lead it starts on time.
 * @param prompting how far breaths are prompted; it says what is meant, and {@link Control}s what
 *     is done
 * @param rescuers how many rescuers are there, 1 to {@value #MOST_RESCUERS}
 * @param startLevel the level with which fading begins, 0 to {@link CueFader#HIGHEST_START}; 0
 *     where prompts do not fade
 */
public record PracticePlan(
    Guidance guidance,
    List<Guidance> alternatives,
    long countInNanos,
    long lengthNanos,
    long leadNanos,
    Prompting prompting,
    int rescuers,
    int startLevel) {
  private static final long SECOND = 1_000_000_000L;
  public static final long LONGEST_NANOS = 24 * 3_600 * SECOND;
  public static final long LONGEST_COUNT_IN_NANOS = 60 * SECOND;

  /**
   * How many rescuers are taken to be there if the guidance does not say: a bag and mask in an
   * arrest needs one to compress and one to breathe (our own choice).
   */
  public static final int USUAL_RESCUERS = 2;

  /** As many as a protocol can tell apart. */
  public static final int MOST_RESCUERS = 4;

  public PracticePlan {
    Objects.requireNonNull(guidance, "guidance");
    Objects.requireNonNull(prompting, "prompting");
    alternatives = List.copyOf(alternatives);
    for (Guidance other : alternatives) {
      if (other.patient() != guidance.patient() || other.situation() == guidance.situation()) {
        throw new IllegalArgumentException("an alternative for another patient or the same case");
      }
    }
    require("countInNanos", countInNanos, 0, LONGEST_COUNT_IN_NANOS);
    require("lengthNanos", lengthNanos, 1, LONGEST_NANOS);
    require("leadNanos", leadNanos, 0, SECOND);
    require("rescuers", rescuers, 1, MOST_RESCUERS);
    require(
        "startLevel", startLevel, 0, prompting == Prompting.FADING ? CueFader.HIGHEST_START : 0);
  }

  /** A plan for the usual number of rescuers; where prompts fade they begin with level 0. */
  public PracticePlan(
      Guidance guidance,
      List<Guidance> alternatives,
      long countInNanos,
      long lengthNanos,
      long leadNanos,
      Prompting prompting) {
    this(
        guidance,
        alternatives,
        countInNanos,
        lengthNanos,
        leadNanos,
        prompting,
        usualRescuers(guidance),
        0);
  }

  /** A plan in which every breath is prompted. */
  public PracticePlan(
      Guidance guidance,
      List<Guidance> alternatives,
      long countInNanos,
      long lengthNanos,
      long leadNanos) {
    this(guidance, alternatives, countInNanos, lengthNanos, leadNanos, Prompting.THROUGHOUT);
  }

  /** A plan whose rhythm no finding can change. */
  public PracticePlan(Guidance guidance, long countInNanos, long lengthNanos, long leadNanos) {
    this(guidance, List.of(), countInNanos, lengthNanos, leadNanos);
  }

  /**
   * A plan with all that the edition asks of this patient, for as many rescuers as the guidance is
   * for, else for {@link #USUAL_RESCUERS}.
   */
  public static PracticePlan of(
      Protocol protocol, Guidance guidance, long countInNanos, long lengthNanos, long leadNanos) {
    return of(protocol, guidance, usualRescuers(guidance), countInNanos, lengthNanos, leadNanos);
  }

  /** As many as the guidance is for, else {@link #USUAL_RESCUERS}. */
  public static int usualRescuers(Guidance guidance) {
    return guidance.rescuers() == 0 ? USUAL_RESCUERS : guidance.rescuers();
  }

  /**
   * A plan with all that the edition asks of this patient.
   *
   * @param protocol the edition
   * @param guidance one of its entries, where the practice starts
   * @param rescuers how many are there, 1 to {@value #MOST_RESCUERS}
   */
  public static PracticePlan of(
      Protocol protocol,
      Guidance guidance,
      int rescuers,
      long countInNanos,
      long lengthNanos,
      long leadNanos) {
    Map<Situation, Guidance> others = new LinkedHashMap<>();
    for (Situation situation : Situation.values()) {
      if (situation != guidance.situation()) {
        protocol
            .atAgeOf(guidance)
            .find(guidance.patient(), situation, rescuers)
            .ifPresent(found -> others.put(situation, found));
      }
    }
    return new PracticePlan(
        guidance,
        new ArrayList<>(others.values()),
        countInNanos,
        lengthNanos,
        leadNanos,
        Prompting.THROUGHOUT,
        rescuers,
        0);
  }

  /**
   * The same practice with breaths prompted as far as that. Where prompts may not fall silent they
   * are given throughout. A test is two intervals and one pulse check longer, in whole seconds, so
   * that the breath which ends two minutes can still be given.
   */
  public PracticePlan with(Prompting wanted) {
    Prompting fits = Prompting.mayFallSilent(guidance) ? wanted : Prompting.THROUGHOUT;
    long length = lengthNanos;
    if (fits == Prompting.NONE && prompting != Prompting.NONE) {
      long more =
          guidance.rhythm().steadyBreaths().get().interval().nanosAt(2)
              + guidance.limits().pulseCheckLongest().nanos();
      length = Math.min(LONGEST_NANOS, length + (more + SECOND - 1) / SECOND * SECOND);
    }
    int level = fits == Prompting.FADING ? startLevel : 0;
    return new PracticePlan(
        guidance, alternatives, countInNanos, length, leadNanos, fits, rescuers, level);
  }

  /**
   * The same practice, in which fading begins with that level.
   *
   * @throws IllegalArgumentException if it is none, or if prompts do not fade
   */
  public PracticePlan withStartLevel(int level) {
    return new PracticePlan(
        guidance, alternatives, countInNanos, lengthNanos, leadNanos, prompting, rescuers, level);
  }

  /** All guidance that may come into force, that of the start first. */
  public List<Guidance> all() {
    List<Guidance> all = new ArrayList<>();
    all.add(guidance);
    all.addAll(alternatives);
    return List.copyOf(all);
  }

  /** The guidance for a state of the patient; empty if there is none, or only to watch. */
  public Optional<Guidance> guidanceFor(PatientState state) {
    for (Situation situation : state.situations()) {
      for (Guidance found : all()) {
        if (found.situation() == situation) {
          return Optional.of(found);
        }
      }
    }
    return Optional.empty();
  }

  private static void require(String name, long value, long least, long most) {
    if (value < least || value > most) {
      throw new IllegalArgumentException(
          name + " is " + value + "; allowed: " + least + " to " + most);
    }
  }
}
