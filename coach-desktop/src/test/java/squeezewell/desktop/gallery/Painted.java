package squeezewell.desktop.gallery;

import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import javax.swing.JScrollBar;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/** A scene as it was painted in a variant. */
record Painted(JComponent screen, BufferedImage image, List<Ink.Text> texts) {
  private static final double LEAST_CONTRAST = 4.5;

  /** Builds, lays out and paints a scene; call on the event thread. */
  static Painted of(Scene scene, Variant variant) {
    Look look = Scenes.look(variant);
    look.install();
    JComponent screen = scene.screen().apply(look);
    screen.setSize(variant.width(), variant.height());
    settle(screen);
    scene.ready().accept(screen);
    settle(screen);
    BufferedImage image =
        new BufferedImage(variant.width(), variant.height(), BufferedImage.TYPE_INT_RGB);
    Ink ink = new Ink(image);
    ink.setColor(variant.palette().ground());
    ink.fillRect(0, 0, variant.width(), variant.height());
    screen.printAll(ink);
    ink.dispose();
    return new Painted(screen, image, ink.texts());
  }

  /** Once for the width, once for what follows from it, once for what that moves. */
  private static void settle(JComponent screen) {
    for (int i = 0; i < 3; i++) {
      layOut(screen);
    }
  }

  private static void layOut(Container container) {
    container.doLayout();
    for (Component part : container.getComponents()) {
      if (part instanceof Container inner) {
        layOut(inner);
      }
    }
  }

  /** What is wrong with it, in words; empty if nothing is. */
  List<String> faults() {
    List<String> faults = new ArrayList<>();
    for (Ink.Text text : texts) {
      if (text.cutAcross()) {
        faults.add("cut at its side: " + text.text());
      } else if (text.cutAlong() && !scrolls()) {
        faults.add("cut above or below: " + text.text());
      } else if (text.text().endsWith("…") || text.text().endsWith("...")) {
        faults.add("shortened: " + text.text());
      } else if (!text.pixels().isEmpty() && text.seen(image) < 0.9 && !isCovered()) {
        faults.add("painted over: " + text.text());
      } else if (!text.pixels().isEmpty()
          && Palette.contrast(text.colour(), text.under()) < LEAST_CONTRAST) {
        faults.add("too little contrast: " + text.text());
      }
    }
    touched(screen, faults);
    return faults;
  }

  /** Whether something lies over a screen on purpose. */
  private boolean isCovered() {
    return find(screen, "squeezewell.desktop.parts.Sheets$Overlay")
        || find(screen, "squeezewell.desktop.screens.live.LivePanel");
  }

  private static boolean find(Container container, String kind) {
    for (Component part : container.getComponents()) {
      if (part.getClass().getName().equals(kind)
          || (part instanceof Container inner && find(inner, kind))) {
        return true;
      }
    }
    return false;
  }

  private boolean scrolls() {
    return scrolls(screen);
  }

  private static boolean scrolls(Container container) {
    for (Component part : container.getComponents()) {
      boolean here =
          part instanceof JScrollPane pane
              && pane.getViewport().getView() != null
              && pane.getViewport().getView().getHeight() > pane.getViewport().getHeight();
      if (here || (part instanceof Container inner && scrolls(inner))) {
        return true;
      }
    }
    return false;
  }

  private void touched(Container container, List<String> faults) {
    for (Component part : container.getComponents()) {
      boolean target =
          part instanceof AbstractButton
              && part.isVisible()
              && !(part.getParent() instanceof JScrollBar);
      Rectangle place = SwingUtilities.convertRectangle(container, part.getBounds(), screen);
      if (target && (place.width < 47 || place.height < 47)) {
        faults.add("too small for a finger: " + part.getAccessibleContext().getAccessibleName());
      }
      if (part instanceof JScrollPane pane
          && pane.getHorizontalScrollBarPolicy() != JScrollPane.HORIZONTAL_SCROLLBAR_NEVER
          && pane.getViewport().getView() != null
          && pane.getViewport().getView().getWidth() > pane.getViewport().getWidth() + 1) {
        faults.add("scrolls sideways");
      }
      if (part instanceof Container inner && part.isVisible()) {
        touched(inner, faults);
      }
    }
  }

  /** Draws it into another picture. */
  void into(Graphics2D g2, int x, int y) {
    g2.drawImage(image, x, y, null);
  }
}
