package squeezewell.station.run;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;

/**
 * The ways that a running station takes. A branch can be chosen anew until something has come, or
 * failed to come, that differs between its ways; from then on it is settled.
 */
final class StationWays {
  private final Station station;
  private final Set<String> settled = new HashSet<>();
  private StationSetup setup;

  StationWays(Station station, StationSetup setup) {
    this.station = station;
    this.setup = setup;
  }

  /** What was settled before, with the ways as they are by now. */
  StationSetup setup() {
    return setup;
  }

  /** Whether something is there on the ways taken. */
  boolean exists(Optional<BranchOption> only) {
    return !only.isPresent() || setup.takes(only.get());
  }

  boolean takes(BranchOption way) {
    return setup.takes(way);
  }

  /** Whether something that counts now is there; its branch is settled from here on. */
  boolean settles(Optional<BranchOption> only) {
    only.ifPresent(way -> settled.add(way.branch()));
    return exists(only);
  }

  /**
   * What the exercise begins with, findings or tasks that stand on the list, can't change later.
   */
  void settleWhatIsSeenAtOnce() {
    for (StationBranch branch : station.branches()) {
      boolean findings = branch.ways().stream().anyMatch(w -> !w.findings().isEmpty());
      boolean tasks =
          station.tasks().stream()
              .anyMatch(
                  t ->
                      t.ifFinding().isEmpty()
                          && t.only().filter(o -> o.branch().equals(branch.id())).isPresent());
      if (findings || tasks) {
        settled.add(branch.id());
      }
    }
  }

  boolean isOpen(String branch) {
    return !settled.contains(branch);
  }

  /** Takes another way; empty if there is none such, it is taken already, or it is too late. */
  Optional<StationState.Chosen> choose(String words, long nowNanos) {
    for (StationBranch branch : station.branches()) {
      for (StationBranch.Way way : branch.ways()) {
        BranchOption option = new BranchOption(branch.id(), way.id());
        if (option.words().equals(words) && isOpen(branch.id()) && !setup.takes(option)) {
          setup = setup.with(option);
          return Optional.of(new StationState.Chosen(nowNanos, branch, way));
        }
      }
    }
    return Optional.empty();
  }
}
