package squeezewell.equipment;

import squeezewell.protocol.Citation;
import squeezewell.protocol.Confidence;
import squeezewell.words.Wording;

/** The sources that the bundle words. */
final class Cited {
  static final Wording WORDS = Wording.beside(Cited.class);

  private Cited() {}

  /** The source under a key, with its {@code .organisation}, {@code .title}, {@code .section}. */
  static Citation by(String key, int year, Confidence confidence) {
    return new Citation(
        WORDS.say(key + ".organisation"),
        WORDS.say(key + ".title"),
        year,
        WORDS.say(key + ".section"),
        confidence);
  }
}
