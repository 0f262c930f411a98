package squeezewell.review;

import java.util.List;
import java.util.Objects;

/**
 * How what was done differs from what was asked. Immutable.
 *
 * @param asked what was asked for
 * @param startNanos end of the count-in, nanoseconds since the session began
 * @param endNanos up to when something is known
 * @param metrics the figures
 * @param breaths every breath, in order
 * @param prompts every prompt that was given, in order
 * @param intervals the interval after each breath but the last, in order; empty for a rhythm of
 *     compressions and pauses
 * @param rollingRate breaths a minute over the last minute, once a second where known
 * @param holds when no breaths were asked for, in order
 * @param alignment which breath met which prompt, by their places in the lists
 * @param findings what to tell the trainee, worst first, at least one
 * @param verdict whether the rhythm was held
 * @param notes what a reader should know about how this came about, such as an early end
 */
public record Review(
    Asked asked,
    long startNanos,
    long endNanos,
    Metrics metrics,
    List<BreathMark> breaths,
    List<PromptMark> prompts,
    List<IntervalPoint> intervals,
    List<RatePoint> rollingRate,
    List<Hold> holds,
    Alignment alignment,
    List<Finding> findings,
    Verdict verdict,
    List<String> notes) {
  public Review {
    Objects.requireNonNull(asked, "asked");
    Objects.requireNonNull(metrics, "metrics");
    Objects.requireNonNull(alignment, "alignment");
    Objects.requireNonNull(verdict, "verdict");
    breaths = List.copyOf(breaths);
    prompts = List.copyOf(prompts);
    intervals = List.copyOf(intervals);
    rollingRate = List.copyOf(rollingRate);
    holds = List.copyOf(holds);
    findings = List.copyOf(findings);
    notes = List.copyOf(notes);
  }

  /** One short sentence for the top of the debrief. */
  public String headline() {
    return findings.get(0).title();
  }
}
