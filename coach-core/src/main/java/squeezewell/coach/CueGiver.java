package squeezewell.coach;

import java.util.List;
import java.util.OptionalLong;
import squeezewell.cue.Cue;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Segment;

/** Gives the cues of the schedule in force to the outputs: each once, in its time or not at all. */
final class CueGiver {
  /** A cue this late is dropped rather than given at the wrong time (our own choice). */
  static final long STALE_NANOS = 250_000_000L;

  private final List<CueOutput> outputs;
  private long givenUntil;
  private long lastCueAt = -1;

  CueGiver(List<? extends CueOutput> outputs) {
    this.outputs = List.copyOf(outputs);
  }

  /** Tells the outputs of a schedule. */
  void announce(CueSchedule schedule) {
    for (CueOutput output : outputs) {
      output.scheduleChanged(schedule);
    }
  }

  /** Tells the outputs of a schedule that differs from an instant on. */
  void changed(CueSchedule schedule, long fromNanos) {
    givenUntil = Math.min(givenUntil, fromNanos);
    announce(schedule);
  }

  /** When the first cue falls due that was not given. */
  OptionalLong nextAt(CueSchedule schedule) {
    return schedule.nextCueAt(givenUntil);
  }

  /** Gives the cues before an instant and before the end, save those that are stale by now. */
  void give(CueSchedule schedule, long upToNanos, long now) {
    long to = Math.min(upToNanos, schedule.endNanos().orElse(Segment.OPEN));
    long from = Math.max(givenUntil, now - STALE_NANOS);
    for (Cue cue : schedule.between(from, to)) {
      give(cue, now);
    }
    givenUntil = Math.max(givenUntil, to);
  }

  /** Gives the cue of the end, however late it is: it stays true. */
  void giveEnd(CueSchedule schedule, long now) {
    long end = schedule.endNanos().getAsLong();
    for (Cue cue : schedule.between(end, end + 1)) {
      give(cue, Math.max(now, end));
    }
  }

  private void give(Cue cue, long now) {
    lastCueAt = cue.atNanos();
    for (CueOutput output : outputs) {
      output.cue(cue, now);
    }
  }

  /** That instant, or the first one after the last cue given: what was prompted stays prompted. */
  long afterLastCue(long at) {
    return Math.max(at, lastCueAt + 1);
  }
}
