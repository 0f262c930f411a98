package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.PromptMark;
import squeezewell.session.NotedFinding;

/**
 * What to tell the trainee of a practice: at most six findings, worst first, and what went well
 * last; and the verdict that goes with it.
 *
 * @param findings at least one
 * @param verdict made once, after the findings
 */
public record Findings(List<Finding> findings, Verdict verdict) {
  private static final int MOST = 6;

  /** With fewer breaths nothing is said about the rhythm (our own choice). */
  static final int FEWEST_BREATHS = 5;

  /** In a shorter part nothing is said about what was not done at all (our own choice). */
  private static final int FEWEST_SECONDS = 10;

  public Findings {
    findings = List.copyOf(findings);
  }

  /**
   * Judges a practice, or a part of it by itself.
   *
   * @param noted what was found in the whole session, on the clock of its parts
   * @param parts its parts with a rhythm each, in order: one, if the rhythm never changed
   * @param tested the same, each as far as it counts: of a test that came to its end, up to there
   */
  public static Findings of(List<NotedFinding> noted, List<Analysis> parts, List<Analysis> tested) {
    Verdict ruled = ruled(parts);
    List<Finding> found = found(noted, parts, tested);
    if (ruled.outcome() == Verdict.Outcome.NOT_HELD
        && !ruled.reasons().stream().allMatch(reason -> isToldBy(reason, found))) {
      found.add(ofRule(FindingCode.RHYTHM_NOT_HELD, ruled));
    } else if (ruled.outcome() == Verdict.Outcome.UNDECIDED) {
      Analysis first = parts.get(0);
      boolean interrupted =
          UnpromptedTrial.isOf(first) && UnpromptedTrial.isInterrupted(first.practice());
      found.add(
          interrupted
              ? Finding.advice(
                  FindingCode.TEST_INTERRUPTED,
                  Sentence.done("test-interrupted.done"),
                  Sentence.next("test-interrupted.next"))
              : ofRule(FindingCode.RHYTHM_UNDECIDED, ruled));
    }
    Set<FindingCode> silenced =
        ruled.outcome() == Verdict.Outcome.NOT_HELD
            ? FindingCode.RHYTHM_NOT_HELD.silencesInAll(Severity.ADVICE)
            : EnumSet.noneOf(FindingCode.class);
    found.forEach(one -> silenced.addAll(one.code().silencesInAll(one.severity())));
    // Of a part a kept rhythm may be told all the same, with its place.
    found.removeIf(
        one ->
            silenced.contains(one.code())
                && (one.code() != FindingCode.RHYTHM_EVEN || one.where().isEmpty()));
    return new Findings(worst(found), RhythmRule.besides(ruled, found));
  }

  /** Whether a finding of squeezes, or of a check or suction that overran, says why. */
  private static boolean isToldBy(Sentence reason, List<Finding> found) {
    return found.stream()
        .filter(one -> !one.is(Severity.GOOD))
        .map(Finding::code)
        .anyMatch(
            code ->
                reason.key().equals("reason.squeezes")
                    ? code.theme() == FindingCode.Theme.SQUEEZES
                    : reason.key().equals("reason.wait")
                        && (code == FindingCode.PULSE_CHECK_LONG
                            || code == FindingCode.SUCTION_LONG));
  }

  /** A test is judged by itself, and nothing else of its session is. */
  private static Verdict ruled(List<Analysis> parts) {
    if (parts.size() == 1 && parts.get(0).practice().place().slip()) {
      return Verdict.notJudged("rule.slip");
    }
    return UnpromptedTrial.isOf(parts.get(0))
        ? UnpromptedTrial.of(parts.get(0).practice()).ruled()
        : RhythmRule.judge(parts);
  }

  private static List<Finding> found(
      List<NotedFinding> noted, List<Analysis> parts, List<Analysis> tested) {
    List<Analysis> judged = judged(parts);
    if (judged.isEmpty() && parts.size() == 1) {
      return new ArrayList<>(List.of(Finding.advice(FindingCode.SLIP, Sentence.done("rule.slip"))));
    }
    List<Finding> found = new ArrayList<>();
    int breaths = parts.stream().mapToInt(f -> f.metrics().breathCount()).sum();
    boolean alone = parts.size() == 1;
    boolean compressed = parts.stream().anyMatch(f -> !f.practice().compressions().isEmpty());
    if (breaths == 0 && (alone || !compressed)) {
      found.add(nothing(parts));
    } else if (alone && breaths < FEWEST_BREATHS) {
      found.add(tooFew(breaths));
    }
    if (alone) {
      found.addAll(ofRhythm(tested.get(0)));
    } else if (breaths > 0 || compressed) {
      List<Analysis> counted = judged(tested);
      found.addAll(
          PartFindings.of(
              counted, counted.stream().map(Findings::ofPart).collect(Collectors.toList())));
    }
    found.addAll(InterruptionFindings.of(judged(tested)));
    if (!alone) {
      found.addAll(ChangeFindings.of(noted, judged));
    }
    if (found.isEmpty()) {
      found.add(
          !alone && breaths < FEWEST_BREATHS
              ? tooFew(breaths)
              : Finding.advice(
                  FindingCode.NOTHING_TO_JUDGE, Sentence.done("nothing-to-judge.done")));
    }
    return found;
  }

  private static List<Analysis> judged(List<Analysis> parts) {
    return parts.stream().filter(f -> !f.practice().place().slip()).collect(Collectors.toList());
  }

  /** Those of one part among others. */
  private static List<Finding> ofPart(Analysis part) {
    List<Finding> found = ofRhythm(part);
    int missed =
        (int)
            part.marks().prompts().stream()
                .filter(prompt -> prompt.outcome() == PromptMark.Outcome.MISSED)
                .count();
    if (part.metrics().effectiveSeconds() < FEWEST_SECONDS) {
      found.removeIf(one -> one.code() == FindingCode.COMPRESSIONS_MISSING);
    } else if (part.metrics().breathCount() == 0 && missed > 0) {
      found.add(
          Finding.fault(
              FindingCode.NO_BREATHS,
              Sentence.done("no-breaths.done.asked", missed),
              Sentence.next("no-breaths.next")));
    }
    return found;
  }

  /** Those about breaths and compressions. */
  private static List<Finding> ofRhythm(Analysis facts) {
    List<Finding> found = new ArrayList<>();
    int breaths = facts.metrics().breathCount();
    if (breaths > 0) {
      found.addAll(GapFindings.of(facts));
      found.addAll(SqueezeFindings.of(facts));
    }
    if (breaths >= FEWEST_BREATHS) {
      found.addAll(RhythmFindings.of(facts));
      found.addAll(UnpromptedFindings.of(facts));
      found.addAll(PromptFindings.of(facts));
    }
    found.addAll(CompressionFindings.of(facts));
    Set<FindingCode> silenced = EnumSet.noneOf(FindingCode.class);
    found.forEach(one -> silenced.addAll(one.code().silences(one.severity())));
    found.removeIf(one -> silenced.contains(one.code()));
    return found;
  }

  private static List<Finding> worst(List<Finding> found) {
    List<Finding> sorted = new ArrayList<>(found);
    sorted.sort(Comparator.comparing(Finding::severity).thenComparingInt(Finding::priority));
    while (sorted.size() > MOST) {
      // One good word is kept, if there is one.
      boolean goodLast = sorted.get(MOST).is(Severity.GOOD);
      boolean onlyGood = !sorted.get(MOST - 1).is(Severity.GOOD);
      sorted.remove(goodLast && onlyGood ? MOST - 1 : sorted.size() - 1);
    }
    return sorted;
  }

  private static Finding nothing(List<Analysis> parts) {
    Quantity length =
        Quantity.clock(
            parts.get(parts.size() - 1).practice().endNanos()
                - (parts.size() == 1 ? parts.get(0).practice().startNanos() : 0));
    return Finding.fault(
        FindingCode.NO_BREATHS,
        Sentence.done("no-breaths.done", length),
        Sentence.next("no-breaths.next"));
  }

  private static Finding ofRule(FindingCode code, Verdict ruled) {
    return Finding.advice(
        code, Sentence.done("reasons", ruled.reasons()), Sentence.next(code.id() + ".next"));
  }

  private static Finding tooFew(int breaths) {
    return Finding.advice(
        FindingCode.TOO_FEW_BREATHS,
        Sentence.done("too-few-breaths.done", breaths),
        Sentence.next("too-few-breaths.next"));
  }
}
