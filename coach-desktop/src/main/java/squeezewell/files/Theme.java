package squeezewell.files;

/** Light or dark. */
public enum Theme {
  LIGHT("light"),
  DARK("dark");

  private final String word;

  Theme(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
