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
  private static final int ATTEMPTS = 8;

  /** Of the twenty sounds of the practice. */
  private static final int ENOUGH = 15;

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
    List<Long> asked = new ArrayList<>();
    for (long millis : ReplaySoundTest.done()) {
      asked.add(millis * 48 / LiveReplayPlayer.SPEED + LiveReplayPlayer.BEGIN_FRAMES);
    }
    int measured = 0;
    // A machine too busy to keep the device fed spoils some moments; those measure the machine.
    for (int attempt = 0; attempt < ATTEMPTS && measured < ENOUGH; attempt++) {
      Path raw = folder.resolve("heard-" + attempt + ".raw");
      List<String> lines = play(raw);
      lines.forEach(System.out::println);
      assertThat(lines).contains("END");
      long begin = asked.get(0);
      long end = asked.get(asked.size() - 1);
      if (Heard.hopeless(lines, begin, end)) {
        continue;
      }
      try {
        measured += steadySounds(Heard.of(asked, Recording.onsets(raw, 0.1), lines));
      } catch (AssertionError failure) {
        Heard.blame(failure, lines, begin, end);
      }
    }
    assertThat(measured)
        .as("sounds that a busy machine did not spoil")
        .isGreaterThanOrEqualTo(ENOUGH);
  }

  /** Checks what was heard, and tells how many sounds that was. */
  private static int steadySounds(Heard heard) {
    assertThat(heard.missing()).as("not heard, frames").isEmpty();
    assertThat(heard.extra()).as("sounds nobody made, frames").isEmpty();
    int sounds = 0;
    for (Heard.Segment segment : heard.segments()) {
      sounds += segment.asked().size();
      assertThat(segment.steadiness().worstIntervalFrames())
          .as("%s", segment)
          .isLessThanOrEqualTo(1);
    }
    return sounds;
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
