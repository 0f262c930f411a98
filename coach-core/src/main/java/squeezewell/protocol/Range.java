package squeezewell.protocol;

/**
 * The two ends of a range, to be printed or drawn. Who wants to know whether a value lies in it
 * asks the plan to judge it, since only the plan knows the tolerance.
 *
 * @param low the lower end, seconds for an interval, a minute for a rate
 * @param high the higher end, likewise
 */
public record Range(double low, double high) {}
