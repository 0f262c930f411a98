package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FinishGuardTest {
  private static final long SECOND = 1_000_000_000L;

  private final FinishGuard guard = new FinishGuard();

  @Test
  void oneSlipEndsNothing() {
    assertThat(guard.press(false, 10 * SECOND)).isFalse();
    assertThat(guard.waits(15 * SECOND)).isTrue();
    assertThat(guard.waits(15 * SECOND + 1)).isFalse();
    // Too late: it asks again.
    assertThat(guard.press(false, 16 * SECOND)).isFalse();
    assertThat(guard.press(false, 17 * SECOND)).isTrue();
  }

  @Test
  void whenAllIsDoneOnePressIsEnough() {
    assertThat(guard.press(true, 10 * SECOND)).isTrue();
    assertThat(guard.waits(10 * SECOND)).isFalse();
  }
}
