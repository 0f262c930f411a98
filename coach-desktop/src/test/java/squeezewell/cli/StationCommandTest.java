package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.files.HomeFolder;
import squeezewell.files.SessionStore;
import squeezewell.session.Fact;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.run.StationResult;

class StationCommandTest {
  private static final String SCRIPT =
      """
      # The whole station, without a fault.
      1 done protect
      2 done check-kit
      3 begin
      4 done scene
      5 done response
      6 start pulse
      12 done pulse
      13 done help
      14 done open
      15 start suction
      22 done suction
      23 done size-oral
      24 done oral
      25 breaths 11 6
      40 remark The seal is tight.
      60 done oxygen
      87 start recheck
      94 done recheck
      95 breaths 18 6
      220 end
      """;

  @TempDir Path folder;

  private CliRun run(String script, String... more) throws Exception {
    Path file = Files.writeString(folder.resolve("script.txt"), script);
    List<String> words =
        Stream.concat(
                Stream.of(
                    "station",
                    "run",
                    "adult-secretions",
                    "--script",
                    file.toString(),
                    "--branch",
                    "fluid-returns=once"),
                Stream.of(more))
            .collect(Collectors.toList());
    return CliRun.of(words.toArray(new String[0]));
  }

  @Test
  void theListNamesEveryStationAndShowShowsIt() {
    CliRun list = CliRun.of("station", "list");
    assertThat(list.code()).isZero();
    for (Station station : StationLibrary.stations()) {
      assertThat(list.out()).contains(station.id());
      CliRun show = CliRun.of("station", "show", station.id());
      assertThat(show.code()).isZero();
      assertThat(show.out()).contains(station.tasks().get(0).words());
      assertThat(show.out().lines()).allMatch(l -> l.length() <= 80);
    }
  }

  @Test
  void aGoodScriptHasNothingToImprove() throws Exception {
    CliRun run = run(SCRIPT);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith("Found in a workshop\nAll tasks done, in order and in time.\n")
        .contains("14 of 14 tasks done in order and in time")
        .contains("exercise 3:37 of 5:00")
        .containsPattern("Place the oral airway \\(\\d:\\d\\d of breaths with it\\)")
        .contains("0:40  Remark: The seal is tight.")
        .contains("an aid to practice")
        .contains("Ventilation")
        .doesNotContain("stood still")
        .containsPattern("breaths +29");
    assertThat(run.out().lines()).allMatch(l -> l.length() <= 80);
  }

  @Test
  void thirtyBreathsAMinuteAreNotPassed() throws Exception {
    // The last breath at 215 s, 5 s before the end.
    CliRun good = run(SCRIPT.replace("95 breaths 18 6", "95 breaths 21 6"));
    assertThat(good.out()).doesNotContain("The breaths need work");
    CliRun fast = run(SCRIPT.replace("95 breaths 18 6", "95 breaths 60 2"));
    assertThat(fast.out())
        .contains("A critical fault.")
        .contains("Over 15 breaths a minute for a minute");
  }

  @Test
  void anExaminerChangesAMarkAfterTheEnd() throws Exception {
    CliRun run = run(SCRIPT + "300 mark oxygen improper Bag not filled\n", "--json");
    assertThat(run.err()).isEmpty();
    assertThat(run.json().get("outcome").getAsString()).isEqualTo("to-improve");
    JsonObject change = run.json().getAsJsonArray("markChanges").get(0).getAsJsonObject();
    assertThat(change.get("words").getAsString()).isEqualTo("Bag not filled");
  }

  @Test
  void aChangeOfAMarkIsAddedToTheFileOfAFinishedSession() throws Exception {
    run(SCRIPT, "--home", folder.toString());
    SessionStore store = new SessionStore(HomeFolder.at(folder));
    Session before = store.open(store.files().get(0));
    Fact.MarkChange change = Fact.MarkChange.parse("open improper Neck not tilted").get();
    Session after = store.change(before, change);
    assertThat(after.notes()).isEmpty();
    assertThat(after.events()).hasSize(before.events().size() + 1);
    assertThat(after.endNanos()).isEqualTo(before.endNanos());
    assertThat(StationResult.of(after.events()).improper())
        .extracting(t -> t.task().id())
        .containsExactly("open");
  }

  @Test
  void theSessionKeepsTheStationAndItsResult() throws Exception {
    CliRun run = run(SCRIPT, "--json", "--home", folder.toString());
    assertThat(run.code()).isZero();
    JsonObject json = run.json();
    assertThat(json.get("outcome").getAsString()).isEqualTo("all-done");
    assertThat(json.getAsJsonObject("ventilation").has("breaths")).isTrue();
    try (Stream<Path> files = Files.walk(folder.resolve("sessions"))) {
      Path kept = files.filter(Files::isRegularFile).findFirst().orElseThrow();
      Session session = SessionReader.read(kept);
      StationResult again = StationResult.of(session.events());
      assertThat(again.outcome()).isEqualTo(StationResult.Outcome.ALL_DONE);
      assertThat(again.exerciseNanos()).isEqualTo(217_000_000_000L);
      CliRun review = CliRun.of("review", kept.toString());
      assertThat(review.code()).isZero();
      assertThat(review.out()).doesNotContain("ended early");
    }
  }

  @Test
  void aFaultIsToldFirstAndWhatMadeNoSenseIsSaid() throws Exception {
    CliRun run =
        run(
            SCRIPT
                .replace("22 done suction", "31 done suction\n32 done suction")
                .replace("25 breaths 11 6", "33 breaths 9 6"));
    assertThat(run.out())
        .contains(
            "\nA critical fault.\n\nCritical\n  0:30  Suctioned for more than fifteen seconds");
    assertThat(run.err()).contains("line 13: made no sense then: 32 done suction");
  }

  @Test
  void withoutAScriptTheClockEndsIt() {
    CliRun run = CliRun.of("station", "run", "newborn-first-breaths", "--json");
    assertThat(run.json().get("endedBy").getAsString()).isEqualTo("clock");
    assertThat(run.json().get("exerciseSeconds").getAsInt()).isEqualTo(300);
    assertThat(run.json().get("outcome").getAsString()).isEqualTo("critical");
  }

  @Test
  void theSameSeedTakesTheSameWay() {
    for (int seed = 0; seed < 5; seed++) {
      String text = Integer.toString(seed);
      CliRun one = CliRun.of("station", "run", "adult-gag", "--seed", text, "--json");
      CliRun two = CliRun.of("station", "run", "adult-gag", "--seed", text, "--json");
      assertThat(one.out()).isEqualTo(two.out());
    }
  }

  @Test
  void badInputIsNamed() throws Exception {
    assertThat(CliRun.of("station", "run", "nowhere").err()).contains("adult-secretions");
    assertThat(run("5 dance").err()).contains("script.txt: line 1 is 5 dance; allowed: seconds");
    assertThat(run("5 dance").code()).isEqualTo(2);
    assertThat(run(SCRIPT, "--branch", "x=y").code()).isEqualTo(2);
    assertThat(CliRun.of("station").code()).isEqualTo(2);
  }

  @Test
  void checkTellsAllThatIsWrong() throws Exception {
    Path file = folder.resolve("own.json");
    Files.writeString(
        file,
        "{\"format\":\"squeezewell-station\",\"version\":1,\"id\":\"Own\",\"title\":\"\","
            + "\"setting\":\"Here\",\"patient\":{\"group\":\"adult\",\"words\":\"A\"},"
            + "\"situation\":\"pulse-no-breathing\",\"tasks\":[]}");
    CliRun run = CliRun.of("station", "check", file.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err().lines().count()).isEqualTo(3);
    assertThat(run.err()).contains("id is \"Own\"").contains("title is").contains("tasks is");
  }

  @Test
  void aScriptChoosesAWayUntilItIsReached() throws Exception {
    CliRun run = run("1 choose fluid-returns=twice\n2 begin\n195 choose fluid-returns=once\n");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("0:01  Chosen: Whether fluid comes back: It comes back")
        .contains("3:12  You hear gurgling again.");
    assertThat(run.err()).contains("made no sense then: 195 choose fluid-returns=once");
  }
}
