package squeezewell.desktop;

import java.awt.Component;
import java.awt.Container;
import java.awt.Robot;
import java.awt.Toolkit;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import javax.swing.JButton;
import javax.swing.RepaintManager;
import javax.swing.SwingUtilities;
import squeezewell.coach.Coach;
import squeezewell.coach.TraineeFault;
import squeezewell.coach.VirtualTrainee;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.parts.PlainChart;
import squeezewell.files.HomeFolder;
import squeezewell.files.SettingsFile;
import squeezewell.live.SmallHeap;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.storage.FileJournal;

/**
 * Prints how long it takes in the real window to open the debrief of an hour's practice: from the
 * command to the moment its picture, all that the window shows but the chart's points, has been
 * painted and handed to the screen; until the chart is there too; and until what lies below the
 * window is there and painted. Every start of the program gives one first opening and several later
 * ones. Needs Xvfb. The command stands in docs/measurements.md.
 *
 * <p>{@code past} opens a kept practice, from its file. {@code finish} runs a live practice for
 * some seconds and then hands over an hour's session as the end of a practice does.
 */
final class DebriefOpening {
  private static final Instant STARTED = Instant.parse("2026-03-01T09:00:00Z");
  private static final int LATER = 6;
  private static final long QUIET_MILLIS = 2_500;

  private DebriefOpening() {}

  /**
   * Measures.
   *
   * @param args how often the program is started for each way; the words {@code child}, a folder
   *     and a way are for the programs that it starts
   */
  public static void main(String[] args) throws Exception {
    if (args.length == 3 && args[0].equals("child")) {
      new Child(Path.of(args[1])).run(args[2]);
      return;
    }
    int starts = args.length == 0 ? 7 : Integer.parseInt(args[0]);
    Path folder = Files.createTempDirectory("squeezewell-opening");
    Files.writeString(
        folder.resolve("settings.json"),
        "{\"format\":\"squeezewell-settings\",\"version\":1,\"cautionSeenAt\":"
            + "\"2026-03-01T09:00:00Z\"}");
    Files.createDirectories(file(folder).getParent());
    practice(file(folder));
    Process screen =
        new ProcessBuilder(
                "Xvfb", "-displayfd", "1", "-screen", "0", "1280x1000x24", "-nolisten", "tcp")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      String display = ":" + screen.inputReader(StandardCharsets.UTF_8).readLine();
      for (String way : List.of("past", "finish")) {
        List<String> lines = new ArrayList<>();
        System.out.println("load before " + way + ": " + load());
        for (int i = 0; i < starts; i++) {
          lines.addAll(child(folder, way, display));
        }
        for (String what : List.of("first", "later")) {
          for (String measure : List.of("picture", "chart", "whole", "processor", "threads")) {
            print(way, what, measure, lines);
          }
        }
        System.out.println("load after " + way + ": " + load());
      }
    } finally {
      screen.destroy();
    }
  }

  private static List<String> child(Path folder, String way, String display) throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            DebriefOpening.class.getName(),
            "child",
            folder.toString(),
            way);
    builder.environment().put("DISPLAY", display);
    builder.redirectError(ProcessBuilder.Redirect.INHERIT);
    Process child = builder.start();
    String text = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    child.waitFor();
    return text.lines().toList();
  }

  private static void print(String way, String what, String measure, List<String> lines) {
    double[] values =
        lines.stream()
            .map(line -> line.split(" ", -1))
            .filter(word -> word[0].equals(what) && word[1].equals(measure))
            .mapToDouble(word -> Double.parseDouble(word[2]))
            .sorted()
            .toArray();
    if (values.length > 0) {
      System.out.printf(
          Locale.ROOT,
          "%s, %s opening, %s: median %.0f ms, least %.0f, most %.0f (%d)%n",
          way,
          what,
          measure,
          values[values.length / 2],
          values[0],
          values[values.length - 1],
          values.length);
    }
  }

  private static Path file(Path folder) {
    return folder.resolve("sessions/2026/03/hour.jsonl");
  }

  private static String load() {
    double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    return String.format(
        Locale.ROOT,
        "%.2f over the last minute on %d processors",
        load,
        Runtime.getRuntime().availableProcessors());
  }

  private static PracticePlan plan(Protocol protocol) {
    return PracticePlan.of(
        protocol,
        protocol.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow(),
        3_000_000_000L,
        3_600_000_000_000L,
        0);
  }

  private static Protocol protocol() {
    return GuidelineLibrary.editions().stream()
        .filter(p -> p.id().equals("aha-2020"))
        .findFirst()
        .orElseThrow();
  }

  private static void practice(Path file) throws Exception {
    PracticePlan plan = plan(protocol());
    SessionHeader header =
        new SessionHeader(STARTED, SessionHeader.Origin.LIVE, "", protocol(), plan);
    try (FileJournal journal = FileJournal.create(file, header)) {
      new VirtualTrainee(7, TraineeFault.SKIPS)
          .practise(new Coach(plan, journal, List.of()), new ManualClock(), List.of());
    }
  }

  /** One start of the program. */
  private static final class Child {
    private final Path file;
    private final HomeFolder home;
    private MainWindow window;
    private volatile Opening opening;

    Child(Path folder) {
      this.file = file(folder);
      this.home = new HomeFolder(folder, ZoneOffset.UTC);
    }

    void run(String way) throws Exception {
      SwingUtilities.invokeAndWait(
          () -> {
            try {
              SmallHeap.ask();
              RepaintManager.setCurrentManager(new Watcher());
              window = new MainWindow(home, new SettingsFile(home.settingsFile()).read());
              window.open();
            } catch (Exception e) {
              throw new IllegalStateException(e);
            }
          });
      // Nobody opens anything without having touched the window.
      new Robot().mouseMove(200, 40);
      boolean finish = way.equals("finish");
      Session session = finish ? SessionReader.read(file) : null;
      if (finish) {
        RealWindow.waitFor(Duration.ofMillis(QUIET_MILLIS));
        SwingUtilities.invokeAndWait(() -> window.navigator().toLive(protocol(), plan(protocol())));
        RealWindow.waitFor(Duration.ofSeconds(8));
      }
      if (!finish) {
        RealWindow.waitFor(Duration.ofMillis(QUIET_MILLIS));
        SwingUtilities.invokeAndWait(() -> window.navigator().toPast());
      }
      for (int i = 0; i <= LATER; i++) {
        RealWindow.waitFor(Duration.ofMillis(QUIET_MILLIS));
        Opening now = new Opening();
        SwingUtilities.invokeAndWait(
            () -> {
              now.begin();
              opening = now;
              if (finish) {
                window.navigator().toDebrief(session);
              } else {
                window.navigator().openDebrief(file);
              }
            });
        now.done.get(60, TimeUnit.SECONDS);
        opening = null;
        String what = i == 0 ? "first" : "later";
        System.out.printf(Locale.ROOT, "%s picture %.2f%n", what, now.pictureMillis);
        System.out.printf(Locale.ROOT, "%s processor %.2f%n", what, now.processorMillis);
        System.out.printf(Locale.ROOT, "%s threads %.2f%n", what, now.threadMillis);
        System.out.printf(Locale.ROOT, "%s chart %.2f%n", what, now.chartMillis);
        System.out.printf(Locale.ROOT, "%s whole %.2f%n", what, now.wholeMillis);
        SwingUtilities.invokeAndWait(() -> window.navigator().toPast());
      }
      System.out.flush();
      System.exit(0);
    }

    /** Looks, after each painting, whether it was the debrief that was painted. */
    private final class Watcher extends RepaintManager {
      @Override
      public void paintDirtyRegions() {
        super.paintDirtyRegions();
        Opening now = opening;
        if (now == null || find(window.getContentPane(), DebriefOpening::onlyThere) == null) {
          return;
        }
        Toolkit.getDefaultToolkit().sync();
        now.painted(
            (PlainChart) find(window.getContentPane(), PlainChart.class::isInstance),
            find(window.getContentPane(), part -> isButton(part, "Save report")) != null);
      }
    }
  }

  /** One opening; used on the event thread until it is done. */
  private static final class Opening {
    private final CompletableFuture<Void> done = new CompletableFuture<>();
    private long startNanos;
    private long startProcessorNanos;
    private double pictureMillis = -1;
    private double processorMillis;
    private double threadMillis;
    private long startThreadNanos;
    private double chartMillis = -1;
    private double wholeMillis = -1;

    void begin() {
      startProcessorNanos = processorNanos();
      startThreadNanos = threadNanos();
      startNanos = System.nanoTime();
    }

    void painted(PlainChart chart, boolean whole) {
      double millis = (System.nanoTime() - startNanos) / 1e6;
      if (pictureMillis < 0) {
        pictureMillis = millis;
        processorMillis = (processorNanos() - startProcessorNanos) / 1e6;
        threadMillis = (threadNanos() - startThreadNanos) / 1e6;
      }
      if (chartMillis < 0 && (chart == null || chart.drawn())) {
        chartMillis = millis;
      }
      if (wholeMillis < 0 && whole) {
        wholeMillis = millis;
      }
      if (chartMillis >= 0 && wholeMillis >= 0) {
        done.complete(null);
      }
    }

    /** Of the threads that run our code: without the compiler's and the collector's own. */
    private static long threadNanos() {
      ThreadMXBean threads = ManagementFactory.getThreadMXBean();
      return Arrays.stream(threads.getAllThreadIds())
          .map(threads::getThreadCpuTime)
          .filter(nanos -> nanos > 0)
          .sum();
    }

    /** Of the whole program: all threads, the compiler and the collector too. */
    private static long processorNanos() {
      return ((com.sun.management.OperatingSystemMXBean)
              ManagementFactory.getOperatingSystemMXBean())
          .getProcessCpuTime();
    }
  }

  /** The lowest part that is seen at first, and that no other screen has. */
  private static boolean onlyThere(Component part) {
    return isButton(part, "Pictures");
  }

  private static boolean isButton(Component part, String text) {
    return part instanceof JButton button && text.equals(button.getText());
  }

  private static Component find(Container in, Predicate<Component> wanted) {
    for (Component part : in.getComponents()) {
      Component found =
          wanted.test(part) ? part : part instanceof Container inner ? find(inner, wanted) : null;
      if (found != null && found.isShowing()) {
        return found;
      }
    }
    return null;
  }
}
