package squeezewell.station.file;

/** How a task is done. */
public enum TaskKind {
  /** At an instant. */
  TAP("tap"),
  /** It has a beginning and an end, and its length is judged. */
  TIMED("timed"),
  /** As timed, with breaths in rhythm meanwhile; the first squeeze begins it. */
  PACED("paced");

  private final String word;

  TaskKind(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
