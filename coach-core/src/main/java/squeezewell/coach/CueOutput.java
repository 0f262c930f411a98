package squeezewell.coach;

import squeezewell.cue.Cue;
import squeezewell.cue.CueSchedule;

/**
 * Gives prompts to a person. Called on the thread that drives the {@link Coach}; must return
 * quickly and must not throw.
 */
public interface CueOutput {
  /**
   * What is to be prompted from now on has changed. An output that needs to look ahead, such as
   * sound, works from the schedule alone.
   */
  void scheduleChanged(CueSchedule schedule);

  /**
   * A cue is due now. Cues that the coach comes too late for are not given.
   *
   * @param cue the cue
   * @param nowNanos session time of the call; at or after the cue's own time
   */
  default void cue(Cue cue, long nowNanos) {}
}
