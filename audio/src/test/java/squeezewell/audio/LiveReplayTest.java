package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A replay at four times the speed on real sound, recorded. Skipped where the sound server's tools
 * are missing, unless {@code -Dsqueezewell.require=sound}.
 */
@Tag("sound")
class LiveReplayTest {
  private static final int ATTEMPTS = 3;

  @TempDir Path folder;

  @BeforeAll
  static void needsASoundServer() {
    List<String> missing = PulseSandbox.missingTools();
    if (System.getProperty("squeezewell.require", "").contains("sound")) {
      assertThat(missing).as("tools that must be there").isEmpty();
    }
    assumeTrue(missing.isEmpty(), "no live sound test: missing " + missing);
  }

  @Test
  void whatWasDoneLeavesTheDeviceAtItsDistancesDividedByTheSpeed() throws Exception {
    List<Long> heard = List.of();
    boolean ranDry = true;
    // A machine too busy to keep the device fed can't be measured; that is another matter.
    for (int attempt = 0; attempt < ATTEMPTS && ranDry; attempt++) {
      Path raw = folder.resolve("heard-" + attempt + ".raw");
      List<String> lines = play(raw);
      lines.forEach(System.out::println);
      assertThat(lines).contains("END");
      ranDry = !lines.contains("HOLES 0");
      heard = Recording.onsets(raw, 0.1);
    }
    assertThat(ranDry).as("the device ran dry in each attempt").isFalse();
    List<Long> asked = new ArrayList<>();
    for (long millis : ReplaySoundTest.done()) {
      asked.add(millis * 48 / LiveReplayPlayer.SPEED);
    }
    assertThat(heard).hasSameSizeAs(asked);
    for (int i = 1; i < asked.size(); i++) {
      long error = (heard.get(i) - heard.get(0)) - (asked.get(i) - asked.get(0));
      assertThat(Math.abs(error)).as("frames off at sound %d", i).isLessThanOrEqualTo(1);
    }
  }

  private List<String> play(Path raw) throws IOException {
    Path output = folder.resolve("player.txt");
    try (PulseSandbox sandbox = new PulseSandbox(folder)) {
      sandbox.record(raw);
      PulseSandbox.await(sandbox.java(output, LiveReplayPlayer.class), 60);
    }
    return Files.readAllLines(output);
  }
}
