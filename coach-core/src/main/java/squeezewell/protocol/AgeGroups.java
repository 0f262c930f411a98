package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.input.BadInputException;

/** Picks the age group of a patient from an age or a weight, and says why. */
public final class AgeGroups {
  private static final double OLDEST_YEARS = 120;
  private static final double LIGHTEST_KILOGRAMS = 0.2;
  private static final double HEAVIEST_KILOGRAMS = 400;

  /** From this weight on a patient counts as an adult: our own choice. */
  private static final double ADULT_KILOGRAMS = 50;

  private AgeGroups() {}

  /**
   * A group and the reason for it.
   *
   * @param group the age group
   * @param reason one sentence for people
   */
  public record Match(PatientGroup group, String reason) {}

  /**
   * The group of an age. Where two groups of the edition overlap, the younger one is given, and the
   * reason says what decides.
   *
   * @param edition the edition whose age limits count
   * @param age 0 to 120 years, in {@code unit}
   * @throws BadInputException if the age is not one, or if the edition does not cover it
   */
  public static Match ofAge(Protocol edition, double age, AgeUnit unit) throws BadInputException {
    double days = age * unit.days();
    String words = plain(age) + " " + unit.word(age);
    if (!(days >= 0 && days <= OLDEST_YEARS * AgeUnit.YEARS.days())) {
      throw BadInputException.notAllowed(
          "age", "", words, "an age from 0 to " + plain(OLDEST_YEARS) + " years");
    }
    AgeBand band = first(edition, edition.ages(), days, "age", words);
    return new Match(band.group(), words + ": " + because(edition, band, days));
  }

  /**
   * The group of a weight, by the age at which that weight is usual: Advanced Paediatric Life
   * Support, 5th edition, weight = 0.5 x months + 4 to 12 months, 2 x years + 8 from 1 to 5 years,
   * 3 x years + 7 from 6 to 12 years (also Luscombe and Owens, Arch Dis Child 2007;92:412, to 13
   * years), turned round. From 50 kg on an adult, our own choice. A weight never tells a newborn
   * from an infant.
   *
   * @param edition the edition whose age limits count
   * @param kilograms 0.2 to 400 kg
   * @throws BadInputException if the weight is not one, or if the edition does not cover it
   */
  public static Match ofWeight(Protocol edition, double kilograms) throws BadInputException {
    String words = plain(kilograms) + " kg";
    if (!(kilograms >= LIGHTEST_KILOGRAMS && kilograms <= HEAVIEST_KILOGRAMS)) {
      throw BadInputException.notAllowed(
          "weight",
          "",
          words,
          "a weight from "
              + plain(LIGHTEST_KILOGRAMS)
              + " to "
              + plain(HEAVIEST_KILOGRAMS)
              + " kg");
    }
    boolean grown = kilograms >= ADULT_KILOGRAMS;
    List<AgeBand> bands =
        edition.ages().stream()
            .filter(b -> b.group() != PatientGroup.NEWBORN)
            .filter(b -> !grown || b.group() == PatientGroup.ADULT)
            .collect(Collectors.toList());
    double days = usualDays(kilograms);
    AgeBand band = first(edition, bands, days, "weight", words);
    String usual =
        grown
            ? "from " + plain(ADULT_KILOGRAMS) + " kg, our own choice"
            : "a usual weight at " + usualAge(days);
    return new Match(
        band.group(), words + ", " + usual + ": " + because(edition, band, grown ? -1 : days));
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

  private static String usualAge(double days) {
    double years = days / AgeUnit.YEARS.days();
    AgeUnit unit = years < 1 ? AgeUnit.MONTHS : AgeUnit.YEARS;
    long number = (long) Math.floor(days / unit.days() + 1e-9);
    return number + " " + unit.word((double) number);
  }

  /** Of the bands that fit, that of the youngest group: they are declared from old to young. */
  private static AgeBand first(
      Protocol edition, List<AgeBand> bands, double days, String source, String words)
      throws BadInputException {
    Optional<AgeBand> found =
        bands.stream().filter(b -> b.contains(days)).max(Comparator.comparing(AgeBand::group));
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

  private static String because(Protocol edition, AgeBand band, double days) {
    boolean judged =
        edition.ages().stream()
            .anyMatch(b -> b.group().compareTo(band.group()) < 0 && b.contains(days));
    return band.group().id()
        + ", "
        + band.words()
        + (judged ? band.judgement().map(j -> "; " + j).orElse("") : "")
        + " ("
        + edition.title().split(" \\(", 2)[0]
        + ")";
  }

  private static String plain(double number) {
    if (Double.isNaN(number) || Double.isInfinite(number)) {
      return Double.toString(number);
    }
    BigDecimal exact = BigDecimal.valueOf(number).stripTrailingZeros();
    return exact.scale() > 30 ? Double.toString(number) : exact.toPlainString();
  }
}
