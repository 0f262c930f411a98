package squeezewell.station.file;

/** The parts of a station, in order. */
public enum StationPhase {
  PREPARATION("preparation", "Preparation"),
  EXERCISE("exercise", "Exercise"),
  ENDED("ended", "Ended");

  private final String word;
  private final String label;

  StationPhase(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** The name shown to people. */
  public String label() {
    return label;
  }
}
