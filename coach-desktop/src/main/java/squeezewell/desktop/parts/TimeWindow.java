package squeezewell.desktop.parts;

/**
 * The stretch of a practice that a ribbon shows. It never leaves the practice and is never shorter
 * than two seconds, or the practice where that is shorter. Instants are nanoseconds since the
 * session began. Immutable.
 *
 * @param startNanos where the practice begins
 * @param endNanos where it ends, later
 * @param fromNanos the left edge
 * @param toNanos the right edge, later
 */
record TimeWindow(long startNanos, long endNanos, long fromNanos, long toNanos) {
  static final long LEAST_NANOS = 2_000_000_000L;

  TimeWindow {
    if (!(startNanos <= fromNanos && fromNanos < toNanos && toNanos <= endNanos)) {
      throw new IllegalArgumentException("the window must lie in the practice");
    }
  }

  /** All of a practice. */
  static TimeWindow whole(long startNanos, long endNanos) {
    return new TimeWindow(startNanos, endNanos, startNanos, endNanos);
  }

  long lengthNanos() {
    return toNanos - fromNanos;
  }

  boolean isWhole() {
    return fromNanos == startNanos && toNanos == endNanos;
  }

  /** All of the practice. */
  TimeWindow whole() {
    return whole(startNanos, endNanos);
  }

  /**
   * Longer or shorter, with an instant kept where it stands if the practice reaches so far.
   *
   * @param factor above 1 shows more, below 1 less
   * @param anchorNanos in the window
   */
  TimeWindow zoomed(double factor, long anchorNanos) {
    long length = Math.round(lengthNanos() * factor);
    length = Math.max(LEAST_NANOS, Math.min(length, endNanos - startNanos));
    length = Math.min(length, endNanos - startNanos);
    double share = (double) (anchorNanos - fromNanos) / lengthNanos();
    return at(anchorNanos - Math.round(share * length), length);
  }

  /** Moved on by a time, or back by a negative one, as far as the practice goes. */
  TimeWindow moved(long nanos) {
    return at(fromNanos + nanos, lengthNanos());
  }

  /** Moved, if need be, so that an instant is well inside. */
  TimeWindow showing(long nanos) {
    long margin = lengthNanos() / 8;
    boolean inside = nanos >= fromNanos + margin && nanos <= toNanos - margin;
    return inside ? this : at(nanos - lengthNanos() / 2, lengthNanos());
  }

  private TimeWindow at(long from, long length) {
    long left = Math.max(startNanos, Math.min(from, endNanos - length));
    return new TimeWindow(startNanos, endNanos, left, left + length);
  }
}
