package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LineQueueTest {
  private static final int RATE = 48_000;
  private static final long STALE = 5L * RATE;

  private final LineQueue queue = new LineQueue(RATE);

  @Test
  void linesComeInTheOrderInWhichTheyWereSaid() {
    add(0, false);
    add(10, false);
    assertThat(left(20)).containsExactly(0L, 10L);
  }

  @Test
  void anUrgentLineDropsThoseThatAreNotButNoOtherUrgentOne() {
    add(0, false);
    add(1, true);
    add(2, false);
    add(3, true);
    assertThat(left(20)).containsExactly(1L, 3L);
  }

  @Test
  void aLineThatWaitedForMoreThanFiveSecondsIsDropped() {
    add(0, false);
    add(RATE, false);
    assertThat(queue.peek(STALE).map(LineQueue.Said::atFrame)).contains(0L);
    assertThat(queue.peek(STALE + 1).map(LineQueue.Said::atFrame)).contains((long) RATE);
    assertThat(queue.peek(STALE + RATE + 1)).isEmpty();
    assertThat(queue.isEmpty()).isTrue();
  }

  @Test
  void ofTooManyTheOldestGo() {
    for (int i = 0; i < 100_000; i++) {
      add(i, false);
    }
    assertThat(left(99_999)).containsExactly(99_996L, 99_997L, 99_998L, 99_999L);
  }

  @Test
  void aLineThatGaveWayIsTheNextUnlessAnUrgentOneWaits() {
    add(5, false);
    queue.putBack(said(3, false));
    assertThat(left(20)).containsExactly(3L, 5L);
    add(5, true);
    queue.putBack(said(3, false));
    assertThat(left(20)).containsExactly(5L);
  }

  private void add(long atFrame, boolean urgent) {
    queue.add(said(atFrame, urgent));
  }

  private static LineQueue.Said said(long atFrame, boolean urgent) {
    return new LineQueue.Said(
        new SpokenLine(new short[10], 12_000), atFrame, urgent, Optional.empty());
  }

  /** Takes all that is left at a frame. */
  private List<Long> left(long frame) {
    List<Long> left = new ArrayList<>();
    for (Optional<LineQueue.Said> next = queue.peek(frame);
        next.isPresent();
        next = queue.peek(frame)) {
      left.add(next.get().atFrame());
      queue.removeFirst();
    }
    return left;
  }
}
