/** A review in words and as JSON. */
package squeezewell.review.say;
