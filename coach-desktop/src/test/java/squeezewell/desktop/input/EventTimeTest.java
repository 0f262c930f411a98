package squeezewell.desktop.input;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class EventTimeTest {
  private static final long NOW = 5_000_000_000L;

  @Test
  void aLateEventIsPutBackToWhenItHappened() {
    assertThat(EventTime.nanoTimeOf(970, 1_000, NOW)).isEqualTo(NOW - 30_000_000L);
  }

  @Test
  void aStampFromTheFutureOrTheFarPastIsNotBelieved() {
    assertThat(EventTime.nanoTimeOf(1_001, 1_000, NOW)).isEqualTo(NOW);
    assertThat(EventTime.nanoTimeOf(499, 1_000, NOW)).isEqualTo(NOW);
    assertThat(EventTime.nanoTimeOf(500, 1_000, NOW)).isEqualTo(NOW - 500_000_000L);
  }
}
