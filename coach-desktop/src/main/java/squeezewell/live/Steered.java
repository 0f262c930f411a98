package squeezewell.live;

import squeezewell.coach.Command;
import squeezewell.cue.CheckAnswer;
import squeezewell.protocol.PatientChange;

/**
 * A practice that a person's hands steer. What they do comes with the reading of {@link
 * System#nanoTime()} at which they did it.
 */
public interface Steered extends Shown {
  /** Does what a hand does. */
  void post(Command command, long nanoTime);

  /** Notes what was found. */
  void post(PatientChange finding, long nanoTime);

  /** Answers the check that goes on. */
  void post(CheckAnswer answer, long nanoTime);
}
