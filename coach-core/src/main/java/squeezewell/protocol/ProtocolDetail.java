package squeezewell.protocol;

import java.util.Locale;
import squeezewell.input.JsonValue;
import squeezewell.words.Wording;

/** The texts of a local protocol that a person may set. */
public enum ProtocolDetail {
  TITLE("title", Texts.LONGEST_TITLE, false),
  ORGANISATION("organisation", Texts.LONGEST_ORGANISATION, false),
  YEAR("year", 4, false),
  ID("id", Texts.LONGEST_ID, false),
  APPROVED_BY("approval.by", Texts.LONGEST_APPROVER, true),
  APPROVED_ON("approval.on", 10, true),
  APPROVAL_NOTE("approval.note", Texts.LONGEST_NOTE, true);

  private static final Wording WORDS = Wording.beside(ProtocolDetail.class);

  private final String place;
  private final int longest;
  private final boolean optional;

  ProtocolDetail(String place, int longest, boolean optional) {
    this.place = place;
    this.longest = longest;
    this.optional = optional;
  }

  /** Its place in a file. */
  public String place() {
    return place;
  }

  /** The name shown to people. */
  public String label() {
    return WORDS.say("detail." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  /** Whether it may be left empty. */
  public boolean isOptional() {
    return optional;
  }

  /** What is allowed, in one clause. */
  public String allowed() {
    switch (this) {
      case YEAR:
        return "a year from " + Texts.FIRST_YEAR + " to " + Texts.LAST_YEAR;
      case ID:
        return Texts.ALLOWED_ID
            + ", at most "
            + Texts.LONGEST_ID
            + " characters, that no other protocol has";
      case APPROVED_ON:
        return Texts.ALLOWED_DAY;
      default:
        return JsonValue.allowedText(longest);
    }
  }

  /** Whether a text that is not empty is allowed, by itself. */
  boolean allows(String text) {
    switch (this) {
      case YEAR:
        return text.matches("[0-9]{4}")
            && Integer.parseInt(text) >= Texts.FIRST_YEAR
            && Integer.parseInt(text) <= Texts.LAST_YEAR;
      case ID:
        return Texts.isId(text);
      case APPROVED_ON:
        return Texts.day(text).isPresent();
      default:
        return JsonValue.isText(text, longest) && Texts.isWhole(text);
    }
  }
}
