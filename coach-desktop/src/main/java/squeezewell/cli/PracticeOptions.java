package squeezewell.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import squeezewell.cue.PracticePlan;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

/**
 * What to practise: {@code --protocol}, those of {@link PatientOptions}, {@code --situation},
 * {@code --rescuers}, {@code --minutes}.
 */
final class PracticeOptions {
  /** As many as the first rhythm that fits is for. */
  private static final int ANY_NUMBER = 0;

  private static final long NANOS_PER_MINUTE = 60_000_000_000L;

  @Option(names = "--protocol", paramLabel = "ID")
  String protocol = "";

  @Mixin PatientOptions who = new PatientOptions();

  @Option(names = "--situation", paramLabel = "NAME")
  Situation situation;

  @Option(names = "--rescuers", paramLabel = "N", converter = OptionTypes.Rescuers.class)
  Long rescuers;

  @Option(names = "--minutes", paramLabel = "N", converter = OptionTypes.Minutes.class)
  Long lengthNanos;

  /**
   * An edition and what it asks for.
   *
   * @param protocol the edition
   * @param guidance one of its situations
   * @param rescuers how many rescuers there are; {@link #ANY_NUMBER} if that was not said
   */
  record Choice(Protocol protocol, Guidance guidance, int rescuers) {
    /** A practice of it, with all that findings may lead to. */
    PracticePlan plan(long countInNanos, long lengthNanos, long leadNanos) {
      return rescuers == ANY_NUMBER
          ? PracticePlan.of(protocol, guidance, countInNanos, lengthNanos, leadNanos)
          : PracticePlan.of(protocol, guidance, rescuers, countInNanos, lengthNanos, leadNanos);
    }
  }

  /**
   * The edition and situation that were chosen.
   *
   * @param say told why an age or a weight picked its group
   */
  Choice choice(ProtocolStore store, Consumer<String> say) throws BadInputException {
    who.check();
    int there = rescuers == null ? ANY_NUMBER : rescuers.intValue();
    if (!protocol.isEmpty()) {
      Protocol chosen = store.require("--protocol", protocol);
      PatientOptions.Pick pick = who.in(chosen);
      Guidance guidance = guidance(pick.edition(), pick.group(), situation(pick.group()), there);
      return told(pick, guidance, there, say);
    }
    Optional<PatientOptions.Pick> newest = Optional.empty();
    Optional<BadInputException> outside = Optional.empty();
    for (Protocol edition : store.protocols()) {
      PatientOptions.Pick pick;
      try {
        pick = who.in(edition);
      } catch (BadInputException e) {
        outside = Optional.of(outside.orElse(e));
        continue;
      }
      newest = Optional.of(newest.orElse(pick));
      Optional<Guidance> guidance =
          find(pick.edition(), pick.group(), situation(pick.group()), there);
      if (guidance.isPresent()) {
        return told(pick, guidance.get(), there, say);
      }
    }
    if (newest.isEmpty() && outside.isPresent()) {
      throw outside.get();
    }
    PatientGroup group = newest.map(PatientOptions.Pick::group).orElse(PatientGroup.ADULT);
    mustHaveEnough(store.protocols(), group, situation(group));
    throw BadInputException.notAllowed(
        "--situation",
        "",
        situation(group).id() + " for " + group.id(),
        "a situation that an edition covers; see: protocol list");
  }

  private Choice told(
      PatientOptions.Pick pick, Guidance guidance, int there, Consumer<String> say) {
    if (!pick.reason().isEmpty()) {
      say.accept(pick.reason());
    }
    return new Choice(pick.edition(), guidance, there);
  }

  private Situation situation(PatientGroup group) {
    return situation == null ? group.usualSituation() : situation;
  }

  /** Whether any of these options was given. */
  boolean anyGiven() {
    return !protocol.isEmpty()
        || who.anyGiven()
        || situation != null
        || rescuers != null
        || hasMinutes();
  }

  /** Whether the length was given. */
  boolean hasMinutes() {
    return lengthNanos != null;
  }

  /** The length in nanoseconds; {@code otherwise} minutes if it was not given. */
  long lengthNanos(int otherwise) {
    return lengthNanos == null ? otherwise * NANOS_PER_MINUTE : lengthNanos;
  }

  private static Optional<Guidance> find(
      Protocol protocol, PatientGroup group, Situation situation, int there) {
    return there == ANY_NUMBER
        ? protocol.find(group, situation)
        : protocol.find(group, situation, there);
  }

  private Guidance guidance(Protocol protocol, PatientGroup group, Situation situation, int there)
      throws BadInputException {
    Optional<Guidance> found = find(protocol, group, situation, there);
    if (found.isPresent()) {
      return found.get();
    }
    mustHaveEnough(List.of(protocol), group, situation);
    throw BadInputException.notAllowed(
        "--situation",
        "",
        situation.id() + " for " + group.id(),
        "one that "
            + protocol.id()
            + " covers: "
            + protocol.guidance().stream()
                .map(g -> g.situation().id() + " for " + g.patient().id())
                .distinct()
                .collect(Collectors.joining(", ")));
  }

  /** Called when nothing was found: says so if the situation is covered, but for more rescuers. */
  private void mustHaveEnough(List<Protocol> protocols, PatientGroup group, Situation situation)
      throws BadInputException {
    OptionalInt fewest =
        protocols.stream()
            .flatMap(p -> p.guidance().stream())
            .filter(g -> g.patient() == group && g.situation() == situation)
            .mapToInt(Guidance::rescuers)
            .min();
    if (fewest.isPresent() && rescuers != null) {
      throw BadInputException.notAllowed(
          "--rescuers",
          "",
          rescuers + " for " + group.id() + ", " + situation.id(),
          (protocols.size() == 1 ? protocols.get(0).id() + " asks for " : "")
              + "at least "
              + fewest.getAsInt());
    }
  }
}
