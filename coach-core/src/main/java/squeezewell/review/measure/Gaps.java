package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.List;
import squeezewell.session.Breath;

/** The times without a breath, one after the other. */
public final class Gaps {
  private Gaps() {}

  /**
   * A time without a breath: from the end of a squeeze, or its start if the end is not known, to
   * the start of the next; also before the first breath and after the last. In a part of a session
   * the squeeze may be one before it.
   *
   * @param startNanos when it began
   * @param rawNanos how long it was
   * @param netNanos without what is excused in it
   * @param unheldNanos without the whole of the holds in it
   * @param interval whether it lies between two breaths with no hold between
   * @param onsetNanos start of one breath to start of the next, or the raw length at the ends
   * @param netOnsetNanos the same, without what is excused in it
   */
  public record Gap(
      long startNanos,
      long rawNanos,
      long netNanos,
      long unheldNanos,
      boolean interval,
      long onsetNanos,
      long netOnsetNanos) {}

  public static List<Gap> of(Practice practice) {
    Spans excused = Spans.excused(practice.holds());
    Spans whole = Spans.whole(practice.holds());
    List<Gap> gaps = new ArrayList<>();
    long from = Math.max(practice.startNanos(), practice.place().breathedUntilNanos());
    long onset = practice.startNanos();
    boolean first = true;
    for (Breath breath : practice.breaths()) {
      add(gaps, practice, from, onset, breath.startNanos(), !first, excused, whole);
      first = false;
      onset = breath.startNanos();
      from = breath.endNanos().orElse(onset);
    }
    add(gaps, practice, from, onset, practice.endNanos(), false, excused, whole);
    return gaps;
  }

  private static void add(
      List<Gap> gaps,
      Practice practice,
      long fromNanos,
      long onsetNanos,
      long toNanos,
      boolean between,
      Spans excused,
      Spans whole) {
    long earliest = practice.startNanos();
    long to = Math.max(earliest, toNanos);
    long from = Math.min(to, Math.max(earliest, fromNanos));
    long onset = Math.min(to, Math.max(earliest, onsetNanos));
    gaps.add(
        new Gap(
            from,
            to - from,
            to - from - excused.overlap(from, to),
            to - from - whole.overlap(from, to),
            between && whole.overlap(onsetNanos, toNanos) == 0,
            to - onset,
            to - onset - excused.overlap(onset, to)));
  }
}
