package squeezewell.review;

import java.util.SplittableRandom;
import squeezewell.TestPlans;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;

/**
 * Makes practices of every kind from a seed: steady and uneven, too fast, too slow, drifting, with
 * long waits and bursts, with checks, suction and pauses, prompted or not, with compressions. Much
 * lies a few hundredths of a second beside a limit, where a printed number is rounded to it.
 */
final class RandomPractice {
  private final SplittableRandom random;
  private SessionBuilder session;
  private double length;
  private boolean pauses = true;
  private boolean changes = true;

  private RandomPractice(long seed) {
    random = new SplittableRandom(seed);
  }

  /** A practice of steady breaths in which the rhythm does not change. */
  static SessionBuilder breathing(long seed) {
    RandomPractice practice = new RandomPractice(seed);
    practice.breathe();
    return practice.session;
  }

  /** A practice of 30:2, or of an adult whose pulse is lost in the middle. */
  static SessionBuilder compressing(long seed) {
    RandomPractice practice = new RandomPractice(seed);
    practice.compress();
    return practice.session;
  }

  /** A practice of steady breaths without a pause, which would move the times of the checks. */
  static SessionBuilder measured(long seed) {
    RandomPractice practice = new RandomPractice(seed);
    practice.pauses = false;
    practice.breathe();
    if (practice.chance(0.2)) {
      practice.session.event(24, EventType.HOLE, practice.pick(3.4, 12.1) + " s");
    }
    return practice.session;
  }

  /** A practice of 30:2 alone. */
  static SessionBuilder cycles(long seed) {
    RandomPractice practice = new RandomPractice(seed);
    practice.changes = false;
    practice.compress();
    return practice.session;
  }

  private void breathe() {
    int who = random.nextInt(6);
    double asked = who == 0 ? 1.2 : who == 1 ? 2.5 : 6;
    double low = who == 0 ? 1 : who == 1 ? 2 : 5;
    double high = who == 0 ? 1.5 : who == 1 ? 3 : 7;
    length = 20 * asked * (1 + 2 * random.nextDouble());
    length = who > 1 && chance(0.5) ? 240 : length;
    session = SessionBuilder.ofSeconds(length);
    if (who == 0) {
      session.by(TestPlans.edition("aha-2020"), PatientGroup.NEWBORN);
      session.in(Situation.NEWBORN_VENTILATION);
    } else if (who == 1) {
      session.by(TestPlans.edition("aha-2020"), PatientGroup.CHILD);
    }
    silences();
    holds();
    double tempo = tempo(asked, low, high);
    double perMinute = chance(0.4) ? 0.3 * (random.nextDouble() - 0.5) : 0;
    double spread = asked * pick(0, 0.01, 0.05, 0.1, 0.25, 0.6);
    boolean follows = chance(0.5);
    double lag = asked * pick(0, 0.03, -0.05, -0.06, 0.2);
    double leftOut = pick(0, 0, 0, 0.05, 0.2);
    double waits = pick(0, 0, 0, 0.03, 0.1);
    double squeeze = pick(0, 1, 0.8, 0.79, 0.5, 1.3, 1.31, 1.6) * Math.min(1, asked / 2);
    double at = chance(0.2) ? beside(10) : 0.02;
    for (int k = 0; at < length; k++) {
      if (!chance(leftOut)) {
        breath(at, squeeze, asked);
      }
      double step = tempo * (1 + perMinute * at / 60) + spread * normal();
      step = follows ? asked * (k + 1) + lag + spread * normal() - at : step;
      step += chance(waits) ? pick(beside(10) - step, 30, 60, 90) : 0;
      at += Math.max(chance(0.01) ? 0 : 0.2, step);
    }
  }

  private void breath(double at, double squeeze, double asked) {
    if (squeeze > 0 && squeeze < asked) {
      double spread = chance(0.5) ? 0 : 0.1;
      session.squeeze(at, Math.max(0.05, squeeze * (1 + spread * normal())), volume());
    } else {
      session.breaths(at);
    }
  }

  private String volume() {
    return chance(0.3) ? 300 + random.nextInt(400) + " mL" : "";
  }

  private double tempo(double asked, double low, double high) {
    return switch (random.nextInt(8)) {
      case 0 -> asked / 2;
      case 1 -> asked * 1.5;
      case 2 -> low * (0.96 + 0.04 * random.nextDouble());
      case 3 -> high * (1 + 0.04 * random.nextDouble());
      case 4 -> asked * pick(0.92, 0.97, 1.03, 1.08);
      default -> asked;
    };
  }

  private void silences() {
    if (chance(0.2)) {
      session.test();
    } else if (chance(0.25)) {
      session.event(length / 3, EventType.PROMPTS_OFF, "level 1");
      session.event(length * 0.8, EventType.PROMPTS_ON, "level 2");
    }
  }

  private void holds() {
    if (chance(0.5)) {
      double from = Math.max(0, beside(pick(120, 135, 105, 60)));
      session.pulseCheck(from, from + beside(pick(5, 7, 10, 20)));
    }
    if (chance(0.3)) {
      session.suction(30, 30 + beside(pick(5, 15, 25)));
    }
    if (pauses && chance(0.1)) {
      session.pause(50, 60);
    }
  }

  private void compress() {
    length = 180;
    session = SessionBuilder.ofSeconds(length);
    double at = 0;
    if (!changes || chance(0.5)) {
      session.in(Situation.ARREST_NO_ADVANCED_AIRWAY);
    } else {
      session.breathsEvery(6, 0.2, 54.2).finding(60, PatientChange.PULSE_LOST);
      at = 60 + pick(0.2, 3, 9.97, 10.02, beside(10), 14);
    }
    double step = pick(0.5, 0.4997, 0.545, 0.6, 0.6003, 0.4, 0.8);
    double spread = pick(0, 0, 0.02, 0.2);
    double pause = pick(4, 4, 9, beside(10), 13);
    double off = pick(0, 0, 0.1, 0.5);
    double pulseBack = changes && chance(0.3) ? 120 : length;
    if (pulseBack < length) {
      session.finding(pulseBack, PatientChange.PULSE_BACK);
    }
    double end = pulseBack < length ? pulseBack + pick(-1, 12, 20) : length;
    while (at < end) {
      int count = chance(off) ? 25 : 30;
      for (int k = 0; k < count && at < end; k++) {
        session.compressions(1, at, 1);
        at += Math.max(0.1, step + spread * normal());
      }
      at -= step;
      if (at + pause < end) {
        session.breaths(at + 1);
        if (!chance(off)) {
          session.breaths(at + 2.2);
        }
      }
      at += pause;
    }
  }

  private boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  private double normal() {
    return random.nextGaussian();
  }

  private double pick(double... values) {
    return values[random.nextInt(values.length)];
  }

  /** Within 0.06 s of a limit, to a hundredth of a second. */
  private double beside(double limit) {
    return Math.rint(100 * (limit + 0.12 * (random.nextDouble() - 0.5))) / 100;
  }
}
