package squeezewell.equipment;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.input.BadInputException;

/** Times that others worked out and printed, each to the digit they printed. */
class PublishedOxygenTimesTest {
  private static final EquipmentLibrary KIT = EquipmentReader.builtIn();

  private static OxygenSupply supply(Cylinder cylinder, String gauge, String reserve)
      throws BadInputException {
    return new OxygenSupply(
        cylinder, Pressure.read("gauge", gauge), Pressure.read("reserve", reserve));
  }

  private static Flow flow(String text) throws BadInputException {
    return Flow.read("flow", text);
  }

  /**
   * The smallest gauge readings that the Virginia sheet of October 2010 prints for 10 L/min: D 1150
   * and E 750 psi for at least 15 minutes, M 392 and H or K 300 psi for 30 minutes. It rounded its
   * readings; M comes 0.05 minutes short and is 30 to the nearest minute.
   */
  @ParameterizedTest
  @CsvSource({"D,1150,15,15.2", "E,750,15,15.4", "M,392,30,29.952", "H,300,30,31.4"})
  void theVirginiaSheet(String size, int psi, int printed, String byHand) throws Exception {
    OxygenSupply supply = supply(KIT.cylinder("size", size), psi + "psi", "200psi");
    assertThat(supply.minutesAt(flow("10"))).isEqualByComparingTo(byHand);
    assertThat(supply.minutesAt(flow("10")).setScale(0, RoundingMode.HALF_UP))
        .isGreaterThanOrEqualTo(BigDecimal.valueOf(printed));
  }

  /**
   * The same sheet read the other way, by hand: 200 + 15 x 10 / 0.16 = 1137.5, printed as 1150; 200
   * + 15 x 10 / 0.28 = 735.7, printed as 750; 200 + 30 x 10 / 1.56 = 392.3, printed as 392; 200 +
   * 30 x 10 / 3.14 = 295.5, printed as 300.
   */
  @ParameterizedTest
  @CsvSource({"D,15,1137.5", "E,15,735.7", "M,30,392.3", "K,30,295.5"})
  void theVirginiaSheetReadTheOtherWay(String size, int minutes, String psi) throws Exception {
    OxygenSupply supply = supply(KIT.cylinder("size", size), psi + "psi", "200psi");
    assertThat(supply.minutesAt(flow("10")).setScale(1, RoundingMode.HALF_UP))
        .isEqualByComparingTo(BigDecimal.valueOf(minutes));
  }

  /** A worked example on the web by the Virginia method: E, 1200 psi, 4 L/min: 70 minutes. */
  @Test
  void sizeEAtTwelveHundred() throws Exception {
    OxygenSupply supply = supply(KIT.cylinder("size", "E"), "1200psi", "200psi");
    assertThat(supply.minutesAt(flow("4"))).isEqualByComparingTo("70");
    assertThat(supply.usableLitres()).isEqualByComparingTo("280");
    assertThat(supply.litres()).isEqualByComparingTo("336");
  }

  /** A web method article: D, 2000 psi less 200 is 1800; x 0.16 is 288 L; / 0.5 is 576 minutes. */
  @Test
  void sizeDAtHalfALitre() throws Exception {
    OxygenSupply supply = supply(KIT.cylinder("size", "D"), "2000psi", "200psi");
    assertThat(supply.usableLitres()).isEqualByComparingTo("288");
    assertThat(supply.minutesAt(flow("0.5"))).isEqualByComparingTo("576");
  }

  /**
   * Without a reserve. Student notes on respiratory therapy: E, 1000 psi, 2 L/min: 140 minutes
   * (they also say 2 h 18, which is wrong). A home oxygen article: E, 2200 psi, 2 L/min: 308; H,
   * 1100 psi, 5 L/min, with a factor of 3: 660. Pennsylvania's table of remaining oxygen: M, 500
   * psi, 6 L/min: 130.
   */
  @ParameterizedTest
  @CsvSource({"0.28,1000,2,140", "0.28,2200,2,308", "3,1100,5,660", "1.56,500,6,130"})
  void timesWithoutAReserve(String factor, int psi, String flow, String printed) throws Exception {
    Cylinder cylinder = Cylinder.ofFactor("factor", factor);
    assertThat(supply(cylinder, psi + "psi", "0psi").minutesAt(flow(flow)))
        .isEqualByComparingTo(printed);
  }

  /** Pennsylvania's M again, by hand with the reserve: (500 - 200) x 1.56 / 6 = 78. */
  @Test
  void leavingOutTheReserveMisleads() throws Exception {
    assertThat(supply(KIT.cylinder("size", "M"), "500psi", "200psi").minutesAt(flow("6")))
        .isEqualByComparingTo("78");
  }

  /**
   * A worked example from a nurse anaesthesia text, as relayed: 660 L at 1900 psi, gauge 500 psi, 6
   * L/min: 28 minutes, rounded down. By hand 660 x 500 / 1900 / 6 = 28.947.
   */
  @Test
  void theProportionRoundedDown() throws Exception {
    Cylinder cylinder = Cylinder.ofContents("contents", "660", "full", "1900psi");
    OxygenSupply supply = supply(cylinder, "500psi", "0psi");
    assertThat(supply.wholeMinutesAt(flow("6"))).isEqualTo(28);
    assertThat(supply.minutesAt(flow("6"))).isEqualByComparingTo("28.947368");
  }

  /** A college text: 415 L at 12: 35; 300 at 10: 30; 300 at 6: 50; 600 at 10: 60; 600 at 6: 100. */
  @ParameterizedTest
  @CsvSource({"415,12,35", "300,10,30", "300,6,50", "600,10,60", "600,6,100"})
  void fullCylindersByTheirContents(String litres, String flow, String printed) throws Exception {
    Cylinder cylinder = Cylinder.ofContents("contents", litres, "full", "137bar");
    assertThat(
            supply(cylinder, "137bar", "0bar")
                .minutesAt(flow(flow))
                .setScale(0, RoundingMode.HALF_UP))
        .isEqualByComparingTo(printed);
  }

  /**
   * A UK transport paper prints contents of 340 L (D, 13 700 kPa), 460 L (CD, 23 000 kPa) and 1360
   * L (F, 13 700 kPa); that for E is from memory. The minutes at 15 L/min are worked by hand: 340 /
   * 15 = 22.7, 460 / 15 = 30.7, 680 / 15 = 45.3, 1360 / 15 = 90.7.
   */
  @ParameterizedTest
  @CsvSource({
    "UK-D,13700,340,22.7",
    "UK-CD,23000,460,30.7",
    "UK-E,13700,680,45.3",
    "UK-F,13700,1360,90.7"
  })
  void sizesOfTheUnitedKingdom(String size, int kilopascals, String litres, String minutes)
      throws Exception {
    OxygenSupply supply = supply(KIT.cylinder("size", size), kilopascals + "kPa", "0kPa");
    assertThat(supply.litres()).isEqualByComparingTo(litres);
    assertThat(supply.minutesAt(flow("15")).setScale(1, RoundingMode.HALF_UP))
        .isEqualByComparingTo(minutes);
  }

  /**
   * Water volume times pressure, by hand: 2 L x 230 bar = 460 L, as that paper prints for its CD; 2
   * L x (115 - 10) / 15 = 14; a half full CD, 460 x 115 / 230 / 15 = 15.3.
   */
  @Test
  void waterVolumeTimesPressure() throws Exception {
    Cylinder two = Cylinder.ofWaterVolume("water", "2");
    assertThat(supply(two, "230bar", "0bar").litres()).isEqualByComparingTo("460");
    assertThat(supply(two, "115bar", "10bar").minutesAt(flow("15"))).isEqualByComparingTo("14");
    assertThat(
            supply(KIT.cylinder("size", "UK-CD"), "115bar", "0bar")
                .minutesAt(flow("15"))
                .setScale(1, RoundingMode.HALF_UP))
        .isEqualByComparingTo("15.3");
  }

  /**
   * By hand, 2000 psi at 15 L/min less 200 psi: 1800 x 0.16 / 15 = 19.2; x 0.28 = 33.6; x 1.56 =
   * 187.2; x 2.41 = 289.2; x 3.14 = 376.8.
   */
  @ParameterizedTest
  @CsvSource({"D,19.2", "E,33.6", "M,187.2", "G,289.2", "H/K,376.8"})
  void nearlyFullAtFifteenLitres(String size, String minutes) throws Exception {
    assertThat(supply(KIT.cylinder("size", size), "2000psi", "200psi").minutesAt(flow("15")))
        .isEqualByComparingTo(minutes);
  }
}
