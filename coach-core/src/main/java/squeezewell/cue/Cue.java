package squeezewell.cue;

import java.util.Comparator;
import java.util.Objects;

/**
 * One prompt.
 *
 * @param atNanos when it starts, nanoseconds since the session began
 * @param kind what it tells
 * @param count which count it is, from 1: of the interval for breaths (the squeeze is 1), of the
 *     cycle for compressions, of the check for its seconds, of the reminder for reminders; for the
 *     count-in, how many are left
 * @param of how many counts there are; 0 where that has no meaning
 * @param lengthNanos how long it lasts, nanoseconds; 0 for a point in time
 * @param leadIn whether it leads in to the next squeeze
 */
public record Cue(long atNanos, CueKind kind, int count, int of, long lengthNanos, boolean leadIn) {
  static final Comparator<Cue> ORDER =
      Comparator.comparingLong(Cue::atNanos).thenComparing(Cue::kind).thenComparingInt(Cue::count);

  public Cue {
    Objects.requireNonNull(kind, "kind");
  }

  /** The same, counted from an instant. */
  public Cue from(long zeroNanos) {
    return new Cue(atNanos - zeroNanos, kind, count, of, lengthNanos, leadIn);
  }

  static Cue of(long atNanos, CueKind kind, int count) {
    return new Cue(atNanos, kind, count, 0, 0, false);
  }
}
