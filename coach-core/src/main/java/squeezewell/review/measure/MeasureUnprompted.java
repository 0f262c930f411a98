package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;

/** Computes {@link Unprompted}. */
public final class MeasureUnprompted {
  private static final double NANOS_PER_SECOND = 1e9;
  private static final int DRIFT_FEWEST = 25;
  private static final double DRIFT_LEAST = 2;

  private final List<Practice> parts;
  private final List<IntervalPoint> points = new ArrayList<>();
  private final List<List<IntervalPoint>> bySilence = new ArrayList<>();
  private final List<BreathPlan> plans = new ArrayList<>();

  private MeasureUnprompted(List<Practice> parts) {
    this.parts = parts;
  }

  /** The measure of all parts together; empty if all was prompted. */
  static Optional<Unprompted> of(List<Marks> parts) {
    MeasureUnprompted measure =
        new MeasureUnprompted(parts.stream().map(Marks::practice).collect(Collectors.toList()));
    parts.forEach(part -> measure.add(part.practice(), part.intervals()));
    return measure.measure();
  }

  private void add(Practice practice, List<IntervalPoint> intervals) {
    // Both stand in order of time.
    int next = 0;
    for (UnpromptedSpan silence : practice.silences()) {
      while (next < intervals.size() && intervals.get(next).atNanos() < silence.startNanos()) {
        next++;
      }
      List<IntervalPoint> within = new ArrayList<>();
      for (; next < intervals.size() && silence.holds(intervals.get(next).atNanos()); next++) {
        if (intervals.get(next).valid()) {
          within.add(intervals.get(next));
        }
      }
      bySilence.add(within);
      points.addAll(within);
    }
    if (!practice.silences().isEmpty()) {
      practice.breathPlan().ifPresent(plans::add);
    }
  }

  private Optional<Unprompted> measure() {
    if (bySilence.isEmpty()) {
      return Optional.empty();
    }
    double[] lengths = points.stream().mapToDouble(IntervalPoint::seconds).toArray();
    boolean oneRhythm = plans.stream().allMatch(p -> p.interval().equals(plans.get(0).interval()));
    OptionalDouble mean = oneRhythm ? Statistics.mean(lengths) : OptionalDouble.empty();
    boolean known = mean.isPresent() && mean.getAsDouble() > 0;
    int inRange = count(Judgement.IN_RANGE);
    Gap gap = longestGap();
    return Optional.of(
        new Unprompted(
            bySilence.size(),
            seconds(parts.stream().mapToLong(MeasureUnprompted::silentNanos).sum()),
            (int) parts.stream().mapToLong(MeasureUnprompted::breaths).sum(),
            (int) parts.stream().mapToLong(MeasureUnprompted::planned).sum(),
            lengths.length,
            mean,
            known ? OptionalDouble.of(60 / mean.getAsDouble()) : OptionalDouble.empty(),
            inRange,
            count(Judgement.FAST),
            count(Judgement.SLOW),
            Statistics.wilsonLow(inRange, lengths.length),
            Statistics.wilsonHigh(inRange, lengths.length),
            drift(),
            seconds(gap.nanos()),
            seconds(gap.atNanos()),
            parts.get(0).highestLevel()));
  }

  private int count(Judgement judgement) {
    return (int) points.stream().filter(p -> p.judgement() == judgement).count();
  }

  /** The count-in is told, so it is no time without prompts. */
  private static long silentNanos(Practice practice) {
    Spans holds = Spans.whole(practice.holds());
    long sum = 0;
    for (UnpromptedSpan silence : practice.silences()) {
      long start = Math.max(silence.startNanos(), practice.startNanos());
      long end = Math.max(start, silence.endNanos());
      sum += end - start - holds.overlap(start, end);
    }
    return sum;
  }

  private static long breaths(Practice practice) {
    return practice.breaths().stream().filter(b -> practice.silentAt(b.startNanos())).count();
  }

  private static long planned(Practice practice) {
    return practice.silences().stream().mapToLong(practice::askedIn).sum();
  }

  private OptionalDouble drift() {
    List<IntervalPoint> longest = List.of();
    for (List<IntervalPoint> one : bySilence) {
      longest = one.size() > longest.size() ? one : longest;
    }
    if (longest.size() < DRIFT_FEWEST) {
      return OptionalDouble.empty();
    }
    Drift drift =
        Drift.of(
            longest.stream()
                .mapToDouble(p -> (p.atNanos() - p.lengthNanos() / 2.0) / 1e9)
                .toArray(),
            longest.stream().mapToDouble(IntervalPoint::seconds).toArray());
    boolean told =
        drift.percentPerMinute().isPresent()
            && Math.abs(drift.percentPerMinute().getAsDouble()) >= DRIFT_LEAST
            && drift.lowPercentPerMinute().getAsDouble()
                    * drift.highPercentPerMinute().getAsDouble()
                > 0;
    return told ? drift.percentPerMinute() : OptionalDouble.empty();
  }

  private record Gap(long atNanos, long nanos) {}

  /** A wait counts as far as prompts were silent in it, from the breath that it began with. */
  private Gap longestGap() {
    Gap longest = new Gap(0, 0);
    for (Practice practice : parts) {
      Spans excused = Spans.excused(practice.holds());
      for (Gaps.Gap gap : Gaps.of(practice)) {
        long from = gap.startNanos();
        List<UnpromptedSpan> silences = practice.silences();
        // Only the last one that began before the wait, and those that began in it, can touch it.
        for (int i = Math.max(0, practice.firstSilenceAfter(from) - 1); i < silences.size(); i++) {
          UnpromptedSpan silence = silences.get(i);
          if (silence.startNanos() >= from + gap.rawNanos()) {
            break;
          }
          long to = Math.min(from + gap.rawNanos(), silence.endNanos());
          boolean touches = silence.startNanos() < to && from < silence.endNanos();
          long net = to - from - excused.overlap(from, to);
          if (touches && net > longest.nanos()) {
            longest = new Gap(from, net);
          }
        }
      }
    }
    return longest;
  }

  private static double seconds(long nanos) {
    return nanos / NANOS_PER_SECOND;
  }
}
