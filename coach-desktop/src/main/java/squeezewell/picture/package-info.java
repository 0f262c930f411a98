/** What a practice looks like: marks, charts, and the painters of the screen and of reports. */
package squeezewell.picture;
