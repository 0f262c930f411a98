package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.EquipmentReader;
import squeezewell.equipment.PressureUnit;

class OxygenViewTest {
  private static final EquipmentLibrary KIT = EquipmentReader.builtIn();
  private static final List<OxygenView.Size> CHOICES = OxygenView.choices(KIT);

  private static EquipmentAnswer answer(
      String size, String gauge, PressureUnit unit, String flow, String reserve) {
    OxygenView.Size choice =
        CHOICES.stream().filter(c -> c.toString().equals(size)).findFirst().orElseThrow();
    return new OxygenView(choice, "2", gauge, unit, flow, reserve, unit).answer(KIT);
  }

  /** A worked example on the web by the Virginia method: E, 1200 psi, 4 L/min: 70 minutes. */
  @Test
  void aPublishedExampleIsAnsweredWithItsRuleAndSource() {
    EquipmentAnswer answer = answer("E, United States", "1200", PressureUnit.PSI, "4", "200");
    assertThat(answer.good()).isTrue();
    assertThat(answer.headline()).isEqualTo("70 minutes at 4 L/min");
    assertThat(answer.lines())
        .contains("280 L above the reserve, 336 L in the cylinder.")
        .contains("Minutes = (gauge - reserve) in psi x 0.28 L/psi / flow. Rounded down.")
        .anyMatch(l -> l.contains("never a promise"));
    assertThat(answer.sources()).hasSize(1).first().asString().startsWith("Virginia");
  }

  @Test
  void longTimesAreSaidInHoursToo() {
    // A web method article: D, 2000 psi, 0.5 L/min: 576 minutes, that is 9 h 36 min.
    assertThat(answer("D, United States", "2000", PressureUnit.PSI, "0.5", "200").headline())
        .isEqualTo("576 minutes (9 h 36 min) at 0.5 L/min");
  }

  @Test
  void aCylinderWithoutASizeGoesByItsWaterVolume() {
    // By hand: 2 L x (115 - 10) bar / 15 L/min = 14 minutes.
    EquipmentAnswer answer =
        answer("Other, by its water volume", "115", PressureUnit.BAR, "15", "10");
    assertThat(answer.headline()).isEqualTo("14 minutes at 15 L/min");
    assertThat(answer.sources()).hasSize(1).first().asString().startsWith("Gas law");
  }

  @Test
  void atTheReserveItSaysSo() {
    EquipmentAnswer answer = answer("E, United States", "200", PressureUnit.PSI, "15", "200");
    assertThat(answer.headline()).isEqualTo("0 minutes at 15 L/min");
    assertThat(answer.lines()).anyMatch(l -> l.contains("no more than the reserve"));
  }

  @Test
  void aWrongUnitIsNoticed() {
    assertThat(answer("E, United States", "137", PressureUnit.BAR, "15", "10").lines())
        .noneMatch(l -> l.startsWith("Check the size"));
    assertThat(answer("E, United States", "400", PressureUnit.BAR, "15", "10").lines())
        .anyMatch(l -> l.startsWith("Check the size and the unit"));
  }

  @ParameterizedTest
  @CsvSource({
    "'',15,200,Gauge pressure is missing",
    "-5,15,200,Gauge pressure is -5",
    "NaN,15,200,Gauge pressure is NaN",
    "2000,0,200,Flow is 0",
    "2000,,200,Flow is missing",
    "2000,15,x,Reserve is x",
    "8000,15,200,Gauge pressure is 8000 psi"
  })
  void whatCanNotBeIsNamedWithWhatIsAllowed(
      String gauge, String flow, String reserve, String start) {
    EquipmentAnswer answer =
        answer("E, United States", gauge, PressureUnit.PSI, flow == null ? "" : flow, reserve);
    assertThat(answer.good()).isFalse();
    assertThat(answer.headline()).isEqualTo("To put right");
    assertThat(answer.lines()).hasSize(1);
    assertThat(answer.lines().get(0)).startsWith(start).contains("allowed: a number from");
  }

  @Test
  void everySizeIsAnsweredAndOneIsFirst() {
    assertThat(OxygenView.first(CHOICES)).hasToString("E, United States");
    assertThat(OxygenView.usualReserve(KIT)).isEqualTo("200");
    for (OxygenView.Size choice : CHOICES) {
      EquipmentAnswer answer =
          new OxygenView(
                  choice,
                  OxygenView.WATER_LITRES,
                  OxygenView.GAUGE,
                  PressureUnit.PSI,
                  OxygenView.usualFlow(KIT),
                  OxygenView.usualReserve(KIT),
                  PressureUnit.PSI)
              .answer(KIT);
      assertThat(answer.good()).as("%s", choice).isTrue();
      assertThat(answer.spoken()).startsWith(answer.headline());
    }
  }
}
