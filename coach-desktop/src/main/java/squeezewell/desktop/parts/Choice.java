package squeezewell.desktop.parts;

import javax.swing.JComboBox;

/**
 * Something to choose in a box.
 *
 * @param value what is chosen
 * @param label what stands in the box
 */
public record Choice<T>(T value, String label) {
  @Override
  public String toString() {
    return label;
  }

  /** What is chosen in a box; the first if nothing is. */
  public static <T> T of(JComboBox<Choice<T>> box) {
    return box.getItemAt(Math.max(0, box.getSelectedIndex())).value();
  }
}
