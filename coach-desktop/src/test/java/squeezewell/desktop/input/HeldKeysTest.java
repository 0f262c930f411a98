package squeezewell.desktop.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class HeldKeysTest {
  private static final long MS = 1_000_000L;
  private static final int SPACE = 32;
  private static final int PEDAL = 112;

  private final List<String> heard = new ArrayList<>();
  private final HeldKeys keys =
      new HeldKeys(at -> heard.add("down " + at / MS), at -> heard.add("up " + at / MS));

  @Test
  void aPlainHoldIsOneHold() {
    keys.pressed(SPACE, 100 * MS);
    keys.released(SPACE, 1_100 * MS);
    keys.settle(1_200 * MS);
    assertThat(heard).containsExactly("down 100", "up 1100");
  }

  @Test
  void repeatedPressesWithoutReleasesAreOneHold() {
    // As seen on a Linux desktop: a press, from 660 ms on another every 40 ms, one release.
    keys.pressed(SPACE, 0);
    for (int at = 660; at < 1_000; at += 40) {
      keys.pressed(SPACE, at * MS);
    }
    keys.released(SPACE, 1_000 * MS);
    keys.settle(1_100 * MS);
    assertThat(heard).containsExactly("down 0", "up 1000");
  }

  @Test
  void repeatsThatComeAsReleaseAndPressAreOneHold() {
    keys.pressed(SPACE, 0);
    for (int at = 660; at < 1_000; at += 40) {
      keys.released(SPACE, at * MS);
      keys.settle(at * MS + MS / 2);
      keys.pressed(SPACE, at * MS + MS);
    }
    keys.released(SPACE, 1_000 * MS);
    keys.settle(1_100 * MS);
    assertThat(heard).containsExactly("down 0", "up 1000");
  }

  @Test
  void theEndIsStampedWhenTheKeyWentUpAndNotWhenThatBecameCertain() {
    keys.pressed(SPACE, 0);
    keys.released(SPACE, 900 * MS);
    assertThat(keys.settle(905 * MS)).hasValue(920 * MS);
    assertThat(heard).containsExactly("down 0");
    assertThat(keys.settle(920 * MS)).isEmpty();
    assertThat(heard).containsExactly("down 0", "up 900");
  }

  @Test
  void twoQuickSqueezesStayTwo() {
    keys.pressed(SPACE, 0);
    keys.released(SPACE, 300 * MS);
    keys.pressed(SPACE, 360 * MS);
    keys.released(SPACE, 700 * MS);
    keys.settle(800 * MS);
    assertThat(heard).containsExactly("down 0", "up 300", "down 360", "up 700");
  }

  @Test
  void twoKeysTogetherAreOneHoldUntilTheLastIsLetGo() {
    keys.pressed(SPACE, 0);
    keys.pressed(PEDAL, 200 * MS);
    keys.released(SPACE, 500 * MS);
    keys.settle(600 * MS);
    keys.released(PEDAL, 900 * MS);
    keys.settle(1_000 * MS);
    assertThat(heard).containsExactly("down 0", "up 900");
  }

  @Test
  void losingTheKeyboardEndsTheHold() {
    keys.pressed(SPACE, 0);
    keys.releaseAll(400 * MS);
    keys.released(SPACE, 900 * MS);
    keys.settle(1_000 * MS);
    assertThat(heard).containsExactly("down 0", "up 400");
  }

  @Test
  void aReleaseWithoutAPressIsNothing() {
    keys.released(SPACE, 10 * MS);
    keys.settle(100 * MS);
    keys.releaseAll(200 * MS);
    assertThat(heard).isEmpty();
  }

  @Property
  void anyPatternOfRepeatsIsOneHold(
      @ForAll List<@IntRange(min = 0, max = 19) Integer> gapsMillis,
      @ForAll @IntRange(min = 25, max = 200) int betweenMillis) {
    heard.clear();
    keys.pressed(SPACE, 0);
    long at = 250 * MS;
    for (int gap : gapsMillis) {
      keys.released(SPACE, at);
      keys.pressed(SPACE, at + gap * MS);
      at += betweenMillis * MS;
      keys.settle(at);
    }
    keys.released(SPACE, at);
    keys.settle(at + 50 * MS);
    assertThat(heard).containsExactly("down 0", "up " + at / MS);
  }
}
