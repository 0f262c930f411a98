package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import squeezewell.coach.TraineeFault;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;

class DemoCommandTest {
  @TempDir Path folder;

  @Test
  void theSameSeedGivesTheSameFigures() {
    String first = CliRun.of("demo", "--seed", "42", "--json").out();
    assertThat(CliRun.of("demo", "--seed", "42", "--json").out()).isEqualTo(first);
    assertThat(CliRun.of("demo", "--seed", "43", "--json").out()).isNotEqualTo(first);
  }

  @Test
  void whatIsFoundChangesTheRhythm() {
    CliRun run =
        CliRun.of("demo", "--json", "--found", "60=pulse-lost", "--found", "120=pulse-back");
    assertThat(run.code()).as(run.err()).isZero();
    // 60 s of 30 to 2 at 110 a minute with pauses of 4 s: 16.36 s + 4 s a cycle, so 90 in the
    // first 61.1 s less the last pause; the virtual trainee gives each one.
    int given = run.json().getAsJsonObject("compressions").get("count").getAsInt();
    assertThat(given).isBetween(86, 92);
    assertThat(run.json().getAsJsonArray("findings").toString()).doesNotContain("fault");
  }

  @ParameterizedTest
  @CsvSource({
    "pulse-lost",
    "60=pulse lost",
    "-1=pulse-lost",
    "99999999=pulse-lost",
    "NaN=pulse-lost",
    "60=heart-rate-low"
  })
  void aFindingThatCannotBeIsToldWithWhatIsAllowed(String entry) {
    CliRun run = CliRun.of("demo", "--found", entry);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--found");
  }

  @Test
  void findingsStandInOrderOfTime() {
    CliRun run = CliRun.of("demo", "--found", "60=pulse-lost", "--found", "59=pulse-back");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("59=pulse-back").contains("not before");
  }

  @Test
  void keepingTheSessionChangesNoFigure() {
    String kept = CliRun.of("demo", "--seed", "42", "--json", "--home", folder.toString()).out();
    assertThat(kept).isEqualTo(CliRun.of("demo", "--seed", "42", "--json").out());
  }

  @Test
  void theSessionIsKeptAsAVirtualOne() throws Exception {
    CliRun run = CliRun.of("demo", "--home", folder.toString(), "--fault", "fast");
    assertThat(run.code()).isZero();
    Path file = Path.of(run.err().replaceFirst("(?s).*kept: (.*?)\\R.*", "$1"));
    Session session = SessionReader.read(file);
    assertThat(session.header().origin()).isEqualTo(SessionHeader.Origin.VIRTUAL);
    assertThat(session.header().startedAt()).isEqualTo(CliRun.NOW);
    assertThat(session.header().trainee()).isEqualTo("virtual trainee, seed 1, fault fast");
    assertThat(session.finished()).isTrue();
  }

  @ParameterizedTest
  @EnumSource(TraineeFault.class)
  void itSaysThatTheTraineeIsNotAPerson(TraineeFault fault) {
    CliRun text = CliRun.of("demo", "--fault", fault.id());
    assertThat(text.out()).startsWith("A virtual trainee, not a person");
    CliRun json = CliRun.of("demo", "--fault", fault.id(), "--json");
    assertThat(json.err()).contains("virtual trainee, not a person");
    assertThat(json.json().getAsJsonObject("breaths").get("count").getAsInt()).isPositive();
  }

  @ParameterizedTest
  @CsvSource({
    "fast, too-fast",
    "slows, slowed-down",
    "skips, missed-prompts",
    "long-pauses, long-gap",
    "late-check, pulse-check-late",
    "short-squeeze, short-squeeze",
    "anticipates, anticipates",
    "own-tempo, a-little-fast"
  })
  void theFaultIsWhatTheDebriefTellsFirst(String fault, String code) {
    for (String seed : new String[] {"1", "2", "3", "4", "5"}) {
      JsonObject json = CliRun.of("demo", "--fault", fault, "--seed", seed, "--json").json();
      assertThat(json.getAsJsonArray("findings").get(0).getAsJsonObject().get("code").getAsString())
          .as("seed " + seed)
          .isEqualTo(code);
    }
  }

  @Test
  void aSoundTraineeHasNoFault() {
    for (int seed = 1; seed <= 20; seed++) {
      JsonObject json = CliRun.of("demo", "--seed", Integer.toString(seed), "--json").json();
      json.getAsJsonArray("findings")
          .forEach(
              f ->
                  assertThat(f.getAsJsonObject().get("severity").getAsString())
                      .isNotEqualTo("fault"));
    }
  }

  @Test
  void thePictureShowsAMinuteALine() {
    String out = CliRun.of("demo", "--minutes", "2").out();
    assertThat(out).contains(" 0:00 ▾     ▾     ▾").contains(" 1:00 ▾     ▾").contains("█");
    assertThat(out).doesNotContain(" 2:00 ▾");
  }

  @Test
  void everySituationOfEveryEditionCanBeShown() {
    CliRun.of("protocol", "list", "--json")
        .json()
        .getAsJsonArray("protocols")
        .forEach(
            p ->
                p.getAsJsonObject()
                    .getAsJsonArray("situations")
                    .forEach(
                        s -> {
                          CliRun run =
                              CliRun.of(
                                  "demo",
                                  "--protocol",
                                  p.getAsJsonObject().get("id").getAsString(),
                                  "--patient",
                                  s.getAsJsonObject().get("patient").getAsString(),
                                  "--situation",
                                  s.getAsJsonObject().get("situation").getAsString());
                          assertThat(run.code()).as(run.err()).isZero();
                        }));
  }
}
