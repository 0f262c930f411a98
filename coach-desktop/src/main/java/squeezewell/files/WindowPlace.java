package squeezewell.files;

/**
 * Where the window stands, in pixels of the desktop, frame included.
 *
 * @param x from the left, may be negative on a desktop of several screens
 * @param y from the top
 * @param width from 200 to {@value #MOST}
 * @param height from 200 to {@value #MOST}
 */
public record WindowPlace(int x, int y, int width, int height) {
  public static final int LEAST = 200;
  public static final int MOST = 20_000;

  public WindowPlace {
    if (Math.abs(x) > MOST
        || Math.abs(y) > MOST
        || Math.min(width, height) < LEAST
        || Math.max(width, height) > MOST) {
      throw new IllegalArgumentException("no place for a window");
    }
  }
}
