package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/**
 * Positions worked by hand: the position is the start plus the time that passed times the speed.
 */
class PlaybackTest {
  private static final long SECOND = 1_000_000_000L;
  private final Playback still = Playback.atStart(100 * SECOND);

  @Test
  void itStandsStillUntilItIsPlayed() {
    assertThat(still.positionAt(50 * SECOND)).isZero();
    assertThat(still.runsAt(50 * SECOND)).isFalse();
    assertThat(still.timeOf(0)).isEmpty();
  }

  @Test
  void itRunsAtItsSpeedAndEachChangeGoesOnFromThere() {
    Playback playing = still.play(10 * SECOND);
    assertThat(playing.positionAt(13 * SECOND)).isEqualTo(3 * SECOND);
    Playback fast = playing.at(8, 13 * SECOND);
    assertThat(fast.positionAt(13 * SECOND)).isEqualTo(3 * SECOND);
    assertThat(fast.positionAt(15 * SECOND)).isEqualTo(19 * SECOND);
    Playback paused = fast.pause(15 * SECOND);
    assertThat(paused.positionAt(1_000 * SECOND)).isEqualTo(19 * SECOND);
    assertThat(paused.speed()).isEqualTo(8);
    Playback back = paused.seek(5 * SECOND, 16 * SECOND).play(20 * SECOND);
    assertThat(back.positionAt(21 * SECOND)).isEqualTo(13 * SECOND);
  }

  @Test
  void aChangeThatTakesEffectAMomentAheadDoesNotRunBeforeIt() {
    Playback ahead = still.seek(7 * SECOND, 0).play(10 * SECOND);
    assertThat(ahead.positionAt(9 * SECOND)).isEqualTo(7 * SECOND);
  }

  @Test
  void itEndsAtTheEndAndStartsAnew() {
    Playback playing = still.at(4, 0).play(0);
    assertThat(playing.runsAt(25 * SECOND - 1)).isTrue();
    assertThat(playing.runsAt(25 * SECOND)).isFalse();
    assertThat(playing.positionAt(Long.MAX_VALUE)).isEqualTo(100 * SECOND);
    assertThat(playing.play(30 * SECOND).positionAt(31 * SECOND)).isEqualTo(4 * SECOND);
  }

  @Test
  void aPositionOutsideTheSessionCountsAsTheNearestInsideIt() {
    assertThat(still.seek(-SECOND, 0).positionAt(0)).isZero();
    assertThat(still.seek(101 * SECOND, 0).positionAt(0)).isEqualTo(100 * SECOND);
  }

  /** 1 s at 8 times the speed is 0.125 s; a week of frames at 30 a second adds up nothing. */
  @Test
  void itTellsWhenAPositionIsReachedAndNeverDrifts() {
    Playback fast = still.at(8, 0).play(2 * SECOND);
    assertThat(fast.timeOf(SECOND)).hasValue(2_125_000_000L);
    assertThat(fast.timeOf(101 * SECOND)).isEmpty();
    Playback week = Playback.atStart(8 * 7 * 86_400 * SECOND).at(8, 0).play(0);
    long frame = 7L * 86_400 * 30;
    assertThat(week.positionAt(frame * SECOND / 30)).isEqualTo(8 * 7 * 86_400 * SECOND);
    assertThat(week.positionAt((frame - 1) * SECOND / 30))
        .isEqualTo(8 * ((frame - 1) * SECOND / 30));
  }

  @Test
  void speedsGoUpAndDownWithinTheirRange() {
    assertThat(still.faster()).isEqualTo(2);
    assertThat(still.slower()).isEqualTo(1);
    assertThat(still.at(8, 0).faster()).isEqualTo(8);
    assertThat(still.at(8, 0).slower()).isEqualTo(4);
    assertThatThrownBy(() -> still.at(3, 0)).isInstanceOf(IllegalArgumentException.class);
  }
}
