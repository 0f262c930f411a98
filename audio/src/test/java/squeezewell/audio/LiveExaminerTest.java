package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Examiner's lines on real sound, recorded: there is sound where a line was said and for about as
 * long, and silence before and after. To within a second, so that a busy machine does not spoil it.
 * Skipped where the sound server's tools are missing, unless {@code -Dsqueezewell.require=sound}.
 */
@Tag("sound")
class LiveExaminerTest {
  private static final int ATTEMPTS = 3;
  private static final int RATE = PulseSandbox.RATE;
  private static final double SILENCE = 0.0005;
  private static final double SPEECH = 0.01;

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
  void linesAreHeardWhenTheyAreSaid() throws Exception {
    float[] heard = new float[0];
    int tone = -1;
    // A machine too busy to open a device in time says nothing about the lines.
    for (int attempt = 0; attempt < ATTEMPTS && tone < 0; attempt++) {
      Path raw = folder.resolve("heard-" + attempt + ".raw");
      List<String> lines = play(raw);
      lines.forEach(System.out::println);
      assertThat(lines).anyMatch(l -> l.endsWith("PREPARED 0")).anyMatch(l -> l.endsWith("END"));
      heard = samples(raw);
      tone = first(heard, 0);
    }
    assertThat(tone).as("the tone").isNotNegative();
    int zero = tone - ExaminerPlayer.TONE_MILLIS * (RATE / 1_000);
    List<Integer> ends = List.of(9_000, 14_000, ExaminerPlayer.END_MILLIS);
    for (int i = 0; i < ExaminerPlayer.AT_MILLIS.size(); i++) {
      int from = zero + ExaminerPlayer.AT_MILLIS.get(i) * (RATE / 1_000);
      String text = ExaminerPlayer.texts().get(i);
      int begin = first(heard, from - RATE / 2);
      assertThat((begin - from) / (double) RATE).as("begin of " + text).isBetween(-0.5, 1.0);
      assertThat(level(heard, begin, RATE / 2)).as(text).isGreaterThan(SPEECH);
      int end = last(heard, zero + ends.get(i) * (RATE / 1_000) - RATE);
      // English is spoken at 6 to 24 characters a second.
      assertThat(text.length() / ((end - begin) / (double) RATE)).as(text).isBetween(6.0, 24.0);
      assertThat(level(heard, from - RATE, RATE / 2)).as("before " + text).isLessThan(SILENCE);
    }
  }

  private List<String> play(Path raw) throws IOException {
    Path output = folder.resolve("player.txt");
    try (PulseSandbox sandbox = new PulseSandbox(folder)) {
      sandbox.record(raw);
      PulseSandbox.await(sandbox.java(output, ExaminerPlayer.class), 90);
    }
    return Files.readAllLines(output);
  }

  private static float[] samples(Path raw) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(raw)).order(ByteOrder.LITTLE_ENDIAN);
    float[] samples = new float[bytes.remaining() / 2];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = bytes.getShort() / 32_768f;
    }
    return samples;
  }

  private static int first(float[] heard, int from) {
    for (int i = Math.max(0, from); i < heard.length; i++) {
      if (Math.abs(heard[i]) > SPEECH) {
        return i;
      }
    }
    return -1;
  }

  private static int last(float[] heard, int until) {
    int at = Math.min(until, heard.length) - 1;
    while (at >= 0 && Math.abs(heard[at]) <= SPEECH) {
      at--;
    }
    return at;
  }

  private static double level(float[] heard, int from, int count) {
    double sum = 0;
    for (int i = from; i < Math.min(heard.length, from + count); i++) {
      sum += heard[i] * heard[i];
    }
    return Math.sqrt(sum / count);
  }
}
