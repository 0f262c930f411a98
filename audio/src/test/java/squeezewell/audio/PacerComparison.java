package squeezewell.audio;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/**
 * Compares three ways to give a beat each second, recorded and measured alike: our sound output, a
 * Swing timer and a sleeping thread. Needs the tools of {@link PulseSandbox}. In real time:
 *
 * <pre>
 * mvn -B test-compile -pl audio -am
 * java -cp audio/target/test-classes:audio/target/classes:coach-core/target/classes:GSON_JAR \
 *     squeezewell.audio.PacerComparison 120
 * </pre>
 *
 * <p>GSON_JAR is Gson's jar in the local Maven repository, by which protocols are read.
 */
public final class PacerComparison {
  private static final double JUMP = 0.1;
  private static final double FRAME_MILLIS = 1_000.0 / PulseSandbox.RATE;

  private PacerComparison() {}

  public static void main(String[] arguments) throws Exception {
    int seconds = Integer.parseInt(arguments[0]);
    double ours = measure("our output", LivePlayer.class, seconds, Integer.toString(seconds), "5");
    for (String way : new String[] {"swing", "sleep"}) {
      double naive =
          measure("naive " + way, NaiveBeeper.class, seconds, way, Integer.toString(seconds));
      System.out.printf(
          Locale.ROOT,
          "%s spreads %.0f times as much as ours (ours counted as one frame at least)%n",
          way,
          naive / Math.max(ours, FRAME_MILLIS));
    }
  }

  /** Plays, records, and tells how far the intervals are spread, in milliseconds. */
  private static double measure(String name, Class<?> main, int seconds, String... command)
      throws Exception {
    Path folder = Files.createTempDirectory("squeezewell-pacers");
    Path raw = folder.resolve("heard.raw");
    try (PulseSandbox sandbox = new PulseSandbox(folder)) {
      sandbox.record(raw);
      PulseSandbox.await(sandbox.java(folder.resolve("out.txt"), main, command), seconds + 30L);
    }
    List<Long> heard = Recording.onsets(raw, JUMP);
    if (heard.size() < 10) {
      throw new IllegalStateException(name + ": only " + heard.size() + " sounds were heard");
    }
    // What a device does while it starts is not compared.
    heard = heard.subList(Math.min(5, heard.size()), heard.size());
    List<Long> intervals = new ArrayList<>();
    for (int i = 1; i < heard.size(); i++) {
      intervals.add(heard.get(i) - heard.get(i - 1));
    }
    Collections.sort(intervals);
    // A beat that was not heard at all is counted apart, in favour of whoever lost it.
    long limit = intervals.get(intervals.size() / 2) * 3 / 2;
    int lost = (int) intervals.stream().filter(i -> i > limit).count();
    long least = intervals.get(0);
    long most = intervals.get(intervals.size() - 1 - lost);
    double spread = (most - least) * FRAME_MILLIS;
    System.out.printf(
        Locale.ROOT,
        "%s: %d beats, intervals %.3f to %.3f ms, spread %.3f ms, gaps by lost beats %d%n",
        name,
        heard.size(),
        least * FRAME_MILLIS,
        most * FRAME_MILLIS,
        spread,
        lost);
    return spread;
  }
}
