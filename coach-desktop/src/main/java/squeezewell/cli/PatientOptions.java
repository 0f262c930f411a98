package squeezewell.cli;

import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Age;
import squeezewell.protocol.AgeGroups;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Weight;

/** Which patient: {@code --patient}, {@code --age}, {@code --weight}. */
final class PatientOptions {
  @Option(
      names = "--patient",
      paramLabel = "GROUP",
      description = "adult, child, infant or newborn. Default: adult.")
  String patient = "";

  @Option(
      names = "--age",
      paramLabel = "AGE",
      description =
          "Age instead of a group, such as 3days, 14months or 9y. The edition's own limits pick the"
              + " group; the reason is printed. Where two groups fit, --patient chooses.")
  String age = "";

  @Option(
      names = "--weight",
      paramLabel = "WEIGHT",
      description =
          "Weight instead of an age, such as 12kg or 26lb: an estimate by the age at which it is"
              + " usual. --patient chooses another group.")
  String weight = "";

  /**
   * The patient for one edition.
   *
   * @param group the age group
   * @param reason why, and what a person has to judge; empty if the group was named
   */
  record Pick(PatientGroup group, String reason) {}

  /** Whether any of these options was given. */
  boolean anyGiven() {
    return !patient.isEmpty() || !age.isEmpty() || !weight.isEmpty();
  }

  /** Refuses what no edition could make sense of. */
  void check() throws BadInputException {
    named();
    if (!age.isEmpty() && !weight.isEmpty()) {
      throw BadInputException.fault(
          "--weight", "", "a weight only estimates what --age says; allowed: one of the two");
    }
    if (!age.isEmpty()) {
      Age.parse("--age", age);
    }
    if (!weight.isEmpty()) {
      Weight.parse("--weight", weight);
    }
  }

  /** The patient that an edition's limits pick. */
  Pick in(Protocol edition) throws BadInputException {
    Optional<PatientGroup> named = named();
    if (age.isEmpty() && weight.isEmpty()) {
      return new Pick(named.orElse(PatientGroup.ADULT), "");
    }
    AgeGroups.Match match =
        age.isEmpty()
            ? AgeGroups.ofWeight(edition, Weight.parse("--weight", weight))
            : AgeGroups.ofAge(edition, Age.parse("--age", age));
    String reason = match.reason() + "." + (match.note().isEmpty() ? "" : " " + match.note());
    if (named.isPresent()) {
      // A weight is an estimate: a small adult is an adult.
      if (weight.isEmpty() && !match.possible().contains(named.get())) {
        throw BadInputException.notAllowed("--patient", "", patient, groups(match) + ": " + reason);
      }
      return new Pick(named.get(), reason + " Chosen with --patient: " + patient + ".");
    }
    return match.possible().size() == 1
        ? new Pick(match.group(), reason)
        : new Pick(
            match.group(),
            reason + " Taken: " + match.group().id() + "; --patient chooses another.");
  }

  private static String groups(AgeGroups.Match match) {
    return match.possible().stream().map(PatientGroup::id).collect(Collectors.joining(" or "));
  }

  private Optional<PatientGroup> named() throws BadInputException {
    return patient.isEmpty()
        ? Optional.empty()
        : Optional.of(
            PracticeOptions.word("--patient", patient, PatientGroup.values(), PatientGroup::id));
  }
}
