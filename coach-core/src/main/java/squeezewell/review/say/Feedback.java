package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import squeezewell.review.judge.Finding;
import squeezewell.review.judge.Passage;
import squeezewell.review.judge.Sentence;
import squeezewell.review.judge.Severity;

/**
 * A finding in words.
 *
 * @param code what it is, the id of a {@link squeezewell.review.judge.FindingCode}; stable, for
 *     programs
 * @param severity how much it matters
 * @param title one short sentence or phrase without a full stop
 * @param paragraphs what was done and what was asked, why it matters, and what to do, in plain
 *     words; each of these, and each part of a practice, begins a paragraph
 */
public record Feedback(String code, Severity severity, String title, List<Paragraph> paragraphs) {
  public Feedback {
    paragraphs = List.copyOf(paragraphs);
  }

  /**
   * A few sentences that belong together.
   *
   * @param kind what they are for
   * @param text the sentences
   * @param source what is behind a reason, or that nothing is; empty for other paragraphs
   */
  public record Paragraph(Sentence.Kind kind, String text, String source) {
    private Paragraph(Sentence.Kind kind, String text) {
      this(kind, text, "");
    }

    /** A reason with its source, in one line. */
    public String reason() {
      return Sayings.WORDS.say("why", text, source);
    }
  }

  /** A finding in words. */
  public static Feedback of(Finding finding) {
    List<Paragraph> paragraphs = new ArrayList<>();
    for (Passage passage : finding.passages()) {
      add(passage, paragraphs);
    }
    if (finding.more() > 0) {
      paragraphs.add(
          new Paragraph(Sentence.Kind.DONE, Sayings.WORDS.say("passage.more", finding.more())));
    }
    return new Feedback(
        finding.code().id(), finding.severity(), Sayings.title(finding), paragraphs);
  }

  private static void add(Passage passage, List<Paragraph> paragraphs) {
    String place = passage.where().map(where -> Sayings.from(where) + " ").orElse("");
    List<Sentence> done = passage.sentences(Sentence.Kind.DONE);
    List<Sentence> next = passage.sentences(Sentence.Kind.NEXT);
    boolean onlyNext = done.isEmpty() && !place.isEmpty() && !next.isEmpty();
    if (onlyNext || !done.isEmpty()) {
      String text = place + Sayings.sentences(onlyNext ? next : done);
      paragraphs.add(new Paragraph(Sentence.Kind.DONE, text));
    }
    for (Sentence why : passage.sentences(Sentence.Kind.WHY)) {
      String source = Sayings.WORDS.say(why.key() + ".source");
      paragraphs.add(new Paragraph(Sentence.Kind.WHY, Sayings.sentence(why), source));
    }
    if (!next.isEmpty() && !onlyNext) {
      paragraphs.add(new Paragraph(Sentence.Kind.NEXT, Sayings.sentences(next)));
    }
  }

  /** The paragraphs of a kind. */
  public List<Paragraph> paragraphs(Sentence.Kind kind) {
    return paragraphs.stream().filter(p -> p.kind() == kind).collect(Collectors.toList());
  }

  /** What to do, of each part. */
  public List<String> whatToDo() {
    return paragraphs(Sentence.Kind.NEXT).stream()
        .map(Paragraph::text)
        .collect(Collectors.toList());
  }

  /** What was done and what to do, in one line. */
  public String brief() {
    return paragraphs.stream()
        .filter(p -> p.kind() != Sentence.Kind.WHY)
        .map(Paragraph::text)
        .collect(Collectors.joining(" "));
  }

  /** All of it in one line, without sources. */
  public String text() {
    return paragraphs.stream().map(Paragraph::text).collect(Collectors.joining(" "));
  }
}
