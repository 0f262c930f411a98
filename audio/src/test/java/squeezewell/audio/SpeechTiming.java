package squeezewell.audio;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.run.ExaminerLines;

/** Measures what it takes to prepare the lines of a station: processor time, time and memory. */
public final class SpeechTiming {
  private SpeechTiming() {}

  public static void main(String[] arguments) throws InterruptedException, ExecutionException {
    List<String> builtIn = ExaminerLines.all(StationLibrary.stations().get(0));
    measure("built-in", builtIn);
    for (String run : List.of("own, first", "own, second", "own, third")) {
      List<String> own = new ArrayList<>();
      builtIn.forEach(text -> own.add(run + ". " + text));
      measure(run, own);
    }
    mixing();
  }

  /** What a line that sounds without end costs the mixer, beside silence. */
  private static void mixing() {
    CueMixer mixer = new CueMixer(48_000, SoundLevels.defaults());
    SpokenLine line = new SpokenLine(new short[12_000 * 60], 12_000);
    float[] block = new float[256];
    for (int round = 0; round < 5; round++) {
      mixer.say(line, Frames.nanosOf(mixer.position(), 48_000), false);
      long time = System.nanoTime();
      for (int i = 0; i < 60 * 48_000; i += block.length) {
        mixer.mix(block, block.length);
      }
      System.out.printf("mixing 60 s of a line: %.0f ms%n", (System.nanoTime() - time) / 1e6);
    }
  }

  private static void measure(String name, List<String> texts)
      throws InterruptedException, ExecutionException {
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    double heap = heapMegabytes();
    long processor = system.getProcessCpuTime();
    long time = System.nanoTime();
    double seconds = 0;
    double held;
    try (LineStore store = new LineStore(JavaSoundSpeech::new)) {
      store.prepare(texts);
      store.prepared().get();
      processor = system.getProcessCpuTime() - processor;
      time = System.nanoTime() - time;
      held = heapMegabytes() - heap;
      for (String text : texts) {
        seconds += store.find(text).map(SpokenLine::nanos).orElse(0L) / 1e9;
      }
    }
    System.out.printf(
        "%s: %d lines, %.1f s of speech, processor %.0f ms, clock %.0f ms, heap %+.1f MB, after it"
            + " %+.1f MB%n",
        name, texts.size(), seconds, processor / 1e6, time / 1e6, held, heapMegabytes() - heap);
  }

  private static double heapMegabytes() {
    for (int i = 0; i < 3; i++) {
      System.gc();
    }
    Runtime machine = Runtime.getRuntime();
    return (machine.totalMemory() - machine.freeMemory()) / 1e6;
  }
}
