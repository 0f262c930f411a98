package squeezewell.live;

import squeezewell.coach.CoachState;

/** A practice that can be looked at, whether it runs now or is played back. */
public interface Shown {
  /** Where things stand. */
  CoachState state();

  /** The moment that is shown, session time. */
  long nowNanos();
}
