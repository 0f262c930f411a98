package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TimeWindowTest {
  private static final long SECOND = 1_000_000_000L;

  @Test
  void zoomingKeepsTheAnchorWhereItStands() {
    TimeWindow window = new TimeWindow(0, 100 * SECOND, 20 * SECOND, 60 * SECOND);
    // Worked by hand: 30 s stands a quarter in; of 20 s a quarter is 5 s, so from 25 to 45 s.
    TimeWindow half = window.zoomed(0.5, 30 * SECOND);
    assertThat(half.fromNanos()).isEqualTo(25 * SECOND);
    assertThat(half.toNanos()).isEqualTo(45 * SECOND);
    assertThat(window.zoomed(10, 30 * SECOND).isWhole()).isTrue();
    assertThat(window.zoomed(1e-6, 30 * SECOND).lengthNanos()).isEqualTo(TimeWindow.LEAST_NANOS);
  }

  @Test
  void movingStopsAtTheEnds() {
    TimeWindow window = new TimeWindow(0, 100 * SECOND, 20 * SECOND, 60 * SECOND);
    assertThat(window.moved(10 * SECOND).fromNanos()).isEqualTo(30 * SECOND);
    assertThat(window.moved(90 * SECOND).toNanos()).isEqualTo(100 * SECOND);
    assertThat(window.moved(-90 * SECOND).fromNanos()).isZero();
    assertThat(window.moved(90 * SECOND).lengthNanos()).isEqualTo(40 * SECOND);
  }

  @Test
  void whateverIsDoneTheWindowStaysInThePracticeAndShowsWhatItShould() {
    SplittableRandom random = new SplittableRandom(11);
    for (int run = 0; run < 50; run++) {
      long start = random.nextLong(10 * SECOND);
      TimeWindow window = TimeWindow.whole(start, start + 1 + random.nextLong(4000 * SECOND));
      for (int i = 0; i < 100; i++) {
        long at = window.fromNanos() + random.nextLong(window.lengthNanos() + 1);
        window =
            switch (random.nextInt(3)) {
              case 0 -> window.zoomed(random.nextDouble(0.1, 4), at);
              case 1 -> window.moved(random.nextLong(-2000 * SECOND, 2000 * SECOND));
              default -> window;
            };
        // The record itself refuses a window that leaves the practice.
        long wanted =
            window.startNanos() + random.nextLong(window.endNanos() - window.startNanos());
        TimeWindow showing = window.showing(wanted);
        assertThat(wanted).isBetween(showing.fromNanos(), showing.toNanos());
        assertThat(showing.lengthNanos()).isEqualTo(window.lengthNanos());
      }
    }
    assertThatThrownBy(() -> new TimeWindow(0, 10, 5, 11))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
