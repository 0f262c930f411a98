package squeezewell.cue;

import java.util.OptionalLong;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Tempo;

/**
 * What a rhythm asks for at one instant, worked out from the instant itself: screens ask for it at
 * every frame. It agrees with the last cue of {@link RhythmCues} before the instant. With
 * continuous compressions it is the view of the one who holds the bag. Pure.
 */
final class RhythmMoment {
  private RhythmMoment() {}

  /** The moment at an instant of a paced stretch. */
  static Moment at(Segment segment, long nanos) {
    Rhythm rhythm = segment.guidance().rhythm();
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      long since = nanos - segment.originNanos();
      long first = segment.originNanos() + cycle.compressing().tempo().nanosAt(cycle.perCycle());
      return nanos < segment.startNanos() || since < 0
          ? ready(segment, first)
          : inCycle(cycle, segment, since);
    }
    long since = nanos - segment.breathOriginNanos();
    return nanos < segment.startNanos() || since < 0
        ? ready(segment, segment.breathOriginNanos())
        : inInterval(rhythm.steadyBreaths().get(), segment, since);
  }

  private static Moment ready(Segment segment, long firstSqueeze) {
    return new Moment(segment, Moment.Act.READY, 0, 0, 0, within(segment, firstSqueeze));
  }

  private static Moment inInterval(BreathPlan plan, Segment segment, long since) {
    Tempo tempo = plan.interval();
    long k = lastAtOrBefore(tempo, since);
    long into = since - tempo.nanosAt(k);
    long interval = tempo.nanosAt(k + 1) - tempo.nanosAt(k);
    int counts = RhythmCues.countsIn(plan);
    int count = 1;
    while (count < counts && RhythmCues.countAt(plan, interval, counts, count + 1) <= into) {
      count++;
    }
    boolean ready = count > 2 && RhythmCues.leadsIn(count, counts);
    Moment.Act released = ready ? Moment.Act.READY : Moment.Act.RELEASE;
    return new Moment(
        segment,
        count == 1 ? Moment.Act.SQUEEZE : released,
        count,
        counts,
        fill(into, plan.inspirationNanos(), interval),
        within(segment, segment.breathOriginNanos() + tempo.nanosAt(k + 1)));
  }

  private static Moment inCycle(Rhythm.CompressionCycle plan, Segment segment, long since) {
    Tempo tempo = plan.compressing().tempo();
    int perCycle = plan.perCycle();
    long c = lastAtOrBefore(plan.cycle(), since);
    long sincePauses = since - c * plan.pauseNanos();
    long breathing = tempo.nanosAt((c + 1) * perCycle) + c * plan.pauseNanos();
    if (since < breathing) {
      int done = (int) (lastAtOrBefore(tempo, sincePauses) - c * perCycle);
      return new Moment(
          segment,
          Moment.Act.COMPRESS,
          done + 1,
          perCycle,
          0,
          within(segment, segment.originNanos() + breathing));
    }
    int breaths = plan.breathsPerCycle();
    int b = breaths - 1;
    while (RhythmCues.breathAt(plan, b) > since - breathing) {
      b--;
    }
    long into = since - breathing - RhythmCues.breathAt(plan, b);
    long next =
        b + 1 < breaths
            ? breathing + RhythmCues.breathAt(plan, b + 1)
            : tempo.nanosAt((c + 2) * perCycle) + (c + 1) * plan.pauseNanos();
    return new Moment(
        segment,
        into < plan.inspirationNanos() ? Moment.Act.SQUEEZE : Moment.Act.RELEASE,
        b + 1,
        breaths,
        fill(into, plan.inspirationNanos(), plan.pauseNanos() / breaths),
        within(segment, segment.originNanos() + next));
  }

  /** Rises evenly over the squeeze and falls evenly over the rest of the breath. */
  private static double fill(long into, long inspiration, long whole) {
    if (into <= inspiration) {
      return (double) into / inspiration;
    }
    return Math.max(0, (double) (whole - into) / (whole - inspiration));
  }

  private static long lastAtOrBefore(Tempo tempo, long since) {
    return tempo.firstAtOrAfter(since + 1) - 1;
  }

  private static OptionalLong within(Segment segment, long squeeze) {
    return segment.holds(squeeze) ? OptionalLong.of(squeeze) : OptionalLong.empty();
  }
}
