package squeezewell.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;

/** A screen that only exists in memory, the program on it, and a sender of keys. */
final class RealWindow implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Process screen;
  private final String display;
  private final Path home;
  private Process program;
  private Process sender;
  private Writer toSender;
  private BufferedReader fromSender;

  private RealWindow(Process screen, String display, Path home) {
    this.screen = screen;
    this.display = display;
    this.home = home;
  }

  /**
   * Opens a screen. Skips the test if there is no Xvfb, unless windows are required.
   *
   * @param home the program's home folder
   */
  static RealWindow open(Path home) throws IOException {
    boolean required = System.getProperty("squeezewell.require", "").contains("window");
    boolean there = onPath("Xvfb");
    if (required) {
      assertThat(there).as("Xvfb is on the path").isTrue();
    }
    assumeTrue(there, "there is no Xvfb, so no window can be tested");
    // Repeats come early and often, so that each hold sees many.
    Process screen =
        new ProcessBuilder(
                "Xvfb",
                "-displayfd",
                "1",
                "-screen",
                "0",
                "1280x1000x24",
                "-nolisten",
                "tcp",
                "-ardelay",
                "200",
                "-arinterval",
                "30")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    String number = reader(screen).readLine();
    return new RealWindow(screen, ":" + number, home);
  }

  /** Starts the program and the sender. */
  void start() throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder(
            java(), "-jar", System.getProperty("squeezewell.jar"), "--home", home.toString());
    builder.environment().put("DISPLAY", display);
    builder.redirectErrorStream(true);
    builder.redirectOutput(home.resolve("program.log").toFile());
    program = builder.start();
    ProcessBuilder sending =
        new ProcessBuilder(
            java(),
            "-cp",
            System.getProperty("java.class.path"),
            "-Djava.awt.headless=false",
            KeySender.class.getName());
    sending.environment().put("DISPLAY", display);
    sending.redirectError(ProcessBuilder.Redirect.INHERIT);
    sender = sending.start();
    toSender = new OutputStreamWriter(sender.getOutputStream(), StandardCharsets.UTF_8);
    fromSender = reader(sender);
    assertThat(fromSender.readLine()).isEqualTo("ready");
  }

  /** Presses or lets go of a key at an instant; returns when that really was. */
  Instant send(Instant at, String word, String key) throws IOException {
    toSender.write(at + " " + word + " " + key + "\n");
    toSender.flush();
    return Instant.parse(fromSender.readLine().split(" ", -1)[0]);
  }

  /** Presses a key for a moment, now. */
  void tap(String key) throws IOException {
    Instant now = Instant.now();
    send(now, "down", key);
    send(now.plusMillis(60), "up", key);
  }

  /** Keeps a picture of the window. */
  void shot(Path file) throws IOException {
    toSender.write("shot " + file + "\n");
    toSender.flush();
    fromSender.readLine();
  }

  /** Taps a key about once a second until a condition holds: a window takes a moment to come. */
  void tapUntil(String key, java.util.function.BooleanSupplier done) throws IOException {
    Instant end = Instant.now().plus(PATIENCE);
    while (!done.getAsBoolean()) {
      assertThat(Instant.now()).as("the program answers").isBefore(end);
      assertThat(program.isAlive()).as("the program runs").isTrue();
      tap(key);
      waitFor(Duration.ofMillis(900));
    }
  }

  /** The session file, once there is one. */
  Optional<Path> session() {
    Path sessions = home.resolve("sessions");
    if (!Files.isDirectory(sessions)) {
      return Optional.empty();
    }
    try (Stream<Path> files = Files.walk(sessions)) {
      return files.filter(f -> f.toString().endsWith(".jsonl")).findFirst();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Runs the program's command line and returns what it printed. */
  String run(String... words) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(List.of(java(), "-jar", System.getProperty("squeezewell.jar")));
    command.addAll(List.of(words));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return text;
  }

  /** When a session began, from its file. */
  static Instant startOf(Path file) throws IOException {
    Instant end = Instant.now().plusSeconds(10);
    while (true) {
      List<String> lines = Files.readAllLines(file);
      if (!lines.isEmpty()) {
        JsonObject header = JsonParser.parseString(lines.get(0)).getAsJsonObject();
        return Instant.parse(header.get("startedAt").getAsString());
      }
      assertThat(Instant.now()).isBefore(end);
    }
  }

  static Instant after(Instant began, double seconds) {
    return began.plusNanos(Math.round(seconds * 1e9));
  }

  static double seconds(Instant began, Instant at) {
    return Duration.between(began, at).toNanos() / 1e9;
  }

  /** Settings of a first start whose practice is an adult's, of two minutes. */
  static String settings() {
    return "{\"format\":\"squeezewell-settings\",\"version\":1,\"lastChoice\":{\"protocol\":"
        + "\"aha-2020\",\"patient\":\"adult\",\"situation\":\"pulse-no-breathing\",\"minutes\":2}}";
  }

  Process program() {
    return program;
  }

  static void waitFor(Duration length) {
    Instant end = Instant.now().plus(length);
    while (Instant.now().isBefore(end)) {
      LockSupport.parkNanos(Math.max(1, Duration.between(Instant.now(), end).toNanos()));
    }
  }

  @Override
  public void close() throws IOException {
    for (Process process : new Process[] {sender, program, screen}) {
      if (process != null) {
        process.destroyForcibly();
        try {
          process.waitFor(5, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        }
      }
    }
  }

  private static BufferedReader reader(Process process) {
    return process.inputReader(StandardCharsets.UTF_8);
  }

  private static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  private static boolean onPath(String name) {
    return Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, name)));
  }
}
