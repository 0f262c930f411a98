package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProtocolShowCommandTest {
  @TempDir Path home;

  private static CliRun show(String words) {
    return CliRun.of(("protocol show " + words).split(" "));
  }

  private static String row(String out, String name) {
    return out.lines().filter(l -> l.startsWith(name)).findFirst().orElseThrow();
  }

  /**
   * An adult with a pulse: AHA 2015 one breath every 5 to 6 s, AHA 2020 and 2025 every 6 s, as
   * training texts of each edition report.
   */
  @Test
  void editionsStandSideBySideAndWhatChangedIsSaidInWords() {
    CliRun run = show("aha-2015 aha-2020 aha-2025 --patient adult --situation pulse-no-breathing");
    assertThat(run.code()).isZero();
    assertThat(row(run.out(), "          ").trim().split(" +"))
        .containsExactly("aha-2015", "aha-2020", "aha-2025");
    assertThat(row(run.out(), "One breath every"))
        .containsPattern("5 to 6 s \\[\\d+] +6 s \\[\\d+] +6 s \\[\\d+]");
    // The line below it: only the edition of 2020 changed.
    assertThat(run.out()).containsPattern("(?m)^ {30,}Changed: 5 to 6");
    assertThat(run.out().split("Changed: 5", -1)).as("interval and range").hasSize(3);
    assertThat(run.out())
        .contains("Sources, and how each value was checked")
        .contains("read in a text that reports the source")
        .contains("our own choice")
        .contains("Not a medical device")
        .doesNotContain("Child");
  }

  @Test
  void whatAnotherOrganisationAsksForIsNoChange() {
    assertThat(show("aha-2015 erc-2021 --patient adult").out().lines())
        .noneMatch(l -> l.contains("Changed: "));
  }

  @Test
  void allEditionsFitIntoEightyColumns() throws Exception {
    Files.createDirectories(home.resolve("protocols"));
    Files.writeString(
        home.resolve("protocols").resolve("own.json"),
        Protocols.text("a-service-with-a-name-that-is-quite-long"));
    CliRun run = show("--all --home " + home);
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("a-service-", "(local)", "not in ");
    for (String id : List.of("aha-2025", "erc-2025", "nrp-8", "erc-2021", "aha-2020", "aha-2015")) {
      assertThat(run.out()).contains(id);
    }
    assertThat(run.out().lines())
        .allSatisfy(l -> assertThat(l.length()).as(l).isLessThanOrEqualTo(80));
    assertThat(run.out().lines()).allSatisfy(l -> assertThat(l).isEqualTo(l.stripTrailing()));
  }

  @Test
  void oneEditionIsAnObjectAndSeveralAreAList() {
    JsonObject one = show("aha-2020 --json").json();
    JsonArray two = JsonParser.parseString(show("aha-2020 erc-2021 --json").out()).getAsJsonArray();
    assertThat(two).hasSize(2);
    assertThat(two.get(0)).isEqualTo(one);
    assertThat(two.get(1).getAsJsonObject().get("id").getAsString()).isEqualTo("erc-2021");
    JsonArray all = JsonParser.parseString(show("--all --json").out()).getAsJsonArray();
    assertThat(all.size()).isGreaterThanOrEqualTo(6);
    assertThat(all).contains(one);
  }

  @Test
  void theFiltersHoldForTextAndForPrograms() {
    JsonObject child =
        show("aha-2020 --patient child --situation arrest-no-advanced-airway --json").json();
    List<String> rescuers =
        child.getAsJsonArray("rhythms").asList().stream()
            .map(JsonElement::getAsJsonObject)
            .map(r -> r.get("patient").getAsString() + " " + r.get("rescuers"))
            .collect(Collectors.toList());
    assertThat(rescuers).containsExactly("child 1", "child 2");
    assertThat(child.getAsJsonArray("ages")).hasSize(1);
    String text = show("aha-2020 --patient infant").out();
    assertThat(text).contains("Infant").doesNotContain("Child\n").doesNotContain("Adult\n");
    assertThat(show("aha-2020 nrp-8 --situation pulse-no-breathing").out())
        .contains("not in nrp-8");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--json",
        "aha-2020 --all",
        "aha-2020 none-such",
        "aha-2020 aha-2020",
        "aha-2020 --patient elephant",
        "aha-2020 --situation sleeping",
        "nrp-8 --patient adult",
        "erc-2025 --patient newborn --situation newborn-ventilation"
      })
  void whatCanNotBeShownIsExplained(String words) {
    CliRun run = show(words);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).startsWith("squeezewell: ").doesNotContain("Exception");
  }

  @Test
  void aTerminalWithoutAccentsGetsPlainSigns() {
    CliRun run =
        CliRun.with(true, StandardCharsets.US_ASCII, "protocol", "show", "aha-2015", "aha-2020");
    assertThat(run.out()).matches("\\p{ASCII}*");
  }
}
