package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.review.compare.Comparison;
import squeezewell.review.say.Review;

class CompareViewTest {
  @Test
  void whatIsOutsideItsTargetStandsFirstAndBothRibbonsHaveOneScale() {
    Review fast = Practices.review(Practices.every(3));
    Review good = Practices.review(Practices.every(6));
    CompareView view = CompareView.of(Comparison.of(fast, good), fast, good);
    assertThat(view.groups())
        .extracting(CompareView.Group::heading)
        .containsExactly("Outside the target", "Within the target", "Shown, without a target");
    assertThat(view.groups().get(0).rows())
        .anySatisfy(
            row -> {
              assertThat(row.spoken())
                  .isEqualTo("Intervals in range: A 0 of 39, B 19 of 19, ! outside in A");
            });
    assertThat(view.marksA()).isNotEmpty();
    assertThat(view.toNanos()).isGreaterThan(Math.max(fast.endNanos(), good.endNanos()));
  }

  @Test
  void twoAreChosenTheOlderIsAAndAThirdChangesNothing() {
    CompareChoice one = CompareChoice.NONE.toggle(0);
    assertThat(one.mark(0)).isEqualTo("\u2713 Chosen");
    assertThat(one.isComplete()).isFalse();
    CompareChoice two = one.toggle(2);
    assertThat(two.mark(2)).contains("A (earlier)");
    assertThat(two.mark(0)).contains("B (later)");
    assertThat(two.mark(1)).isEmpty();
    assertThat(two.toggle(1)).isEqualTo(two);
    assertThat(two.toggle(2)).isEqualTo(one);
    List<Path> files = List.of(Path.of("new"), Path.of("middle"), Path.of("old"));
    assertThat(two.files(files)).hasValue(List.of(Path.of("old"), Path.of("new")));
    assertThat(one.files(files)).isEmpty();
  }
}
