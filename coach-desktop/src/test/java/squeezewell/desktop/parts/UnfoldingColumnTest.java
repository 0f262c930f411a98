package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.swing.JLabel;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

class UnfoldingColumnTest {
  private final List<String> built = new ArrayList<>();

  @Test
  void onlyWhatIsSeenFirstIsBuiltAtOnce() throws Exception {
    // Parts of 300 in 892: after two 600 are filled, after three 900.
    SwingUtilities.invokeAndWait(
        () -> fiveParts(new UnfoldingColumn(new Look(Palette.lightTheme(), 1), 892)));
    assertThat(built).containsExactly("a", "b", "c");
  }

  @Test
  void theRestFollowsOnceItHasBeenPaintedAndOnlyOnce() throws Exception {
    UnfoldingColumn[] column = new UnfoldingColumn[1];
    SwingUtilities.invokeAndWait(
        () -> {
          column[0] = new UnfoldingColumn(new Look(Palette.lightTheme(), 1), 892);
          fiveParts(column[0]);
          column[0].setSize(100, 892);
          paint(column[0]);
          // Not while it is painted: the window would wait for it.
          assertThat(built).containsExactly("a", "b", "c");
        });
    SwingUtilities.invokeAndWait(
        () -> {
          paint(column[0]);
          column[0].unfold();
        });
    SwingUtilities.invokeAndWait(() -> assertThat(names(column[0])).isEqualTo(built));
    assertThat(built).containsExactly("a", "b", "c", "d", "e");
  }

  @Test
  void theOrderHoldsForASmallPartAfterALargeOne() throws Exception {
    SwingUtilities.invokeAndWait(
        () -> {
          UnfoldingColumn column = new UnfoldingColumn(new Look(Palette.lightTheme(), 1), 100);
          column.then(() -> add(column, "large", 100));
          column.then(() -> add(column, "waits", 1));
          column.then(() -> add(column, "waits too", 1));
          assertThat(names(column)).containsExactly("large");
          column.unfold();
          assertThat(names(column)).containsExactly("large", "waits", "waits too");
        });
  }

  @Test
  void aPartMayAddNothing() throws Exception {
    SwingUtilities.invokeAndWait(
        () -> {
          UnfoldingColumn column = new UnfoldingColumn(new Look(Palette.lightTheme(), 1), 100);
          column.then(() -> {});
          column.then(() -> add(column, "after it", 10));
          assertThat(names(column)).containsExactly("after it");
        });
  }

  private void fiveParts(UnfoldingColumn column) {
    for (String name : List.of("a", "b", "c", "d", "e")) {
      column.then(() -> add(column, name, 300));
    }
  }

  private void add(UnfoldingColumn column, String name, int height) {
    JLabel part = new JLabel();
    part.setName(name);
    part.setPreferredSize(new Dimension(100, height));
    column.add(part);
    built.add(name);
  }

  private static List<String> names(UnfoldingColumn column) {
    return Arrays.stream(column.getComponents()).map(Component::getName).toList();
  }

  private static void paint(Component part) {
    BufferedImage image = new BufferedImage(100, 892, BufferedImage.TYPE_INT_RGB);
    Graphics2D g2 = image.createGraphics();
    try {
      part.paint(g2);
    } finally {
      g2.dispose();
    }
  }
}
