package squeezewell.review.measure;

import java.util.List;
import java.util.stream.Collectors;

/**
 * What the findings of a part are drawn from.
 *
 * @param marks the part
 * @param metrics its figures
 */
public record Analysis(Marks marks, Metrics metrics) {
  /** Measures a part. */
  public static Analysis of(Marks marks) {
    return new Analysis(marks, Measure.of(marks.practice(), List.of(marks), marks.alignment()));
  }

  /** The part. */
  public Practice practice() {
    return marks.practice();
  }

  /** Breaths a minute over the last minute, once a second where known. */
  public List<RatePoint> rollingRate() {
    return marks.rollingRate();
  }

  /** The intervals that count, in order. */
  public List<IntervalPoint> valid() {
    return marks.valid();
  }

  /** The intervals that count and were not prompted, in order. */
  public List<IntervalPoint> unprompted() {
    return valid().stream()
        .filter(p -> practice().silentAt(p.atNanos()))
        .collect(Collectors.toList());
  }
}
