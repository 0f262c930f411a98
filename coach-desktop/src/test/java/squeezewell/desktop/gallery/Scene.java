package squeezewell.desktop.gallery;

import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.JComponent;
import squeezewell.desktop.look.Look;

/**
 * A state of a screen, for pictures and tests.
 *
 * @param name as in a file's name
 * @param screen builds it
 * @param ready does what must be done once it has its size, such as opening a sheet
 */
public record Scene(String name, Function<Look, JComponent> screen, Consumer<JComponent> ready) {
  public Scene(String name, Function<Look, JComponent> screen) {
    this(name, screen, built -> {});
  }
}
