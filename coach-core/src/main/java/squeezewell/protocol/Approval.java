package squeezewell.protocol;

import java.time.LocalDate;
import java.util.Objects;
import squeezewell.words.Wording;

/**
 * Who approved a local protocol, and when.
 *
 * @param by who, not blank
 * @param on the day
 * @param note more about it; empty if there is no more
 */
public record Approval(String by, LocalDate on, String note) {
  private static final Wording WORDS = Wording.beside(Approval.class);

  public Approval {
    Objects.requireNonNull(by, "by");
    Objects.requireNonNull(on, "on");
    Objects.requireNonNull(note, "note");
  }

  /** One clause for people, such as {@code approved by the medical director on 2026-01-31}. */
  public String words() {
    return WORDS.say(note.isEmpty() ? "approval" : "approval.noted", by, on, note);
  }
}
