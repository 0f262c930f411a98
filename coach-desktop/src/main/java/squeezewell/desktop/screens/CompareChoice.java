package squeezewell.desktop.screens;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which two practices of a list are chosen. Immutable.
 *
 * @param chosen their places in the list, rising; the list is newest first
 */
record CompareChoice(List<Integer> chosen) {
  static final CompareChoice NONE = new CompareChoice(List.of());

  CompareChoice {
    chosen = List.copyOf(chosen);
  }

  /** Chooses one, or takes it back. A third changes nothing. */
  CompareChoice toggle(int place) {
    List<Integer> next = new ArrayList<>(chosen);
    if (!next.remove(Integer.valueOf(place)) && next.size() < 2) {
      next.add(place);
    }
    next.sort(null);
    return new CompareChoice(next);
  }

  boolean isComplete() {
    return chosen.size() == 2;
  }

  boolean has(int place) {
    return chosen.contains(place);
  }

  /** What stands on a chosen card; empty on others. The older of two is A. */
  String mark(int place) {
    if (!has(place)) {
      return "";
    }
    return isComplete()
        ? "\u2713 Chosen, " + (chosen.get(1) == place ? "A (earlier)" : "B (later)")
        : "\u2713 Chosen";
  }

  /** What to do next. */
  String words() {
    return switch (chosen.size()) {
      case 0 -> "Choose two: Enter, space bar or a click.";
      case 1 -> "One chosen. Choose another.";
      default -> "Two chosen. Press Compare, Alt+C.";
    };
  }

  /** The files of both, the older first; empty until two are chosen. */
  Optional<List<Path>> files(List<Path> files) {
    return isComplete()
        ? Optional.of(List.of(files.get(chosen.get(1)), files.get(chosen.get(0))))
        : Optional.empty();
  }
}
