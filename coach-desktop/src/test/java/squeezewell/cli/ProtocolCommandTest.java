package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProtocolCommandTest {
  private static final String[] RHYTHM_KEYS = {
    "patient",
    "situation",
    "rescuers",
    "breathIntervalSeconds",
    "compressionsPerMinute",
    "compressionsPerCycle",
    "breathsPerCycle",
    "source",
    "confidence"
  };

  @TempDir Path folder;

  @Test
  void everyEditionThatIsListedCanBeShownWithAllItsKeys() {
    JsonArray protocols =
        CliRun.of("protocol", "list", "--json").json().getAsJsonArray("protocols");
    assertThat(protocols.size()).isGreaterThanOrEqualTo(4);
    for (JsonElement protocol : protocols) {
      String id = protocol.getAsJsonObject().get("id").getAsString();
      JsonObject shown = CliRun.of("protocol", "show", id, "--json").json();
      assertThat(shown.keySet()).contains("id", "title", "year", "rhythms");
      assertThat(shown.get("id").getAsString()).isEqualTo(id);
      for (JsonElement rhythm : shown.getAsJsonArray("rhythms")) {
        assertThat(rhythm.getAsJsonObject().keySet()).contains(RHYTHM_KEYS);
        assertThat(CliRun.of("protocol", "show", id).out())
            .contains("Not a medical device")
            .contains("Sources, and how each value was checked");
      }
    }
  }

  @Test
  void theAdultRhythmsAreThoseThatAreTaught() {
    // Adult with a pulse: one breath every 6 s, each over 1 s; 30:2; compressions 100 to 120 a
    // minute: AHA Guidelines for CPR and ECC 2020 and 2025, adult basic life support.
    JsonArray rhythms =
        CliRun.of("protocol", "show", "aha-2025", "--json").json().getAsJsonArray("rhythms");
    JsonObject pulse = rhythm(rhythms, "pulse-no-breathing");
    assertThat(pulse.getAsJsonObject("breathIntervalSeconds").get("target").getAsDouble())
        .isEqualTo(6);
    assertThat(pulse.get("inspirationSeconds").getAsDouble()).isEqualTo(1);
    assertThat(pulse.get("compressionsPerMinute").isJsonNull()).isTrue();
    assertThat(pulse.get("compressionsPerCycle").isJsonNull()).isTrue();
    assertThat(pulse.get("rescuers").isJsonNull()).isTrue();
    JsonObject cycle = rhythm(rhythms, "arrest-no-advanced-airway");
    assertThat(cycle.get("breathIntervalSeconds").isJsonNull()).isTrue();
    assertThat(cycle.get("compressionsPerCycle").getAsInt()).isEqualTo(30);
    assertThat(cycle.get("breathsPerCycle").getAsInt()).isEqualTo(2);
    JsonObject rate = cycle.getAsJsonObject("compressionsPerMinute");
    // As text, since a program that reads text has to find the numbers that are published.
    assertThat(rate.get("low").getAsString()).isEqualTo("100");
    assertThat(rate.get("high").getAsString()).isEqualTo("120");
    assertThat(rate.get("target").getAsString()).isEqualTo("110");
  }

  @Test
  void aChoiceOfOursGivesWayToThePublishedRange() throws Exception {
    Path home = folder.resolve("home");
    Files.createDirectories(home.resolve("protocols"));
    String own =
        Protocols.text("own-1")
            .replaceFirst("(\"breathInterval\":[^}]*\"confidence\":)\"secondary\"", "$1\"house\"")
            .replaceFirst("\"rangeConfidence\":\"house\"", "\"rangeConfidence\":\"memory\"");
    Files.writeString(home.resolve("protocols").resolve("own.json"), own);
    JsonObject rhythm =
        CliRun.of("protocol", "show", "own-1", "--json", "--home", home.toString())
            .json()
            .getAsJsonArray("rhythms")
            .get(0)
            .getAsJsonObject();
    assertThat(rhythm.get("confidence").getAsString()).isEqualTo("memory");
    assertThat(rhythm.get("source")).isEqualTo(rhythm.get("rangeSource"));
    assertThat(CliRun.of("protocol", "show", "own-1", "--home", home.toString()).out())
        .containsPattern("from\\s+memory");
  }

  @Test
  void aGoodFileIsSummedUp() throws Exception {
    Path file = Files.writeString(folder.resolve("own.json"), Protocols.text("own-1"));
    CliRun run = CliRun.of("protocol", "check", file.toString());
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains(file + ": good").contains("adult pulse-no-breathing");
  }

  @Test
  void everyFaultOfAFileIsExplained() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("own.json"),
            Protocols.text("own-1")
                .replaceFirst("\"target\":6", "\"target\":600")
                .replaceFirst("\"year\":2026", "\"year\":26"));
    CliRun run = CliRun.of("protocol", "check", file.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines())
        .containsExactly(
            "squeezewell: " + file + ": year is 26; allowed: a number from 1950 to 2100",
            "squeezewell: "
                + file
                + ": patients[0].rhythms[0].breathInterval.target is 600; allowed: a number from"
                + " 0.5 to 60 s",
            "2 faults.");
  }

  @Test
  void oneFaultIsNotCounted() throws Exception {
    Path file = Files.writeString(folder.resolve("own.json"), "{");
    CliRun run = CliRun.of("protocol", "check", file.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).contains(file.toString()).contains("not well-formed JSON");
  }

  @Test
  void aCopyIsTheServicesOwnAndIsGood() throws Exception {
    Path file = folder.resolve("copy.json");
    CliRun run =
        copy("aha-2025", file, "--organisation", "An ambulance service", "--title", "Orders");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("AHA 2025 is copied to " + file + " as local-aha-2025.");
    JsonObject made = JsonParser.parseString(Files.readString(file)).getAsJsonObject();
    assertThat(made.get("organisation").getAsString()).isEqualTo("An ambulance service");
    assertThat(made.get("title").getAsString()).isEqualTo("Orders");
    assertThat(made.get("local").getAsBoolean()).isTrue();
    assertThat(made.get("basedOn").getAsString()).isEqualTo("aha-2025");
    assertThat(Files.readString(file)).contains("American Heart Association");
    CliRun check = CliRun.of("protocol", "check", file.toString());
    assertThat(check.code()).isZero();
    assertThat(check.out().replaceAll("\\s+", " "))
        .contains(
            "Local protocol: Orders, of An ambulance service,",
            "no approval noted. Based on AHA 2025, with the same values.");
  }

  @Test
  void aChangedCopySaysWhereItDiffersAndWhoApprovedIt() throws Exception {
    Path home = folder.resolve("home");
    Files.createDirectories(home.resolve("protocols"));
    Path file = home.resolve("protocols").resolve("own.json");
    assertThat(copy("aha-2025", file).code()).isZero();
    String approval = "\"approval\": {\"by\": \"A board\", \"on\": \"2026-01-31\"},";
    Files.writeString(
        file,
        Files.readString(file)
            .replaceFirst("\"target\": 6,", "\"target\": 5,")
            .replaceFirst("\"basedOn\"", approval + "\"basedOn\""));
    for (String[] words :
        new String[][] {
          {"protocol", "check", file.toString()},
          {"protocol", "show", "local-aha-2025", "--home", home.toString()}
        }) {
      assertThat(CliRun.of(words).out().replaceAll("\\s+", " "))
          .contains("of Our service")
          .contains("approved by A board on 2026-01-31. Based on AHA 2025, and differs from it.")
          .contains("- Adult, pulse, not breathing: breath every 5 s here, 6 s in AHA 2025");
    }
    assertThat(CliRun.of("protocol", "list", "--home", home.toString()).out())
        .contains("(local)")
        .contains("Local protocol: Service protocol, of Our service");
    JsonObject shown =
        CliRun.of("protocol", "show", "local-aha-2025", "--json", "--home", home.toString()).json();
    assertThat(shown.get("basedOn").getAsString()).isEqualTo("aha-2025");
    assertThat(shown.getAsJsonObject("approval").get("on").getAsString()).isEqualTo("2026-01-31");
    assertThat(shown.getAsJsonArray("differences")).hasSize(1);
  }

  @Test
  void aCopyNeverReplacesAFile() throws Exception {
    Path file = Files.writeString(folder.resolve("mine.json"), "mine");
    CliRun run = copy("aha-2025", file);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--out is ").contains("a file that is not there yet");
    assertThat(file).hasContent("mine");
    assertThat(copy("aha-1999", folder.resolve("x.json")).code()).isEqualTo(2);
    assertThat(copy("aha-2025", folder.resolve("x.json"), "--title", "a\u001b[31mb").err())
        .contains("--title is ")
        .doesNotContain("\u001b");
    assertThat(folder.resolve("x.json")).doesNotExist();
  }

  private static CliRun copy(String id, Path file, String... more) {
    List<String> words = new ArrayList<>(List.of("protocol", "copy", id, "--out", file.toString()));
    words.addAll(List.of(more));
    return CliRun.of(words.toArray(new String[0]));
  }

  @Test
  void aLocalFileThatCanNotBeUsedIsNamedAndTheRestIsListed() throws Exception {
    Files.createDirectories(folder.resolve("protocols"));
    Files.writeString(folder.resolve("protocols").resolve("bad.json"), "{");
    CliRun run = CliRun.of("protocol", "list", "--home", folder.toString());
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("aha-2025");
    assertThat(run.err()).contains("left out: ").contains("bad.json");
  }

  private static JsonObject rhythm(JsonArray rhythms, String situation) {
    for (JsonElement rhythm : rhythms) {
      if (rhythm.getAsJsonObject().get("situation").getAsString().equals(situation)) {
        return rhythm.getAsJsonObject();
      }
    }
    throw new AssertionError("no rhythm for " + situation);
  }
}
