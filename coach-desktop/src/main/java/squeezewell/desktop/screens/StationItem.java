package squeezewell.desktop.screens;

/**
 * Something to tap in a running station.
 *
 * @param kind what tapping does
 * @param id identifier of the task or order; empty for the beginning
 * @param words what it is
 * @param key the key that taps it; {@link #NO_KEY} if it has none
 * @param status how it stands, in words; never by colour alone
 * @param state how it stands
 */
record StationItem(Kind kind, String id, String words, char key, String status, State state) {
  /** The key of what has none. */
  static final char NO_KEY = '\0';

  /** What tapping an item does. */
  enum Kind {
    TASK,
    ORDER,
    BEGIN
  }

  /** How an item stands, as far as it is shown by more than words. */
  enum State {
    WAITS,
    RUNS,
    LATE,
    DONE
  }

  /** What ends the preparation. */
  static StationItem toBegin(char key) {
    return new StationItem(Kind.BEGIN, "", "Begin the exercise", key, "all is ready", State.WAITS);
  }

  /** The key as written on a button; empty if it has none. */
  String keyName() {
    return key == NO_KEY ? "" : String.valueOf(key);
  }

  /** Whether it has been begun and is not done. */
  boolean runs() {
    return state == State.RUNS;
  }

  /** Whether it runs or presses. */
  boolean on() {
    return runs() || state == State.LATE;
  }

  boolean done() {
    return state == State.DONE;
  }

  /** What it is, with a word that says whether it goes on already. */
  String lead() {
    return kind == Kind.BEGIN ? words : (runs() ? "Now: " : "Next: ") + words;
  }
}
