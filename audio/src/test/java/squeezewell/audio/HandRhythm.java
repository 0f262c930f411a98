package squeezewell.audio;

import java.util.ArrayList;
import java.util.List;

/**
 * The instants of the rhythms that tests switch between, from whole numbers alone and knowing
 * nothing of the schedule: breaths of one second at an interval, their counts, and compressions at
 * 110 a minute (our pace) in cycles or without a break. All times are nanoseconds.
 */
final class HandRhythm {
  static final long SECOND = 1_000_000_000L;

  /** Pause of a cycle for its two breaths (AHA 2020: our plan of 4 s), each half of it. */
  private static final long PAUSE = 4 * SECOND;

  private HandRhythm() {}

  /** What a sound is, as far as one can be taken for another. */
  enum Kind {
    SQUEEZE(0.24),
    RELEASE(0.33),
    COUNT(0.504),
    COMPRESS(0.33);

    /**
     * The first sample at default volumes, worked by hand: volume times the amplitude at time 0
     * times the sum of the partials, e.g. 0.8 x 0.30 x 1 for the squeeze; the louder of the two
     * counts.
     */
    final double firstSample;

    Kind(double firstSample) {
      this.firstSample = firstSample;
    }
  }

  /**
   * One sound.
   *
   * @param kind what
   * @param nanos when it starts
   */
  record Sound(Kind kind, long nanos) {}

  /** A rhythm that runs until {@code to}. */
  interface Running {
    List<Sound> sounds(long to);
  }

  /** Nothing at all. */
  static Running silence() {
    return to -> List.of();
  }

  /** Every 6 s from a squeeze on: squeeze, release after 1 s, then a count each second. */
  static Running everySixSeconds(long squeeze) {
    return to -> breaths(squeeze, 6 * SECOND, new long[] {1_000, 2_000, 3_000, 4_000, 5_000}, to);
  }

  /** Every 2.5 s: release after 1 s; the 1.5 s left are parted into two counts of 0.75 s. */
  static Running everyTwoAndAHalfSeconds(long squeeze) {
    return to -> breaths(squeeze, 2_500_000_000L, new long[] {1_000, 1_750}, to);
  }

  /** So many compressions at 110 a minute, then two breaths. */
  static Running cycles(long first, int perCycle) {
    return to -> {
      List<Sound> found = new ArrayList<>();
      for (long c = 0; first + compression(c * perCycle) + c * PAUSE < to; c++) {
        for (long k = c * perCycle; k < (c + 1) * perCycle; k++) {
          add(found, Kind.COMPRESS, first + compression(k) + c * PAUSE, to);
        }
        long pause = first + compression((c + 1) * perCycle) + c * PAUSE;
        for (long breath : new long[] {pause, pause + PAUSE / 2}) {
          add(found, Kind.SQUEEZE, breath, to);
          add(found, Kind.RELEASE, breath + SECOND, to);
        }
      }
      return found;
    };
  }

  /** Compressions at 110 a minute without a break, and breaths that do not wait for them. */
  static Running continuous(long first, Running breaths) {
    return to -> {
      List<Sound> found = new ArrayList<>(breaths.sounds(to));
      for (int k = 0; first + compression(k) < to; k++) {
        add(found, Kind.COMPRESS, first + compression(k), to);
      }
      return found;
    };
  }

  /** k times 60/110 s, to the nearest nanosecond. */
  static long compression(long k) {
    return (k * 60 * SECOND * 2 + 110) / 220;
  }

  private static List<Sound> breaths(long squeeze, long interval, long[] countMillis, long to) {
    List<Sound> found = new ArrayList<>();
    for (long at = squeeze; at < to; at += interval) {
      add(found, Kind.SQUEEZE, at, to);
      for (int i = 0; i < countMillis.length; i++) {
        add(found, i == 0 ? Kind.RELEASE : Kind.COUNT, at + countMillis[i] * 1_000_000, to);
      }
    }
    return found;
  }

  private static void add(List<Sound> found, Kind kind, long nanos, long to) {
    if (nanos < to) {
      found.add(new Sound(kind, nanos));
    }
  }
}
