/**
 * A scripted practical exercise: what is found, what has to be done by when, what is said, and what
 * came of it. Knows no outputs and no reviews.
 */
package squeezewell.station;
