package squeezewell.audio;

/** How the counts between breaths are given. */
public enum CountStyle {
  /** A soft tone. */
  SOUND("sound", "Tones"),
  /** The number, spoken, on top of a very soft tone that marks its instant. */
  SPOKEN("spoken", "Spoken numbers"),
  /** Nothing: the trainee counts. */
  SILENT("silent", "Silent");

  private final String id;
  private final String label;

  CountStyle(String id, String label) {
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
