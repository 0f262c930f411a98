package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Changes the rhythm at random moments of a real practice on real sound, records it and measures
 * what comes out. In real time, about a minute; {@code -Dsqueezewell.live.seed=7} chooses other
 * moments. Skipped and required like {@link LiveSoundTest}.
 */
@Tag("sound")
class LiveSwitchingTest {
  private static final double JUMP = 0.1;
  private static final int COUNT_IN_SECONDS = 5;
  private static final int CHANGES = 22;
  private static final int ATTEMPTS = 8;

  /** So many changes must have been measured. */
  private static final int ENOUGH = 15;

  private static final double MOST_DELAY_MILLIS = 50;
  private static final double FRAMES_PER_MILLI = PulseSandbox.RATE / 1_000.0;

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
  void eachChangeIsHeardWithinFiftyMillisecondsWithoutAGapADoubleOrAClick() throws Exception {
    long seed = Long.getLong("squeezewell.live.seed", 2_026);
    Measured measured = Measured.nothing();
    // A machine too busy to keep the device fed spoils some moments; those measure the machine.
    for (int attempt = 0; attempt < ATTEMPTS && measured.delays().size() < ENOUGH; attempt++) {
      Path raw = folder.resolve("heard-" + attempt + ".raw");
      List<String> lines = play(raw, seed + attempt);
      lines.stream().filter(l -> !l.startsWith("CUE")).forEach(System.out::println);
      assertThat(lines).anyMatch(l -> l.contains("state=PLAYING")).contains("END");
      assertThat(frames(lines, "COMMAND")).hasSize(CHANGES);
      List<Long> cues = frames(lines, "CUE");
      long begin = cues.get(0);
      long end = cues.get(cues.size() - 1);
      if (Heard.hopeless(lines, begin, end)) {
        continue;
      }
      Measured run = measure(lines, Recording.everyJump(raw, JUMP));
      System.out.println(run);
      try {
        assertThat(run.delays()).as("delays, ms").allMatch(d -> d <= MOST_DELAY_MILLIS);
        assertThat(run.missing()).as("cues not heard, frames").isEmpty();
        assertThat(run.extra()).as("clicks or cues given twice, frames").isEmpty();
        measured = measured.and(run);
      } catch (AssertionError failure) {
        Heard.blame(failure, lines, begin, end);
      }
    }
    System.out.println(measured);
    assertThat(measured.delays())
        .as("changes that a busy machine did not spoil, milliseconds to the first sound")
        .hasSizeGreaterThanOrEqualTo(ENOUGH);
  }

  private static Measured measure(List<String> lines, List<Long> heard) {
    TreeSet<Long> asked = new TreeSet<>(frames(lines, "CUE"));
    NavigableMap<Long, Long> spoilt = Heard.spoilt(lines);
    long offset = Heard.offset(List.copyOf(asked), heard);
    List<Long> extra = new ArrayList<>();
    List<Long> errors = new ArrayList<>();
    TreeSet<Long> missing = new TreeSet<>(asked);
    for (long frame : heard) {
      long at = frame - offset;
      Long nearest = nearest(asked, at);
      long error = at - nearest;
      if (at < asked.first() - 1 || at > asked.last() + 15 * FRAMES_PER_MILLI) {
        continue;
      }
      if (Math.abs(error) <= 15 * FRAMES_PER_MILLI && missing.remove(nearest)) {
        errors.add(error);
      } else {
        extra.add(at);
      }
    }
    // What was in the device when a command took it back may still be heard, and nothing else.
    boolean corrected = lines.stream().anyMatch(l -> l.startsWith(DryWatch.CORRECTED));
    double tolerance = corrected ? 15 * FRAMES_PER_MILLI : 1;
    for (long taken : frames(lines, "BEFORE")) {
      extra.removeIf(frame -> Math.abs(frame - taken) <= tolerance);
    }
    extra.removeIf(frame -> Heard.spoilt(spoilt, frame, frame));
    missing.removeIf(frame -> Heard.spoilt(spoilt, frame, frame));
    List<Double> delays = new ArrayList<>();
    long widened = frames(lines, DryWatch.WIDENED).stream().findFirst().orElse(Long.MAX_VALUE / 2);
    for (long command : frames(lines, "COMMAND")) {
      long end = command + Math.round(MOST_DELAY_MILLIS * FRAMES_PER_MILLI);
      // A buffer that had to grow is heard later by its length.
      if (command < widened && !Heard.spoilt(spoilt, command, end)) {
        long first =
            heard.stream()
                .map(f -> f - offset)
                .filter(f -> f >= command && nearest(asked, f) >= command)
                .findFirst()
                .orElseThrow();
        delays.add((first - command) / FRAMES_PER_MILLI);
      }
    }
    return new Measured(delays, List.copyOf(missing), extra, errors);
  }

  /** What was measured in one or more attempts. */
  private record Measured(
      List<Double> delays, List<Long> missing, List<Long> extra, List<Long> errors) {
    static Measured nothing() {
      return new Measured(List.of(), List.of(), List.of(), List.of());
    }

    Measured and(Measured next) {
      return new Measured(
          joined(delays, next.delays),
          joined(missing, next.missing),
          joined(extra, next.extra),
          joined(errors, next.errors));
    }

    private static <T> List<T> joined(List<T> a, List<T> b) {
      return Stream.concat(a.stream(), b.stream()).toList();
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%d changes: first sound of the new rhythm %.2f to %.2f ms after the command, mean %.2f"
              + " ms; %d cues heard, %d missing, %d extra; off by %.3f to %.3f ms",
          delays.size(),
          delays.stream().mapToDouble(d -> d).min().orElse(Double.NaN),
          delays.stream().mapToDouble(d -> d).max().orElse(Double.NaN),
          delays.stream().mapToDouble(d -> d).average().orElse(Double.NaN),
          errors.size(),
          missing.size(),
          extra.size(),
          errors.stream().mapToDouble(e -> e / FRAMES_PER_MILLI).min().orElse(Double.NaN),
          errors.stream().mapToDouble(e -> e / FRAMES_PER_MILLI).max().orElse(Double.NaN));
    }
  }

  private List<String> play(Path raw, long seed) throws IOException {
    Path output = folder.resolve("player-" + seed + ".txt");
    try (PulseSandbox sandbox = new PulseSandbox(folder)) {
      sandbox.record(raw);
      Process player =
          sandbox.java(
              output,
              SwitchingPlayer.class,
              Integer.toString(CHANGES),
              Long.toString(seed),
              Integer.toString(COUNT_IN_SECONDS));
      PulseSandbox.await(player, 90);
    }
    return Files.readAllLines(output);
  }

  private static long nearest(NavigableSet<Long> frames, long frame) {
    Long below = frames.floor(frame);
    Long above = frames.ceiling(frame);
    if (below == null || above == null) {
      return below == null ? above : below;
    }
    return frame - below <= above - frame ? below : above;
  }

  private static List<Long> frames(List<String> lines, String word) {
    List<Long> frames = new ArrayList<>();
    for (String line : lines) {
      String[] parts = line.split(" ", 3);
      if (parts[0].equals(word)) {
        frames.add(Frames.at(Long.parseLong(parts[1]), PulseSandbox.RATE));
      }
    }
    return frames;
  }
}
