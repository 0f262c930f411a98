package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.input.BadInputException;

class ProtocolReaderTest {
  @TempDir Path folder;

  static String builtIn(String id) {
    try (InputStream in = ProtocolReader.class.getResourceAsStream(id + ".json")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static final String GOOD = builtIn("aha-2025");

  private static BadInputException refusal(String text) {
    try {
      ProtocolReader.readText("local.json", text);
    } catch (BadInputException e) {
      return e;
    }
    throw new AssertionError("nothing was refused");
  }

  private static String with(String old, String young) {
    assertThat(GOOD).contains(old);
    return GOOD.replaceFirst(java.util.regex.Pattern.quote(old), young.replace("\\", "\\\\"));
  }

  @Test
  void theUnchangedTextIsAccepted() throws Exception {
    assertThat(ProtocolReader.readText("x", GOOD).id()).isEqualTo("aha-2025");
  }

  @ParameterizedTest
  @ValueSource(strings = {"-6", "0", "1e308", "0.0001", "61", "-0.0", "6.00001", "1e-400"})
  void anImpossibleIntervalIsRefusedByFieldValueAndRange(String value) {
    assertThat(refusal(with("\"target\": 6,", "\"target\": " + value + ",")))
        .hasMessageContaining("local.json")
        .hasMessageContaining("patients[0].rhythms[0].breathInterval.target")
        .hasMessageContaining(new java.math.BigDecimal(value).toString())
        .hasMessageContaining("allowed: a number");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e999999999", "1E-999999999", "1e99999"})
  void aNumberWithAHugeExponentIsRefusedAtOnce(String value) {
    assertThat(refusal(with("\"target\": 6,", "\"target\": " + value + ",")))
        .hasMessageContaining("breathInterval.target is " + value)
        .hasMessageContaining("allowed");
  }

  @ParameterizedTest
  @ValueSource(strings = {"NaN", "Infinity", "-Infinity", "06", "+6", "0x6", ".6", "6."})
  void whatIsNoJsonNumberIsRefusedWithItsLine(String value) {
    assertThat(refusal(with("\"target\": 6,", "\"target\": " + value + ",")))
        .hasMessageContaining("local.json")
        .hasMessageContaining("not well-formed JSON at line")
        .hasMessageContaining("allowed");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\"6\"", "true", "[6]", "{}"})
  void aValueOfTheWrongTypeIsRefused(String value) {
    assertThat(refusal(with("\"target\": 6,", "\"target\": " + value + ",")))
        .hasMessageContaining("breathInterval.target is")
        .hasMessageContaining("allowed: a number from 0.5 to 60 s");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"low\": 5, | \"low\": 6.5, | breathInterval.low is 6.5; allowed: at most the target",
        "\"high\": 7, | \"high\": 5.5, | breathInterval.high is 5.5; allowed: at least the target",
        "\"low\": 100, | \"low\": 115, | compressionRate.low is 115; allowed: at most the target",
        "\"unit\": \"/min\" | \"unit\": \"Hz\" | compressionRate.unit is \"Hz\"; allowed: one of /min",
        "\"value\": 120, | \"value\": 15, | pulseCheckNotice.value is 10; allowed: at most half",
        "\"value\": 15, | \"value\": 4, | suctionNotice.value is 5; allowed: under suctionLongest",
        "\"version\": 1 | \"version\": 2 | version is 2; allowed: at most 1; this file was made by a newer",
        "\"version\": 1 | \"version\": 0 | version is 0; allowed",
        "\"version\": 1 | \"version\": 1.5 | version is 1.5; allowed: a whole number",
        "\"squeezewell-protocol\" | \"other\" | format is \"other\"; allowed: one of squeezewell-protocol",
        "\"id\": \"aha-2025\" | \"id\": \"../x\" | id is ../x; allowed: lower-case",
        "\"group\": \"adult\" | \"group\": \"elder\" | group is \"elder\"; allowed: one of adult, child",
        "\"pulse-no-breathing\" | \"asleep\" | situation is \"asleep\"; allowed: one of",
        "\"steady-breaths\" | \"waltz\" | kind is \"waltz\"; allowed: one of",
        "\"source\": \"breathing\" | \"source\": \"nowhere\" | source is \"nowhere\"; allowed: the name",
        "\"confidence\": \"secondary\" | \"confidence\": \"sure\" | confidence is \"sure\"; allowed: one of",
        "\"compressions\": 30 | \"compressions\": 0 | cycle.compressions is 0; allowed: a number from 1",
        "\"compressions\": 30 | \"compressions\": 2147483648 | cycle.compressions is 2147483648",
        "\"breaths\": 2, | \"breaths\": 5, | inspiration.value is 1; allowed: so short",
        "\"year\": 2025 | \"year\": 1066 | year is 1066; allowed: a number from 1950 to 2100",
        "\"title\": \"AHA 2025\" | \"title\": \"  \" | title is \"  \"; allowed: a text",
        "\"local\": false | \"local\": \"no\" | local is \"no\"; allowed: true or false",
        "\"year\": 2025 | \"year\": null | year is missing; allowed",
      })
  void aWrongValueIsNamedWithItsPlaceAndWhatIsAllowed(String old, String young, String message) {
    assertThat(refusal(with(old, young)))
        .hasMessageContaining("local.json")
        .hasMessageContaining(message);
  }

  @Test
  void aSqueezeAsLongAsTheShortestIntervalIsRefused() {
    String text = GOOD.replace("\"value\": 1,", "\"value\": 5,");
    assertThat(refusal(text))
        .hasMessageContaining(
            "inspiration.value is 5; allowed: shorter than the shortest interval");
  }

  @Test
  void aValueWithoutACitationIsRefused() {
    String text = GOOD.replaceFirst("\"source\": \"pulse-check\",\\s*", "");
    assertThat(refusal(text))
        .hasMessageContaining("limits.pulseCheckEvery.source is missing")
        .hasMessageContaining("allowed: the name of an entry under \"sources\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"organisation", "title", "year", "section"})
  void aSourceThatLacksAPartIsRefused(String part) {
    int from = GOOD.indexOf("\"breathing\": {");
    String text =
        GOOD.substring(0, from)
            + GOOD.substring(from).replaceFirst("\"" + part + "\"", "\"not-" + part + "\"");
    assertThat(refusal(text)).hasMessageContaining("sources.breathing." + part + " is missing");
  }

  @Test
  void aKeyOrGroupOrSituationThatStandsThereTwiceIsRefused() {
    assertThat(refusal(with("\"year\": 2025,", "\"year\": 2025, \"year\": 2025,")))
        .hasMessageContaining("year")
        .hasMessageContaining("twice");
    String patient = GOOD.substring(GOOD.indexOf("\"patients\": [") + 13, GOOD.lastIndexOf(']'));
    assertThat(refusal(GOOD.replace(patient, patient + "," + patient)))
        .hasMessageContaining("patients[4]")
        .hasMessageContaining("the group adult stands there twice");
    assertThat(refusal(with("\"arrest-advanced-airway\"", "\"pulse-no-breathing\"")))
        .hasMessageContaining("rhythms[3]")
        .hasMessageContaining("twice");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"value\": 14, | \"value\": 0, | ages.to.value is 0; allowed: more than from",
        "\"value\": 14, | \"value\": -1, | ages.to.value is -1; allowed: a number from 0 to 136",
        "\"value\": 14, | \"value\": 13.5, | ages.to.value is 13.5; allowed: a whole number",
        "\"unit\": \"years\" | \"unit\": \"s\" | allowed: one of days, months, years",
        "\"words\": \"from puberty on\" | \"words\": \"\" | ages.words"
      })
  void anAgeLimitThatMakesNoSenseIsRefused(String old, String young, String message) {
    assertThat(refusal(with(old, young))).hasMessageContaining(message);
  }

  @Test
  void aLimitOfARhythmTakesThePlaceOfThePatients() throws Exception {
    Protocol read = ProtocolReader.readText("x", GOOD);
    Limits usual = read.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).get().limits();
    Limits own = read.find(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY).get().limits();
    assertThat(own.gapLongest()).isNotEqualTo(usual.gapLongest());
    assertThat(own.pulseCheckEvery()).isEqualTo(usual.pulseCheckEvery());
    String tooShort = with("\"value\": 25,", "\"value\": 0.5,");
    assertThat(refusal(tooShort))
        .hasMessageContaining("patients[0].rhythms[2].limits.gapLongest.value is 0.5");
  }

  @Test
  void aFileWithoutAgesIsRead() throws Exception {
    String bare = GOOD.replace("\"ages\": {", "\"unknown\": {");
    assertThat(ProtocolReader.readText("x", bare).ages()).isEmpty();
  }

  @Test
  void aTextThatEndsTooEarlyIsRefusedWhereverItEnds() {
    String whole = GOOD.trim();
    for (int end = 0; end < whole.length(); end += 7) {
      assertThat(refusal(whole.substring(0, end))).hasMessageContaining("local.json");
    }
  }

  @Test
  void textAfterTheEndIsRefused() {
    assertThat(refusal(GOOD + " {}")).hasMessageContaining("local.json");
    assertThat(refusal(GOOD + "x")).hasMessageContaining("local.json");
  }

  @Test
  void aByteOrderMarkIsAcceptedSinceSomeEditorsWriteOne() throws Exception {
    assertThat(ProtocolReader.readText("x", "\uFEFF" + GOOD).id()).isEqualTo("aha-2025");
  }

  @Test
  void aFileThatIsNotUtf8IsRefused() throws Exception {
    Path file = folder.resolve("latin.json");
    Files.write(file, GOOD.replace("AHA 2025", "é").getBytes(StandardCharsets.ISO_8859_1));
    assertThatThrownBy(() -> ProtocolReader.readFile(file))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("latin.json")
        .hasMessageContaining("not UTF-8");
  }

  @Test
  void aHundredMegabytesAreRefusedUnread() throws Exception {
    Path file = folder.resolve("huge.json");
    byte[] brackets = "[".repeat(1_000_000).getBytes(StandardCharsets.UTF_8);
    try (var out = Files.newOutputStream(file)) {
      for (int i = 0; i < 100; i++) {
        out.write(brackets);
      }
    }
    assertThatThrownBy(() -> ProtocolReader.readFile(file))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("huge.json: size is 100000000 bytes; allowed: at most 1000000 bytes");
  }

  @Test
  void nineHundredThousandBracketsAreRefusedByDepth() throws Exception {
    Path file = folder.resolve("deep.json");
    for (String bracket : new String[] {"[", "{\"a\":"}) {
      Files.writeString(file, bracket.repeat(900_000 / bracket.length()));
      assertThatThrownBy(() -> ProtocolReader.readFile(file))
          .isInstanceOf(BadInputException.class)
          .hasMessageContaining("deep.json")
          .hasMessageContaining("nested more deeply than 24 levels");
    }
  }

  @Test
  void aLongNameAboveManyValuesDoesNotFillTheMemory() {
    String text = "{\"" + "n".repeat(400_000) + "\": [0" + ",0".repeat(290_000) + "]}";
    assertThat(refusal(text).getMessage()).hasSizeLessThan(3_000).contains("format is missing");
  }

  @Test
  void noControlCharacterOfTheFileReachesAMessage() {
    String escape = "\\u001b[31m\\u0007\\u202e\\u2028";
    for (String text :
        new String[] {
          with("\"adult\"", "\"adult" + escape + "\""),
          with("\"AHA 2025\"", "\"AHA" + escape + "\""),
          with("\"source\": \"breathing\"", "\"source\": \"" + escape + "\""),
          with("\"year\": 2025", "\"" + escape + "\": 1, \"" + escape + "\": 2, \"year\": 2025"),
          with("\"year\": 2025", "\"" + escape + "\": NaN, \"year\": 2025"),
          with("\"year\": 2025", "\"\u001b[31m\": 1 2"),
        }) {
      assertThat(refusal(text).getMessage()).doesNotContainPattern("[\\p{Cntrl}\u202e\u2028]");
    }
  }

  @Test
  void aFileThatIsNotThereIsNamed() {
    assertThatThrownBy(() -> ProtocolReader.readFile(folder.resolve("none.json")))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("none.json")
        .hasMessageContaining("no such file");
    assertThatThrownBy(() -> ProtocolReader.readFile(folder)).isInstanceOf(BadInputException.class);
  }
}
