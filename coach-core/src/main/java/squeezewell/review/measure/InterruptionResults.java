package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import squeezewell.cue.CheckKind;
import squeezewell.cue.PulseCheckDue;
import squeezewell.cue.Segment;
import squeezewell.protocol.CheckLength;
import squeezewell.protocol.Guidance;

/** Compares pulse checks and suctions with their limits. */
final class InterruptionResults {
  private static final double NANOS_PER_SECOND = 1e9;

  /** A breath this soon after a check began was still under way to the bag (our own choice). */
  private static final long STILL_BREATHING_NANOS = 300_000_000L;

  private InterruptionResults() {}

  static List<PulseCheckResult> pulseChecks(Practice practice) {
    Map<Long, Interruption> made = new HashMap<>();
    practice.holds(Segment.Kind.PULSE_CHECK).forEach(h -> made.putIfAbsent(h.startNanos(), h));
    List<PulseCheckResult> results = new ArrayList<>();
    for (PulseCheckDue due : practice.checks()) {
      if (due.startedNanos().isPresent()) {
        Interruption hold = made.get(due.startedNanos().getAsLong());
        if (hold != null) {
          results.add(made(due, hold, practice));
        }
      } else if (due.dueNanos() >= practice.startNanos() && due.dueNanos() < practice.endNanos()) {
        results.add(notMade(due, practice));
      }
    }
    return List.copyOf(results);
  }

  static List<SuctionResult> suctions(Practice practice) {
    List<SuctionResult> results = new ArrayList<>();
    long limit = practice.limits().suctionLongest().nanos();
    for (Interruption hold : practice.holds(Segment.Kind.SUCTION)) {
      results.add(
          new SuctionResult(
              hold.startNanos() / NANOS_PER_SECOND,
              hold.seconds(),
              limit / NANOS_PER_SECOND,
              hold.endNanos() - hold.startNanos() <= limit));
    }
    return List.copyOf(results);
  }

  private static PulseCheckResult made(PulseCheckDue due, Interruption hold, Practice practice) {
    double late = (hold.startNanos() - due.dueNanos()) / NANOS_PER_SECOND;
    PulseCheckResult.Outcome outcome = PulseCheckResult.Outcome.ON_TIME;
    // A check long before one that would be due only after the end was never asked for.
    boolean pointless =
        late < -PulseCheckResult.ON_TIME_WITHIN_SECONDS && due.dueNanos() >= practice.endNanos();
    boolean extra = due.extra() || pointless;
    if (extra) {
      outcome = PulseCheckResult.Outcome.EXTRA;
    } else if (late > PulseCheckResult.ON_TIME_WITHIN_SECONDS) {
      outcome = PulseCheckResult.Outcome.LATE;
    } else if (late < -PulseCheckResult.ON_TIME_WITHIN_SECONDS) {
      outcome = PulseCheckResult.Outcome.EARLY;
    }
    int during = practice.breathsWithin(hold.startNanos() + STILL_BREATHING_NANOS, hold.endNanos());
    OptionalDouble none = OptionalDouble.empty();
    return new PulseCheckResult(
        CheckKind.of(practice.guidance()),
        extra ? none : OptionalDouble.of(due.dueNanos() / NANOS_PER_SECOND),
        OptionalDouble.of(hold.startNanos() / NANOS_PER_SECOND),
        OptionalDouble.of(hold.seconds()),
        extra ? none : OptionalDouble.of(late),
        outcome,
        length(hold, practice.guidance()),
        during);
  }

  private static PulseCheckResult.LengthOutcome length(Interruption hold, Guidance guidance) {
    CheckLength length = CheckLength.judge(guidance, hold.endNanos() - hold.startNanos());
    if (length == CheckLength.TOO_LONG) {
      return PulseCheckResult.LengthOutcome.TOO_LONG;
    }
    if (hold.cutByEnd()) {
      return PulseCheckResult.LengthOutcome.NOT_JUDGED;
    }
    return length == CheckLength.RIGHT
        ? PulseCheckResult.LengthOutcome.RIGHT
        : PulseCheckResult.LengthOutcome.TOO_SHORT;
  }

  private static PulseCheckResult notMade(PulseCheckDue due, Practice practice) {
    long left = practice.endNanos() - due.dueNanos();
    PulseCheckResult.Outcome outcome = PulseCheckResult.Outcome.MISSED;
    if (left <= PulseCheckResult.ON_TIME_WITHIN_SECONDS * NANOS_PER_SECOND) {
      outcome = PulseCheckResult.Outcome.NOT_COUNTED;
    } else if (left < PulseCheckDue.SERVES_WITHIN_NANOS) {
      outcome = PulseCheckResult.Outcome.OVERDUE;
    }
    OptionalDouble none = OptionalDouble.empty();
    return new PulseCheckResult(
        CheckKind.of(practice.guidance()),
        OptionalDouble.of(due.dueNanos() / NANOS_PER_SECOND),
        none,
        none,
        none,
        outcome,
        PulseCheckResult.LengthOutcome.NOT_JUDGED,
        0);
  }
}
