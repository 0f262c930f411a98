package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import squeezewell.cue.InOrder;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Practice;
import squeezewell.review.say.Words;
import squeezewell.session.NotedFinding;
import squeezewell.session.Session;

/** Findings about how soon a change of rhythm was followed. */
final class ChangeFindings {
  /**
   * Compressions are expected within so long of a lost pulse, and no more so long after it is back:
   * as long as the check for a pulse may take (our own choice).
   */
  private static final long LONGEST_WAIT_NANOS = 10_000_000_000L;

  private static final long AT_ONCE_NANOS = 500_000_000L;

  private ChangeFindings() {}

  static List<Ranked> of(Session session, List<Facts> parts) {
    Map<Long, List<Practice>> starting = new HashMap<>();
    for (Facts part : parts) {
      starting
          .computeIfAbsent(part.practice().startNanos(), k -> new ArrayList<>())
          .add(part.practice());
    }
    List<Ranked> found = new ArrayList<>();
    for (NotedFinding noted : session.findings()) {
      if (noted.undone() || !noted.changesPrompts()) {
        continue;
      }
      boolean before = noted.before().guidance().rhythm().compressions().isPresent();
      for (Practice practice : starting.getOrDefault(noted.atNanos(), List.of())) {
        boolean compress = practice.guidance().rhythm().compressions().isPresent();
        if (compress && !before) {
          waited(noted, practice, found);
        } else if (before && !compress) {
          wentOn(noted, practice, found);
        }
      }
    }
    return found;
  }

  /** A few compressions may be under way when the pulse is found. */
  private static void wentOn(NotedFinding noted, Practice part, List<Ranked> found) {
    // They are in order, and a file may hold many findings of one instant.
    List<Long> compressions = part.compressions();
    int late =
        compressions.size()
            - InOrder.countUpTo(
                compressions.size(), compressions::get, noted.atNanos() + LONGEST_WAIT_NANOS);
    if (late > 0) {
      found.add(
          Ranked.advice(
              Ranked.CHANGE_SLOW,
              "compressions-went-on",
              "Compressions went on",
              Words.count(late, "compression")
                  + " came more than "
                  + Words.seconds(LONGEST_WAIT_NANOS / 1e9)
                  + " after the finding at "
                  + Words.clock(noted.atNanos())
                  + " ("
                  + noted.finding().label().toLowerCase(Locale.ROOT)
                  + "); from then on only breaths were asked for."));
    }
  }

  private static void waited(NotedFinding noted, Practice part, List<Ranked> found) {
    if (part.compressions().isEmpty()) {
      // There is a finding that says so.
      return;
    }
    long waited = part.compressions().get(0) - noted.atNanos();
    String text =
        "The first compression came "
            + (waited < AT_ONCE_NANOS
                ? "along with"
                : Words.secondsBeside(waited / 1e9, LONGEST_WAIT_NANOS / 1e9) + " after")
            + " the finding at "
            + Words.clock(noted.atNanos())
            + " ("
            + noted.finding().label().toLowerCase(Locale.ROOT)
            + ")";
    found.add(
        waited > LONGEST_WAIT_NANOS
            ? Ranked.fault(
                Ranked.CHANGE_SLOW,
                "compressions-late",
                "Compressions started late",
                text
                    + "; within 10 s was asked. Until then hardly any blood flows (basic life"
                    + " support). Next time begin as soon as it is found.")
            : Ranked.good(
                1,
                "compressions-at-once",
                waited < AT_ONCE_NANOS
                    ? "Compressions started at once"
                    : "Compressions started in time",
                text + "; within 10 s was asked."));
  }
}
