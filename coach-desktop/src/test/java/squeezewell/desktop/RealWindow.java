package squeezewell.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.awt.Point;
import java.awt.Rectangle;
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
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final Process screen;
  private final String display;
  private final Path home;
  private Process program;
  private Process sender;
  private Writer toSender;
  private BufferedReader fromSender;
  private Writer toProgram;
  private BufferedReader fromProgram;

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
    startSender();
  }

  /** The same, with a program that can be asked where on the screen something is shown. */
  void startAskable() throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder(
            java(),
            "-cp",
            System.getProperty("squeezewell.jar")
                + java.io.File.pathSeparator
                + System.getProperty("squeezewell.testClasses"),
            AskableProgram.class.getName(),
            "--home",
            home.toString());
    builder.environment().put("DISPLAY", display);
    builder.redirectError(home.resolve("program.log").toFile());
    program = builder.start();
    toProgram = new OutputStreamWriter(program.getOutputStream(), StandardCharsets.UTF_8);
    fromProgram = reader(program);
    startSender();
  }

  /**
   * Where on the screen the middle of a part is whose accessible name begins so, if any of it is
   * seen and it may be pressed. Only after {@link #startAskable}.
   */
  Optional<Point> find(String name) throws IOException {
    toProgram.write(name + "\n");
    toProgram.flush();
    String answer = fromProgram.readLine();
    if (answer == null || answer.isEmpty()) {
      return Optional.empty();
    }
    String[] at = answer.split(" ", -1);
    return Optional.of(new Point(Integer.parseInt(at[0]), Integer.parseInt(at[1])));
  }

  /** As {@link #find}, once it is there. */
  Point await(String name) throws IOException {
    Instant end = Instant.now().plus(PATIENCE);
    while (true) {
      Optional<Point> found = find(name);
      if (found.isPresent()) {
        return found.get();
      }
      assertThat(program.isAlive()).as("the program runs").isTrue();
      assertThat(Instant.now()).as("“%s” is shown", name).isBefore(end);
      waitFor(Duration.ofMillis(50));
    }
  }

  /** Presses the mouse button for a moment over a part, once it is there. */
  void click(String name) throws IOException {
    moveTo(await(name));
    tap("pad");
  }

  private void startSender() throws IOException {
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

  /**
   * Two instants between which a key really went down or up.
   *
   * @param from before it was sent
   * @param to after the window system had taken it
   */
  record Sent(Instant from, Instant to) {
    /** The instant between the two that is nearest to a recorded one, both in seconds. */
    double nearest(Instant began, double recorded) {
      return Math.max(seconds(began, from), Math.min(seconds(began, to), recorded));
    }
  }

  /** Presses or lets go of a key at an instant; returns when that really was. */
  Sent send(Instant at, String word, String key) throws IOException {
    toSender.write(at + " " + word + " " + key + "\n");
    toSender.flush();
    String[] words = fromSender.readLine().split(" ", -1);
    return new Sent(Instant.parse(words[0]), Instant.parse(words[1]));
  }

  /**
   * Presses a key for a moment, as good as now: one that comes back within 20 ms of its release
   * would be taken for a key that repeats.
   */
  void tap(String key) throws IOException {
    Instant now = Instant.now().plusMillis(60);
    send(now, "down", key);
    send(now.plusMillis(60), "up", key);
  }

  /** Presses a key and leaves it down, now. */
  void hold(String key) throws IOException {
    send(Instant.now(), "down", key);
  }

  /** Lets go of a key, now. */
  void letGo(String key) throws IOException {
    send(Instant.now(), "up", key);
  }

  /** Presses a key while another is held. */
  void chord(String held, String key) throws IOException {
    hold(held);
    tap(key);
    letGo(held);
  }

  /** Moves the mouse. */
  void moveTo(Point at) throws IOException {
    send(Instant.now(), "move", at.x + "," + at.y);
  }

  /** Turns the wheel over a place, towards a person for numbers above 0. */
  void wheel(Point over, int steps) throws IOException {
    moveTo(over);
    send(Instant.now(), "wheel", Integer.toString(steps));
  }

  /** Keeps a picture of the window. */
  void shot(Path file) throws IOException {
    toSender.write("shot " + file + "\n");
    toSender.flush();
    fromSender.readLine();
  }

  /** Keeps a picture of a part of the screen. */
  void shot(Path file, Rectangle part) throws IOException {
    toSender.write(
        "shot " + file + " " + part.x + "," + part.y + "," + part.width + "," + part.height + "\n");
    toSender.flush();
    fromSender.readLine();
  }

  /** Waits until something holds. */
  void until(String what, Holds holds) throws IOException {
    Instant end = Instant.now().plus(PATIENCE);
    while (!holds.test()) {
      assertThat(program.isAlive()).as("the program runs").isTrue();
      assertThat(Instant.now()).as(what).isBefore(end);
      waitFor(Duration.ofMillis(20));
    }
  }

  /** Something that may hold or not. */
  interface Holds {
    boolean test() throws IOException;
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
    return sessionIn(home);
  }

  /** The session file of a home, once there is one. */
  static Optional<Path> sessionIn(Path home) {
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
