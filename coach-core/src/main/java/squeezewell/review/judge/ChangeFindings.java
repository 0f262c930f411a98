package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import squeezewell.cue.InOrder;
import squeezewell.protocol.PatientChange;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Practice;
import squeezewell.session.NotedFinding;

/** Findings about how soon a change of rhythm was followed. */
final class ChangeFindings {
  /**
   * Compressions are expected within so long of a lost pulse, and no more so long after it is back:
   * as long as the check for a pulse may take (our own choice).
   */
  static final long LONGEST_WAIT_NANOS = 10_000_000_000L;

  private static final long AT_ONCE_NANOS = 500_000_000L;

  private ChangeFindings() {}

  static List<Finding> of(List<NotedFinding> all, List<Analysis> parts) {
    Map<Long, List<Practice>> starting = new HashMap<>();
    for (Analysis part : parts) {
      starting
          .computeIfAbsent(part.practice().startNanos(), k -> new ArrayList<>())
          .add(part.practice());
    }
    List<Finding> found = new ArrayList<>();
    for (NotedFinding noted : all) {
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
  private static void wentOn(NotedFinding noted, Practice part, List<Finding> found) {
    // They are in order, and a file may hold many findings of one instant.
    List<Long> compressions = part.compressions();
    int late =
        compressions.size()
            - InOrder.countUpTo(
                compressions.size(), compressions::get, noted.atNanos() + LONGEST_WAIT_NANOS);
    if (late > 0) {
      found.add(
          Finding.advice(
              FindingCode.COMPRESSIONS_WENT_ON,
              Sentence.done(
                  "compressions-went-on.done",
                  late,
                  Quantity.tenths(LONGEST_WAIT_NANOS / 1e9),
                  Quantity.clock(noted.atNanos()),
                  noted.finding())));
    }
  }

  private static void waited(NotedFinding noted, Practice part, List<Finding> found) {
    if (part.compressions().isEmpty()) {
      long without = part.endNanos() - noted.atNanos();
      if (without > LONGEST_WAIT_NANOS) {
        found.add(
            Finding.fault(
                    FindingCode.COMPRESSIONS_MISSING,
                    Sentence.done(
                        "compressions-missing.done.after",
                        Quantity.clock(noted.atNanos()),
                        noted.finding(),
                        Quantity.tenths(without / 1e9)),
                    Sentence.why(
                        noted.finding() == PatientChange.PULSE_LOST
                            ? "compressions-missing.why.pulse"
                            : "compressions-missing.why.slow"),
                    Sentence.next("compressions-late.next"))
                .titled(
                    noted.finding() == PatientChange.PULSE_LOST
                        ? "compressions-missing.title.pulse"
                        : "compressions-missing.title.after"));
      }
      return;
    }
    long waited = part.compressions().get(0) - noted.atNanos();
    Quantity at = Quantity.clock(noted.atNanos());
    Quantity wait = Quantity.tenths(waited / 1e9, LONGEST_WAIT_NANOS / 1e9);
    if (waited > LONGEST_WAIT_NANOS) {
      found.add(
          Finding.fault(
              FindingCode.COMPRESSIONS_LATE,
              Sentence.done("compressions-late.done", at, noted.finding(), wait),
              Sentence.why("compressions-late.why"),
              Sentence.next("compressions-late.next")));
    } else if (waited < AT_ONCE_NANOS) {
      found.add(
          Finding.good(
              FindingCode.COMPRESSIONS_AT_ONCE,
              Sentence.done("compressions-at-once.done", at, noted.finding())));
    } else {
      found.add(
          Finding.good(
                  FindingCode.COMPRESSIONS_AT_ONCE,
                  Sentence.done("compressions-late.done", at, noted.finding(), wait))
              .titled("compressions-at-once.title.in-time"));
    }
  }
}
