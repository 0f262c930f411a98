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
  static Moment at(Stretch stretch, long nanos) {
    Rhythm rhythm = stretch.guidance().rhythm();
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      long since = nanos - stretch.originNanos();
      long first = stretch.originNanos() + cycle.compressing().tempo().nanosAt(cycle.perCycle());
      return nanos < stretch.startNanos() || since < 0
          ? ready(stretch, first)
          : inCycle(cycle, stretch, since);
    }
    long since = nanos - stretch.breathOriginNanos();
    return nanos < stretch.startNanos() || since < 0
        ? ready(stretch, stretch.breathOriginNanos())
        : inInterval(rhythm.steadyBreaths().get(), stretch, since);
  }

  private static Moment ready(Stretch stretch, long firstSqueeze) {
    return new Moment(stretch, Moment.Act.READY, 0, 0, 0, within(stretch, firstSqueeze));
  }

  private static Moment inInterval(BreathPlan plan, Stretch stretch, long since) {
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
        stretch,
        count == 1 ? Moment.Act.SQUEEZE : released,
        count,
        counts,
        fill(into, plan.inspirationNanos(), interval),
        within(stretch, stretch.breathOriginNanos() + tempo.nanosAt(k + 1)));
  }

  private static Moment inCycle(Rhythm.CompressionCycle plan, Stretch stretch, long since) {
    Tempo tempo = plan.compressing().tempo();
    int perCycle = plan.perCycle();
    long c = lastAtOrBefore(plan.cycle(), since);
    long sincePauses = since - c * plan.pauseNanos();
    long breathing = tempo.nanosAt((c + 1) * perCycle) + c * plan.pauseNanos();
    if (since < breathing) {
      int done = (int) (lastAtOrBefore(tempo, sincePauses) - c * perCycle);
      return new Moment(
          stretch,
          Moment.Act.COMPRESS,
          done + 1,
          perCycle,
          0,
          within(stretch, stretch.originNanos() + breathing));
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
        stretch,
        into < plan.inspirationNanos() ? Moment.Act.SQUEEZE : Moment.Act.RELEASE,
        b + 1,
        breaths,
        fill(into, plan.inspirationNanos(), plan.pauseNanos() / breaths),
        within(stretch, stretch.originNanos() + next));
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

  private static OptionalLong within(Stretch stretch, long squeeze) {
    return stretch.holds(squeeze) ? OptionalLong.of(squeeze) : OptionalLong.empty();
  }
}
