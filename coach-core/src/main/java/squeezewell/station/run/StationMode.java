package squeezewell.station.run;

/** Who is there. */
public enum StationMode {
  /** The program plays the examiner. */
  ALONE("alone", "Alone"),
  /** A partner assists, marks what is done and plays the examiner. */
  PARTNER("partner", "With a partner"),
  /** An instructor at a console: findings at will, remarks, the clock. */
  INSTRUCTOR("instructor", "With an instructor");

  private final String word;
  private final String label;

  StationMode(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** The word used in files and on the command line. */
  public String word() {
    return word;
  }

  /** The name shown to people. */
  public String label() {
    return label;
  }

  /** Whether somebody else may make findings come and go. */
  public boolean hasExaminer() {
    return this != ALONE;
  }
}
