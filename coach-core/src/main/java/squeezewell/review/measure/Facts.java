package squeezewell.review.measure;

import java.util.List;
import java.util.stream.Collectors;

/** What the findings are drawn from. */
public record Facts(
    Practice practice,
    Metrics metrics,
    List<IntervalPoint> intervals,
    List<RatePoint> rollingRate,
    List<PromptMark> prompts,
    Alignment alignment) {
  /** The intervals that count, in order. */
  public List<IntervalPoint> valid() {
    return intervals.stream().filter(IntervalPoint::valid).collect(Collectors.toList());
  }
}
