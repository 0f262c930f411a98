/** Two reviews side by side. */
package squeezewell.review.compare;
