package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.Paths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import squeezewell.Tries;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;

/** Verdicts on random trainees from perfect to hopeless, who know what they did wrong. */
class ConfusionTableTest {
  private final Map<String, Map<String, Integer>> table = new TreeMap<>();
  private final List<String> wrong = new ArrayList<>();

  @Test
  @DisplayName(
      "Who over-ventilates for a minute, interrupts for over 30 s, never checks a pulse or squeezes"
          + " into a full mouth is never passed; who does all right is never failed")
  void verdictsFollowWhatWasDone() throws Exception {
    int runs = Tries.orLong(20, 2_000);
    for (Station station : StationLibrary.stations()) {
      for (int seed = 0; seed < runs; seed++) {
        RandomTrainee trainee = new RandomTrainee(station, seed);
        StationResult result = new StationResult(trainee.go());
        Set<RandomTrainee.Wrong> did = trainee.did();
        note(station, did, result);
        boolean ruined =
            did.contains(RandomTrainee.Wrong.OVER_VENTILATED)
                || did.contains(RandomTrainee.Wrong.INTERRUPTED)
                || did.contains(RandomTrainee.Wrong.NEVER_CHECKED)
                || did.contains(RandomTrainee.Wrong.SQUEEZED_INTO_IT);
        StationResult.Outcome outcome = result.outcome();
        boolean fits =
            ruined
                ? outcome == StationResult.Outcome.CRITICAL
                : !did.isEmpty() || outcome == StationResult.Outcome.ALL_DONE;
        if (!fits) {
          wrong.add(station.id() + " seed " + seed + " did " + did + ": " + reasons(result));
        }
      }
    }
    print(runs);
    assertThat(wrong).isEmpty();
    assertThat(table.keySet()).hasSizeGreaterThanOrEqualTo(40);
  }

  private void note(Station station, Set<RandomTrainee.Wrong> did, StationResult result) {
    List<String> rows =
        did.stream().map(w -> w.name().toLowerCase(Locale.ROOT)).collect(Collectors.toList());
    if (did.isEmpty()) {
      rows.add("all right");
    }
    for (String row : rows) {
      table
          .computeIfAbsent(station.id() + ", " + row.replace('_', ' '), k -> new TreeMap<>())
          .merge(result.outcome().word(), 1, Integer::sum);
    }
  }

  private static String reasons(StationResult result) {
    return result.outcome().word()
        + " "
        + result.state().faults().stream().map(StationState.Fault::id).collect(Collectors.toList())
        + result.needed().stream()
            .filter(t -> !t.good())
            .map(
                t ->
                    t.task().id()
                        + (t.late() ? " late" : "")
                        + (t.outOfOrder() ? " order" : "")
                        + " "
                        + t.length()
                        + " "
                        + t.progress())
            .collect(Collectors.toList());
  }

  private void print(int runs) throws Exception {
    StringBuilder text = new StringBuilder();
    text.append(String.format("%d trainees a station; one may have done several things%n", runs));
    text.append(String.format("%-45s%10s%12s%10s%n", "did", "all done", "to improve", "critical"));
    table.forEach(
        (row, counts) ->
            text.append(
                String.format(
                    "%-45s%10d%12d%10d%n",
                    row,
                    counts.getOrDefault("all-done", 0),
                    counts.getOrDefault("to-improve", 0),
                    counts.getOrDefault("critical", 0))));
    System.out.print(text);
    Path target = Files.createDirectories(Paths.get("target"));
    Files.write(
        target.resolve("station-verdicts.txt"), text.toString().getBytes(StandardCharsets.UTF_8));
  }
}
