package squeezewell.station.run;

import squeezewell.input.FileWord;
import squeezewell.words.Wording;

/** Who is there. */
public enum StationMode implements FileWord {
  /** The program plays the examiner. */
  ALONE,
  /** A partner assists, marks what is done and plays the examiner. */
  PARTNER,
  /** An instructor at a console: findings at will, remarks, the clock. */
  INSTRUCTOR;

  private static final Wording WORDS = Wording.beside(StationMode.class);

  /** The name shown to people. */
  public String label() {
    return WORDS.say("mode." + word());
  }

  /** Whether somebody else may make findings come and go. */
  public boolean hasExaminer() {
    return this != ALONE;
  }
}
