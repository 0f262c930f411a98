package squeezewell.protocol;

import java.util.Objects;
import squeezewell.words.Wording;

/**
 * Where a clinical value comes from.
 *
 * @param organisation who published it, not blank
 * @param title the document, not blank
 * @param year year of publication
 * @param section part or section of the document, not blank
 * @param confidence how the value was checked
 */
public record Citation(
    String organisation, String title, int year, String section, Confidence confidence) {
  private static final Wording WORDS = Wording.beside(Citation.class);

  public Citation {
    Objects.requireNonNull(organisation, "organisation");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(section, "section");
    Objects.requireNonNull(confidence, "confidence");
  }

  /** The same place, checked in another way. */
  public Citation as(Confidence other) {
    return new Citation(organisation, title, year, section, other);
  }

  /** The document and the place in it, in one line for people. */
  public String document() {
    return WORDS.say("citation", organisation, title, year, section);
  }

  /** The document, and a word of warning where the value was not seen in it. */
  public String line() {
    return confidence.compareTo(Confidence.PRACTICE) >= 0
        ? WORDS.say("citation." + confidence.id(), document())
        : document();
  }
}
