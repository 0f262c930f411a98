package squeezewell.review.say;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.Citation;
import squeezewell.review.judge.Verdict;
import squeezewell.review.measure.Alignment;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.measure.Interruption;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.measure.RatePoint;
import squeezewell.session.NotedFinding;

/**
 * How what was done differs from what was asked. Immutable.
 *
 * @param asked what was asked for
 * @param startNanos end of the count-in, nanoseconds on the clock of the practice, as all instants
 *     here: from its first prompt, in a test without prompts from its first breath
 * @param endNanos up to when something is known
 * @param metrics the figures
 * @param breaths every breath, in order
 * @param compressions every compression up to the end, in order
 * @param prompts every prompt that was given, in order
 * @param intervals the interval after each breath but the last, in order; empty for a rhythm of
 *     compressions and pauses
 * @param rollingRate breaths a minute over the last minute, once a second where known
 * @param holds when no breaths were asked for, in order
 * @param silences when breaths were asked for and not prompted, in order
 * @param alignment which breath met which prompt, by their places in the lists
 * @param findings what to tell the trainee, worst first, at least one
 * @param verdict whether the rhythm was held
 * @param testIntervals how many intervals a test without prompts scored; its outcome is the
 *     verdict. Empty if the practice was none
 * @param slip whether it is a part that a finding led to which was taken back
 * @param notes what a reader should know about how this came about, such as an early end
 * @param found what was found during the session, in order
 * @param parts one review for each part with a rhythm of its own, if the rhythm changed; empty if
 *     it did not. Then what was asked, the findings and the figures that need one rhythm stand
 *     there, and here only what can be told of the whole
 */
public record Review(
    Prescription asked,
    long startNanos,
    long endNanos,
    Metrics metrics,
    List<BreathMark> breaths,
    List<CompressionMark> compressions,
    List<PromptMark> prompts,
    List<IntervalPoint> intervals,
    List<RatePoint> rollingRate,
    List<Interruption> holds,
    List<UnpromptedSpan> silences,
    Alignment alignment,
    List<Feedback> findings,
    Verdict verdict,
    OptionalInt testIntervals,
    boolean slip,
    List<String> notes,
    List<NotedFinding> found,
    List<Review> parts) {
  public Review {
    Objects.requireNonNull(asked, "asked");
    Objects.requireNonNull(metrics, "metrics");
    Objects.requireNonNull(alignment, "alignment");
    Objects.requireNonNull(verdict, "verdict");
    breaths = List.copyOf(breaths);
    compressions = List.copyOf(compressions);
    prompts = List.copyOf(prompts);
    intervals = List.copyOf(intervals);
    rollingRate = List.copyOf(rollingRate);
    holds = List.copyOf(holds);
    silences = List.copyOf(silences);
    findings = List.copyOf(findings);
    notes = List.copyOf(notes);
    found = List.copyOf(found);
    parts = List.copyOf(parts);
  }

  /** The parts with one rhythm each: this review itself if the rhythm never changed. */
  public List<Review> rhythms() {
    return parts.isEmpty() ? List.of(this) : parts;
  }

  /** Where the rhythms come from, each once. */
  public List<Citation> sources() {
    return rhythms().stream().map(r -> r.asked().source()).distinct().collect(Collectors.toList());
  }

  /** The outcome of a test without prompts, which is the verdict; empty if it was none. */
  public Optional<Verdict.Outcome> test() {
    return testIntervals.isPresent() ? Optional.of(verdict.outcome()) : Optional.empty();
  }

  /** The rule of the verdict, in plain words. */
  public String rule() {
    return VerdictText.rule(verdict);
  }

  /** What fell short of the rule, in plain words; empty if nothing did. */
  public List<String> reasons() {
    return VerdictText.reasons(verdict);
  }

  /** One short sentence for the top of the debrief. */
  public String headline() {
    return findings.get(0).title();
  }
}
