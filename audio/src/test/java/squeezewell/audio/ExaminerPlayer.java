package squeezewell.audio;

import java.util.List;
import java.util.concurrent.ExecutionException;
import squeezewell.session.MonotonicClock;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.run.ExaminerLines;

/**
 * Says lines on the machine's sound device for {@link LiveExaminerTest}, in a JVM of its own: two
 * of a built-in station and one that has to be synthesised. A short tone, which the recording is
 * timed by, comes first. Prints when each was said, in milliseconds.
 */
public final class ExaminerPlayer {
  static final String OWN = "The lorry has stopped and the driver waves.";
  static final List<Integer> AT_MILLIS = List.of(4_000, 9_000, 14_000);
  static final int END_MILLIS = 20_000;

  /** When the tone comes. */
  static final int TONE_MILLIS = 2_000;

  private ExaminerPlayer() {}

  /** What is said, in order. */
  static List<String> texts() {
    Station station = StationLibrary.stations().get(0);
    List<String> all = ExaminerLines.all(station);
    return List.of(all.get(0), all.get(1), OWN);
  }

  public static void main(String[] arguments) throws InterruptedException, ExecutionException {
    MonotonicClock clock = MonotonicClock.startNow();
    try (LineStore store = new LineStore(JavaSoundSpeech::new);
        SoundOutput output =
            new SoundOutput(
                clock,
                SoundLevels.defaults(),
                new JavaSoundDevice(),
                status -> print(clock, "STATUS " + status.state()))) {
      store.prepare(texts());
      store.prepared().get();
      print(clock, "PREPARED " + store.unspoken());
      for (int look = 0; look < 400 && !output.status().playing(); look++) {
        Thread.sleep(50);
      }
      long zero = clock.nanos() / 1_000_000;
      waitUntil(clock, zero + TONE_MILLIS);
      output.say(tone(), false);
      for (int i = 0; i < AT_MILLIS.size(); i++) {
        waitUntil(clock, zero + AT_MILLIS.get(i));
        output.say(store.find(texts().get(i)).get(), false);
        print(clock, "SAID");
      }
      waitUntil(clock, zero + END_MILLIS);
    }
    print(clock, "END");
  }

  private static SpokenLine tone() {
    short[] samples = new short[1_200];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) (16_000 * Math.cos(2 * Math.PI * 800 * i / 12_000));
    }
    return new SpokenLine(samples, 12_000);
  }

  private static void waitUntil(MonotonicClock clock, long millis) throws InterruptedException {
    long wait = millis - clock.nanos() / 1_000_000;
    if (wait > 0) {
      Thread.sleep(wait);
    }
  }

  private static void print(MonotonicClock clock, String what) {
    System.out.println(clock.nanos() / 1_000_000 + " " + what);
    System.out.flush();
  }
}
