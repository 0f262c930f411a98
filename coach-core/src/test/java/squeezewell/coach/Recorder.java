package squeezewell.coach;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;

/** Keeps what it was given. */
final class Recorder implements CueOutput {
  final List<Cue> cues = new ArrayList<>();
  final List<Long> givenAt = new ArrayList<>();
  CueSchedule schedule;

  @Override
  public void scheduleChanged(CueSchedule changed) {
    schedule = changed;
  }

  @Override
  public void cue(Cue cue, long nowNanos) {
    cues.add(cue);
    givenAt.add(nowNanos);
  }

  List<Long> instantsOf(CueKind kind) {
    return cues.stream()
        .filter(c -> c.kind() == kind)
        .map(Cue::atNanos)
        .collect(Collectors.toList());
  }

  /** Instant, kind and count: a command may cut a squeeze short that it falls into. */
  static List<String> keys(List<Cue> cues) {
    return cues.stream()
        .map(c -> c.atNanos() + " " + c.kind() + " " + c.count())
        .collect(Collectors.toList());
  }
}
