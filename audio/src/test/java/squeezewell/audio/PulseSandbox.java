package squeezewell.audio;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;
import java.util.concurrent.TimeUnit;

/**
 * A sound server of our own with a sink that plays into nothing but can be recorded, kept apart
 * from the sound of the machine. Real time by nature.
 */
final class PulseSandbox implements AutoCloseable {
  static final int RATE = 48_000;

  private static final String SINK = "squeezewell-test";

  private final Path folder;
  private final Path log;
  private Process server;
  private final List<Process> others = new ArrayList<>();

  PulseSandbox(Path folder) throws IOException {
    this.folder = folder;
    this.log = folder.resolve("sandbox.log");
    Files.createDirectories(folder.resolve("run"));
    Files.createDirectories(folder.resolve("home"));
    run("chmod", "700", folder.resolve("run").toString());
    Files.writeString(
        folder.resolve("alsa.conf"),
        """
        </usr/share/alsa/alsa.conf>
        pcm.!default { type pulse }
        ctl.!default { type pulse }
        """);
    startServer();
  }

  /** Which of the tools it needs are not on this machine. */
  static List<String> missingTools() {
    List<String> missing = new ArrayList<>(List.of("pulseaudio", "parec", "pactl"));
    StringTokenizer places =
        new StringTokenizer(System.getenv().getOrDefault("PATH", ""), File.pathSeparator);
    while (places.hasMoreTokens()) {
      Path place = Path.of(places.nextToken());
      missing.removeIf(tool -> Files.isExecutable(place.resolve(tool)));
    }
    return missing;
  }

  void startServer() throws IOException {
    server =
        start(
            log,
            "pulseaudio",
            "-n",
            "--daemonize=no",
            "--exit-idle-time=-1",
            "--system=false",
            "-L",
            "module-null-sink sink_name=" + SINK + " rate=" + RATE,
            "-L",
            "module-native-protocol-unix");
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(10);
    while (run("pactl", "info") != 0) {
      if (System.nanoTime() > deadline) {
        throw new IOException("the sound server did not start; see " + log);
      }
    }
    hurry(server);
  }

  /**
   * Gives a process the precedence that sound servers have on desktops, where the machine permits
   * it, so that a busy machine measures our timing and not its own.
   */
  private void hurry(Process process) {
    run("chrt", "--all-tasks", "--pid", "--rr", "10", Long.toString(process.pid()));
  }

  /** A real loss of the device. */
  void killServer() throws IOException {
    server.destroy();
    await(server, 5);
  }

  /** Starts to record what is played; ends with the sandbox or its process. */
  Process record(Path raw) throws IOException {
    Process recorder =
        start(
            raw,
            "parec",
            "-d",
            SINK + ".monitor",
            "--raw",
            "--format=s16le",
            "--rate=" + RATE,
            "--channels=1",
            "--latency-msec=50");
    hurry(recorder);
    return recorder;
  }

  /** Runs a main class of the tests in a JVM of its own that hears this server only. */
  Process java(Path output, Class<?> main, String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
    command.addAll(List.of(arguments));
    Process process = start(output, command.toArray(new String[0]));
    hurry(process);
    return process;
  }

  private Process start(Path output, String... command) throws IOException {
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().put("XDG_RUNTIME_DIR", folder.resolve("run").toString());
    builder.environment().put("HOME", folder.resolve("home").toString());
    builder.environment().put("ALSA_CONFIG_PATH", folder.resolve("alsa.conf").toString());
    builder.environment().remove("PULSE_SERVER");
    builder.environment().remove("DISPLAY");
    builder.redirectOutput(output.toFile());
    builder.redirectError(ProcessBuilder.Redirect.appendTo(log.toFile()));
    Process process = builder.start();
    others.add(process);
    return process;
  }

  private int run(String... command) {
    try {
      Process process = start(folder.resolve("command.log"), command);
      await(process, 5);
      return process.isAlive() ? -1 : process.exitValue();
    } catch (IOException e) {
      return -1;
    }
  }

  static void await(Process process, long seconds) throws IOException {
    try {
      process.waitFor(seconds, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }

  @Override
  public void close() {
    for (Process process : others) {
      process.destroy();
    }
    try {
      for (Process process : others) {
        await(process, 5);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
