package squeezewell.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import squeezewell.protocol.Judgement;

class MarkIndexTest {
  @Test
  void allMarksThatTouchASpanAreFoundAsALookAtEachFindsThem() {
    SplittableRandom random = new SplittableRandom(7);
    for (int run = 0; run < 200; run++) {
      List<RibbonMark> marks = new ArrayList<>();
      for (int i = random.nextInt(30); i > 0; i--) {
        long start = random.nextInt(1000);
        marks.add(mark(RibbonMark.Kind.BREATH, start, start + random.nextInt(200)));
      }
      MarkIndex index = MarkIndex.of(marks);
      long from = random.nextInt(1000);
      long to = from + random.nextInt(300);
      List<RibbonMark> touching = new ArrayList<>();
      for (RibbonMark mark : index.marks()) {
        if (mark.startNanos() <= to && mark.endNanos() >= from) {
          touching.add(mark);
        }
      }
      assertThat(index.around(from, to)).containsAll(touching);
      assertThat(index.around(from, to)).allMatch(m -> m.startNanos() <= to);
      long at = random.nextInt(1200);
      long first = index.marks().stream().filter(m -> m.startNanos() < at).count();
      int size = index.marks().size();
      assertThat(index.firstFrom(at)).isEqualTo(first == size ? MarkIndex.NONE : (int) first);
    }
  }

  @Test
  void theNearestMarkOfTheLaneIsFoundAndAHoldOnlyWhereNothingElseIs() {
    MarkIndex index =
        MarkIndex.of(
            List.of(
                mark(RibbonMark.Kind.PULSE_CHECK, 100, 200),
                mark(RibbonMark.Kind.PROMPT, 210, 210),
                mark(RibbonMark.Kind.BREATH, 215, 225)));
    assertThat(index.nearest(150, 20, true)).isEqualTo(0);
    assertThat(index.nearest(195, 20, true)).isEqualTo(1);
    assertThat(index.nearest(214, 20, true)).isEqualTo(1);
    assertThat(index.nearest(214, 20, false)).isEqualTo(2);
    // In a breath the distance is nothing; after it, from its end.
    assertThat(index.nearest(240, 20, false)).isEqualTo(2);
    assertThat(index.nearest(250, 20, false)).isEqualTo(MarkIndex.NONE);
    assertThat(index.nearest(90, 20, false)).isEqualTo(MarkIndex.NONE);
  }

  @Test
  void steppingPassesOverWhatIsNotWanted() {
    MarkIndex index =
        MarkIndex.of(
            List.of(
                mark(RibbonMark.Kind.PROMPT, 1, 1),
                mark(RibbonMark.Kind.BREATH, 2, 3),
                mark(RibbonMark.Kind.PROMPT, 4, 4)));
    assertThat(index.next(0, 1, i -> i == 2)).isEqualTo(2);
    assertThat(index.next(2, -1, i -> true)).isEqualTo(1);
    assertThat(index.next(2, 1, i -> true)).isEqualTo(MarkIndex.NONE);
  }

  private static RibbonMark mark(RibbonMark.Kind kind, long start, long end) {
    return new RibbonMark(kind, start, end, Judgement.UNJUDGED);
  }
}
