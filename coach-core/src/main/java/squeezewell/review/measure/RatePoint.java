package squeezewell.review.measure;

/**
 * How fast the breaths came over the minute before an instant.
 *
 * @param atNanos nanoseconds since the session began
 * @param perMinute breaths a minute
 */
public record RatePoint(long atNanos, double perMinute) {}
