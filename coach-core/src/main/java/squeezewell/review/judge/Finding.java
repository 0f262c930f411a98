package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One thing to tell the trainee, not yet in words.
 *
 * @param code what it is
 * @param severity how much it matters
 * @param priority its place among those of one severity; smaller is worse
 * @param title one short sentence or phrase
 * @param where in which parts of the practice; empty if all over
 * @param passages what was done, what was asked and why it matters, once or for each part
 * @param more in how many more parts it was found
 */
public record Finding(
    FindingCode code,
    Severity severity,
    int priority,
    Sentence title,
    List<Where> where,
    List<Passage> passages,
    int more) {
  public Finding {
    if (!code.severities().contains(severity)) {
      throw new IllegalArgumentException(code.id() + " is no " + severity.word());
    }
    where = List.copyOf(where);
    passages = List.copyOf(passages);
  }

  private static Finding of(Severity severity, FindingCode code, Sentence... sentences) {
    Passage passage = new Passage(Optional.empty(), Arrays.asList(sentences));
    return new Finding(
        code,
        severity,
        code.priority(),
        Sentence.done(code.id() + ".title"),
        List.of(),
        List.of(passage),
        0);
  }

  static Finding fault(FindingCode code, Sentence... sentences) {
    return of(Severity.FAULT, code, sentences);
  }

  static Finding advice(FindingCode code, Sentence... sentences) {
    return of(Severity.ADVICE, code, sentences);
  }

  static Finding good(FindingCode code, Sentence... sentences) {
    return of(Severity.GOOD, code, sentences);
  }

  static Finding faultOrAdvice(boolean fault, FindingCode code, Sentence... sentences) {
    return of(fault ? Severity.FAULT : Severity.ADVICE, code, sentences);
  }

  /** The same with more to be said at its end. */
  Finding and(Sentence... sentences) {
    List<Sentence> all = new ArrayList<>(passages.get(0).sentences());
    all.addAll(Arrays.asList(sentences));
    Passage longer = new Passage(Optional.empty(), all);
    return new Finding(code, severity, priority, title, where, List.of(longer), more);
  }

  /** The same under another title. */
  Finding titled(String key, Object... values) {
    return new Finding(code, severity, priority, Sentence.done(key, values), where, passages, more);
  }

  /** The same in the place of another. */
  Finding inPlaceOf(int other) {
    return new Finding(code, severity, other, title, where, passages, more);
  }

  boolean is(Severity other) {
    return severity == other;
  }
}
