package squeezewell.files;

/** The colours of the windows. */
public enum Theme {
  /** Light or dark, as the desktop says. */
  SYSTEM("system"),
  LIGHT("light"),
  DARK("dark"),
  HIGH_CONTRAST("high-contrast"),
  HIGH_CONTRAST_DARK("high-contrast-dark");

  private final String word;

  Theme(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
