package squeezewell.desktop.screens;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.equipment.Cylinder;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.Flow;
import squeezewell.equipment.OxygenSupply;
import squeezewell.equipment.Pressure;
import squeezewell.equipment.PressureUnit;
import squeezewell.input.BadInputException;
import squeezewell.words.Quantities;

/**
 * What a person typed about a cylinder. Pure.
 *
 * @param cylinder which size
 * @param waterLitres water volume in litres, where the size is not a published one
 * @param gauge what the gauge shows
 * @param gaugeUnit in which unit
 * @param flow in litres a minute
 * @param reserve what is kept back
 * @param reserveUnit in which unit
 */
record OxygenView(
    Size cylinder,
    String waterLitres,
    String gauge,
    PressureUnit gaugeUnit,
    String flow,
    String reserve,
    PressureUnit reserveUnit) {
  static final String GAUGE = "2000";
  static final String WATER_LITRES = "2";
  private static final String FIRST_SIZE = "E";

  /** A size of cylinder; none for one whose water volume is given. */
  record Size(Optional<Cylinder> size) {
    boolean needsWaterVolume() {
      return size.isEmpty();
    }

    @Override
    public String toString() {
      return size.map(Cylinder::label).orElse("Other, by its water volume");
    }
  }

  /** All sizes, and the one without a size. */
  static List<Size> choices(EquipmentLibrary kit) {
    List<Size> all = new ArrayList<>();
    kit.cylinders().forEach(c -> all.add(new Size(Optional.of(c))));
    all.add(new Size(Optional.empty()));
    return all;
  }

  /** The size that is shown first: the one most portable sets have. */
  static Size first(List<Size> choices) {
    return choices.stream()
        .filter(c -> c.size().map(s -> s.id().equals(FIRST_SIZE)).orElse(false))
        .findFirst()
        .orElse(choices.get(0));
  }

  /** The reserve that is kept back unless another is typed, in psi. */
  static String usualReserve(EquipmentLibrary kit) {
    return kit.reserve().in(PressureUnit.PSI, 1).toPlainString();
  }

  /** The flow that is shown first, in L/min. */
  static String usualFlow(EquipmentLibrary kit) {
    return kit.bagFlow().litresPerMinute().toPlainString();
  }

  /** How long it lasts. */
  EquipmentAnswer answer(EquipmentLibrary kit) {
    try {
      Cylinder chosen =
          cylinder.size().isPresent()
              ? cylinder.size().get()
              : Cylinder.ofWaterVolume("Water volume", waterLitres);
      OxygenSupply supply =
          new OxygenSupply(
              chosen,
              Pressure.read("Gauge pressure", gauge, gaugeUnit),
              Pressure.read("Reserve", reserve, reserveUnit));
      return answer(kit, supply, Flow.read("Flow", flow));
    } catch (BadInputException e) {
      return EquipmentAnswer.putRight(e);
    }
  }

  private EquipmentAnswer answer(EquipmentLibrary kit, OxygenSupply supply, Flow rate) {
    List<String> lines = new ArrayList<>();
    if (supply.isImplausible()) {
      lines.add("Check the size and the unit: that is more than such a cylinder holds.");
    }
    if (supply.atReserve()) {
      lines.add("The gauge shows no more than the reserve. Change the cylinder.");
    }
    lines.add(
        down(supply.usableLitres())
            + " L above the reserve, "
            + down(supply.litres())
            + " L in the cylinder.");
    lines.add("Minutes = " + supply.cylinder().rule() + ". Rounded down.");
    lines.add("A planning value, never a promise: gauges and flows are approximate.");
    long minutes = supply.wholeMinutesAt(rate);
    return EquipmentAnswer.of(
        time(minutes) + " at " + rate,
        lines,
        supply.reserve().equals(kit.reserve())
            ? List.of(supply.cylinder().source(), kit.reserveSource())
            : List.of(supply.cylinder().source()));
  }

  private static String time(long minutes) {
    String all = Quantities.count(Math.min(minutes, Integer.MAX_VALUE), "minute");
    return minutes < 120 ? all : all + " (" + minutes / 60 + " h " + minutes % 60 + " min)";
  }

  private static String down(BigDecimal litres) {
    return litres.setScale(0, RoundingMode.DOWN).toPlainString();
  }
}
