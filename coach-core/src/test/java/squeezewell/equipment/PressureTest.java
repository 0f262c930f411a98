package squeezewell.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.input.BadInputException;

class PressureTest {
  /**
   * National Institute of Standards and Technology, Special Publication 811 (2008), appendix B.8:
   * one psi is 6.894 757 kPa, one bar 100 kPa (from memory). A table on the web prints 6894.757 293
   * 168 Pa.
   */
  @ParameterizedTest
  @CsvSource({
    "1psi,KPA,6,6.894757",
    "1psi,KPA,12,6.894757293168",
    "1000psi,MPA,6,6.894757",
    "1000psi,BAR,5,68.94757",
    "1bar,KPA,3,100",
    "1bar,MPA,3,0.1",
    "1MPa,BAR,3,10",
    "13700kPa,BAR,3,137",
    "23000 kPa,BAR,3,230"
  })
  void theFactorsAreThoseOfTheStandardsInstitute(
      String written, PressureUnit unit, int decimals, String printed) throws Exception {
    assertThat(Pressure.read("p", written).in(unit, decimals)).isEqualByComparingTo(printed);
  }

  /** Independent of the code: the factors that are printed above. */
  private static double pascals(PressureUnit unit) {
    return switch (unit) {
      case PSI -> 6894.757293168;
      case BAR -> 100_000;
      case KPA -> 1_000;
      case MPA -> 1_000_000;
    };
  }

  @Property
  void everyUnitComesBackFromEveryOther(
      @ForAll @IntRange(max = 72_000) int tenths,
      @ForAll PressureUnit from,
      @ForAll PressureUnit over)
      throws Exception {
    BigDecimal value = BigDecimal.valueOf(tenths, from == PressureUnit.MPA ? 4 : 2);
    Pressure pressure;
    try {
      pressure = Pressure.of("p", value, from);
    } catch (BadInputException e) {
      assertThat(value.doubleValue() * pascals(from)).isGreaterThan(50_000_000);
      return;
    }
    double expected = value.doubleValue() * pascals(from) / pascals(over);
    assertThat(pressure.in(over, 12).doubleValue())
        .isCloseTo(expected, within(1e-9 * Math.max(1, expected)));
    Pressure back = Pressure.of("p", pressure.in(over, 9), over);
    assertThat(back.in(from, 4)).isEqualByComparingTo(value);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "-1psi",
        "NaN",
        "NaNpsi",
        "Infinitybar",
        "1e3psi",
        "1200",
        "psi",
        "",
        "1200 torr",
        "1,200psi",
        "7252psi",
        "501bar",
        "50001kPa",
        "51MPa",
        "9999999999psi",
        "12..5bar",
        "1200psi psi",
        "٣bar"
      })
  void whatIsNoPressureIsRefusedWithWhatIsAllowed(String text) {
    assertThatThrownBy(() -> Pressure.read("--pressure", text))
        .isInstanceOf(BadInputException.class)
        .hasMessageStartingWith("--pressure is ")
        .hasMessageContaining("; allowed: ");
  }

  @Test
  void theLimitIsNamedInTheUnitThatWasWritten() {
    assertThatThrownBy(() -> Pressure.read("--pressure", "8000psi"))
        .hasMessage("--pressure is 8000 psi; allowed: a number from 0 to 7251 psi");
    assertThatThrownBy(() -> Pressure.read("Gauge", "-5", PressureUnit.BAR))
        .hasMessage("Gauge is -5; allowed: a number from 0 to 500 bar");
    assertThatThrownBy(() -> Pressure.read("Gauge", " ", PressureUnit.BAR))
        .hasMessage("Gauge is missing; allowed: a number from 0 to 500 bar");
  }

  @Test
  void hugeAndTinyNumbersDoNotFillTheMemory() {
    for (String text : new String[] {"1e999999999", "1e-999999999", "-1e999999999"}) {
      assertThatThrownBy(() -> Pressure.of("p", new BigDecimal(text), PressureUnit.PSI))
          .isInstanceOf(BadInputException.class);
    }
  }

  @Test
  void unitsMayBeWrittenInAnyCase() throws Exception {
    assertThat(Pressure.read("p", "100 KPA")).isEqualTo(Pressure.read("p", "1BAR"));
    assertThat(Pressure.read("p", "0.1mpa")).isEqualTo(Pressure.read("p", "1 bar"));
    assertThat(Pressure.read("p", "200Psi")).isGreaterThan(Pressure.read("p", "13.7bar"));
  }
}
