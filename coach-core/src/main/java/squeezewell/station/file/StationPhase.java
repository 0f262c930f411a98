package squeezewell.station.file;

import squeezewell.input.FileWord;
import squeezewell.words.Wording;

/** The parts of a station, in order. */
public enum StationPhase implements FileWord {
  PREPARATION,
  EXERCISE,
  ENDED;

  private static final Wording WORDS = Wording.beside(StationPhase.class);

  /** The name shown to people. */
  public String label() {
    return WORDS.say("phase." + word());
  }
}
