package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.files.HomeFolder;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Rhythm;

class PracticeOptionsTest {
  @TempDir Path home;

  private static PracticeOptions options(String... pairs) {
    PracticeOptions options = new PracticeOptions();
    for (int i = 0; i < pairs.length; i += 2) {
      switch (pairs[i]) {
        case "protocol" -> options.protocol = pairs[i + 1];
        case "patient" -> options.patient = pairs[i + 1];
        case "situation" -> options.situation = pairs[i + 1];
        case "rescuers" -> options.rescuers = pairs[i + 1];
        default -> throw new AssertionError(pairs[i]);
      }
    }
    return options;
  }

  private ProtocolStore store() {
    return ProtocolStore.read(HomeFolder.at(home));
  }

  private String cycle(PracticeOptions options) throws BadInputException {
    Rhythm.CompressionCycle cycle =
        (Rhythm.CompressionCycle) options.choice(store()).guidance().rhythm();
    return cycle.perCycle() + ":" + cycle.breathsPerCycle();
  }

  /**
   * AHA 2010 table of CPR techniques, unchanged since: an adult gets 30:2 from any number of
   * rescuers, a child and an infant 30:2 from one and 15:2 from two.
   */
  @ParameterizedTest
  @CsvSource({
    "adult, 1, 30:2",
    "adult, 2, 30:2",
    "adult, 4, 30:2",
    "child, 1, 30:2",
    "child, 2, 15:2",
    "child, 3, 15:2",
    "infant, 1, 30:2",
    "infant, 2, 15:2"
  })
  void theNumberOfRescuersChoosesTheCycle(String patient, String rescuers, String ratio)
      throws Exception {
    for (String edition : new String[] {"aha-2015", "aha-2020", "aha-2025"}) {
      PracticeOptions options =
          options(
              "protocol",
              edition,
              "patient",
              patient,
              "rescuers",
              rescuers,
              "situation",
              "arrest-no-advanced-airway");
      assertThat(cycle(options)).as(edition).isEqualTo(ratio);
    }
  }

  @Test
  void withoutANumberTheFirstRhythmOfTheEditionIsTaken() throws Exception {
    assertThat(cycle(options("patient", "child", "situation", "arrest-no-advanced-airway")))
        .isEqualTo("30:2");
  }

  @Test
  void aNumberThatAnEditionHasNothingForIsExplained() throws Exception {
    Files.createDirectories(home.resolve("protocols"));
    Files.writeString(
        home.resolve("protocols").resolve("own.json"),
        Protocols.text("own-1")
            .replace(
                "\"situation\":\"pulse-no-breathing\"",
                "\"situation\":\"pulse-no-breathing\",\"rescuers\":3"));
    assertThat(store().problems()).isEmpty();
    PracticeOptions options = options("protocol", "own-1", "rescuers", "2");
    assertThatThrownBy(() -> options.choice(store()))
        .isInstanceOf(BadInputException.class)
        .hasMessage(
            "--rescuers is 2 for adult, pulse-no-breathing; allowed: own-1 asks for at least 3");
    assertThat(options("protocol", "own-1", "rescuers", "3").choice(store()).guidance().rescuers())
        .isEqualTo(3);
  }

  @ParameterizedTest
  @CsvSource({"0", "5", "-1", "two", "1.5", "1e0"})
  void aNumberThatIsNoneIsRefused(String number) {
    assertThatThrownBy(() -> options("rescuers", number).choice(store()))
        .isInstanceOf(BadInputException.class)
        .hasMessage("--rescuers is " + number + "; allowed: a whole number from 1 to 4");
  }

  @Test
  void aSessionSaysItselfHowManyThereWere() throws Exception {
    Path session = Files.writeString(home.resolve("a.jsonl"), "");
    CliRun run = CliRun.of("review", session.toString(), "--rescuers", "2");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--rescuers").contains("a session says itself");
  }
}
