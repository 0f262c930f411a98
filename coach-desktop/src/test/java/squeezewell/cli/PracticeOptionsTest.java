package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import squeezewell.files.HomeFolder;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Situation;

class PracticeOptionsTest {
  @TempDir Path home;
  private final List<String> said = new ArrayList<>();

  private static PracticeOptions options(String... pairs) throws BadInputException {
    PracticeOptions options = new PracticeOptions();
    CommandLine line = new CommandLine(CommandSpec.forAnnotatedObject(options));
    OptionTypes.register(line);
    String[] words = new String[pairs.length];
    for (int i = 0; i < pairs.length; i++) {
      words[i] = (i % 2 == 0 ? "--" : "") + pairs[i];
    }
    try {
      line.parseArgs(words);
    } catch (CommandLine.ParameterException e) {
      throw (BadInputException) e.getCause();
    }
    return options;
  }

  private ProtocolStore store() {
    return ProtocolStore.read(HomeFolder.at(home));
  }

  private String cycle(PracticeOptions options) throws BadInputException {
    Rhythm.CompressionCycle cycle =
        (Rhythm.CompressionCycle) options.choice(store(), said::add).guidance().rhythm();
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
    assertThatThrownBy(() -> options.choice(store(), said::add))
        .isInstanceOf(BadInputException.class)
        .hasMessage(
            "--rescuers is 2 for adult, pulse-no-breathing; allowed: own-1 asks for at least 3");
    assertThat(
            options("protocol", "own-1", "rescuers", "3")
                .choice(store(), said::add)
                .guidance()
                .rescuers())
        .isEqualTo(3);
  }

  @ParameterizedTest
  @CsvSource({"0", "5", "-1", "two", "1.5", "1e0"})
  void aNumberThatIsNoneIsRefused(String number) {
    assertThatThrownBy(() -> options("rescuers", number).choice(store(), said::add))
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

  /** The limits of the editions, as in the table of ages in docs/sources.md. */
  @ParameterizedTest
  @CsvSource({
    "age, 14months, aha-2020, CHILD",
    "age, 9y, erc-2021, CHILD",
    "age, 11months, aha-2025, INFANT",
    "age, 40y, aha-2015, ADULT",
    "age, 3days, nrp-8, NEWBORN",
    "weight, 12kg, aha-2020, CHILD",
    "weight, 20lb, aha-2020, INFANT",
    "weight, 80kg, erc-2021, ADULT"
  })
  void anAgeOrAWeightPicksThePatientAndSaysWhy(
      String option, String text, String edition, PatientGroup group) throws Exception {
    PracticeOptions.Choice choice =
        options("protocol", edition, option, text).choice(store(), said::add);
    assertThat(choice.guidance().patient()).isEqualTo(group);
    assertThat(said).hasSize(1);
    assertThat(said.get(0)).contains(": " + group.id() + ", ").contains(" (");
    assertThat(said.get(0).contains("An estimate")).isEqualTo(option.equals("weight"));
  }

  @Test
  void withoutAnEditionTheNewestThatCoversTheAgeIsTaken() throws Exception {
    assertThat(options("age", "5y").choice(store(), said::add).protocol().id())
        .isEqualTo("aha-2025");
    // The edition of 2025 has the newborn (joint release of its issuers, 23 October 2025).
    PracticeOptions.Choice newborn = options("age", "3d").choice(store(), said::add);
    assertThat(newborn.protocol().id()).isEqualTo("aha-2025");
    assertThat(newborn.guidance().situation()).isEqualTo(Situation.NEWBORN_VENTILATION);
    assertThat(options().choice(store(), said::add).protocol().id()).isEqualTo("aha-2025");
    assertThat(said).hasSize(2);
  }

  @Test
  void whereTwoGroupsFitThePersonChooses() throws Exception {
    PracticeOptions.Choice child =
        options("protocol", "aha-2020", "age", "10y").choice(store(), said::add);
    assertThat(child.guidance().patient()).isEqualTo(PatientGroup.CHILD);
    assertThat(said.get(0))
        .isEqualTo(
            "10 years: child, 1 year to the start of puberty; signs of puberty decide between child"
                + " and adult (AHA 2020). The age alone can't tell adult from child: a person has"
                + " to judge. Taken: child; --patient chooses another.");
    PracticeOptions.Choice adult =
        options("protocol", "aha-2020", "age", "10y", "patient", "adult")
            .choice(store(), said::add);
    assertThat(adult.guidance().patient()).isEqualTo(PatientGroup.ADULT);
    assertThat(said.get(1)).endsWith("Chosen with --patient: adult.");
    PracticeOptions wrong = options("protocol", "aha-2020", "age", "5y", "patient", "adult");
    assertThatThrownBy(() -> wrong.choice(store(), said::add))
        .isInstanceOf(BadInputException.class)
        .hasMessageStartingWith("--patient is adult; allowed: child: 5 years: child, ");
  }

  @Test
  void aWeightIsAnEstimateThatAPersonOverrules() throws Exception {
    PracticeOptions.Choice adult =
        options("protocol", "erc-2021", "weight", "45kg", "patient", "adult")
            .choice(store(), said::add);
    assertThat(adult.guidance().patient()).isEqualTo(PatientGroup.ADULT);
    assertThat(said.get(0)).startsWith("45 kg, ").endsWith("Chosen with --patient: adult.");
  }

  @Test
  void badAgesAndWeightsAreRefusedAsAnyOtherOption() {
    assertThatThrownBy(() -> options("age", "9").choice(store(), said::add))
        .isInstanceOf(BadInputException.class)
        .hasMessageStartingWith("--age is 9; allowed: an age with its unit");
    assertThatThrownBy(() -> options("weight", "heavy").choice(store(), said::add))
        .isInstanceOf(BadInputException.class)
        .hasMessageStartingWith("--weight is heavy; allowed: a weight with its unit");
    assertThatThrownBy(() -> options("age", "9y", "weight", "30kg").choice(store(), said::add))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("allowed: one of the two");
    assertThatThrownBy(() -> options("protocol", "nrp-8", "age", "9y").choice(store(), said::add))
        .isInstanceOf(BadInputException.class)
        .hasMessageStartingWith("age is 9 years; allowed: what nrp-8 covers: newborn, ");
    assertThat(said).isEmpty();
  }

  @Test
  void theReasonGoesToStandardErrorAndTheAnswerStaysForPrograms() {
    CliRun run = CliRun.of("demo", "--age", "14months", "--minutes", "1", "--json");
    assertThat(run.code()).isZero();
    assertThat(run.json().getAsJsonObject("asked").get("patient").getAsString()).isEqualTo("Child");
    assertThat(run.err()).contains("14 months: child, 1 year to the start of puberty (AHA 2025).");
  }
}
