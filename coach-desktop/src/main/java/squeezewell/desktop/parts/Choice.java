package squeezewell.desktop.parts;

import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import javax.swing.DefaultComboBoxModel;
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

  /** What a box offers; the first is chosen unless another one is to be. */
  public static <T> DefaultComboBoxModel<Choice<T>> model(
      List<T> values, Function<T, String> label, Predicate<T> chosen) {
    DefaultComboBoxModel<Choice<T>> model = new DefaultComboBoxModel<>();
    for (T value : values) {
      Choice<T> choice = new Choice<>(value, label.apply(value));
      model.addElement(choice);
      if (chosen.test(value)) {
        model.setSelectedItem(choice);
      }
    }
    return model;
  }
}
