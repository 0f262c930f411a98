package squeezewell.desktop.gallery;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Paints every state of every screen in several windows, themes and text sizes, and looks for text
 * that is cut, painted over or too faint, for what is too small for a finger, and for what scrolls
 * sideways. With {@code -Dsqueezewell.gallery=FOLDER} it does so in all of them, and writes a sheet
 * of pictures for each state. Sizes and contrast: Web Content Accessibility Guidelines 2.1, 1.4.3
 * and (as a floor of our own, 48 instead of 44) 2.5.5.
 */
class GalleryTest {
  static Stream<Scene> scenes() {
    return Scenes.all().stream();
  }

  @ParameterizedTest
  @MethodSource("scenes")
  void everyStateCanBeReadAndTouched(Scene scene) throws Exception {
    String folder = System.getProperty("squeezewell.gallery", "");
    Map<String, List<String>> faults = new TreeMap<>();
    List<Painted> all = new ArrayList<>();
    for (Variant variant : folder.isEmpty() ? Variant.few() : Variant.all()) {
      SwingUtilities.invokeAndWait(
          () -> {
            Painted painted = Painted.of(scene, variant);
            all.add(painted);
            if (!painted.faults().isEmpty()) {
              faults.put(variant.toString(), painted.faults());
            }
          });
    }
    if (!folder.isEmpty()) {
      write(all, Path.of(folder).resolve(scene.name() + ".png"));
    }
    assertThat(faults).as(scene.name()).isEmpty();
  }

  /** The look that finds faults finds them. */
  @Test
  void whatIsWrongIsFound() throws Exception {
    Scene wrong =
        new Scene(
            "wrong",
            look ->
                new javax.swing.JPanel(null) {
                  private static final long serialVersionUID = 1L;

                  @Override
                  protected void paintComponent(java.awt.Graphics g) {
                    g.setFont(look.font(16));
                    g.setColor(look.palette().text());
                    g.drawString("leaves the window at its right side", getWidth() - 40, 60);
                    g.setColor(look.palette().line());
                    g.drawString("faint", 20, 120);
                    g.setColor(look.palette().text());
                    g.drawString("covered", 20, 180);
                    g.setColor(Color.RED);
                    g.fillRect(0, 150, 200, 60);
                  }
                });
    SwingUtilities.invokeAndWait(
        () ->
            assertThat(Painted.of(wrong, Variant.all().get(0)).faults())
                .containsExactlyInAnyOrder(
                    "cut at its side: leaves the window at its right side",
                    "too little contrast: faint",
                    "painted over: covered"));
  }

  /** Six windows and looks a row: first usual text, then double text. */
  private static void write(List<Painted> all, Path file) throws IOException {
    Files.createDirectories(file.getParent());
    int columns = 6;
    int height = 420;
    List<BufferedImage> small = new ArrayList<>();
    for (Painted painted : all) {
      BufferedImage image = painted.image();
      int width = image.getWidth() * height / image.getHeight();
      BufferedImage scaled = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
      Graphics2D g2 = scaled.createGraphics();
      g2.setRenderingHint(
          RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
      g2.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
      g2.drawImage(image, 0, 0, width, height, null);
      g2.dispose();
      small.add(scaled);
    }
    int width = 8;
    for (int i = 0; i < columns; i++) {
      width += small.get(i).getWidth() + 8;
    }
    int rows = all.size() / columns;
    BufferedImage sheet =
        new BufferedImage(width, rows * (height + 8) + 8, BufferedImage.TYPE_INT_RGB);
    Graphics2D g2 = sheet.createGraphics();
    g2.setColor(new Color(0xC9C2B2));
    g2.fillRect(0, 0, sheet.getWidth(), sheet.getHeight());
    int x = 8;
    for (int i = 0; i < small.size(); i++) {
      g2.drawImage(small.get(i), x, 8 + (i / columns) * (height + 8), null);
      x += small.get(i).getWidth() + 8;
      if (i % columns == columns - 1) {
        x = 8;
      }
    }
    g2.dispose();
    ImageIO.write(reduced(sheet), "png", file.toFile());
  }

  /** In 256 colours: a quarter of the size on disk. */
  private static BufferedImage reduced(BufferedImage image) {
    byte[] r = new byte[256];
    byte[] g = new byte[256];
    byte[] b = new byte[256];
    Map<Integer, Integer> counts = new java.util.HashMap<>();
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        counts.merge(image.getRGB(x, y) & 0xF8F8F8, 1, Integer::sum);
      }
    }
    List<Integer> most =
        counts.entrySet().stream()
            .sorted(Map.Entry.<Integer, Integer>comparingByValue().reversed())
            .limit(256)
            .map(Map.Entry::getKey)
            .toList();
    for (int i = 0; i < most.size(); i++) {
      r[i] = (byte) (most.get(i) >> 16);
      g[i] = (byte) (most.get(i) >> 8);
      b[i] = (byte) (int) most.get(i);
    }
    BufferedImage out =
        new BufferedImage(
            image.getWidth(),
            image.getHeight(),
            BufferedImage.TYPE_BYTE_INDEXED,
            new IndexColorModel(8, 256, r, g, b));
    Graphics2D g2 = out.createGraphics();
    g2.setRenderingHint(RenderingHints.KEY_DITHERING, RenderingHints.VALUE_DITHER_DISABLE);
    g2.drawImage(image, 0, 0, null);
    g2.dispose();
    return out;
  }
}
