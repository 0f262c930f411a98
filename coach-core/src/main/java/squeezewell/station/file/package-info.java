/**
 * What a station file says: what may be found, what has to be done by when, what is said. Knows
 * nothing of how a station is run.
 */
package squeezewell.station.file;
