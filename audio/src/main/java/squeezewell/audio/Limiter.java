package squeezewell.audio;

/**
 * Keeps a sum of sounds inside full scale: linear up to a knee, then bent smoothly towards 1. It
 * has no memory, so it moves no onset. Pure.
 */
final class Limiter {
  private static final float KNEE = 0.7f;
  private static final float ROOM = 0.98f - KNEE;

  private Limiter() {}

  /** Bends the first samples of a block in place; the results lie within -0.98 to 0.98. */
  static void apply(float[] samples, int frames) {
    for (int i = 0; i < frames; i++) {
      float size = Math.abs(samples[i]);
      if (size > KNEE) {
        double over = (size - KNEE) / ROOM;
        samples[i] = Math.copySign((float) (KNEE + ROOM * Math.tanh(over)), samples[i]);
      }
    }
  }
}
