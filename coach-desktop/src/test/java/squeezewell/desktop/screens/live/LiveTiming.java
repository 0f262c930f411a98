package squeezewell.desktop.screens.live;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Locale;
import javax.swing.SwingUtilities;
import squeezewell.coach.Command;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/**
 * Prints how long a frame of the live screen takes if all of it is painted, which a window does
 * only when the ground changes. Paints in memory, so no display is needed. The command stands in
 * docs/measurements.md.
 */
final class LiveTiming {
  private static final int FRAMES = 1_800;
  private static final double FRAME_SECONDS = 0.033;

  private LiveTiming() {}

  public static void main(String[] args) throws Exception {
    for (int[] size : new int[][] {{412, 892}, {1280, 800}, {1920, 1080}}) {
      SwingUtilities.invokeAndWait(() -> measure(size[0], size[1]));
    }
    System.exit(0);
  }

  private static void measure(int width, int height) {
    Look look = new Look(Palette.lightTheme(), 1);
    look.install();
    LiveScenes.Still practice = LiveScenes.adult();
    LiveScreen screen = LiveScenes.screen(look, practice, "");
    screen.setSize(width, height);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    long[] nanos = new long[FRAMES];
    boolean held = false;
    for (int i = 0; i < FRAMES; i++) {
      double now = i * FRAME_SECONDS;
      boolean squeeze = now % 6 > 0.1 && now % 6 < 1.1;
      if (squeeze != held) {
        practice.at(now, squeeze ? Command.SQUEEZE : Command.SQUEEZE_END);
        held = squeeze;
      }
      practice.until(now);
      long began = System.nanoTime();
      screen.doLayout();
      screen.frame();
      Graphics2D g2 = image.createGraphics();
      screen.paint(g2);
      g2.dispose();
      nanos[i] = System.nanoTime() - began;
    }
    // The first ten seconds warm up.
    long[] warm = Arrays.copyOfRange(nanos, 300, FRAMES);
    Arrays.sort(warm);
    System.out.printf(
        Locale.ROOT,
        "%d x %d: a frame painted whole %.1f ms (median), %.1f ms (99 of 100), %.1f ms (slowest)%n",
        width,
        height,
        warm[warm.length / 2] / 1e6,
        warm[warm.length * 99 / 100] / 1e6,
        warm[warm.length - 1] / 1e6);
  }
}
