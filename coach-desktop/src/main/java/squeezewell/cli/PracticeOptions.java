package squeezewell.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import squeezewell.cue.PracticePlan;
import squeezewell.files.LastChoice;
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

  private static final BigDecimal NANOS_PER_MINUTE = BigDecimal.valueOf(60_000_000_000L);
  private static final BigDecimal MOST_MINUTES = BigDecimal.valueOf(24 * 60);

  @Option(
      names = "--protocol",
      paramLabel = "ID",
      description =
          "Guideline edition, such as aha-2025 (see: protocol list)."
              + " If it is not given: the newest that covers the situation.")
  String protocol = "";

  @Mixin PatientOptions who = new PatientOptions();

  @Option(
      names = "--situation",
      paramLabel = "NAME",
      description =
          "pulse-no-breathing, pulse-slow-breathing, arrest-no-advanced-airway,"
              + " arrest-advanced-airway or newborn-ventilation. Default: pulse-no-breathing, for a"
              + " newborn newborn-ventilation.")
  String situation = "";

  @Option(
      names = "--rescuers",
      paramLabel = "N",
      description =
          "How many rescuers there are, 1 to 4, where the rhythm depends on it: without a pulse a"
              + " child gets 30 to 2 from one and 15 to 2 from two. If it is not given: the first"
              + " rhythm that the edition lists.")
  String rescuers = "";

  @Option(
      names = "--minutes",
      paramLabel = "N",
      description = "Length in minutes, above 0, at most 1440; 0.5 is half a minute.")
  String minutes = "";

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
    int there =
        rescuers.isEmpty()
            ? ANY_NUMBER
            : (int) Numbers.whole("--rescuers", rescuers, 1, LastChoice.MOST_RESCUERS);
    if (!protocol.isEmpty()) {
      Protocol chosen = store.require("--protocol", protocol);
      PatientOptions.Pick pick = who.in(chosen);
      Guidance guidance = guidance(chosen, pick.group(), situation(pick.group()), there);
      return told(new Choice(chosen, guidance, there), pick, say);
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
      Optional<Guidance> guidance = find(edition, pick.group(), situation(pick.group()), there);
      if (guidance.isPresent()) {
        return told(new Choice(edition, guidance.get(), there), pick, say);
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

  private static Choice told(Choice choice, PatientOptions.Pick pick, Consumer<String> say) {
    if (!pick.reason().isEmpty()) {
      say.accept(pick.reason());
    }
    return choice;
  }

  private Situation situation(PatientGroup group) throws BadInputException {
    if (situation.isEmpty()) {
      return group.usualSituation();
    }
    return word("--situation", situation, Situation.values(), Situation::id);
  }

  /** Whether any of these options was given. */
  boolean anyGiven() {
    return !protocol.isEmpty()
        || who.anyGiven()
        || !situation.isEmpty()
        || !rescuers.isEmpty()
        || hasMinutes();
  }

  /** Whether the length was given. */
  boolean hasMinutes() {
    return !minutes.isEmpty();
  }

  /** The length in nanoseconds; {@code otherwise} minutes if it was not given. */
  long lengthNanos(int otherwise) throws BadInputException {
    String text = hasMinutes() ? minutes : Integer.toString(otherwise);
    if (text.matches("\\d{1,4}(\\.\\d{1,6})?")) {
      BigDecimal number = new BigDecimal(text);
      if (number.signum() > 0 && number.compareTo(MOST_MINUTES) <= 0) {
        return number.multiply(NANOS_PER_MINUTE).setScale(0, RoundingMode.HALF_UP).longValueExact();
      }
    }
    throw BadInputException.notAllowed(
        "--minutes", "", text, "a number above 0, at most " + MOST_MINUTES.toPlainString());
  }

  /** The plan of a practice of that length. */
  static PracticePlan plan(Choice choice, long countInNanos, long lengthNanos) {
    return choice.plan(countInNanos, lengthNanos, 0);
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
    if (fewest.isPresent() && !rescuers.isEmpty()) {
      throw BadInputException.notAllowed(
          "--rescuers",
          "",
          rescuers + " for " + group.id() + ", " + situation.id(),
          (protocols.size() == 1 ? protocols.get(0).id() + " asks for " : "")
              + "at least "
              + fewest.getAsInt());
    }
  }

  /** The choice of that word. */
  static <T> T word(String option, String word, T[] choices, Function<T, String> wordOf)
      throws BadInputException {
    for (T choice : choices) {
      if (wordOf.apply(choice).equals(word)) {
        return choice;
      }
    }
    throw BadInputException.notAllowed(
        option,
        "",
        word,
        "one of " + Stream.of(choices).map(wordOf).collect(Collectors.joining(", ")));
  }
}
