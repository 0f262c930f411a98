package squeezewell.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.input.BadInputException;

class OxygenSupplyTest {
  private static final EquipmentLibrary KIT = EquipmentReader.builtIn();
  private static final long MINUTE = 60_000_000_000L;

  private static OxygenSupply sizeE(String gauge) throws BadInputException {
    return new OxygenSupply(
        KIT.cylinder("size", "e"), Pressure.read("gauge", gauge), KIT.reserve());
  }

  @ParameterizedTest
  @ValueSource(strings = {"200psi", "150psi", "0psi"})
  void atOrBelowTheReserveThereIsNoTime(String gauge) throws Exception {
    OxygenSupply supply = sizeE(gauge);
    assertThat(supply.atReserve()).isTrue();
    assertThat(supply.usableLitres()).isZero();
    assertThat(supply.minutesAt(Flow.read("flow", "15"))).isZero();
    assertThat(supply.nanosUntilReserve(Flow.read("flow", "15"))).isZero();
  }

  @Test
  void theTimeIsNeverRoundedUp() throws Exception {
    // By hand: (715 - 200) x 0.28 / 10 = 14.42 minutes, that is 14 min 25.2 s.
    OxygenSupply supply = sizeE("715psi");
    Flow flow = Flow.read("flow", "10");
    assertThat(supply.wholeMinutesAt(flow)).isEqualTo(14);
    assertThat(supply.nanosUntilReserve(flow)).isEqualTo(14 * MINUTE + 25_200_000_000L);
    // By hand: 144.2 L / 7 L/min = 20.6 exactly; 144.2 / 9 = 16.022222...
    assertThat(supply.minutesAt(Flow.read("flow", "9"))).isEqualByComparingTo("16.022222");
    assertThat(supply.nanosUntilReserve(Flow.read("flow", "9"))).isEqualTo(961_333_333_333L);
  }

  @Test
  void itRunsDownWhileTheFlowChanges() throws Exception {
    // By hand: 1200 psi x 0.28 = 336 L; 10 min at 4 leave 296; 2 min at 15 leave 266 L = 950 psi.
    OxygenSupply later =
        sizeE("1200psi")
            .after(Flow.read("flow", "4"), 10 * MINUTE)
            .after(Flow.read("flow", "15"), 2 * MINUTE);
    assertThat(later.litres()).isEqualByComparingTo("266");
    assertThat(later.gauge().in(PressureUnit.PSI, 3)).isEqualByComparingTo("950");
    // (950 - 200) x 0.28 = 210 L, at 15 L/min 14 minutes.
    assertThat(later.minutesAt(Flow.read("flow", "15"))).isEqualByComparingTo("14");
  }

  @Test
  void itReachesTheReserveWhenItSaidAndThenEmpties() throws Exception {
    Flow flow = Flow.read("flow", "4");
    OxygenSupply supply = sizeE("1200psi");
    OxygenSupply then = supply.after(flow, supply.nanosUntilReserve(flow));
    assertThat(then.atReserve()).isTrue();
    assertThat(then.gauge()).isEqualTo(KIT.reserve());
    OxygenSupply empty = then.after(flow, 1_000 * MINUTE);
    assertThat(empty.litres()).isZero();
    assertThat(empty.gauge().in(PressureUnit.PSI, 3)).isZero();
  }

  @Test
  void aCylinderThatHoldsMoreThanItCanIsDoubted() throws Exception {
    // 0.28 x 2200 = 616 L, under the 682 L that are published at most; 0.28 x 3000 = 840 L.
    assertThat(sizeE("2200psi").isImplausible()).isFalse();
    assertThat(sizeE("3000psi").isImplausible()).isTrue();
    // 1200 kPa meant as psi is not doubted: it is only little gas.
    assertThat(sizeE("1200kPa").isImplausible()).isFalse();
  }

  @Test
  void timeDoesNotRunBackwards() throws Exception {
    OxygenSupply supply = sizeE("1200psi");
    Flow flow = Flow.read("flow", "4");
    assertThatThrownBy(() -> supply.after(flow, -1)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-4",
        "NaN",
        "Infinity",
        "1e3",
        "1,5",
        "",
        " ",
        "0.001",
        "200.1",
        "999999999",
        "four",
        "4 psi",
        "0x10",
        "٤",
        "4 L/min L/min"
      })
  void aFlowMustBeOne(String text) {
    assertThatThrownBy(() -> Flow.read("--flow", text))
        .isInstanceOf(BadInputException.class)
        .hasMessageStartingWith("--flow is ")
        .hasMessageContaining("allowed: a number from 0.01 to 200 L/min");
  }

  @Test
  void aFlowMayCarryItsUnit() throws Exception {
    assertThat(Flow.read("flow", " 0.5 L/min ")).isEqualTo(Flow.read("flow", "0.50"));
    assertThat(Flow.read("flow", "15l/min")).hasToString("15 L/min");
    assertThatThrownBy(() -> Flow.of("flow", new BigDecimal("1e999999999")))
        .isInstanceOf(BadInputException.class);
    assertThatThrownBy(() -> Flow.of("flow", new BigDecimal("-1")))
        .isInstanceOf(BadInputException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"X", "", "DD", "/", "uk", "H/", "H K"})
  void aSizeThatIsNoneListsThoseThereAre(String word) {
    assertThatThrownBy(() -> KIT.cylinder("--cylinder", word))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("allowed: one of D, E, M, G, H/K, UK-D, UK-CD, UK-E, UK-F");
  }

  @Test
  void theOwnFiguresOfACylinderMustMakeSense() {
    assertThatThrownBy(() -> Cylinder.ofWaterVolume("--water-litres", "0"))
        .hasMessageContaining("a number from 0.01 to 1000 L");
    assertThatThrownBy(() -> Cylinder.ofFactor("--factor", "-0.28"))
        .hasMessageContaining("a number from 0.01 to 100 L/psi");
    assertThatThrownBy(() -> Cylinder.ofContents("--contents", "340", "--full-pressure", "0bar"))
        .hasMessageContaining("a pressure of at least 1 bar");
    assertThatThrownBy(() -> Cylinder.ofContents("--contents", "x", "--full-pressure", "137bar"))
        .hasMessageContaining("--contents is x");
  }
}
