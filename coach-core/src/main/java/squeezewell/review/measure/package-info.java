/** What was done, in figures: parts, pairs of prompts and breaths, intervals, gaps and holds. */
package squeezewell.review.measure;
