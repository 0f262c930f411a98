package squeezewell.desktop.screens.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.coach.CoachState;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Segment;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.session.Breath;

/** What stands on the ribbon of a running practice. Pure. */
public final class LiveMarks {
  /** Shorter intervals than this, in seconds, stand on a ribbon of ten seconds (our own choice). */
  private static final double SHORT_SECONDS = 3;

  private static final long SECOND = 1_000_000_000L;

  private LiveMarks() {}

  /** How much time the ribbon shows. */
  public static long spanNanos(CoachState state, long nowNanos) {
    double interval =
        state
            .schedule()
            .guidanceAt(nowNanos)
            .rhythm()
            .steadyBreaths()
            .map(BreathPlan::interval)
            .map(i -> i.seconds())
            .orElse(SHORT_SECONDS);
    return (interval < SHORT_SECONDS ? 10 : 30) * SECOND;
  }

  /** The instant at its left edge: seven tenths lie in the past. */
  public static long from(long nowNanos, long spanNanos) {
    return nowNanos - spanNanos * 7 / 10;
  }

  /** What stands on the ribbon around an instant. */
  public static List<RibbonMark> around(CoachState state, long nowNanos) {
    long span = spanNanos(state, nowNanos);
    long from = from(nowNanos, span);
    long to = from + span;
    List<RibbonMark> marks = new ArrayList<>();
    CueSchedule schedule = state.schedule();
    for (UnpromptedSpan silence : schedule.silences()) {
      if (silence.startNanos() < nowNanos && silence.endNanos() > from) {
        // Where a silence that goes on will end is not told.
        long end = silence.endNanos() > nowNanos ? to : silence.endNanos();
        marks.add(
            new RibbonMark(RibbonMark.Kind.SILENCE, silence.startNanos(), end, Judgement.UNJUDGED));
      }
    }
    for (Segment segment : schedule.segments()) {
      Optional<RibbonMark.Kind> kind = holdKind(segment.kind());
      if (kind.isPresent() && segment.startNanos() < to && segment.endNanos() > from) {
        long end = Math.min(segment.endNanos(), nowNanos);
        marks.add(new RibbonMark(kind.get(), segment.startNanos(), end, Judgement.UNJUDGED));
      }
    }
    for (Cue cue : schedule.between(from, to)) {
      if (cue.kind() == CueKind.SQUEEZE) {
        marks.add(
            new RibbonMark(
                RibbonMark.Kind.PROMPT, cue.atNanos(), cue.atNanos(), Judgement.UNJUDGED));
      }
    }
    for (long at : state.recentCompressions()) {
      if (at > from) {
        marks.add(new RibbonMark(RibbonMark.Kind.COMPRESSION, at, at, Judgement.UNJUDGED));
      }
    }
    List<Breath> breaths = state.breaths();
    for (int i = breaths.size() - 1; i >= 0 && breaths.get(i).startNanos() > from; i--) {
      Breath breath = breaths.get(i);
      boolean open = state.squeezing() && i == breaths.size() - 1;
      // The end of a squeeze that was noted as one instant is not known.
      long end =
          breath
              .endNanos()
              .orElse(open ? Math.max(nowNanos, breath.startNanos()) : breath.startNanos());
      marks.add(
          new RibbonMark(
              RibbonMark.Kind.BREATH, breath.startNanos(), end, judge(schedule, breaths, i)));
    }
    return marks;
  }

  /** How a breath came after the one before it. */
  static Judgement judge(CueSchedule schedule, List<Breath> breaths, int index) {
    if (index == 0) {
      return Judgement.UNJUDGED;
    }
    long before = breaths.get(index - 1).startNanos();
    long at = breaths.get(index).startNanos();
    return schedule.unbroken(before, at)
        ? schedule
            .guidanceAt(at)
            .rhythm()
            .steadyBreaths()
            .map(plan -> plan.judge(at - before))
            .orElse(Judgement.UNJUDGED)
        : Judgement.UNJUDGED;
  }

  private static Optional<RibbonMark.Kind> holdKind(Segment.Kind kind) {
    return switch (kind) {
      case PULSE_CHECK -> Optional.of(RibbonMark.Kind.PULSE_CHECK);
      case SUCTION -> Optional.of(RibbonMark.Kind.SUCTION);
      case PAUSED -> Optional.of(RibbonMark.Kind.PAUSE);
      default -> Optional.empty();
    };
  }
}
