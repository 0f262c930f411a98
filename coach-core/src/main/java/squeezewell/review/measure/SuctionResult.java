package squeezewell.review.measure;

/**
 * One suction.
 *
 * @param startedSeconds when it began, seconds since the session began
 * @param lengthSeconds how long it lasted
 * @param limitSeconds how long it may last
 * @param withinLimit whether it lasted no longer
 */
public record SuctionResult(
    double startedSeconds, double lengthSeconds, double limitSeconds, boolean withinLimit) {}
