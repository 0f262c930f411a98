package squeezewell.desktop.screens;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import squeezewell.equipment.ChildWeight;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.PredictedWeight;
import squeezewell.equipment.Sex;
import squeezewell.equipment.VolumeRule;
import squeezewell.equipment.VolumeTarget;
import squeezewell.input.BadInputException;
import squeezewell.protocol.AgeUnit;
import squeezewell.protocol.Citation;

/**
 * What a person typed about a patient, for the size of a breath. Pure.
 *
 * @param by how the weight is found
 * @param height of an adult, in cm
 * @param sex of an adult
 * @param age of a child
 * @param ageUnit months or years
 * @param childWeight the rule that makes a weight of an age
 * @param kilograms a weight that is known
 * @param rule how much for each kilogram
 * @param bag size of the bag in mL; empty if nobody asks for the share
 */
record BreathView(
    By by,
    String height,
    Sex sex,
    String age,
    AgeUnit ageUnit,
    ChildWeight childWeight,
    String kilograms,
    VolumeRule rule,
    String bag) {
  static final String HEIGHT = "175";
  static final String AGE = "6";
  static final String KILOGRAMS = "20";
  private static final BigDecimal SMALL = BigDecimal.valueOf(50);

  /** How the weight is found. */
  enum By {
    HEIGHT("Adult, by height"),
    AGE("Child, by age"),
    WEIGHT("Child or newborn, by weight");

    private final String label;

    By(String label) {
      this.label = label;
    }

    @Override
    public String toString() {
      return label;
    }
  }

  /** The rules that fit a way to find the weight: an adult's never goes by the scales. */
  static List<VolumeRule> rules(EquipmentLibrary kit, By by) {
    return kit.volumes().stream()
        .filter(v -> v.id().startsWith("adult") == (by == By.HEIGHT))
        .filter(v -> by != By.AGE || !v.id().equals("newborn"))
        .toList();
  }

  /** How large a breath should be. */
  EquipmentAnswer answer() {
    try {
      return answered();
    } catch (BadInputException e) {
      return EquipmentAnswer.putRight(e);
    }
  }

  private EquipmentAnswer answered() throws BadInputException {
    List<String> lines = new ArrayList<>();
    List<Citation> sources = new ArrayList<>();
    VolumeTarget target = target(lines, sources);
    sources.add(rule.source());
    lines.add(
        "By "
            + plain(rule.lowMillilitresPerKilogram(), 1)
            + " to "
            + plain(rule.highMillilitresPerKilogram(), 1)
            + " mL for each kilogram.");
    if (!bag.trim().isEmpty()) {
      String share = target.shareOfBag("Bag", bag);
      lines.add(Phrases.capital(share) + ". How much comes out depends on hand and seal.");
    }
    lines.add("The chest decides: stop squeezing when you see it begin to rise.");
    return EquipmentAnswer.of(
        millilitres(target.lowMillilitres())
            + " to "
            + millilitres(target.highMillilitres())
            + " mL a breath",
        lines,
        sources);
  }

  private VolumeTarget target(List<String> lines, List<Citation> sources) throws BadInputException {
    switch (by) {
      case HEIGHT -> {
        BigDecimal predicted = PredictedWeight.kilograms("Height", height, sex);
        lines.add(
            "Predicted weight "
                + plain(predicted, 1)
                + " kg, by height: lungs do not grow with fat.");
        sources.add(PredictedWeight.source());
        return new VolumeTarget(rule, predicted);
      }
      case AGE -> {
        ChildWeight.Estimate estimate = childWeight.estimate("Age", age, ageUnit);
        lines.add(
            "Weight about "
                + plain(estimate.kilograms(), 1)
                + " kg ("
                + estimate.formula()
                + "). Rules differ by several kilograms: weigh or measure a child if you can.");
        sources.add(childWeight.source());
        return new VolumeTarget(rule, estimate.kilograms());
      }
      default -> {
        return VolumeTarget.ofWeight(rule, "Weight", kilograms);
      }
    }
  }

  /** Whole millilitres; tenths where a whole one would be a large part of the breath. */
  private static String millilitres(BigDecimal volume) {
    return plain(volume, volume.compareTo(SMALL) < 0 ? 1 : 0);
  }

  private static String plain(BigDecimal number, int decimals) {
    BigDecimal bare = number.setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
    return (bare.scale() < 0 ? bare.setScale(0) : bare).toPlainString();
  }
}
