package squeezewell.station.run;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import squeezewell.station.file.ScriptStep;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationFinding;

/** What the examiner says, for whoever speaks it. Pure. */
public final class ExaminerLines {
  private ExaminerLines() {}

  /**
   * A line that has just been shown.
   *
   * @param text what is shown, word for word
   * @param atNanos when it came, session time
   * @param urgent whether the prompts change because of it, so that it may cut another line short
   */
  public record Shown(String text, long atNanos, boolean urgent) {
    public Shown {
      Objects.requireNonNull(text, "text");
    }
  }

  /** All that may be shown as the examiner's words while a station runs, each once. */
  public static List<String> all(Station station) {
    Set<String> texts = new LinkedHashSet<>();
    for (ScriptStep step : station.steps()) {
      if (!step.says().isEmpty()) {
        texts.add(step.says());
      }
    }
    for (StationFinding finding : station.findings()) {
      if (canBeBrought(station, finding)) {
        texts.add(sentence(finding));
      }
    }
    return new ArrayList<>(texts);
  }

  /**
   * What came between two moments of a station, in order: the examiner's words, and findings that a
   * person made come and for which the script has no words.
   *
   * @param before the earlier moment; what was shown by then is left out
   * @param now the later moment of the same run
   */
  public static List<Shown> between(StationState before, StationState now) {
    List<Shown> shown = new ArrayList<>();
    for (int i = before.lines().size(); i < now.lines().size(); i++) {
      StationState.Line line = now.lines().get(i);
      shown.add(new Shown(line.words(), line.atNanos(), changesPrompts(now.station(), line)));
    }
    if (!now.setup().mode().hasExaminer()) {
      return shown;
    }
    long said = now.lines().isEmpty() ? 0 : now.lines().get(now.lines().size() - 1).atNanos();
    for (StationState.Holding holding : now.findings()) {
      boolean fresh =
          holding.sinceNanos() > said
              && before.findings().stream()
                  .noneMatch(
                      h ->
                          h.finding().id().equals(holding.finding().id())
                              && h.sinceNanos() == holding.sinceNanos());
      if (fresh && canBeBrought(now.station(), holding.finding())) {
        shown.add(new Shown(sentence(holding.finding()), holding.sinceNanos(), false));
      }
    }
    return shown;
  }

  private static boolean changesPrompts(Station station, StationState.Line line) {
    return station.steps().stream()
        .anyMatch(step -> step.id().equals(line.step()) && step.tells().isPresent());
  }

  /** What holds from the start is left to be found. */
  private static boolean canBeBrought(Station station, StationFinding finding) {
    return !finding.hidden()
        && !finding.atStart()
        && station.branches().stream()
            .flatMap(branch -> branch.ways().stream())
            .noneMatch(way -> way.findings().contains(finding.id()));
  }

  private static String sentence(StationFinding finding) {
    return finding.words() + ".";
  }
}
