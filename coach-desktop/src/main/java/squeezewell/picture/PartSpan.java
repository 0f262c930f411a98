package squeezewell.picture;

/**
 * A part of a practice with a rhythm of its own, as a picture shows it.
 *
 * @param fromNanos where it begins, nanoseconds since the session began
 * @param toNanos where it ends
 * @param letter tells it from the others; findings have numbers
 * @param label a few words
 */
public record PartSpan(long fromNanos, long toNanos, String letter, String label) {
  /** The letter and the words: {@code B: no pulse, no advanced airway}. */
  public String full() {
    return letter + ": " + label;
  }
}
