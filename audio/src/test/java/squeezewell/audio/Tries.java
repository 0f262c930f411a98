package squeezewell.audio;

/**
 * How much a test tries: enough to find its faults, or more with {@code squeezewell.tries=long}.
 */
final class Tries {
  private Tries() {}

  /** The first number, or the second in the long form. */
  static int orLong(int usual, int longForm) {
    return "long".equals(System.getProperty("squeezewell.tries")) ? longForm : usual;
  }
}
