package squeezewell.desktop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;

/**
 * A long practice in the real window, to see what the program costs: prints once a minute how much
 * memory is resident and how much processor time it took since the minute before. Needs Xvfb; uses
 * whatever sound there is. The command stands in docs/measurements.md.
 */
final class LongPractice {
  private LongPractice() {}

  public static void main(String[] args) throws Exception {
    run(Files.createTempDirectory("squeezewell-long"), Integer.parseInt(args[0]));
  }

  /** Runs it for so many minutes; a breath every six seconds. */
  private static void run(Path home, int minutes) throws Exception {
    try (RealWindow window = RealWindow.open(home)) {
      Files.writeString(
          home.resolve("settings.json"),
          "{\"format\":\"squeezewell-settings\",\"version\":1,\"lastChoice\":{\"protocol\":"
              + "\"aha-2020\",\"patient\":\"adult\",\"situation\":\"pulse-no-breathing\","
              + "\"minutes\":"
              + minutes
              + "}}");
      window.start();
      window.tapUntil("return", () -> window.session().isPresent());
      Instant began = Instant.now();
      Duration before = used(window.program());
      for (int breath = 0; breath < minutes * 10; breath++) {
        Instant at = began.plusSeconds(3 + 6L * breath);
        window.send(at, "down", "space");
        window.send(at.plusSeconds(1), "up", "space");
        if (breath % 10 == 9) {
          Duration now = used(window.program());
          System.out.printf(
              "minute %d: %d MB resident, %.1f %% of one core%n",
              breath / 10 + 1,
              residentMegabytes(window.program()),
              now.minus(before).toMillis() / 600.0);
          before = now;
        }
      }
    }
  }

  static Duration used(Process program) {
    return program.info().totalCpuDuration().orElse(Duration.ZERO);
  }

  /** Resident memory in megabytes (2^20 bytes), as Linux counts it. */
  static long residentMegabytes(Process program) throws Exception {
    for (String line : Files.readAllLines(Path.of("/proc/" + program.pid() + "/status"))) {
      if (line.startsWith("VmRSS")) {
        return Long.parseLong(line.replaceAll("\\D", "")) / 1024;
      }
    }
    return -1;
  }
}
