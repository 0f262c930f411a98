package squeezewell.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.InputStream;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.input.BadInputException;
import squeezewell.input.Json;
import squeezewell.protocol.Confidence;

class WidgetsLibraryTest {
  private static final EquipmentLibrary KIT = EquipmentReader.builtIn();

  /** Virginia OEMS, October 2010: D 0.16, E 0.28, M 1.56, H or K 3.14, 200 psi; G 2.41 by AAOS. */
  @Test
  void theFactorsAreThosePublished() {
    Map<String, String> litresAtAThousand =
        Map.of("D", "160", "E", "280", "M", "1560", "G", "2410", "H/K", "3140");
    Fraction thousand = PressureUnit.PSI.pascals().times(Fraction.of(1000));
    litresAtAThousand.forEach(
        (size, litres) -> {
          Cylinder found =
              KIT.cylinders().stream().filter(c -> c.id().equals(size)).findFirst().orElseThrow();
          assertThat(found.litres(thousand).decimal(6, RoundingMode.HALF_UP))
              .isEqualByComparingTo(litres);
        });
    assertThat(KIT.reserve().in(PressureUnit.PSI, 6)).isEqualByComparingTo("200");
    assertThat(KIT.bagFlow()).hasToString("15 L/min");
    assertThat(KIT.cylinders())
        .extracting(Cylinder::id, c -> c.source().confidence())
        .contains(
            tuple("G", Confidence.PRACTICE),
            tuple("E", Confidence.PRIMARY),
            tuple("UK-E", Confidence.MEMORY));
  }

  /**
   * 6 to 7 mL/kg (AHA, ERC), 6 to 8 (lung-protective, children), 4 to 8 (newborn): common practice.
   */
  @Test
  void theBreathsAreThosePublished() {
    assertThat(KIT.volumes())
        .extracting(
            VolumeRule::id,
            v -> v.lowMillilitresPerKilogram().intValueExact(),
            v -> v.highMillilitresPerKilogram().intValueExact(),
            v -> v.source().confidence())
        .containsExactly(
            tuple("adult", 6, 7, Confidence.SECONDARY),
            tuple("adult-protective", 6, 8, Confidence.SECONDARY),
            tuple("child", 6, 8, Confidence.PRACTICE),
            tuple("newborn", 4, 8, Confidence.PRACTICE));
  }

  /** 15, 10 and 5 s: common practice; a manual in Oregon: 10 s for all. */
  @Test
  void suctionTimesStandBesideTheSourceThatDiffers() {
    List<Advice> suction = KIT.sizes().stream().filter(a -> a.topic().equals("Suction")).toList();
    assertThat(suction)
        .extracting(Advice::name, Advice::words)
        .contains(
            tuple("Adult", "At most 15 s."),
            tuple("Child", "At most 10 s."),
            tuple("Infant", "At most 5 s."));
    assertThat(suction).anyMatch(a -> a.words().contains("10 s for everyone"));
  }

  /**
   * 40 to 120 mm in steps of 10, from memory; six sizes from 43 to 100 mm are carried in Virginia.
   */
  @ParameterizedTest
  @CsvSource({"88,90", "91,90", "80,80", "40,40", "36,40", "124.9,120", "43,40", "94.9,90"})
  void theNearestOralAirwayIsChosen(String measured, int length) throws Exception {
    assertThat(KIT.oralAirways().nearest("Length", measured)).containsExactly(length);
  }

  @Test
  void halfwayBetweenTwoBothAreNamed() throws Exception {
    assertThat(KIT.oralAirways().nearest("Length", "85")).containsExactly(80, 90);
    assertThat(KIT.oralAirways().nearest("Length", "85 mm")).containsExactly(80, 90);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-80", "8", "126", "NaN", "", "8 cm", "1e2"})
  void aLengthThatNoAirwayComesNearIsRefused(String measured) {
    assertThatThrownBy(() -> KIT.oralAirways().nearest("Length", measured))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("allowed: a number from 35 to 125 mm");
  }

  @Test
  void everythingToHaveReadyHasAReasonAndASource() {
    assertThat(KIT.checkList()).hasSizeGreaterThanOrEqualTo(10);
    assertThat(KIT.checkList()).extracting(CheckItem::item).doesNotHaveDuplicates();
    assertThat(KIT.checkList())
        .allSatisfy(
            i -> {
              assertThat(i.why()).endsWith(".").hasSizeGreaterThan(20);
              assertThat(i.source().line()).isNotEmpty();
            });
    assertThat(KIT.checkList()).extracting(CheckItem::item).anyMatch(i -> i.contains("Suction"));
  }

  @Test
  void everySourceIsUsed() throws Exception {
    JsonObject top = JsonParser.parseString(text()).getAsJsonObject();
    String rest = text().substring(text().indexOf("\"reserve\""));
    assertThat(top.getAsJsonObject("sources").keySet())
        .allMatch(name -> rest.contains("\"source\": \"" + name + "\""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"litresPerPsi\": 0.28|\"litresPerPsi\": 0|cylinders[1].litresPerPsi",
        "\"litresPerPsi\": 0.28|\"litresPerPsi\": \"0.28\"|cylinders[1].litresPerPsi",
        "\"unit\": \"psi\"|\"unit\": \"bar\"|reserve.unit",
        "\"version\": 1|\"version\": 2|version",
        "\"low\": 6, \"high\": 7|\"low\": 8, \"high\": 7|volumes[0].high",
        "\"value\": 200, |\"value\": -1, |reserve.value"
      })
  void aDamagedFileIsRefusedByPlace(String good, String bad, String place) throws Exception {
    String text = text();
    assertThat(text).contains(good);
    assertThatThrownBy(
            () ->
                EquipmentReader.read(
                    Json.readText("kit.json", text.replaceFirst(quote(good), bad))))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining(place);
  }

  private static String quote(String text) {
    return java.util.regex.Pattern.quote(text);
  }

  private static String text() throws Exception {
    try (InputStream stream = EquipmentLibrary.class.getResourceAsStream("kit.json")) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
