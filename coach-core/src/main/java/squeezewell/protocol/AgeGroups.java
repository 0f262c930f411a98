package squeezewell.protocol;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.input.BadInputException;
import squeezewell.words.Wording;

/**
 * Picks the age group of a patient from an age or a weight, and says why. An age is judged by the
 * edition's own limits. No guideline gives limits of weight: a weight is only an estimate.
 */
public final class AgeGroups {
  /** From this weight on a patient counts as an adult: our own choice. */
  private static final double ADULT_KILOGRAMS = 50;

  /** 3 x 13 years + 7: the heaviest that the relation of age and weight was published for. */
  private static final double HEAVIEST_USUAL_KILOGRAMS = 46;

  private static final double OLDEST_USUAL_DAYS = 13 * AgeUnit.YEARS.days();

  private static final Wording WORDS = Wording.beside(AgeGroups.class);

  private AgeGroups() {}

  /**
   * A group and the reason for it.
   *
   * @param group the age group
   * @param possible every group that fits, {@code group} among them; where there are several a
   *     person has to judge
   * @param reason one sentence for people, without a full stop
   * @param note what a person has to judge or check, in sentences; empty if nothing
   */
  public record Match(PatientGroup group, List<PatientGroup> possible, String reason, String note) {
    public Match {
      possible = List.copyOf(possible);
    }
  }

  /**
   * The group of an age. Where groups of the edition overlap, the youngest of them is given, and
   * the reason says what decides.
   *
   * @param edition the edition whose age limits count
   * @throws BadInputException if the age is not one, or if the edition does not cover it
   */
  public static Match ofAge(Protocol edition, Age age) throws BadInputException {
    String words = age.words();
    if (!age.possible()) {
      throw BadInputException.notAllowed("age", "", words, "an age from 0 to 120 years");
    }
    List<AgeBand> fitting =
        edition.ages().stream().filter(b -> b.contains(age.days())).collect(Collectors.toList());
    AgeBand band = youngest(edition, fitting, "age", words);
    List<PatientGroup> possible = groups(fitting);
    return new Match(
        band.group(),
        possible,
        WORDS.say("group.by-age", words, because(edition, band, possible)),
        unsettled("group.age-unsettled", possible));
  }

  /** As {@link #ofAge(Protocol, Age)}; the age is 0 to 120 years, in {@code unit}. */
  public static Match ofAge(Protocol edition, double age, AgeUnit unit) throws BadInputException {
    return ofAge(edition, new Age(age, unit));
  }

  /**
   * The group of a weight, by the age at which that weight is usual: Advanced Paediatric Life
   * Support, 5th edition, weight = 0.5 x months + 4 to 12 months, 2 x years + 8 from 1 to 5 years,
   * 3 x years + 7 from 6 to 12 years (also Luscombe and Owens, Arch Dis Child 2007;92:412, to 13
   * years), turned round. Above the usual weight at 13 years a person has to judge; from 50 kg on
   * an adult, our own choice. A weight never tells a newborn from an infant.
   *
   * @param edition the edition whose age limits count
   * @throws BadInputException if the weight is not one, or if the edition does not cover it
   */
  public static Match ofWeight(Protocol edition, Weight weight) throws BadInputException {
    String words = weight.words();
    if (!weight.possible()) {
      throw BadInputException.notAllowed("weight", "", words, "a weight from 0.2 to 400 kg");
    }
    double kilograms = weight.kilograms();
    if (kilograms >= ADULT_KILOGRAMS) {
      List<AgeBand> adult =
          edition.ages().stream()
              .filter(b -> b.group() == PatientGroup.ADULT)
              .collect(Collectors.toList());
      AgeBand band = youngest(edition, adult, "weight", words);
      return new Match(
          band.group(),
          groups(adult),
          WORDS.say("group.by-weight.adult", words, because(edition, band, groups(adult))),
          WORDS.say("group.adult-estimate"));
    }
    boolean above = kilograms > HEAVIEST_USUAL_KILOGRAMS;
    double days = usualDays(kilograms);
    List<AgeBand> fitting =
        edition.ages().stream()
            .filter(b -> above ? reachesBeyondTheRelation(b) : b.contains(days))
            .collect(Collectors.toList());
    List<AgeBand> told =
        fitting.stream()
            .filter(b -> b.group() != PatientGroup.NEWBORN)
            .collect(Collectors.toList());
    AgeBand band = youngest(edition, told, "weight", words);
    List<PatientGroup> possible = groups(fitting);
    String judge = unsettled("group.weight-unsettled", possible);
    String estimate = WORDS.say("group.estimate");
    return new Match(
        band.group(),
        possible,
        WORDS.say(
            above ? "group.by-weight.above" : "group.by-weight",
            words,
            because(edition, band, possible),
            at(days)),
        judge.isEmpty() ? estimate : estimate + " " + judge);
  }

  /** As {@link #ofWeight(Protocol, Weight)}; 0.2 to 400 kg. */
  public static Match ofWeight(Protocol edition, double kilograms) throws BadInputException {
    return ofWeight(edition, new Weight(kilograms, false));
  }

  private static boolean reachesBeyondTheRelation(AgeBand band) {
    return !band.to().isPresent() || band.to().get().days() > OLDEST_USUAL_DAYS;
  }

  private static List<PatientGroup> groups(List<AgeBand> bands) {
    return bands.stream().map(AgeBand::group).distinct().sorted().collect(Collectors.toList());
  }

  /** Says so where numbers can't decide; empty where they can. */
  private static String unsettled(String key, List<PatientGroup> possible) {
    return possible.size() < 2
        ? ""
        : WORDS.say(
            key,
            possible.get(0).id(),
            possible.stream().skip(1).map(PatientGroup::id).collect(Collectors.joining(" or ")));
  }

  /** The age in days at which a weight is usual; see {@link #ofWeight}. */
  private static double usualDays(double kilograms) {
    if (kilograms < 10) {
      return Math.max(0, kilograms - 4) * 2 * AgeUnit.MONTHS.days();
    }
    if (kilograms < 25) {
      // The two formulas leave a hole from 18 kg at 5 years to 25 kg at 6 years.
      return Math.min(5, (kilograms - 8) / 2) * AgeUnit.YEARS.days();
    }
    return (kilograms - 7) / 3 * AgeUnit.YEARS.days();
  }

  private static String at(double days) {
    double years = days / AgeUnit.YEARS.days();
    AgeUnit unit = years < 1 ? AgeUnit.MONTHS : AgeUnit.YEARS;
    long number = (long) Math.floor(days / unit.days() + 1e-9);
    return number + " " + unit.word((double) number);
  }

  /** Of the bands that fit, that of the youngest group: they are declared from old to young. */
  private static AgeBand youngest(
      Protocol edition, List<AgeBand> fitting, String source, String words)
      throws BadInputException {
    Optional<AgeBand> found = fitting.stream().max(Comparator.comparing(AgeBand::group));
    if (found.isPresent()) {
      return found.get();
    }
    if (edition.ages().isEmpty()) {
      throw BadInputException.fault(source, "", edition.id() + " gives no age limits");
    }
    String covered =
        "what "
            + edition.id()
            + " covers: "
            + edition.ages().stream()
                .map(b -> b.group().id() + ", " + b.words())
                .collect(Collectors.joining("; "));
    throw BadInputException.notAllowed(source, "", words, covered);
  }

  private static String because(Protocol edition, AgeBand band, List<PatientGroup> possible) {
    boolean judged = possible.stream().anyMatch(g -> g.compareTo(band.group()) < 0);
    return WORDS.say(
        judged && band.judgement().isPresent() ? "group.because.judged" : "group.because",
        band.group().id(),
        band.words(),
        edition.title().split(" \\(", 2)[0],
        band.judgement().orElse(""));
  }
}
