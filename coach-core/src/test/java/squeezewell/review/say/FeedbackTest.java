package squeezewell.review.say;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import squeezewell.protocol.Situation;
import squeezewell.review.judge.Finding;
import squeezewell.review.judge.FindingCode;
import squeezewell.review.judge.Passage;
import squeezewell.review.judge.Sentence;
import squeezewell.review.judge.Severity;
import squeezewell.review.judge.Where;

class FeedbackTest {
  private static final Sentence DONE =
      new Sentence(Sentence.Kind.DONE, "test-interrupted.done", List.of());
  private static final Sentence WHY =
      new Sentence(Sentence.Kind.WHY, "long-squeeze.why", List.of());
  private static final Sentence NEXT =
      new Sentence(Sentence.Kind.NEXT, "long-squeeze.next", List.of());
  private static final String WHY_SAID =
      "A long squeeze keeps the chest under pressure and leaves less time to empty.";
  private static final String SOURCE = "Physiology as it is taught; no source was read.";
  private static final String NEXT_SAID = "Next time release when the chest has risen.";

  private static Where part(long from, long to, boolean last) {
    return new Where(
        from * 1_000_000_000, to * 1_000_000_000, from == 0, last, Situation.PULSE_NO_BREATHING);
  }

  private static Feedback of(List<Where> where, List<Passage> passages, int more) {
    Sentence title = new Sentence(Sentence.Kind.DONE, "long-squeeze.title", List.of());
    FindingCode code = FindingCode.LONG_SQUEEZE;
    return Feedback.of(new Finding(code, Severity.FAULT, 60, title, where, passages, more));
  }

  @Test
  void whatToDoStandsByItself() {
    Feedback told = of(List.of(), List.of(new Passage(Optional.empty(), List.of(WHY, NEXT))), 0);
    assertThat(told.title()).isEqualTo("Squeezes too long");
    assertThat(told.paragraphs())
        .containsExactly(
            new Feedback.Paragraph(Sentence.Kind.WHY, WHY_SAID, SOURCE),
            new Feedback.Paragraph(Sentence.Kind.NEXT, NEXT_SAID, ""));
    assertThat(told.brief()).isEqualTo(NEXT_SAID);
    assertThat(told.text()).isEqualTo(WHY_SAID + " " + NEXT_SAID);
    assertThat(told.whatToDo()).containsExactly(NEXT_SAID);
  }

  @Test
  void eachPartOfThePracticeBeginsAParagraph() {
    Where first = part(0, 60, false);
    Where next = part(60, 90, false);
    Where last = part(750, 800, true);
    Feedback told =
        of(
            List.of(first, next, last),
            List.of(
                new Passage(Optional.of(first), List.of(WHY, NEXT)),
                new Passage(Optional.of(last), List.of(DONE))),
            2);
    // Parts that follow each other are one place.
    assertThat(told.title()).isEqualTo("Squeezes too long, before 1:30 and after 12:30");
    assertThat(told.paragraphs())
        .extracting(Feedback.Paragraph::text)
        .containsExactly(
            "From 0:00 to 1:00 (pulse, not breathing): " + NEXT_SAID,
            WHY_SAID,
            "From 12:30 (pulse, not breathing): It stood still for a while, which is no fault of yours.",
            "Likewise in 2 other parts; see there.");
  }
}
