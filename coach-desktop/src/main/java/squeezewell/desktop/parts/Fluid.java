package squeezewell.desktop.parts;

import java.awt.Component;
import javax.swing.JTextArea;

/** A part that is as high as its width makes it. Sizes are in device pixels. */
public interface Fluid {
  /** The height it needs at a width. */
  int heightAt(int width);

  /** The height that any part needs at a width. */
  static int heightOf(Component part, int width) {
    if (part instanceof Fluid fluid) {
      return fluid.heightAt(width);
    }
    if (part instanceof JTextArea text && text.getLineWrap()) {
      text.setSize(Math.max(1, width), Short.MAX_VALUE);
    }
    return part.getPreferredSize().height;
  }
}
