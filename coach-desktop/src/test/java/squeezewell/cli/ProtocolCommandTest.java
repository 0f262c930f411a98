package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
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
    assertThat(rate.get("low").getAsDouble()).isEqualTo(100);
    assertThat(rate.get("high").getAsDouble()).isEqualTo(120);
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
  void theFirstFaultOfAFileIsExplained() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("own.json"),
            Protocols.text("own-1").replaceFirst("\"target\":6", "\"target\":600"));
    CliRun run = CliRun.of("protocol", "check", file.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .contains(file.toString())
        .contains("patients[0].rhythms[0].breathInterval.target is 600")
        .contains("0.5 to 60 s");
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
