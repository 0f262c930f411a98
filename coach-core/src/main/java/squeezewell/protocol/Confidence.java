package squeezewell.protocol;

import squeezewell.words.Wording;

/** How a value was checked against its source, the surest first. */
public enum Confidence {
  PRIMARY("primary"),
  SECONDARY("secondary"),
  PRACTICE("practice"),
  MEMORY("memory"),
  HOUSE("house");

  private static final Wording WORDS = Wording.beside(Confidence.class);

  private final String id;

  Confidence(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }

  /** One clause for people. */
  public String meaning() {
    return WORDS.say("confidence." + id);
  }
}
