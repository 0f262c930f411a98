package squeezewell.coach;

/** What a {@link VirtualTrainee} does wrong, if anything. */
public enum TraineeFault {
  /** Nothing: follows each prompt after a short reaction. */
  NONE("none", "follows each prompt after a short reaction"),
  /** Three times the rate asked for, whatever the prompts say: 30/min where 10/min is asked. */
  FAST("fast", "squeezes at three times the rate asked for"),
  /** Starts with the prompts, then slows down evenly, to intervals 40 % longer at the end. */
  SLOWS("slows", "starts with the prompts, then slows down more and more"),
  /** Leaves out about one prompt in five, never two in a row. */
  SKIPS("skips", "leaves out about one breath in five"),
  /** Stops for over 20 s, without a reason, about once in 80 s. */
  LONG_PAUSES("long-pauses", "stops for over 20 s now and then"),
  /** Makes pulse checks about 35 s after they were due. */
  LATE_CHECK("late-check", "makes the pulse checks about 35 s late"),
  /** Squeezes for 0.4 of the time asked for. */
  SHORT_SQUEEZE("short-squeeze", "squeezes too short"),
  /** Squeezes 0.3 s before every prompt that can be foreseen. */
  ANTICIPATES("anticipates", "squeezes 0.3 s before every prompt"),
  /** Keeps an even tempo of its own: about 5 s where 6 s are asked. */
  OWN_TEMPO("own-tempo", "keeps an even tempo of its own, about 5 s for 6 s"),
  /** Follows the prompts, but breathes at 0.7 of the interval as soon as they fall silent. */
  LOSES_RHYTHM("loses-rhythm", "follows the prompts, but is too fast without them");

  private final String id;
  private final String meaning;

  TraineeFault(String id, String meaning) {
    this.id = id;
    this.meaning = meaning;
  }

  /** The word used on the command line. */
  public String id() {
    return id;
  }

  /** One clause for people. */
  public String meaning() {
    return meaning;
  }
}
