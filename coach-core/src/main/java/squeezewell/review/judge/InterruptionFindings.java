package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import squeezewell.cue.CheckKind;
import squeezewell.cue.Segment;
import squeezewell.protocol.Limits;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Interruption;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;

/** Findings about checks and suction. */
final class InterruptionFindings {
  /**
   * A breath this soon after the patient was found to breathe well is let pass (our own choice).
   */
  private static final long SEEN_WITHIN_NANOS = 10_000_000_000L;

  /** So many times are told one by one. */
  private static final int MOST_TIMES = 6;

  private final List<PulseCheckResult> checks;
  private final List<SuctionResult> suctions;
  private final Limits limits;
  private final CheckKind kind;

  private InterruptionFindings(Limits limits, List<Analysis> parts) {
    checks =
        parts.stream()
            .flatMap(f -> f.metrics().pulseChecks().stream())
            .collect(Collectors.toList());
    suctions =
        parts.stream().flatMap(f -> f.metrics().suctions().stream()).collect(Collectors.toList());
    this.limits = limits;
    kind = CheckKind.of(parts.get(0).practice().guidance());
  }

  /** Parts with the same limits, in which the same is looked for, are judged together. */
  static List<Finding> of(List<Analysis> parts) {
    Map<List<Object>, List<Analysis>> alike = new LinkedHashMap<>();
    for (Analysis part : parts) {
      Limits limits = part.practice().limits();
      List<Object> key =
          List.of(
              CheckKind.of(part.practice().guidance()),
              limits.pulseCheckShortest().nanos(),
              limits.pulseCheckLongest().nanos(),
              limits.suctionLongest().nanos());
      alike.computeIfAbsent(key, k -> new ArrayList<>()).add(part);
    }
    List<Finding> found = new ArrayList<>();
    for (List<Analysis> same : alike.values()) {
      InterruptionFindings findings =
          new InterruptionFindings(same.get(0).practice().limits(), same);
      findings.addChecks(found);
      findings.addSuctions(found);
    }
    addWatched(parts, found);
    return found;
  }

  private void addChecks(List<Finding> found) {
    addMissed(found);
    addLate(found);
    addLength(found);
    int onTime = with(c -> c.outcome() == PulseCheckResult.Outcome.ON_TIME).size();
    if (onTime > 0 && checks.stream().allMatch(InterruptionFindings::isGood)) {
      // The length of one that the end of the practice cut short is not known.
      boolean known =
          checks.stream()
              .noneMatch(
                  c ->
                      c.startedSeconds().isPresent()
                          && c.lengthOutcome() != PulseCheckResult.LengthOutcome.RIGHT);
      found.add(
          Finding.good(
                  FindingCode.CHECKS_ON_TIME,
                  known
                      ? Sentence.done(
                          kind == CheckKind.RHYTHM
                              ? "checks-on-time.done.most"
                              : "checks-on-time.done",
                          onTime,
                          kind,
                          Quantity.tenths(limits.pulseCheckShortest().seconds()),
                          Quantity.tenths(limits.pulseCheckLongest().seconds()))
                      : Sentence.done("checks-on-time.done.unknown", onTime, kind))
              .titled("checks-on-time.title", onTime, kind));
    }
  }

  private static boolean isGood(PulseCheckResult check) {
    if (check.outcome() == PulseCheckResult.Outcome.NOT_COUNTED) {
      return true;
    }
    boolean inTime =
        check.outcome() == PulseCheckResult.Outcome.ON_TIME
            || check.outcome() == PulseCheckResult.Outcome.EXTRA;
    return inTime
        && (check.lengthOutcome() == PulseCheckResult.LengthOutcome.RIGHT
            || check.lengthOutcome() == PulseCheckResult.LengthOutcome.NOT_JUDGED);
  }

  private void addMissed(List<Finding> found) {
    // One who checks late may only have run out of time; then lateness is what to tell.
    boolean checksLate =
        checks.stream().anyMatch(c -> c.outcome() == PulseCheckResult.Outcome.LATE);
    List<PulseCheckResult> missed =
        with(
            c ->
                c.outcome() == PulseCheckResult.Outcome.MISSED
                    || (c.outcome() == PulseCheckResult.Outcome.OVERDUE && !checksLate));
    if (missed.isEmpty()) {
      return;
    }
    List<Quantity> when =
        missed.stream()
            .map(c -> Quantity.clockSeconds(c.dueSeconds().getAsDouble()))
            .limit(MOST_TIMES)
            .collect(Collectors.toList());
    int more = missed.size() - MOST_TIMES;
    found.add(
        Finding.fault(
                FindingCode.PULSE_CHECK_MISSED,
                more > 0
                    ? Sentence.done("pulse-check-missed.done.more", missed.size(), kind, when, more)
                    : Sentence.done("pulse-check-missed.done", missed.size(), kind, when),
                Sentence.why("pulse-check-missed.why." + kind()),
                Sentence.next("pulse-check.next"))
            .titled(
                missed.size() == 1 ? "pulse-check-missed.title" : "pulse-check-missed.title.some",
                kind,
                missed.size()));
  }

  private void addLate(List<Finding> found) {
    List<PulseCheckResult> late = with(c -> c.outcome() == PulseCheckResult.Outcome.LATE);
    if (!late.isEmpty()) {
      PulseCheckResult worst = worst(late, 1);
      Quantity lateness =
          Quantity.tenths(
              worst.lateSeconds().getAsDouble(), PulseCheckResult.ON_TIME_WITHIN_SECONDS);
      found.add(
          others(
                  Finding.fault(
                      FindingCode.PULSE_CHECK_LATE,
                      Sentence.done(
                          "pulse-check-late.done",
                          kind,
                          Quantity.clockSeconds(worst.dueSeconds().getAsDouble()),
                          lateness,
                          Quantity.tenths(PulseCheckResult.ON_TIME_WITHIN_SECONDS))),
                  late.size())
              .and(
                  Sentence.why("pulse-check-late.why." + kind()), Sentence.next("pulse-check.next"))
              .titled("pulse-check-late.title", kind));
    }
    List<PulseCheckResult> early = with(c -> c.outcome() == PulseCheckResult.Outcome.EARLY);
    if (!early.isEmpty()) {
      PulseCheckResult worst = worst(early, -1);
      found.add(
          others(
                  Finding.advice(
                      FindingCode.PULSE_CHECK_EARLY,
                      Sentence.done(
                          "pulse-check-early.done",
                          kind,
                          Quantity.clockSeconds(worst.dueSeconds().getAsDouble()),
                          Quantity.tenths(-worst.lateSeconds().getAsDouble()))),
                  early.size())
              .and(
                  Sentence.why(
                      kind == CheckKind.RHYTHM
                          ? "pulse-check-early.why.rhythm"
                          : "pulse-check-early.why"))
              .titled("pulse-check-early.title", kind));
    }
  }

  private void addLength(List<Finding> found) {
    double least = limits.pulseCheckShortest().seconds();
    double most = limits.pulseCheckLongest().seconds();
    List<PulseCheckResult> tooLong =
        with(c -> c.lengthOutcome() == PulseCheckResult.LengthOutcome.TOO_LONG);
    if (!tooLong.isEmpty()) {
      double longest =
          tooLong.stream().mapToDouble(c -> c.lengthSeconds().getAsDouble()).max().getAsDouble();
      found.add(
          others(
                  Finding.fault(
                      FindingCode.PULSE_CHECK_LONG,
                      lasted(Quantity.tenths(longest, most), least, most)),
                  tooLong.size())
              .and(
                  Sentence.why("pulse-check-long.why." + kind()),
                  Sentence.next("pulse-check-long.next"))
              .titled("pulse-check-long.title", kind));
    }
    List<PulseCheckResult> tooShort =
        with(c -> c.lengthOutcome() == PulseCheckResult.LengthOutcome.TOO_SHORT);
    if (!tooShort.isEmpty()) {
      double shortest =
          tooShort.stream().mapToDouble(c -> c.lengthSeconds().getAsDouble()).min().getAsDouble();
      found.add(
          others(
                  Finding.fault(
                      FindingCode.PULSE_CHECK_SHORT,
                      lasted(Quantity.tenths(shortest, least), least, most)),
                  tooShort.size())
              .and(
                  Sentence.why("pulse-check-short.why." + kind()),
                  Sentence.next("pulse-check-short.next", Quantity.tenths(least)))
              .titled("pulse-check-short.title", kind));
    }
  }

  private Sentence lasted(Quantity length, double least, double most) {
    return kind == CheckKind.RHYTHM
        ? Sentence.done("pulse-check.lasted.most", kind, length, Quantity.tenths(most))
        : Sentence.done(
            "pulse-check.lasted", kind, length, Quantity.tenths(least), Quantity.tenths(most));
  }

  private static void addWatched(List<Analysis> parts, List<Finding> found) {
    long breaths = 0;
    for (Analysis part : parts) {
      for (Interruption watch : part.practice().holds(Segment.Kind.WATCHING)) {
        breaths +=
            part.practice().breathsWithin(watch.startNanos() + SEEN_WITHIN_NANOS, watch.endNanos());
      }
    }
    if (breaths >= 2) {
      found.add(
          Finding.advice(
              FindingCode.BREATHS_NOT_NEEDED,
              Sentence.done("breaths-not-needed.done", breaths),
              Sentence.next("breaths-not-needed.next")));
    }
  }

  private void addSuctions(List<Finding> found) {
    List<SuctionResult> over =
        suctions.stream().filter(s -> !s.withinLimit()).collect(Collectors.toList());
    if (!over.isEmpty()) {
      double most = over.stream().mapToDouble(SuctionResult::lengthSeconds).max().getAsDouble();
      double limit = limits.suctionLongest().seconds();
      found.add(
          others(
                  Finding.fault(
                      FindingCode.SUCTION_LONG,
                      Sentence.done(
                          "suction-long.done",
                          Quantity.tenths(most, limit),
                          Quantity.tenths(limit))),
                  over.size())
              .and(Sentence.why("suction-long.why"), Sentence.next("suction-long.next")));
    } else if (!suctions.isEmpty()) {
      found.add(
          Finding.good(
              FindingCode.SUCTION_WITHIN_LIMIT,
              Sentence.done(
                  "suction-within-limit.done",
                  suctions.size(),
                  Quantity.tenths(limits.suctionLongest().seconds()))));
    }
  }

  private List<PulseCheckResult> with(Predicate<PulseCheckResult> which) {
    return checks.stream().filter(which).collect(Collectors.toList());
  }

  private static PulseCheckResult worst(List<PulseCheckResult> checks, int sign) {
    return checks.stream()
        .reduce(
            (a, b) ->
                sign * b.lateSeconds().getAsDouble() > sign * a.lateSeconds().getAsDouble() ? b : a)
        .get();
  }

  private String kind() {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Finding others(Finding told, int count) {
    return count == 1 ? told : told.and(Sentence.done("times", count));
  }
}
