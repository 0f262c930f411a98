/**
 * How what was done differs from what was asked. {@link squeezewell.review.Reviewer} is the way in:
 * it compares the schedule of a session with its events and gives a {@link
 * squeezewell.review.say.Review}. Everything here is pure: the same session gives the same review,
 * on any machine, years later.
 */
package squeezewell.review;
