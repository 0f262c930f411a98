package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;

/** A file with several faults tells them all. */
class ProtocolFaultsTest {
  /** Of each kind of rhythm, as in the table in docs/formats.md. */
  private static final Map<String, String> FIELDS =
      Map.of(
          "steady-breaths",
          "breathInterval, fromAge, inspiration, kind, limits, rescuers, situation",
          "continuous-compressions",
          "breathInterval, compressionRate, fromAge, inspiration, kind, limits, rescuers, situation",
          "compression-cycle",
          "compressionRate, cycle, fromAge, inspiration, kind, limits, pause, pauseLimit, rescuers,"
              + " situation");

  private static final String GOOD = ProtocolReaderTest.builtIn("aha-2025");

  @TempDir Path folder;

  private static List<String> faults(String text) {
    return ProtocolReader.checkText("local.json", text).faults().stream()
        .map(BadInputException::getMessage)
        .collect(Collectors.toList());
  }

  @Test
  void aGoodFileHasNoFaults() {
    ProtocolReader.Checked checked = ProtocolReader.checkText("x", GOOD);
    assertThat(checked.faults()).isEmpty();
    assertThat(checked.protocol()).get().extracting(Protocol::id).isEqualTo("aha-2025");
  }

  @Test
  void everyFaultOfTheFileIsToldOnceInTheOrderOfTheFile() {
    String text =
        GOOD.replace("\"id\": \"aha-2025\"", "\"id\": \"AHA\"")
            .replace("\"year\": 2025,\n  \"local\"", "\"year\": 1066,\n  \"local\"")
            .replaceFirst("\"value\": 120,", "\"value\": 5,")
            .replaceFirst("\"target\": 6,", "\"target\": 600,")
            .replaceFirst("\"low\": 5,", "\"low\": \"five\",")
            .replaceFirst("\"compressions\": 30", "\"compressions\": 3.5")
            .replaceFirst("\"source\": \"breathing\"", "\"source\": \"nowhere\"");
    assertThat(faults(text))
        .containsExactly(
            "local.json: id is AHA; allowed: lower-case letters, digits and single hyphens",
            "local.json: year is 1066; allowed: a number from 1950 to 2100",
            "local.json: patients[0].limits.pulseCheckEvery.value is 5; allowed: a number from 10"
                + " to 3600 s",
            "local.json: patients[0].rhythms[0].breathInterval.target is 600; allowed: a number"
                + " from 0.5 to 60 s",
            "local.json: patients[0].rhythms[0].breathInterval.source is \"nowhere\"; allowed: the"
                + " name of an entry under \"sources\"",
            "local.json: patients[0].rhythms[0].breathInterval.low is \"five\"; allowed: a number"
                + " from 0.5 to 60 s",
            "local.json: patients[0].rhythms[2].cycle.compressions is 3.5; allowed: a whole number"
                + " from 1 to 100");
  }

  @Test
  void theFirstFaultIsTheOneThatReadingTells() {
    String text = GOOD.replace("\"low\": 5,", "\"low\": 6.5,").replace("aha-2025", "AHA");
    assertThatThrownBy(() -> ProtocolReader.readText("local.json", text))
        .isInstanceOf(BadInputException.class)
        .hasMessage(faults(text).get(0));
    assertThat(faults(text).size()).isGreaterThan(1);
  }

  @Test
  void aValueOutOfRangeIsNotJudgedAgainstOthersToo() {
    assertThat(faults(GOOD.replaceFirst("\"high\": 7,", "\"high\": 700,"))).hasSize(1);
  }

  @Test
  void aSourceThatIsUsedOftenTellsItsFaultOnce() {
    int from = GOOD.indexOf("\"pulse-check\": {");
    String text =
        GOOD.substring(0, from) + GOOD.substring(from).replaceFirst("\"section\"", "\"part\"");
    assertThat(faults(text))
        .hasSize(1)
        .allSatisfy(f -> assertThat(f).contains("sources.pulse-check.section is missing"));
  }

  @Test
  void withoutATableOfSourcesOnlyThatIsTold() {
    assertThat(faults(GOOD.replace("\"sources\": {", "\"origins\": {")))
        .containsExactly("local.json: sources is missing; allowed: an object of named sources");
  }

  @Test
  void aFileOfAnotherKindOrANewerVersionIsNotPickedApart() {
    assertThat(faults("{}")).hasSize(1);
    assertThat(faults("[]")).hasSize(1);
    assertThat(faults("{\"format\": \"squeezewell-protocol\", \"version\": 2}"))
        .hasSize(1)
        .allSatisfy(f -> assertThat(f).contains("newer version"));
    assertThat(faults("{\"format\": \"squeezewell-protocol\", \"version\": 1}"))
        .extracting(f -> f.substring("local.json: ".length(), f.indexOf(" is missing")))
        .containsExactly("id", "title", "organisation", "year", "sources", "patients");
  }

  @Test
  void whatIsNoJsonHasOneFaultWithItsLine() {
    assertThat(faults(GOOD.replaceFirst("\"target\": 6,", "\"target\": 6,,")))
        .hasSize(1)
        .allSatisfy(f -> assertThat(f).contains("not well-formed JSON at line "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"basedOn\": \"AHA 2025\" | basedOn is AHA 2025; allowed: lower-case",
        "\"basedOn\": 5 | basedOn is 5; allowed: a text",
        "\"approval\": \"yes\" | approval is \"yes\"; allowed: an object",
        "\"approval\": {\"on\": \"2026-01-31\"} | approval.by is missing",
        "\"approval\": {\"by\": \"A board\"} | approval.on is missing; allowed: a day such as",
        "\"approval\": {\"by\": \" \", \"on\": \"2026-01-31\"} | approval.by is \" \"; allowed",
        "\"approval\": {\"by\": \"A\", \"on\": \"2026-02-30\"} | approval.on is \"2026-02-30\"; allowed",
        "\"approval\": {\"by\": \"A\", \"on\": \"31.1.2026\"} | approval.on is \"31.1.2026\"; allowed",
        "\"approval\": {\"by\": \"A\", \"on\": \"1949-12-31\"} | approval.on is \"1949-12-31\"",
        "\"approval\": {\"by\": \"A\", \"on\": 2026} | approval.on is 2026; allowed: a day",
        "\"approval\": {\"by\": \"A\", \"on\": \"2026-01-31\", \"note\": 1} | approval.note is 1",
      })
  void aBaseOrAnApprovalThatMakesNoSenseIsToldByItsField(String field, String message) {
    List<String> found = faults(GOOD.replaceFirst("\"local\": false", field));
    assertThat(found).hasSize(1);
    assertThat(found.get(0)).contains(message);
  }

  @Test
  void aMisspeltFieldIsNoFaultButIsNamed() {
    String text =
        GOOD.replaceFirst("\"limits\": \\{", "\"gapLongst\": 5, \"limits\": {\"gapLongst\": {},")
            .replace("\"local\": false", "\"locl\": true, \"\\u001b[31m\": 1");
    ProtocolReader.Checked checked = ProtocolReader.checkText("local.json", text);
    assertThat(checked.protocol()).isPresent();
    assertThat(checked.unknown())
        .containsExactly(
            "local.json: locl: this version does not know the field and leaves it out; did you mean"
                + " local?",
            "local.json: \uFFFD[31m: this version does not know the field and leaves it out",
            "local.json: patients[0].gapLongst: this version does not know the field and leaves it"
                + " out",
            "local.json: patients[0].limits.gapLongst: this version does not know the field and"
                + " leaves it out; did you mean gapLongest?");
    for (Protocol edition : GuidelineLibrary.editions()) {
      String builtIn = ProtocolReaderTest.builtIn(edition.id());
      assertThat(ProtocolReader.checkText("x", builtIn).unknown()).as(edition.id()).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "steady-breaths | pause | {\"value\": 4} | an object | compression-cycle",
        "steady-breaths | pauseLimit | 10 | 10 | compression-cycle",
        "steady-breaths | cycle | null | null | compression-cycle",
        "steady-breaths | compressionRate | [] | a list | continuous-compressions or"
            + " compression-cycle",
        "continuous-compressions | cycle | \"30:2\" | \"30:2\" | compression-cycle",
        "continuous-compressions | pause | true | true | compression-cycle",
        "compression-cycle | breathInterval | {} | an object | steady-breaths or"
            + " continuous-compressions",
      })
  void aValueOfAnotherKindOfRhythmIsNamed(
      String kind, String field, String json, String value, String kinds) {
    String text = ProtocolReaderTest.builtIn("aha-2020");
    String there = "\"kind\": \"" + kind + "\"";
    assertThat(text).contains(there);
    String wrong = text.replaceFirst(there, "$0, \"" + field + "\": " + json);
    ProtocolReader.Checked checked = ProtocolReader.checkText("local.json", wrong);
    assertThat(checked.faults()).isEmpty();
    assertThat(checked.unknown()).hasSize(1);
    assertThat(checked.unknown().get(0))
        .matches("local\\.json: patients\\[\\d\\]\\.rhythms\\[\\d\\]\\." + field + " is .*")
        .contains(
            field
                + " is "
                + value
                + "; allowed: in the kind "
                + kind
                + " "
                + FIELDS.get(kind)
                + ";")
        .endsWith("; did you mean the kind " + kinds + "?");
  }

  @Test
  void aValueInTheWrongPlaceIsNamedWithTheRightOne() {
    String wrong =
        GOOD.replaceFirst("\"limits\": \\{", "\"gapLongest\": 5, \"limits\": {\"inspiration\": 1,")
            .replace("\"local\": false", "\"suctionLongest\": {}");
    assertThat(ProtocolReader.checkText("local.json", wrong).unknown())
        .satisfiesExactly(
            top ->
                assertThat(top)
                    .startsWith("local.json: suctionLongest is an object; allowed: here approval,")
                    .endsWith("did you mean limits.suctionLongest?"),
            patient ->
                assertThat(patient)
                    .isEqualTo(
                        "local.json: patients[0].gapLongest is 5; allowed: here ages, group,"
                            + " limits, rhythms; it is left out; did you mean limits.gapLongest?"),
            limits ->
                assertThat(limits)
                    .startsWith("local.json: patients[0].limits.inspiration is 1; allowed: here")
                    .endsWith("did you mean inspiration of one of the rhythms?"));
  }

  @Test
  void aMisspeltFieldOfAValueAnAgeOrASourceIsNamedToo() throws Exception {
    String text = ProtocolReaderTest.builtIn("aha-2020");
    for (String right :
        List.of(
            "rangeConfidence",
            "confidence",
            "unit",
            "target",
            "low",
            "value",
            "words",
            "section")) {
      // The field is there twice then, once as it should be.
      String wrong =
          text.replaceFirst(
              "\"" + right + "\" *: *(\"[^\"]*\"|[^,}\\]\\s]+)", "$0, \"" + right + "x\": 1");
      List<String> unknown = ProtocolReader.checkText("local.json", wrong).unknown();
      assertThat(unknown).as(right).hasSize(1);
      assertThat(unknown.get(0))
          .matches("local\\.json: (patients|sources).*\\." + right + "x: this version does not.*");
    }
  }

  @Test
  void aMegabyteOfFaultsIsCutShort() throws Exception {
    Path file = folder.resolve("many.json");
    String head =
        "{\"format\":\"squeezewell-protocol\",\"version\":1,\"id\":\"x\",\"title\":\"x\","
            + "\"organisation\":\"x\",\"year\":2026,\"sources\":{},\"patients\":[";
    int count = (999_000 - head.length()) / 3;
    Files.writeString(file, head + "{}" + ",{}".repeat(count) + "]}");
    ProtocolReader.Checked checked = ProtocolReader.checkFile(file);
    assertThat(checked.protocol()).isEmpty();
    assertThat(checked.faults()).hasSize(Faults.MOST);
  }

  @Test
  void noControlCharacterReachesAnyOfTheMessages() {
    String text =
        GOOD.replace("\"AHA 2025\"", "\"\\u001b[31m\"")
            .replaceFirst("\"group\": \"adult\"", "\"group\": \"\\u0007\\u202e\"")
            .replaceFirst("\"source\": \"breathing\"", "\"source\": \"\\u2028x\"");
    assertThat(faults(text))
        .hasSize(3)
        .allSatisfy(f -> assertThat(f).doesNotContainPattern("[\\p{Cntrl}\u202e\u2028]"));
  }

  @Test
  void aBaseAndAnApprovalAreReadAsTheyWereWritten() throws Exception {
    String text =
        GOOD.replace(
            "\"local\": false",
            "\"local\": true, \"basedOn\": \"aha-2025\", \"approval\": {\"by\": \"A board\","
                + " \"on\": \"2026-01-31\", \"note\": \"<b>until</b> \\\"March\\\"\"}");
    Protocol read = ProtocolReader.readText("x", text);
    assertThat(read.basedOn()).isEqualTo("aha-2025");
    assertThat(read.approval().get().words())
        .isEqualTo("approved by A board on 2026-01-31 (<b>until</b> \"March\")");
    assertThat(ProtocolReader.readText("again", ProtocolRoundTripTest.write(read))).isEqualTo(read);
  }

  @Test
  void otherGuidanceLeavesEverythingElseAsItIs() {
    Protocol edition = ProtocolReader.checkText("x", GOOD).protocol().get();
    Guidance adult = edition.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).get();
    Protocol cut = edition.asLocal().withGuidance(List.of(adult));
    assertThat(cut.guidance()).containsExactly(adult);
    assertThat(cut.local()).isTrue();
    assertThat(cut.id()).isEqualTo("aha-2025");
    assertThat(cut.ages()).extracting(AgeBand::group).containsExactly(PatientGroup.ADULT);
    assertThat(edition.withGuidance(edition.guidance())).isEqualTo(edition);
  }
}
