package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** A set of instants: half-open spans of time that do not overlap. Immutable. */
public final class Spans {
  private final long[] starts;
  private final long[] ends;
  private final long[] lengthBefore;

  private Spans(List<long[]> spans) {
    List<long[]> sorted = new ArrayList<>(spans);
    sorted.sort(Comparator.comparingLong(s -> s[0]));
    List<long[]> merged = new ArrayList<>();
    for (long[] span : sorted) {
      long[] last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
      if (span[1] <= span[0]) {
        continue;
      }
      if (last != null && span[0] <= last[1]) {
        last[1] = Math.max(last[1], span[1]);
      } else {
        merged.add(span.clone());
      }
    }
    starts = merged.stream().mapToLong(s -> s[0]).toArray();
    ends = merged.stream().mapToLong(s -> s[1]).toArray();
    lengthBefore = new long[starts.length + 1];
    for (int i = 0; i < starts.length; i++) {
      lengthBefore[i + 1] = lengthBefore[i] + ends[i] - starts[i];
    }
  }

  /** All of every hold. */
  public static Spans whole(List<Interruption> holds) {
    List<long[]> spans = new ArrayList<>();
    holds.forEach(h -> spans.add(new long[] {h.startNanos(), h.endNanos()}));
    return new Spans(spans);
  }

  /** All of every hold, and its end as well. */
  static Spans closed(List<Interruption> holds) {
    List<long[]> spans = new ArrayList<>();
    holds.forEach(h -> spans.add(new long[] {h.startNanos(), h.endNanos() + 1}));
    return new Spans(spans);
  }

  /** The part of every hold that is not held against the trainee. */
  public static Spans excused(List<Interruption> holds) {
    List<long[]> spans = new ArrayList<>();
    holds.forEach(h -> spans.add(new long[] {h.startNanos(), h.startNanos() + h.excusedNanos()}));
    return new Spans(spans);
  }

  /** How much of [from, to) lies in the spans, in nanoseconds. */
  public long overlap(long from, long to) {
    return to <= from ? 0 : lengthUntil(to) - lengthUntil(from);
  }

  boolean holds(long nanos) {
    return overlap(nanos, nanos + 1) > 0;
  }

  private long lengthUntil(long nanos) {
    int found = Arrays.binarySearch(starts, nanos);
    int before = found >= 0 ? found : -found - 1;
    if (before == 0) {
      return 0;
    }
    long beyond = Math.max(0, ends[before - 1] - nanos);
    return lengthBefore[before] - beyond;
  }
}
