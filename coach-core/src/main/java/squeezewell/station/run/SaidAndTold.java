package squeezewell.station.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the examiner has really said and the live practice was really told. A walk that is worked
 * out anew, because a tap was taken back, says and tells most of it again; that is not given out
 * twice, and what was said stays said.
 */
final class SaidAndTold {
  private final Map<String, StationState.Line> said = new LinkedHashMap<>();
  private final Map<String, StationState.Told> told = new LinkedHashMap<>();
  private long undoneAt;
  private int slips;

  /**
   * What taking something back means for what was told.
   *
   * @param possible whether the live practice can go along: it can take back its last finding only
   * @param key of the finding that it has to take back; empty for none
   */
  record Consequence(boolean possible, Optional<String> key) {}

  /** All lines, in the order in which they were said. */
  List<StationState.Line> lines() {
    return new ArrayList<>(said.values());
  }

  /** All that was told, in order, with what was taken back. */
  List<StationState.Told> told() {
    return new ArrayList<>(told.values());
  }

  /** The lines of a walk that were not said yet; from here on they are. */
  List<StationState.Line> say(List<StationState.Line> lines) {
    List<StationState.Line> fresh = new ArrayList<>();
    Map<String, Integer> seen = new HashMap<>();
    for (StationState.Line line : lines) {
      String key = key(line.step() + "@" + line.atNanos(), seen);
      if (!said.containsKey(key)) {
        long at = Math.max(line.atNanos(), undoneAt);
        said.put(key, new StationState.Line(at, line.step(), line.words()));
        fresh.add(said.get(key));
      }
    }
    return fresh;
  }

  /** The findings of a walk that were not told yet; from here on they are. */
  List<StationState.Told> tell(List<StationState.Told> findings) {
    List<StationState.Told> fresh = new ArrayList<>();
    keyed(findings)
        .forEach(
            (key, each) -> {
              if (!told.containsKey(key)) {
                long at = Math.max(each.atNanos(), undoneAt);
                told.put(key, new StationState.Told(at, each.finding(), false));
                fresh.add(told.get(key));
              }
            });
    return fresh;
  }

  /** What would follow if the walk were that one instead. */
  Consequence without(List<StationState.Told> findings) {
    Set<String> still = keyed(findings).keySet();
    List<String> gone = new ArrayList<>();
    String last = "";
    for (Map.Entry<String, StationState.Told> entry : told.entrySet()) {
      last = entry.getKey();
      if (!entry.getValue().takenBack() && !still.contains(last)) {
        gone.add(last);
      }
    }
    boolean possible = gone.isEmpty() || (gone.size() == 1 && gone.get(0).equals(last));
    return new Consequence(possible, gone.stream().findFirst());
  }

  /** Something was taken back: what comes of it comes no earlier. */
  void undone(long atNanos) {
    undoneAt = atNanos;
  }

  /** What was told was a slip. */
  void takeBack(String key) {
    StationState.Told slip = told.remove(key);
    slips++;
    // Under another key, since the same may be told again, even at the same instant.
    told.put(
        key + " taken back " + slips, new StationState.Told(slip.atNanos(), slip.finding(), true));
  }

  private static Map<String, StationState.Told> keyed(List<StationState.Told> findings) {
    Map<String, Integer> seen = new HashMap<>();
    Map<String, StationState.Told> keyed = new LinkedHashMap<>();
    for (StationState.Told each : findings) {
      keyed.put(key(each.finding().word() + "@" + each.atNanos(), seen), each);
    }
    return keyed;
  }

  private static String key(String what, Map<String, Integer> seen) {
    return what + "#" + seen.merge(what, 1, Integer::sum);
  }
}
