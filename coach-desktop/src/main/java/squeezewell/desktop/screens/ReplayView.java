package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import squeezewell.coach.CoachState;
import squeezewell.coach.Replay;
import squeezewell.cue.Segment;
import squeezewell.session.Breath;
import squeezewell.session.NotedFinding;
import squeezewell.session.Session;
import squeezewell.words.Quantities;

/**
 * What the replay screen shows of a whole session. Pure.
 *
 * @param zeroNanos the moment that the clock shows as 0:00, session time
 * @param endNanos the last moment, session time
 * @param breaths when each breath began, in order
 * @param moments the holds and findings, in order
 */
record ReplayView(long zeroNanos, long endNanos, List<Long> breaths, List<Moment> moments) {
  /** Steps of the arrow keys (our own choice). */
  static final long STEP_NANOS = 10_000_000_000L;

  /** To the moment before: one that has just been reached does not count (our own choice). */
  private static final long JUST_REACHED_NANOS = 1_500_000_000L;

  ReplayView {
    breaths = List.copyOf(breaths);
    moments = List.copyOf(moments);
  }

  /**
   * A hold or a finding.
   *
   * @param fromNanos when it began
   * @param toNanos when it ended; the same for a finding
   * @param label in words
   * @param finding whether it is a finding
   */
  record Moment(long fromNanos, long toNanos, String label, boolean finding) {}

  /** The view of a session. */
  static ReplayView of(Replay replay) {
    long end = replay.endNanos();
    List<Moment> moments = new ArrayList<>();
    for (Segment segment : replay.schedule().segments()) {
      String label =
          switch (segment.kind()) {
            case PULSE_CHECK ->
                Phrases.capital(replay.schedule().inForceAt(segment.startNanos()).check().words());
            case SUCTION -> "Suction";
            case PAUSED -> "Pause";
            default -> "";
          };
      if (!label.isEmpty() && segment.startNanos() <= end) {
        moments.add(
            new Moment(segment.startNanos(), Math.min(segment.endNanos(), end), label, false));
      }
    }
    for (NotedFinding noted : replay.session().findings()) {
      moments.add(new Moment(noted.atNanos(), noted.atNanos(), noted.finding().label(), true));
    }
    moments.sort(Comparator.comparingLong(Moment::fromNanos));
    List<Long> breaths = new ArrayList<>();
    for (Breath breath : replay.session().breaths()) {
      breaths.add(breath.startNanos());
    }
    return new ReplayView(
        Session.zeroNanos(replay.schedule().plan(), replay.session().breaths()),
        end,
        breaths,
        moments);
  }

  /** The next hold or finding after a moment; empty if there is none. */
  Optional<Moment> after(long nanos) {
    return moments.stream().filter(m -> m.fromNanos() > nanos).findFirst();
  }

  /** The hold or finding before a moment; empty if there is none. */
  Optional<Moment> before(long nanos) {
    Moment found = null;
    for (Moment moment : moments) {
      if (moment.fromNanos() < nanos - JUST_REACHED_NANOS) {
        found = moment;
      }
    }
    return Optional.ofNullable(found);
  }

  /** A moment in words, such as 0:42 of 2:03. */
  String time(long nanos) {
    return Quantities.clock(nanos - zeroNanos) + " of " + Quantities.clock(endNanos - zeroNanos);
  }

  /**
   * What was done at a moment, for the place where the breath pad stands in a practice.
   *
   * @param state the practice at the moment
   * @param nowNanos the moment
   */
  static String breath(CoachState state, long nowNanos) {
    List<Breath> breaths = state.breaths();
    if (breaths.isEmpty()) {
      return "No breath yet";
    }
    Breath last = breaths.get(breaths.size() - 1);
    if (state.squeezing()) {
      return "Squeezing, " + Quantities.decimals((nowNanos - last.startNanos()) / 1e9, 1) + " s";
    }
    String length =
        last.endNanos().isPresent()
            ? "Squeezed "
                + Quantities.decimals((last.endNanos().getAsLong() - last.startNanos()) / 1e9, 1)
                + " s"
            : "Squeezed";
    return length + ", breath " + breaths.size();
  }
}
