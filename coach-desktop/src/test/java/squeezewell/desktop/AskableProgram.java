package squeezewell.desktop;

import java.awt.Component;
import java.awt.Container;
import java.awt.EventQueue;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Window;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Scanner;
import java.util.concurrent.atomic.AtomicReference;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.text.JTextComponent;
import squeezewell.Main;

/**
 * The program as it is, and beside it a thread that tells a test where things are shown, so that
 * the test can put a real mouse there. Reads one accessible name, or its beginning, a line; writes
 * a line {@code X Y}, the middle of what is seen of it on the screen, or an empty one.
 */
public final class AskableProgram {
  private AskableProgram() {}

  public static void main(String[] args) throws Exception {
    Thread asked = new Thread(AskableProgram::answer, "asked");
    asked.setDaemon(true);
    asked.start();
    Main.main(args);
  }

  private static void answer() {
    try (Scanner in = new Scanner(System.in, StandardCharsets.UTF_8)) {
      while (in.hasNextLine()) {
        String name = in.nextLine();
        AtomicReference<Optional<Point>> found = new AtomicReference<>(Optional.empty());
        EventQueue.invokeAndWait(() -> found.set(find(name)));
        System.out.println(found.get().map(p -> p.x + " " + p.y).orElse(""));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (java.lang.reflect.InvocationTargetException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What can be pressed goes before what can only be read. */
  private static Optional<Point> find(String name) {
    Optional<Point> pressed = find(name, true);
    return pressed.isPresent() ? pressed : find(name, false);
  }

  private static Optional<Point> find(String name, boolean pressable) {
    for (Window window : Window.getWindows()) {
      Optional<Point> found = window.isShowing() ? find(window, name, pressable) : Optional.empty();
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private static Optional<Point> find(Container in, String name, boolean pressable) {
    for (Component part : in.getComponents()) {
      if (part instanceof JComponent shown
          && part.isShowing()
          && (part.isEnabled() || !pressable)) {
        Optional<Rectangle> place = place(shown, name, pressable);
        if (place.isPresent()) {
          Rectangle seen = place.get().intersection(shown.getVisibleRect());
          // Half of it is enough to be pressed or read.
          if (seen.width > 0 && 2 * seen.height >= place.get().height) {
            Point at = part.getLocationOnScreen();
            return Optional.of(
                new Point(at.x + seen.x + seen.width / 2, at.y + seen.y + seen.height / 2));
          }
        }
      }
      if (part instanceof Container inner) {
        Optional<Point> found = find(inner, name, pressable);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  /** Where in a part what is named so lies. */
  private static Optional<Rectangle> place(JComponent part, String name, boolean pressable) {
    if (pressable && part instanceof JList<?> list) {
      for (int i = 0; i < list.getModel().getSize(); i++) {
        if (String.valueOf(list.getModel().getElementAt(i)).startsWith(name)) {
          return Optional.ofNullable(list.getCellBounds(i, i));
        }
      }
      return Optional.empty();
    }
    boolean read = part instanceof JLabel || part instanceof JTextComponent;
    boolean named =
        pressable
            ? !read && accessibleName(part).startsWith(name)
            : text(part).startsWith(name) || accessibleName(part).startsWith(name);
    return named ? Optional.of(new Rectangle(part.getWidth(), part.getHeight())) : Optional.empty();
  }

  private static String text(JComponent part) {
    if (part instanceof JTextComponent written) {
      return written.getText();
    }
    return part instanceof JComboBox<?> box ? String.valueOf(box.getSelectedItem()) : "";
  }

  private static String accessibleName(JComponent part) {
    String name =
        part.getAccessibleContext() == null
            ? null
            : part.getAccessibleContext().getAccessibleName();
    return name == null ? "" : name;
  }
}
