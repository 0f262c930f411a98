package squeezewell.equipment;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

/** What must hold for every cylinder, pressure and flow. */
class OxygenSupplyPropertyTest {
  private static final EquipmentLibrary KIT = EquipmentReader.builtIn();

  private static Pressure pressure(int value, PressureUnit unit) throws Exception {
    return Pressure.of("gauge", BigDecimal.valueOf(value, unit == PressureUnit.MPA ? 3 : 1), unit);
  }

  private static Flow flow(int hundredths) throws Exception {
    return Flow.of("flow", BigDecimal.valueOf(hundredths, 2));
  }

  private static Cylinder cylinder(int index) {
    return KIT.cylinders().get(index % KIT.cylinders().size());
  }

  @Property
  void morePressureOrLessFlowOrLessReserveNeverShortensTheTime(
      @ForAll @IntRange(max = 8) int size,
      @ForAll PressureUnit unit,
      @ForAll @IntRange(max = 4_900) int gauge,
      @ForAll @IntRange(max = 100) int more,
      @ForAll @IntRange(max = 5_000) int reserve,
      @ForAll @IntRange(min = 1, max = 19_000) int flow,
      @ForAll @IntRange(max = 1_000) int faster)
      throws Exception {
    Pressure kept = pressure(reserve, unit);
    OxygenSupply supply = new OxygenSupply(cylinder(size), pressure(gauge, unit), kept);
    OxygenSupply fuller = new OxygenSupply(cylinder(size), pressure(gauge + more, unit), kept);
    OxygenSupply bolder =
        new OxygenSupply(cylinder(size), pressure(gauge, unit), pressure(0, unit));
    long nanos = supply.nanosUntilReserve(flow(flow));
    assertThat(nanos).isNotNegative();
    assertThat(fuller.nanosUntilReserve(flow(flow))).isGreaterThanOrEqualTo(nanos);
    assertThat(bolder.nanosUntilReserve(flow(flow))).isGreaterThanOrEqualTo(nanos);
    assertThat(supply.nanosUntilReserve(flow(flow + faster))).isLessThanOrEqualTo(nanos);
  }

  @Property
  void usingItInPartsIsUsingItAtOnce(
      @ForAll @IntRange(max = 8) int size,
      @ForAll PressureUnit unit,
      @ForAll @IntRange(max = 5_000) int gauge,
      @ForAll @IntRange(min = 1, max = 20_000) int flow,
      @ForAll @LongRange(max = 4_000_000_000_000L) long first,
      @ForAll @LongRange(max = 4_000_000_000_000L) long second)
      throws Exception {
    OxygenSupply supply = new OxygenSupply(cylinder(size), pressure(gauge, unit), KIT.reserve());
    assertThat(supply.after(flow(flow), first).after(flow(flow), second))
        .isEqualTo(supply.after(flow(flow), first + second));
  }

  @Property
  void theTimeThatIsLeftShrinksByTheTimeThatWentBy(
      @ForAll @IntRange(max = 8) int size,
      @ForAll @IntRange(min = 250, max = 2_200) int psi,
      @ForAll @IntRange(min = 10, max = 2_500) int flow,
      @ForAll @IntRange(max = 100) int percent)
      throws Exception {
    Pressure gauge = Pressure.of("gauge", BigDecimal.valueOf(psi), PressureUnit.PSI);
    OxygenSupply supply = new OxygenSupply(cylinder(size), gauge, KIT.reserve());
    long all = supply.nanosUntilReserve(flow(flow));
    long gone = all / 100 * percent;
    assertThat(supply.after(flow(flow), gone).nanosUntilReserve(flow(flow))).isEqualTo(all - gone);
  }
}
