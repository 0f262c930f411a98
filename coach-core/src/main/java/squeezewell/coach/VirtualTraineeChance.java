package squeezewell.coach;

import java.util.SplittableRandom;

/** The chance variations of a {@link VirtualTrainee}. */
final class VirtualTraineeChance {
  private final SplittableRandom random;

  VirtualTraineeChance(long seed) {
    this.random = new SplittableRandom(seed);
  }

  /** A whole number from {@code least} to {@code most}, both included. */
  int between(int least, int most) {
    return random.nextInt(least, most + 1);
  }

  /**
   * A normal deviate, held between two limits. Polar method of Marsaglia and Bray (1964), with
   * StrictMath so that every machine draws the same.
   */
  double normal(double mean, double sd, double least, double most) {
    double u;
    double square;
    do {
      u = 2 * random.nextDouble() - 1;
      double v = 2 * random.nextDouble() - 1;
      square = u * u + v * v;
    } while (square >= 1 || square == 0);
    double deviate = u * StrictMath.sqrt(-2 * StrictMath.log(square) / square);
    return Math.max(least, Math.min(most, mean + sd * deviate));
  }
}
