package squeezewell.audio;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Which spoken line comes next: in the order in which they were said, an urgent one before all that
 * is not. What has waited for too long is dropped, since what it tells is over. Not thread-safe.
 */
final class LineQueue {
  /** A line that could not begin within this time is dropped (our own choice). */
  static final long STALE_NANOS = 5_000_000_000L;

  /** More than this would be stale before its turn (our own choice). */
  static final int MOST_WAITING = 4;

  private final long staleFrames;
  private final Deque<Said> waiting = new ArrayDeque<>();

  /**
   * A line with its place in time.
   *
   * @param line the words
   * @param atFrame the frame from which it may be heard
   * @param urgent whether it may cut another short
   * @param origin what of a source it is; empty if it was said live
   */
  record Said(SpokenLine line, long atFrame, boolean urgent, Optional<Sounding> origin) {
    Said {
      Objects.requireNonNull(line, "line");
      Objects.requireNonNull(origin, "origin");
    }
  }

  LineQueue(int rate) {
    this.staleFrames = Frames.at(STALE_NANOS, rate);
  }

  boolean isEmpty() {
    return waiting.isEmpty();
  }

  /** Takes a line. An urgent one drops those that are not. */
  void add(Said said) {
    if (said.urgent()) {
      waiting.removeIf(w -> !w.urgent());
    }
    if (waiting.size() >= MOST_WAITING) {
      waiting.removeFirst();
    }
    waiting.addLast(said);
  }

  /** Takes a line back that was cut short, to be the next, unless an urgent one waits. */
  void putBack(Said said) {
    if (said.urgent() || waiting.stream().noneMatch(Said::urgent)) {
      waiting.addFirst(said);
    }
  }

  /** The line whose turn it is at a frame; those that are stale by then are dropped. */
  Optional<Said> peek(long frame) {
    waiting.removeIf(w -> frame - w.atFrame() > staleFrames);
    return Optional.ofNullable(waiting.peekFirst());
  }

  /** Takes the line whose turn it is away. */
  void removeFirst() {
    waiting.removeFirst();
  }

  void removeIf(Predicate<Said> which) {
    waiting.removeIf(which);
  }
}
