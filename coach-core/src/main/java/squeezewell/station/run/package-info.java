/**
 * How a station runs: where it stands, what is marked, and what came of it. Knows no outputs and no
 * reviews.
 */
package squeezewell.station.run;
