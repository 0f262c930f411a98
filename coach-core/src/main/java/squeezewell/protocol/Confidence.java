package squeezewell.protocol;

/** How a value was checked against its source. */
public enum Confidence {
  PRIMARY("primary", "seen in the source itself or its abstract"),
  SECONDARY("secondary", "seen in a text that reports the source"),
  MEMORY("memory", "from memory, not confirmed in a source"),
  HOUSE("house", "our own choice, no published source");

  private final String id;
  private final String meaning;

  Confidence(String id, String meaning) {
    this.id = id;
    this.meaning = meaning;
  }

  public String id() {
    return id;
  }

  /** One clause for people. */
  public String meaning() {
    return meaning;
  }
}
