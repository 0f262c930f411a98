package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JLabel;
import javax.swing.JScrollPane;

/** Lays screens out without a window, and looks at their parts. */
final class ScreenParts {
  private ScreenParts() {}

  static void layOut(Container container) {
    container.doLayout();
    for (Component part : container.getComponents()) {
      if (part instanceof Container inner) {
        layOut(inner);
      }
    }
  }

  /** What is seen lies within what holds it; what scrolls may be longer than its place. */
  static void everythingLiesWithin(Container container) {
    for (Component part : container.getComponents()) {
      boolean empty = part instanceof JLabel label && label.getText().isEmpty();
      if (part.isVisible() && !empty) {
        assertThat(new Rectangle(container.getSize()).contains(part.getBounds()))
            .as("%s", part)
            .isTrue();
      }
      if (part.isVisible() && part instanceof Container inner && !(part instanceof JScrollPane)) {
        everythingLiesWithin(inner);
      }
    }
  }

  /** All parts of a kind that are seen; those within one of them are left out. */
  static <T extends Component> List<T> allOf(Container container, Class<T> kind) {
    List<T> found = new ArrayList<>();
    for (Component part : container.getComponents()) {
      if (kind.isInstance(part) && part.isVisible()) {
        found.add(kind.cast(part));
      } else if (part.isVisible() && part instanceof Container inner) {
        found.addAll(allOf(inner, kind));
      }
    }
    return found;
  }
}
