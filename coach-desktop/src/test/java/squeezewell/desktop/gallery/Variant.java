package squeezewell.desktop.gallery;

import java.util.ArrayList;
import java.util.List;
import squeezewell.desktop.look.Palette;

/**
 * A window and a look.
 *
 * @param width of the window, inside its frame
 * @param height of it
 * @param dark which theme
 * @param text the text size, 1 for usual
 */
record Variant(int width, int height, boolean dark, double text) {
  private static final int[][] WINDOWS = {{360, 640}, {412, 892}, {1280, 800}};

  /** Those that find most: the smallest window with the largest text, and each window once. */
  static List<Variant> few() {
    return List.of(
        new Variant(360, 640, false, 2),
        new Variant(360, 640, true, 1),
        new Variant(412, 892, false, 1),
        new Variant(1280, 800, true, 2));
  }

  /** Each window in light and dark, with usual and with double text. */
  static List<Variant> all() {
    List<Variant> all = new ArrayList<>();
    for (double text : new double[] {1, 2}) {
      for (boolean dark : new boolean[] {false, true}) {
        for (int[] window : WINDOWS) {
          all.add(new Variant(window[0], window[1], dark, text));
        }
      }
    }
    return all;
  }

  Palette palette() {
    return dark ? Palette.darkTheme() : Palette.lightTheme();
  }

  @Override
  public String toString() {
    return width + "x" + height + (dark ? " dark " : " light ") + Math.round(text * 100) + " %";
  }
}
