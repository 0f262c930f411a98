package squeezewell.station.file;

/** What holds the airway open while breaths are given. */
public enum Adjunct {
  /** The mask alone, or an adjunct that was taken out. */
  NONE("none", "mask alone"),
  ORAL_AIRWAY("oral-airway", "oral airway"),
  NASAL_AIRWAY("nasal-airway", "nasal airway"),
  ADVANCED_AIRWAY("advanced-airway", "advanced airway");

  private final String word;
  private final String label;

  Adjunct(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** The name shown to people, in lower case. */
  public String label() {
    return label;
  }
}
