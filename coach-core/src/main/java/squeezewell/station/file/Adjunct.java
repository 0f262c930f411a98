package squeezewell.station.file;

import squeezewell.input.FileWord;
import squeezewell.words.Wording;

/** What holds the airway open while breaths are given. */
public enum Adjunct implements FileWord {
  /** The mask alone, or an adjunct that was taken out. */
  NONE,
  ORAL_AIRWAY,
  NASAL_AIRWAY,
  ADVANCED_AIRWAY;

  private static final Wording WORDS = Wording.beside(Adjunct.class);

  /** The name shown to people, in lower case. */
  public String label() {
    return WORDS.say("adjunct." + word());
  }
}
