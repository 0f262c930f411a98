package squeezewell.review;

import java.util.SplittableRandom;
import squeezewell.session.Session;

/** Makes five-minute event lists of a trainee with one fault, from a seed. */
public final class VirtualTrainee {
  private static final double LENGTH = 300;
  private static final double INTERVAL = 6;

  /** Independent onsets with this spread give intervals an SD of 0.4 s: 0.4 / sqrt(2). */
  private static final double ONSET_SD = 0.283;

  private final SplittableRandom random;
  private final SessionBuilder builder = SessionBuilder.ofSeconds(LENGTH);
  private final String fault;
  private double nextCheck = 120;
  private double nextPause = 70;
  private boolean suctioned;
  private double lastBreath = -10;

  public VirtualTrainee(String fault, int seed) {
    this.fault = fault;
    this.random = new SplittableRandom(1_000 + seed);
  }

  public Session session() {
    double origin = 0;
    while (origin < LENGTH) {
      origin = breatheFrom(origin);
    }
    return builder.build();
  }

  /** Breathes until something interrupts; returns when the rhythm starts anew. */
  private double breatheFrom(double origin) {
    boolean ownTime = is("fast") || is("slow") || is("slowing") || is("own-tempo");
    double own = origin + 0.25;
    for (int k = 0; ; k++) {
      double prompt = ownTime ? own : origin + k * INTERVAL;
      double at = Math.max(prompt + (ownTime ? 0 : lag()), Math.max(origin, lastBreath + 0.3));
      if (!is("no-check") && prompt >= checkAt()) {
        return check(Math.max(checkAt(), lastBreath + 1.5));
      }
      if (prompt > 60 && !suctioned && is("long-suction")) {
        suctioned = true;
        double end = prompt + 20 + 5 * random.nextDouble();
        builder.suction(prompt, end);
        return end;
      }
      if (is("pauses") && prompt >= nextPause) {
        nextPause += 80;
        k += 2;
        continue;
      }
      if (at >= LENGTH || prompt >= LENGTH) {
        return LENGTH;
      }
      if (is("fast-after-check") && origin > 0 && prompt < origin + 60) {
        for (int quick = 0; quick < 2; quick++) {
          breathe(at + quick * 2, 1);
        }
      }
      boolean skipped = is("skips") && k > 0 && random.nextDouble() < 0.2;
      if (!skipped) {
        breathe(is("fast-after-check") && lastBreath > at ? at + 4 : at, squeeze());
      }
      own = at + ownInterval(at);
    }
  }

  private double lag() {
    return switch (fault) {
      case "perfect" -> 0.2;
      case "anticipates" -> -0.3 + 0.2 * random.nextGaussian();
      case "late" -> 1.3 + ONSET_SD * random.nextGaussian();
      default -> 0.25 + ONSET_SD * random.nextGaussian();
    };
  }

  private double ownInterval(double at) {
    return switch (fault) {
      case "fast" -> 2 + 0.2 * random.nextGaussian();
      case "slow" -> 9 + 0.4 * random.nextGaussian();
      case "slowing" -> 6 * (1 + 0.08 * at / 60) + 0.3 * random.nextGaussian();
      default -> 5 + 0.15 * random.nextGaussian();
    };
  }

  private double squeeze() {
    return switch (fault) {
      case "perfect" -> 1;
      case "short-squeeze" -> 0.5 + 0.05 * random.nextGaussian();
      case "long-squeeze" -> 1.7 + 0.1 * random.nextGaussian();
      default -> 1 + 0.08 * random.nextGaussian();
    };
  }

  private double checkAt() {
    return nextCheck + (is("late-check") ? 32 : 0);
  }

  private double check(double start) {
    double length =
        switch (fault) {
          case "long-check" -> 15 + 5 * random.nextDouble();
          case "short-check" -> 2 + 2 * random.nextDouble();
          default -> 7 + 2 * random.nextDouble();
        };
    builder.pulseCheck(start, start + length);
    nextCheck = start + 120;
    return start + length;
  }

  private void breathe(double at, double length) {
    builder.squeeze(at, length, "");
    lastBreath = at;
  }

  private boolean is(String name) {
    return fault.equals(name);
  }
}
