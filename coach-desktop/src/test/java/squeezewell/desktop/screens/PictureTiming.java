package squeezewell.desktop.screens;

import java.awt.Graphics2D;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import javax.swing.JComponent;
import javax.swing.JScrollPane;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import squeezewell.coach.Coach;
import squeezewell.coach.TraineeFault;
import squeezewell.coach.VirtualTrainee;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.parts.ZoomRibbon;
import squeezewell.picture.MarksView;
import squeezewell.picture.PlotData;
import squeezewell.picture.PlotPicture;
import squeezewell.picture.PlotsView;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.storage.FileJournal;

/**
 * Prints how long it takes to open the debrief of an hour's practice, from the file to the first
 * picture, and to draw a frame of its ribbon, in processor time of the event thread. Paints in
 * memory, so no display is needed. The command stands in docs/measurements.md.
 */
final class PictureTiming {
  private static final int RUNS = 15;
  private static final int FRAMES = 300;

  private PictureTiming() {}

  public static void main(String[] args) throws Exception {
    Path folder = Files.createTempDirectory("squeezewell-pictures");
    Path steady =
        practice(folder, "steady", "aha-2020", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);
    Path cycles =
        practice(
            folder, "cycles", "aha-2020", PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY);
    Path continuous =
        practice(
            folder, "continuous", "aha-2020", PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY);
    SwingUtilities.invokeAndWait(
        () -> {
          try {
            for (Path file : List.of(steady, cycles, continuous)) {
              measure(file);
            }
          } catch (Exception e) {
            throw new IllegalStateException(e);
          }
        });
  }

  private static Path practice(
      Path folder, String name, String edition, PatientGroup patient, Situation situation)
      throws Exception {
    PracticePlan plan = Practices.plan(Practices.protocol(edition), patient, situation, 3, 60);
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-03-01T09:00:00Z"),
            SessionHeader.Origin.LIVE,
            "",
            Practices.protocol(edition),
            plan);
    Path file = folder.resolve(name + ".jsonl");
    try (FileJournal journal = FileJournal.create(file, header)) {
      new VirtualTrainee(7, TraineeFault.SKIPS)
          .practise(new Coach(plan, journal, List.of()), new ManualClock(), List.of());
    }
    return file;
  }

  private static void measure(Path file) throws Exception {
    Widgets kit = new Widgets(new Look(Palette.darkTheme(), 1));
    kit.look().install();
    Review review = Reviewer.review(SessionReader.read(file));
    int marks = MarksView.of(review).index().marks().size();
    System.out.printf(Locale.ROOT, "%s: an hour, %,d marks%n", file.getFileName(), marks);
    double[] opening = new double[RUNS];
    for (int run = 0; run < RUNS; run++) {
      long start = processorNanos();
      Session session = SessionReader.read(file);
      Review opened = Reviewer.review(session);
      JScrollPane page =
          DebriefScreen.build(kit, null, opened, "today", DebriefScreen.Actions.none());
      paint(page, 412, 892);
      opening[run] = (processorNanos() - start) / 1e6;
    }
    print("debrief, from the file to the first picture", opening);
    double[] pictures = new double[RUNS];
    for (int run = 0; run < RUNS; run++) {
      long start = processorNanos();
      paint(PicturesScreen.build(kit, review, "today", () -> {}), 412, 892);
      pictures[run] = (processorNanos() - start) / 1e6;
    }
    print("pictures, to the first picture of the ribbon", pictures);
    for (PlotData data :
        List.of(
            PlotsView.of(review).intervals(),
            PlotsView.of(review).rate(),
            PlotsView.of(review).lateness(),
            PlotsView.of(review).histogram())) {
      double[] times = new double[RUNS];
      for (int run = 0; run < RUNS; run++) {
        long start = processorNanos();
        PlotPicture.draw(kit.look(), data, 364, 250, 1);
        times[run] = (processorNanos() - start) / 1e6;
      }
      print("chart of " + data.name(), times);
    }
    for (int scale : new int[] {1, 2}) {
      frames(review, new Look(Palette.darkTheme(), scale));
    }
  }

  /** Every frame follows a key: choosing the next mark, zooming or moving. */
  private static void frames(Review review, Look look) {
    MarksView marks = MarksView.of(review);
    ZoomRibbon ribbon =
        new ZoomRibbon(
            look,
            marks.index(),
            marks.parts(),
            marks::words,
            marks::notAsAsked,
            review.startNanos(),
            review.endNanos());
    BufferedImage screen =
        new BufferedImage(look.px(372), look.px(132), BufferedImage.TYPE_INT_RGB);
    ribbon.setSize(screen.getWidth(), screen.getHeight());
    for (int zoom = 0; zoom <= 20; zoom += 4) {
      ribbon.showAll();
      for (int i = 0; i < zoom; i++) {
        press(ribbon, "typed +");
      }
      double[] times = new double[FRAMES];
      for (int frame = 0; frame < FRAMES; frame++) {
        long start = processorNanos();
        press(ribbon, frame % 3 == 0 ? "typed ." : frame % 3 == 1 ? "RIGHT" : "typed >");
        Graphics2D g2 = screen.createGraphics();
        ribbon.paint(g2);
        g2.dispose();
        times[frame] = (processorNanos() - start) / 1e6;
      }
      print("ribbon, a frame, " + look.scale() + " times, zoomed in " + zoom + " steps", times);
    }
  }

  private static void press(JComponent part, String key) {
    KeyStroke stroke = KeyStroke.getKeyStroke(key);
    part.getActionForKeyStroke(stroke)
        .actionPerformed(
            new java.awt.event.ActionEvent(part, KeyEvent.KEY_TYPED, stroke.toString()));
  }

  private static void paint(JComponent part, int width, int height) {
    part.setSize(width, height);
    layOut(part);
    layOut(part);
    BufferedImage screen = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g2 = screen.createGraphics();
    part.paint(g2);
    g2.dispose();
  }

  private static void layOut(java.awt.Container part) {
    part.doLayout();
    for (java.awt.Component inner : part.getComponents()) {
      if (inner instanceof java.awt.Container container) {
        layOut(container);
      }
    }
  }

  /** Time on a processor: other programs on the machine must not count. */
  private static long processorNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static void print(String what, double[] millis) {
    double first = millis[0];
    double[] sorted = millis.clone();
    Arrays.sort(sorted);
    System.out.printf(
        Locale.ROOT,
        "  %s: first %.1f ms, median %.1f ms, 99 %% %.1f ms, worst %.1f ms%n",
        what,
        first,
        sorted[sorted.length / 2],
        sorted[(int) Math.ceil(0.99 * sorted.length) - 1],
        sorted[sorted.length - 1]);
  }
}
