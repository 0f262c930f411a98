package squeezewell.audio;

/** The kinds of sound that a person can set apart from each other. */
public enum SoundKind {
  /** The swell that lasts as long as the squeeze. */
  SQUEEZE("squeeze", "Squeeze"),
  /** The fall when the bag is let go. */
  RELEASE("release", "Release"),
  /** The soft counts between breaths and during a pulse check. */
  COUNT("count", "Counts"),
  /** The tick of a chest compression. */
  COMPRESSION("compression", "Compressions"),
  /** The chimes of reminders, limits and the end. */
  REMINDER("reminder", "Reminders"),
  /** Spoken words. */
  VOICE("voice", "Voice"),
  /** The examiner's lines in a station. */
  EXAMINER("examiner", "Examiner's voice"),
  /** In a replay: what was done. */
  DONE("done", "What was done");

  private final String id;
  private final String label;

  SoundKind(String id, String label) {
    this.id = id;
    this.label = label;
  }

  /** The word used in files. */
  public String id() {
    return id;
  }

  /** The name shown to people. */
  public String label() {
    return label;
  }
}
