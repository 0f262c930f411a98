package squeezewell.review.judge;

import java.util.List;

/**
 * One sentence, not yet in words.
 *
 * @param kind what it is for
 * @param key under which its words stand
 * @param values what stands in its places: whole numbers, {@link Quantity}s, other sentences, a
 *     list of them, a {@link Finding} for its title, or a name of the schedule or the protocol
 */
public record Sentence(Kind kind, String key, List<Object> values) {
  public Sentence {
    values = List.copyOf(values);
  }

  /** What a sentence is for. A reason, and what to do, need telling once only. */
  public enum Kind {
    /** What was done, and what was asked. */
    DONE,
    /** Why it matters. */
    WHY,
    /** What to do. */
    NEXT
  }

  static Sentence done(String key, Object... values) {
    return new Sentence(Kind.DONE, key, List.of(values));
  }

  static Sentence why(String key, Object... values) {
    return new Sentence(Kind.WHY, key, List.of(values));
  }

  static Sentence next(String key, Object... values) {
    return new Sentence(Kind.NEXT, key, List.of(values));
  }

  /** Whether it says something of its own each time. */
  boolean hasFigures() {
    return kind == Kind.DONE && !values.isEmpty();
  }
}
