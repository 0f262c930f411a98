package squeezewell.desktop.screens.practice;

import java.util.List;
import java.util.Optional;
import squeezewell.desktop.screens.Phrases;
import squeezewell.files.LastChoice;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Age;
import squeezewell.protocol.AgeGroups;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.protocol.Weight;

/**
 * What an age or a weight says about the patient. Pure.
 *
 * @param text sentences: why, and what a person has to judge or check, or what is wrong
 * @param possible the groups that fit; several where a person has to choose, none where the text
 *     says what is wrong
 * @param edition the edition, for the age if that is known
 */
record AgeWeightView(String text, List<PatientGroup> possible, Protocol edition) {
  /** What a number can count. */
  enum Unit {
    YEARS("years"),
    MONTHS("months"),
    DAYS("days"),
    KILOGRAMS("kg"),
    POUNDS("lb");

    private final String label;

    Unit(String label) {
      this.label = label;
    }

    private boolean isWeight() {
      return this == KILOGRAMS || this == POUNDS;
    }

    @Override
    public String toString() {
      return label;
    }
  }

  /**
   * Reads a number and judges it by the limits of an edition.
   *
   * @param typed what a person typed
   */
  static AgeWeightView of(Protocol edition, String typed, Unit unit) {
    String text = typed.trim() + " " + unit;
    AgeGroups.Match match;
    Protocol aged = edition;
    try {
      if (unit.isWeight()) {
        match = AgeGroups.ofWeight(edition, Weight.parse("", text));
      } else {
        Age age = Age.parse("", text);
        match = AgeGroups.ofAge(edition, age);
        aged = edition.atAge(age.days());
      }
    } catch (BadInputException e) {
      return new AgeWeightView(fault(edition, typed, unit, e), List.of(), edition);
    }
    String why = match.reason() + ".";
    return new AgeWeightView(
        match.note().isEmpty() ? why : why + " " + match.note(), match.possible(), aged);
  }

  private static String fault(Protocol edition, String typed, Unit unit, BadInputException e) {
    // Only an edition's own limits have a source here: age or weight.
    if (!e.source().isEmpty()) {
      return edition.ages().isEmpty()
          ? Phrases.edition(edition) + " gives no age limits. Choose the patient from the list."
          : Phrases.capital(e.getMessage()) + ".";
    }
    String wrong = typed.trim().isEmpty() ? "No number yet. " : "“" + typed.trim() + "” won't do. ";
    return unit.isWeight()
        ? wrong + "Type a number such as 12 or 3.5, from 0.2 to 400 kg."
        : wrong + "Type a number such as 9 or 1.5, up to 120 years.";
  }

  /**
   * The rhythm of an edition for a group: in the same situation as now where there is one, else the
   * group's first.
   *
   * @return empty if the edition has none for the group
   */
  static Optional<Guidance> rhythm(Protocol edition, PatientGroup group, Guidance now) {
    Situation situation = now.situation();
    Optional<Guidance> same =
        new LastChoice(edition.id(), group, situation, now.rescuers(), 1).among(edition.guidance());
    return same.isPresent()
        ? same
        : edition.guidance().stream().filter(g -> g.patient() == group).findFirst();
  }

  /** What was chosen, or that there is nothing to choose. */
  static String chosen(Protocol edition, PatientGroup group, Optional<Guidance> rhythm) {
    return rhythm
        .map(g -> "Chosen: " + g.words() + ".")
        .orElse(Phrases.edition(edition) + " has no rhythm for this group: " + group.id() + ".");
  }
}
