/** Whether a rhythm was held, and what a trainee is told. */
package squeezewell.review.judge;
