package squeezewell.session;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * One breath given.
 *
 * @param startNanos when the squeeze began, nanoseconds since the session began
 * @param endNanos when it ended; empty if that is not known
 * @param millilitres volume delivered; empty if it was not measured
 */
public record Breath(long startNanos, OptionalLong endNanos, OptionalDouble millilitres) {}
