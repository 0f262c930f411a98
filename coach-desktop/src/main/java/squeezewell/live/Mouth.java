package squeezewell.live;

import squeezewell.audio.SpokenLine;

/** What speaks. */
interface Mouth {
  /** Says a line; an urgent one may cut one short that is not. */
  void say(SpokenLine line, boolean urgent);

  /** Ends a line. */
  void hush();
}
