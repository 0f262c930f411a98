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
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;

/**
 * Plays real sound into a sound server of its own and measures what comes out. In real time: {@code
 * -Dsqueezewell.live.seconds=300} makes the long run, for exact figures. Skipped where the server's
 * tools are missing, unless {@code -Dsqueezewell.require=sound}.
 */
@Tag("sound")
class LiveSoundTest {
  private static final double JUMP = 0.1;
  private static final int COUNT_IN_SECONDS = 6;
  private static final int ATTEMPTS = 8;

  /** Of the seven between the squeezes of 45 seconds. */
  private static final int ENOUGH_INTERVALS = 5;

  /** Cues needed to speak of a drift. */
  private static final int LONG_ENOUGH = 10;

  @TempDir Path folder;

  @BeforeAll
  static void needsASoundServer() {
    List<String> missing = PulseSandbox.missingTools();
    boolean required = System.getProperty("squeezewell.require", "").contains("sound");
    if (required) {
      assertThat(missing).as("tools that must be there").isEmpty();
    }
    assumeTrue(missing.isEmpty(), "no live sound test: missing " + missing);
  }

  @Test
  void cuesLeaveTheDeviceOnTime() throws Exception {
    long seconds = Long.getLong("squeezewell.live.seconds", 45);
    PracticePlan plan = LivePlayer.plan(seconds * Plans.SECOND, COUNT_IN_SECONDS);
    List<Cue> cues =
        distinct(
            CueSchedule.of(plan).between((COUNT_IN_SECONDS - 2) * Plans.SECOND, Long.MAX_VALUE));
    List<Long> asked = frames(cues);
    List<Long> squeezes =
        frames(cues.stream().filter(cue -> cue.kind() == CueKind.SQUEEZE).toList());
    long begin = asked.get(0);
    long end = asked.get(asked.size() - 1);
    int intervals = 0;
    // A machine too busy to keep the device fed spoils some moments; those measure the machine.
    for (int attempt = 0; attempt < ATTEMPTS && intervals < ENOUGH_INTERVALS; attempt++) {
      Path raw = folder.resolve("heard-" + attempt + ".raw");
      List<String> lines = play(seconds, raw);
      lines.forEach(System.out::println);
      assertThat(lines).anyMatch(l -> l.contains("state=PLAYING")).anyMatch(l -> l.contains("END"));
      if (Heard.hopeless(lines, begin, end)) {
        continue;
      }
      Heard heard = Heard.of(asked, Recording.onsets(raw, JUMP), lines);
      try {
        intervals += steadyIntervals(heard, squeezes);
      } catch (AssertionError failure) {
        Heard.blame(failure, lines, begin, end);
      }
    }
    assertThat(intervals)
        .as("intervals between squeezes that a busy machine did not spoil")
        .isGreaterThanOrEqualTo(ENOUGH_INTERVALS);
  }

  /** Checks what was heard, and tells how many intervals between squeezes that was. */
  private static int steadyIntervals(Heard heard, List<Long> squeezes) {
    assertThat(heard.missing()).as("cues not heard, frames").isEmpty();
    assertThat(heard.extra()).as("sounds nobody asked for, frames").isEmpty();
    int intervals = 0;
    for (Heard.Segment segment : heard.segments()) {
      if (segment.asked().size() > 1) {
        Steadiness all = segment.steadiness();
        System.out.println("all cues: " + all);
        assertThat(all.spreadMillis()).as("spread, %s", segment).isLessThanOrEqualTo(5);
        if (all.onsets() >= LONG_ENOUGH) {
          assertThat(Math.abs(all.driftMillisPerMinute())).as("drift, %s", segment).isLessThan(1);
        }
      }
    }
    for (Heard.Segment segment : heard.only(squeezes).segments()) {
      if (segment.asked().size() > 1) {
        intervals += segment.asked().size() - 1;
        System.out.println("squeezes: " + segment.steadiness());
        assertThat(segment.steadiness().worstIntervalFrames())
            .as("%s", segment)
            .isLessThanOrEqualTo(1);
      }
    }
    return intervals;
  }

  private List<String> play(long seconds, Path raw) throws IOException {
    Path output = folder.resolve("player.txt");
    try (PulseSandbox sandbox = new PulseSandbox(folder)) {
      sandbox.record(raw);
      Process player =
          sandbox.java(
              output, LivePlayer.class, Long.toString(seconds), Integer.toString(COUNT_IN_SECONDS));
      PulseSandbox.await(player, seconds + COUNT_IN_SECONDS + 30);
    }
    return Files.readAllLines(output);
  }

  @Test
  void aLostDeviceIsReportedAndComesBack() throws Exception {
    Path output = folder.resolve("player.txt");
    try (PulseSandbox sandbox = new PulseSandbox(folder)) {
      sandbox.record(folder.resolve("heard.raw"));
      Process player = sandbox.java(output, LivePlayer.class, "25", "1");
      awaitLine(output, "state=PLAYING", 1);
      sandbox.killServer();
      awaitLine(output, "state=LOST", 1);
      sandbox.startServer();
      Path raw = folder.resolve("heard-again.raw");
      sandbox.record(raw);
      awaitLine(output, "state=PLAYING", 2);
      PulseSandbox.await(player, 60);
      assertThat(Recording.onsets(raw, JUMP)).as("cues after the loss").hasSizeGreaterThan(5);
    }
    Files.readAllLines(output).forEach(System.out::println);
  }

  private static void awaitLine(Path output, String text, int times)
      throws IOException, InterruptedException {
    long deadline = System.nanoTime() + 15 * Plans.SECOND;
    while (Files.readAllLines(output).stream().filter(l -> l.contains(text)).count() < times) {
      assertThat(System.nanoTime()).as("waiting for " + text).isLessThan(deadline);
      Thread.sleep(20);
    }
  }

  private static List<Long> frames(List<Cue> cues) {
    List<Long> frames = new ArrayList<>();
    for (Cue cue : cues) {
      frames.add(Frames.at(cue.atNanos(), PulseSandbox.RATE));
    }
    return frames;
  }

  /** Cues of one instant make one onset. */
  private static List<Cue> distinct(List<Cue> cues) {
    List<Cue> distinct = new ArrayList<>();
    for (Cue cue : cues) {
      if (distinct.isEmpty() || distinct.get(distinct.size() - 1).atNanos() != cue.atNanos()) {
        distinct.add(cue);
      }
    }
    return distinct;
  }
}
