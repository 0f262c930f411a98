package squeezewell.cli;

import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Age;
import squeezewell.protocol.AgeGroups;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Weight;
import squeezewell.words.Wording;

/** Which patient: {@code --patient}, {@code --age}, {@code --weight}. */
final class PatientOptions {
  private static final Wording WORDS = Wording.beside(PatientOptions.class);

  @Option(names = "--patient", paramLabel = "GROUP")
  PatientGroup patient;

  @Option(names = "--age", paramLabel = "AGE")
  Age age;

  @Option(names = "--weight", paramLabel = "WEIGHT")
  Weight weight;

  /**
   * The patient for one edition.
   *
   * @param edition the edition, for the patient's age if that is known
   * @param group the age group
   * @param reason why, and what a person has to judge; empty if the group was named
   */
  record Pick(Protocol edition, PatientGroup group, String reason) {}

  /** Whether any of these options was given. */
  boolean anyGiven() {
    return patient != null || age != null || weight != null;
  }

  /** Refuses what no edition could make sense of. */
  void check() throws BadInputException {
    if (age != null && weight != null) {
      throw BadInputException.fault(
          "--weight", "", "a weight only estimates what --age says; allowed: one of the two");
    }
  }

  /** The patient that an edition's limits pick. */
  Pick in(Protocol edition) throws BadInputException {
    if (age == null && weight == null) {
      return new Pick(edition, patient == null ? PatientGroup.ADULT : patient, "");
    }
    AgeGroups.Match match =
        age == null ? AgeGroups.ofWeight(edition, weight) : AgeGroups.ofAge(edition, age);
    Protocol aged = age == null ? edition : edition.atAge(age.days());
    String reason = match.reason() + "." + (match.note().isEmpty() ? "" : " " + match.note());
    if (patient != null) {
      // A weight is an estimate: a small adult is an adult.
      if (age != null && !match.possible().contains(patient)) {
        throw BadInputException.notAllowed(
            "--patient", "", patient.id(), groups(match) + ": " + reason);
      }
      return new Pick(aged, patient, WORDS.say("patient.chosen", reason, patient.id()));
    }
    return new Pick(
        aged,
        match.group(),
        match.possible().size() == 1
            ? reason
            : WORDS.say("patient.taken", reason, match.group().id()));
  }

  private static String groups(AgeGroups.Match match) {
    return match.possible().stream().map(PatientGroup::id).collect(Collectors.joining(" or "));
  }
}
