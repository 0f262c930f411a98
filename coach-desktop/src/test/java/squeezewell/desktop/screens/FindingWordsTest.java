package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.review.judge.Finding;

class FindingWordsTest {
  private static Finding finding(String text) {
    return new Finding("too-fast", Finding.Severity.ADVICE, "A title", text);
  }

  @Test
  void whatToDoStandsByItself() {
    Finding finding =
        finding("It began 20 s late. That is long (a book). Next time begin at once.");
    assertThat(FindingWords.paragraphs(finding))
        .containsExactly("It began 20 s late. That is long (a book).", "Next time begin at once.");
    assertThat(FindingWords.whatToDo(List.of(finding))).contains("Next time begin at once.");
  }

  @Test
  void eachPartOfThePracticeBeginsAParagraphAndNoOtherTimeDoes() {
    assertThat(
            FindingWords.paragraphs(
                finding(
                    "From 0:00 to 1:00 (pulse): 11 s, from 0:19. Next time look. From 12:30 (no"
                        + " pulse): 12 s. From 1:20 on it was even. Likewise in 2 other parts; see"
                        + " there.")))
        .containsExactly(
            "From 0:00 to 1:00 (pulse): 11 s, from 0:19.",
            "Next time look.",
            "From 12:30 (no pulse): 12 s. From 1:20 on it was even.",
            "Likewise in 2 other parts; see there.");
  }

  @Test
  void onlyTheFirstFindingTellsWhatToDoFirst() {
    assertThat(FindingWords.whatToDo(List.of())).isEmpty();
    assertThat(
            FindingWords.whatToDo(List.of(finding("Too fast."), finding("Late. Next time look."))))
        .isEmpty();
  }
}
