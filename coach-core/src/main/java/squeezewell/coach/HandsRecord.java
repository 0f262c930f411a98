package squeezewell.coach;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.session.Breath;

/** What the trainee's hands did so far: squeezes, of which the last may go on, and compressions. */
final class HandsRecord {
  /** Two squeezes closer than this are one with a bouncing contact (our own choice). */
  static final long BOUNCE_NANOS = 200_000_000L;

  /** Two compressions closer than this are one with a bouncing contact (our own choice). */
  static final long COMPRESSION_BOUNCE_NANOS = 120_000_000L;

  private final List<Breath> breaths = new ArrayList<>();
  private final List<Integer> breathNumbers = new ArrayList<>();
  private List<Breath> shownBreaths = List.of();
  private List<Long> recentCompressions = List.of();
  private int compressionCount;
  private boolean squeezing;

  boolean isSqueezing() {
    return squeezing;
  }

  void press() {
    squeezing = true;
  }

  void release() {
    squeezing = false;
  }

  /** Whether a squeeze now would only be a bouncing contact. */
  boolean breathBounces(long at) {
    return !breaths.isEmpty() && at - lastBreath().startNanos() < BOUNCE_NANOS;
  }

  /** Whether a compression now would only be a bouncing contact. */
  boolean compressionBounces(long at) {
    int last = recentCompressions.size() - 1;
    return last >= 0 && at - recentCompressions.get(last) < COMPRESSION_BOUNCE_NANOS;
  }

  /**
   * A breath began.
   *
   * @param number of its event
   */
  void breathBegan(long at, int number) {
    breaths.add(new Breath(at, OptionalLong.empty(), OptionalDouble.empty()));
    breathNumbers.add(number);
    shownBreaths = List.copyOf(breaths);
  }

  /** The last breath ended; again, if the contact bounced. */
  void breathEnded(long at) {
    Breath last = lastBreath();
    breaths.set(
        breaths.size() - 1, new Breath(last.startNanos(), OptionalLong.of(at), last.millilitres()));
    shownBreaths = List.copyOf(breaths);
  }

  /** The last breath was none. */
  void forgetLastBreath() {
    breaths.remove(breaths.size() - 1);
    breathNumbers.remove(breathNumbers.size() - 1);
    shownBreaths = List.copyOf(breaths);
  }

  void compressed(long at) {
    List<Long> recent = new ArrayList<>(recentCompressions);
    recent.add(at);
    compressionCount++;
    int from = Math.max(0, recent.size() - CoachState.RECENT);
    recentCompressions = List.copyOf(recent.subList(from, recent.size()));
  }

  boolean hasBreaths() {
    return !breaths.isEmpty();
  }

  Breath lastBreath() {
    return breaths.get(breaths.size() - 1);
  }

  /** The number of the event of the last breath. */
  int lastBreathNumber() {
    return breathNumbers.get(breathNumbers.size() - 1);
  }

  /** The breath before the last began then; empty if there is none. */
  OptionalLong beforeLastNanos() {
    int place = breaths.size() - 2;
    return place < 0 ? OptionalLong.empty() : OptionalLong.of(breaths.get(place).startNanos());
  }

  /** All breaths so far; a list that does not change any more. */
  List<Breath> breaths() {
    return shownBreaths;
  }

  /** The last compressions, at most {@link CoachState#RECENT}; a list that does not change. */
  List<Long> recentCompressions() {
    return recentCompressions;
  }

  int compressionCount() {
    return compressionCount;
  }
}
