package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OxygenCommandTest {
  private static CliRun oxygen(String words) {
    return CliRun.of(("oxygen " + words).trim().split(" "));
  }

  /** A worked example on the web by the Virginia method: E, 1200 psi, 4 L/min: 70 minutes. */
  @Test
  void aPublishedExampleAsJson() {
    CliRun run = oxygen("--cylinder E --pressure 1200psi --flow 4 --reserve 200psi --json");
    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    JsonObject json = run.json();
    assertThat(json.get("minutes").getAsDouble()).isEqualTo(70);
    assertThat(json.get("wholeMinutes").getAsInt()).isEqualTo(70);
    assertThat(json.get("litres").getAsDouble()).isEqualTo(280);
    assertThat(json.get("litresInCylinder").getAsDouble()).isEqualTo(336);
    assertThat(json.get("atReserve").getAsBoolean()).isFalse();
    assertThat(json.getAsJsonObject("reserve").get("psi").getAsDouble()).isEqualTo(200);
    assertThat(json.get("confidence").getAsString()).isEqualTo("primary");
    assertThat(json.get("caution").getAsString()).contains("never a promise");
  }

  /**
   * By hand. Water volume: (115 - 10) x 2 / 15 = 14. UK D, half of 340 L: 170 / 10 = 17. Own
   * factor: 1100 x 3 / 5 = 660, as a home oxygen article prints. Contents: 660 x 500 / 1900 / 6 =
   * 28.947, 28 in a nurse anaesthesia text.
   */
  @ParameterizedTest
  @CsvSource({
    "--water-litres 2 --pressure 115bar --reserve 10bar --flow 15,14,210",
    "--cylinder uk-d --pressure 6850kPa --reserve 0kPa --flow 10,17,170",
    "--factor 3 --pressure 1100psi --reserve 0psi --flow 5,660,3300",
    "--contents 660 --full-pressure 1900psi --pressure 500psi --reserve 0psi --flow 6,28,173.684210"
  })
  void theOtherWaysToSayWhatTheCylinderIs(String words, int minutes, double litres) {
    JsonObject json = oxygen(words + " --json").json();
    assertThat(json.get("wholeMinutes").getAsInt()).isEqualTo(minutes);
    assertThat(json.get("litres").getAsDouble()).isEqualTo(litres);
  }

  @Test
  void withoutAReserveTwoHundredPsiAreKeptAndItSaysWhoSaysSo() {
    CliRun run = oxygen("--cylinder D --pressure 1150psi --flow 10");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith("15 minutes at 10 L/min\n")
        .contains("gauge 1150psi, kept back 200 psi")
        .contains("above the reserve 152 L, in the cylinder 184 L")
        .contains("(gauge - reserve) in psi x 0.16 L/psi / flow")
        .contains("15.2 minutes, rounded down")
        .contains("Virginia Office of Emergency Medical Services")
        .contains("never a promise")
        .contains("Not a medical device");
  }

  @Test
  void metricWithoutAReserveKeepsTheSame() {
    // By hand: 200 psi are 13.78951 bar; (137 - 13.78951) x 2 = 246.42097 L; / 15 = 16.428.
    JsonObject json = oxygen("--water-litres 2 --pressure 137bar --flow 15 --json").json();
    assertThat(json.get("litres").getAsDouble()).isBetween(246.4209, 246.421);
    assertThat(json.get("minutes").getAsDouble()).isBetween(16.428, 16.4281);
  }

  /** 15 L/min for a bag with a reservoir: emergency medical texts. (2000 - 200) x 0.28 / 15. */
  @Test
  void withoutAFlowItTakesThatOfABagAndSaysWhoSaysSo() {
    CliRun run = oxygen("--cylinder E --pressure 2000psi");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith("33 minutes at 15 L/min")
        .contains("flow: Emergency medical services teaching");
    assertThat(oxygen("--cylinder E --pressure 2000psi --flow 15").out()).doesNotContain("flow: ");
  }

  @Test
  void belowTheReserveThereIsNothingLeftToPlanWith() {
    CliRun run = oxygen("--cylinder E --pressure 150psi --flow 15");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith("0 minutes at 15 L/min: the gauge shows no more than the reserve")
        .contains("above the reserve 0 L, in the cylinder 42 L");
  }

  @Test
  void aReadingThatSuchACylinderCanNotHaveIsDoubted() {
    assertThat(oxygen("--cylinder D --pressure 4000psi --flow 10").out())
        .contains("Check the size and the unit");
    assertThat(oxygen("--cylinder D --pressure 2000psi --flow 10").out())
        .doesNotContain("Check the size");
  }

  @Test
  void aSizeFromMemorySaysSo() {
    assertThat(oxygen("--cylinder UK-E --pressure 137bar --flow 10").out()).contains("from memory");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--pressure 1200psi --flow 4",
        "--cylinder E --water-litres 2 --pressure 1200psi --flow 4",
        "--cylinder E --flow 4",
        "--cylinder Q --pressure 1200psi --flow 4",
        "--cylinder E --pressure 1200 --flow 4",
        "--cylinder E --pressure -1200psi --flow 4",
        "--cylinder E --pressure NaNpsi --flow 4",
        "--cylinder E --pressure 1e9psi --flow 4",
        "--cylinder E --pressure 99999psi --flow 4",
        "--cylinder E --pressure 1200psi --flow 0",
        "--cylinder E --pressure 1200psi --flow -4",
        "--cylinder E --pressure 1200psi --flow Infinity",
        "--cylinder E --pressure 1200psi --flow 4 --reserve 200",
        "--cylinder E --pressure 1200psi --flow 4 --full-pressure 137bar",
        "--contents 340 --pressure 1200psi --flow 4",
        "--water-litres 0 --pressure 137bar --flow 4",
        "--water-litres 2 --pressure 137bar --flow 4 spare"
      })
  void badInputEndsWithTwoAndOneClearMessage(String words) {
    CliRun run = oxygen(words);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).startsWith("squeezewell: ");
    assertThat(run.err().lines().filter(line -> !line.startsWith("For help: "))).hasSize(1);
    assertThat(run.err()).doesNotContain("Exception").doesNotContain("\tat ");
  }

  @Test
  void theTextFitsATerminalAndOneThatShowsOnlyAscii() {
    String[] words = "oxygen --cylinder UK-E --pressure 137bar --flow 10".split(" ");
    assertThat(CliRun.of(words).out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(CliRun.with(true, StandardCharsets.US_ASCII, words).out().chars())
        .allMatch(c -> c < 0x7F);
  }
}
