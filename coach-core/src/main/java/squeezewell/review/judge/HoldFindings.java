package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import squeezewell.cue.CheckKind;
import squeezewell.protocol.Limits;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Hold;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.say.Words;

/** Findings about checks and suction. */
final class HoldFindings {
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

  private HoldFindings(Limits limits, List<Facts> parts) {
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
  static List<Ranked> of(List<Facts> parts) {
    Map<List<Object>, List<Facts>> alike = new LinkedHashMap<>();
    for (Facts part : parts) {
      Limits limits = part.practice().limits();
      List<Object> key =
          List.of(
              CheckKind.of(part.practice().guidance()),
              limits.pulseCheckShortest().nanos(),
              limits.pulseCheckLongest().nanos(),
              limits.suctionLongest().nanos());
      alike.computeIfAbsent(key, k -> new ArrayList<>()).add(part);
    }
    List<Ranked> found = new ArrayList<>();
    for (List<Facts> same : alike.values()) {
      HoldFindings findings = new HoldFindings(same.get(0).practice().limits(), same);
      findings.addChecks(found);
      findings.addSuctions(found);
    }
    addWatched(parts, found);
    return found;
  }

  private void addChecks(List<Ranked> found) {
    addMissed(found);
    addLate(found);
    addLength(found);
    long onTime = with(c -> c.outcome() == PulseCheckResult.Outcome.ON_TIME).size();
    if (onTime > 0 && checks.stream().allMatch(HoldFindings::isGood)) {
      // The length of one that the end of the practice cut short is not known.
      boolean known =
          checks.stream()
              .noneMatch(
                  c ->
                      c.startedSeconds().isPresent()
                          && c.lengthOutcome() != PulseCheckResult.LengthOutcome.RIGHT);
      found.add(
          Ranked.good(
              3,
              "checks-on-time",
              title(onTime) + " on time",
              Words.count(onTime, kind.words())
                  + " made when due"
                  + (known
                      ? " and kept to "
                          + Words.decimal(limits.pulseCheckShortest().seconds())
                          + " to "
                          + Words.seconds(limits.pulseCheckLongest().seconds())
                      : "")
                  + "."));
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

  private void addMissed(List<Ranked> found) {
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
    String when =
        missed.stream()
            .map(c -> Words.clock(c.dueSeconds().getAsDouble()))
            .limit(MOST_TIMES)
            .collect(Collectors.joining(", "));
    int more = missed.size() - MOST_TIMES;
    found.add(
        Ranked.fault(
            Ranked.CHECK_MISSED,
            "pulse-check-missed",
            missed.size() == 1
                ? "A " + kind.words() + " was missed"
                : title(missed.size()) + " were missed",
            "Not made: the "
                + kind.words()
                + (missed.size() == 1 ? "" : "s")
                + " due at "
                + when
                + (more > 0 ? " and " + more + " more" : "")
                + ". "
                + whyAtAll()
                + " ("
                + teaching()
                + "). Next time begin when it is announced."));
  }

  private void addLate(List<Ranked> found) {
    List<PulseCheckResult> late = with(c -> c.outcome() == PulseCheckResult.Outcome.LATE);
    if (!late.isEmpty()) {
      PulseCheckResult worst = worst(late, 1);
      found.add(
          Ranked.fault(
              Ranked.CHECK_LATE,
              "pulse-check-late",
              title(1) + " late",
              "The "
                  + kind.words()
                  + " due at "
                  + Words.clock(worst.dueSeconds().getAsDouble())
                  + " began "
                  + Words.secondsBeside(
                      worst.lateSeconds().getAsDouble(), PulseCheckResult.ON_TIME_WITHIN_SECONDS)
                  + " late; within "
                  + Words.seconds(PulseCheckResult.ON_TIME_WITHIN_SECONDS)
                  + " is on time."
                  + others(late.size())
                  + " The later the check, the longer "
                  + unnoticed()
                  + " goes unnoticed (teaching). Next time begin when it is announced."));
    }
    List<PulseCheckResult> early = with(c -> c.outcome() == PulseCheckResult.Outcome.EARLY);
    if (!early.isEmpty()) {
      PulseCheckResult worst = worst(early, -1);
      found.add(
          Ranked.advice(
              Ranked.CHECK_LATE,
              "pulse-check-early",
              title(1) + " early",
              "The "
                  + kind.words()
                  + " due at "
                  + Words.clock(worst.dueSeconds().getAsDouble())
                  + " began "
                  + Words.seconds(-worst.lateSeconds().getAsDouble())
                  + " early."
                  + others(early.size())
                  + " Each check is time without "
                  + (kind == CheckKind.RHYTHM ? "compressions" : "breaths")
                  + ", so make it when it is due."));
    }
  }

  private void addLength(List<Ranked> found) {
    String asked =
        "; asked was "
            + Words.decimal(limits.pulseCheckShortest().seconds())
            + " to "
            + Words.seconds(limits.pulseCheckLongest().seconds())
            + ".";
    List<PulseCheckResult> tooLong =
        with(c -> c.lengthOutcome() == PulseCheckResult.LengthOutcome.TOO_LONG);
    if (!tooLong.isEmpty()) {
      double most =
          tooLong.stream().mapToDouble(c -> c.lengthSeconds().getAsDouble()).max().getAsDouble();
      found.add(
          Ranked.fault(
              Ranked.CHECK_LONG,
              "pulse-check-long",
              title(1) + " too long",
              "A "
                  + kind.words()
                  + " lasted "
                  + Words.secondsBeside(most, limits.pulseCheckLongest().seconds())
                  + asked
                  + others(tooLong.size())
                  + whyShortChecks()
                  + " Next time end it at the prompt."));
    }
    List<PulseCheckResult> tooShort =
        with(c -> c.lengthOutcome() == PulseCheckResult.LengthOutcome.TOO_SHORT);
    if (!tooShort.isEmpty()) {
      double least =
          tooShort.stream().mapToDouble(c -> c.lengthSeconds().getAsDouble()).min().getAsDouble();
      String text =
          "A "
              + kind.words()
              + " lasted "
              + Words.secondsBeside(least, limits.pulseCheckShortest().seconds())
              + asked
              + others(tooShort.size())
              + tooQuick();
      String title = title(1) + " too short";
      // Compressions wait meanwhile, so nobody is harmed by a check that was short and sure.
      found.add(
          kind == CheckKind.RHYTHM
              ? Ranked.advice(Ranked.CHECK_SHORT, "pulse-check-short", title, text)
              : Ranked.fault(
                  Ranked.CHECK_SHORT,
                  "pulse-check-short",
                  title,
                  text
                      + " Next time take at least "
                      + Words.seconds(limits.pulseCheckShortest().seconds())
                      + "."));
    }
  }

  private static void addWatched(List<Facts> parts, List<Ranked> found) {
    long breaths = 0;
    for (Facts part : parts) {
      for (Hold watch : part.practice().holds(Hold.Kind.WATCH)) {
        breaths +=
            part.practice().breathsWithin(watch.startNanos() + SEEN_WITHIN_NANOS, watch.endNanos());
      }
    }
    if (breaths >= 2) {
      found.add(
          Ranked.advice(
              Ranked.EXTRA_BREATHS,
              "breaths-not-needed",
              "Breaths while the patient breathed well",
              breaths
                  + " breaths came although the patient breathed well. Asked was to hold the airway"
                  + " open, watch the chest and give oxygen."));
    }
  }

  private void addSuctions(List<Ranked> found) {
    List<SuctionResult> over =
        suctions.stream().filter(s -> !s.withinLimit()).collect(Collectors.toList());
    if (!over.isEmpty()) {
      double most = over.stream().mapToDouble(SuctionResult::lengthSeconds).max().getAsDouble();
      found.add(
          Ranked.fault(
              Ranked.SUCTION_LONG,
              "suction-long",
              "Suction too long",
              "Suction lasted "
                  + Words.secondsBeside(most, limits.suctionLongest().seconds())
                  + "; the limit is "
                  + Words.seconds(limits.suctionLongest().seconds())
                  + "."
                  + others(over.size())
                  + " Suction takes oxygen out of the airway along with the fluid (responder"
                  + " texts). Next time stop at the warning, and give breaths before you go in"
                  + " again."));
    } else if (!suctions.isEmpty()) {
      found.add(
          Ranked.good(
              5,
              "suction-within-limit",
              "Suction within its limit",
              Words.count(suctions.size(), "suction")
                  + ", none over "
                  + Words.seconds(limits.suctionLongest().seconds())
                  + "."));
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

  private String title(long count) {
    String words = kind.words() + (count == 1 ? "" : "s");
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  private String whyAtAll() {
    switch (kind) {
      case RHYTHM:
        return "The rhythm of the heart can change without a sign, and with it what is to be done";
      case HEART_RATE:
        return "The heart rate shows whether the breaths work, and what is to be done next";
      default:
        return "A pulse can be lost without a sign, and then the chest must be compressed";
    }
  }

  private String teaching() {
    return kind == CheckKind.HEART_RATE ? "newborn life support" : "basic life support";
  }

  private String unnoticed() {
    switch (kind) {
      case RHYTHM:
        return "a change of rhythm";
      case HEART_RATE:
        return "a slow heart";
      default:
        return "a lost pulse";
    }
  }

  /** How long the heart of a newborn may be listened to is our own choice. */
  private String whyShortChecks() {
    switch (kind) {
      case RHYTHM:
        return " The chest is not compressed meanwhile (basic life support).";
      case HEART_RATE:
        return " You give no breath meanwhile.";
      default:
        return " You give no breath meanwhile (basic life support).";
    }
  }

  private String tooQuick() {
    switch (kind) {
      case RHYTHM:
        return " Short is good for the flow of blood, as long as the rhythm was surely seen (basic"
            + " life support).";
      case HEART_RATE:
        return " A heart rate is easily miscounted in less time (the newborn programme counts for"
            + " 6 s).";
      default:
        return " A slow or weak pulse is easily missed in less time (course texts).";
    }
  }

  private static String others(int count) {
    return count == 1 ? "" : " It happened " + count + " times; this was the worst.";
  }
}
