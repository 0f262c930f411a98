package squeezewell.station.file;

/** What a timed task holds the breaths up for. */
public enum TaskHold {
  PULSE_CHECK("pulse-check"),
  SUCTION("suction");

  private final String word;

  TaskHold(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
