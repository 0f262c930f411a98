package squeezewell.desktop.screens;

import java.util.HashSet;
import java.util.Set;

/**
 * What was ticked off on a list. It outlives the screen that shows it, which is built anew when the
 * window or the size of text changes. Used on the event thread.
 */
public final class Ticks {
  private final Set<String> names = new HashSet<>();

  /** Whether a thing is ticked. */
  public boolean has(String name) {
    return names.contains(name);
  }

  /** Ticks a thing or takes its tick away. */
  public void set(String name, boolean ticked) {
    if (ticked) {
      names.add(name);
    } else {
      names.remove(name);
    }
  }
}
