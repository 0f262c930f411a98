package squeezewell.picture;

import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;

/** The marks of a ribbon in order of time, found quickly by time. Immutable. */
public final class MarkIndex {
  /** No mark. */
  public static final int NONE = -1;

  private final List<RibbonMark> marks;

  /** The latest end of all marks up to each; it never falls. */
  private final long[] reach;

  private MarkIndex(List<RibbonMark> marks) {
    this.marks = marks;
    reach = new long[marks.size()];
    long latest = Long.MIN_VALUE;
    for (int i = 0; i < reach.length; i++) {
      latest = Math.max(latest, marks.get(i).endNanos());
      reach[i] = latest;
    }
  }

  /** Sorts marks by their start; those that start together keep their order. */
  public static MarkIndex of(List<RibbonMark> marks) {
    return new MarkIndex(
        marks.stream()
            .sorted(Comparator.comparingLong(RibbonMark::startNanos))
            .collect(Collectors.toUnmodifiableList()));
  }

  /** The marks in order of time. */
  public List<RibbonMark> marks() {
    return marks;
  }

  /** All marks that touch a span, and perhaps some before it that do not. */
  public List<RibbonMark> around(long fromNanos, long toNanos) {
    int first = first(fromNanos);
    return marks.subList(first, Math.max(first, startsAfter(toNanos)));
  }

  /** How many things were found before the marks that {@link #around} gives. */
  public int foundBefore(long fromNanos) {
    return (int)
        marks.subList(0, first(fromNanos)).stream()
            .filter(m -> m.kind() == RibbonMark.Kind.FINDING)
            .count();
  }

  /** The first mark that starts at an instant or later, or none. */
  public int firstFrom(long nanos) {
    int found = startsAfter(nanos - 1);
    return found < marks.size() ? found : NONE;
  }

  /** The last mark that starts at an instant or before, or none. */
  public int lastUpTo(long nanos) {
    return startsAfter(nanos) - 1;
  }

  /**
   * The next mark of a sort, or none.
   *
   * @param from where to begin looking, itself not included; may be {@link #NONE} or the size
   * @param step 1 for later, -1 for earlier
   * @param wanted which marks are looked for
   */
  public int next(int from, int step, IntPredicate wanted) {
    for (int i = from + step; i >= 0 && i < marks.size(); i += step) {
      if (wanted.test(i)) {
        return i;
      }
    }
    return NONE;
  }

  /**
   * The mark nearest to an instant. What has a length counts from its nearer edge; holds are found
   * only where nothing else is near.
   *
   * @param nanos the instant
   * @param toleranceNanos how far away a mark may be
   * @param prompts whether the lane of prompts is looked at, else that of what was done
   */
  public int nearest(long nanos, long toleranceNanos, boolean prompts) {
    int best = NONE;
    long least = Long.MAX_VALUE;
    int end = startsAfter(nanos + toleranceNanos);
    for (int i = first(nanos - toleranceNanos); i < end; i++) {
      RibbonMark mark = marks.get(i);
      long away = Math.max(0, Math.max(mark.startNanos() - nanos, nanos - mark.endNanos()));
      boolean span = mark.isSpan();
      boolean here = span ? away == 0 : away <= toleranceNanos;
      long cost =
          span
              ? Long.MAX_VALUE - 1
              : mark.kind() == RibbonMark.Kind.COMPRESSION ? away + toleranceNanos / 4 : away;
      if (here && mark.kind().inLane(prompts) && cost < least) {
        best = i;
        least = cost;
      }
    }
    return best;
  }

  private int first(long nanos) {
    return firstWhere(i -> reach[i] >= nanos);
  }

  private int startsAfter(long nanos) {
    return firstWhere(i -> marks.get(i).startNanos() > nanos);
  }

  /** The first place that is so, where all after it are; the size if none is. */
  private int firstWhere(IntPredicate so) {
    int low = 0;
    int high = marks.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (so.test(middle)) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }
}
