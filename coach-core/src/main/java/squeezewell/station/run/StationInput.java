package squeezewell.station.run;

/**
 * Something that was done to a station.
 *
 * @param action what
 * @param words identifier or words; empty if there are none
 * @param atNanos when, session time
 */
record StationInput(StationAction action, String words, long atNanos) {}
