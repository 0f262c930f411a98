package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
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
 * @param paragraphs what was done, what was asked and why it matters, in plain words; what to do,
 *     and each part of a practice, begin a paragraph
 */
public record Feedback(String code, Severity severity, String title, List<Paragraph> paragraphs) {
  public Feedback {
    paragraphs = List.copyOf(paragraphs);
  }

  /**
   * A few sentences that belong together.
   *
   * @param text the sentences
   * @param tellsWhatToDo whether they tell what to do, not what was done
   */
  public record Paragraph(String text, boolean tellsWhatToDo) {}

  /** A finding in words. */
  public static Feedback of(Finding finding) {
    List<Paragraph> paragraphs = new ArrayList<>();
    for (Passage passage : finding.passages()) {
      add(passage, paragraphs);
    }
    if (finding.more() > 0) {
      paragraphs.add(new Paragraph(Sayings.WORDS.say("passage.more", finding.more()), false));
    }
    return new Feedback(
        finding.code().id(), finding.severity(), Sayings.title(finding), paragraphs);
  }

  private static void add(Passage passage, List<Paragraph> paragraphs) {
    List<Sentence> done = new ArrayList<>(passage.sentences());
    List<Sentence> next = new ArrayList<>(done);
    done.removeIf(sentence -> sentence.kind() == Sentence.Kind.NEXT);
    next.removeAll(done);
    String place = passage.where().map(where -> Sayings.from(where) + " ").orElse("");
    if (!done.isEmpty() || !place.isEmpty()) {
      String text = place + Sayings.sentences(done.isEmpty() ? next : done);
      paragraphs.add(new Paragraph(text, false));
    }
    if (!next.isEmpty() && !(done.isEmpty() && !place.isEmpty())) {
      paragraphs.add(new Paragraph(Sayings.sentences(next), true));
    }
  }

  /** What to do, of each part. */
  public List<String> whatToDo() {
    List<String> texts = new ArrayList<>();
    paragraphs.forEach(
        paragraph -> {
          if (paragraph.tellsWhatToDo()) {
            texts.add(paragraph.text());
          }
        });
    return texts;
  }

  /** All of it in one line. */
  public String text() {
    List<String> texts = new ArrayList<>();
    paragraphs.forEach(paragraph -> texts.add(paragraph.text()));
    return String.join(" ", texts);
  }
}
