package squeezewell.desktop.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class EventTimeTest {
  private static final long MILLI = 1_000_000L;
  private static final long NOW = 5_000 * MILLI;

  private final EventTime time = new EventTime();

  @Test
  void aLateEventIsPutBackToWhenItHappened() {
    assertThat(time.nanoTimeOf(1_000, NOW)).isEqualTo(NOW);
    assertThat(time.nanoTimeOf(1_970, NOW + 1_000 * MILLI))
        .isCloseTo(NOW + 970 * MILLI, within(MILLI));
  }

  @Test
  void aBetterStampCorrectsWhatAnEarlierOneTaught() {
    time.nanoTimeOf(1_000, NOW + 80 * MILLI);

    assertThat(time.nanoTimeOf(2_000, NOW + 1_000 * MILLI)).isEqualTo(NOW + 1_000 * MILLI);
    assertThat(time.nanoTimeOf(3_000, NOW + 2_050 * MILLI))
        .isCloseTo(NOW + 2_000 * MILLI, within(MILLI));
  }

  @Test
  void aClockThatWasSetIsNotBelieved() {
    time.nanoTimeOf(10_000, NOW);

    assertThat(time.nanoTimeOf(9_000, NOW + 100 * MILLI)).isEqualTo(NOW + 100 * MILLI);
    assertThat(time.nanoTimeOf(20_000, NOW + 200 * MILLI)).isEqualTo(NOW + 200 * MILLI);
  }

  /** However the toolkit's stamps are off as a whole, once one event came undelayed. */
  @Property(tries = 200)
  void whateverTheStampsAreOffByInstantsAreRight(
      @ForAll @LongRange(min = -100_000, max = 100_000) long offMillis,
      @ForAll @Size(min = 1, max = 40) List<@IntRange(min = 0, max = 400) Integer> delays) {
    EventTime learning = new EventTime();
    learning.nanoTimeOf(1_000 + offMillis, 1_000 * MILLI);
    long happened = 1_000;
    for (int delay : delays) {
      happened += 500;
      assertThat(learning.nanoTimeOf(happened + offMillis, (happened + delay) * MILLI))
          .isCloseTo(happened * MILLI, within((happened - 1_000) * MILLI / 2_000 + MILLI));
    }
  }
}
