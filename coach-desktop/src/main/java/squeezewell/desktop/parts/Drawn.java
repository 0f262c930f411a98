package squeezewell.desktop.parts;

import java.util.Objects;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;

/** A part that we draw ourselves. Swing gives such parts nothing for a screen reader; this does. */
abstract class Drawn extends JComponent {
  private static final long serialVersionUID = 1L;

  private final transient AccessibleRole role;

  /**
   * A drawn part.
   *
   * @param role what it is to a screen reader
   * @param name what a screen reader calls it
   */
  Drawn(AccessibleRole role, String name) {
    this.role = Objects.requireNonNull(role, "role");
    setOpaque(false);
    getAccessibleContext().setAccessibleName(name);
  }

  /** Tells a screen reader more, when it has changed. */
  final void describe(String text) {
    if (!text.equals(getAccessibleContext().getAccessibleDescription())) {
      getAccessibleContext().setAccessibleDescription(text);
    }
  }

  @Override
  public AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext =
          new AccessibleJComponent() {
            private static final long serialVersionUID = 1L;

            @Override
            public AccessibleRole getAccessibleRole() {
              return role;
            }
          };
    }
    return accessibleContext;
  }
}
