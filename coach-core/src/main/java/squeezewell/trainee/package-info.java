/**
 * What a trainee's past practices say about the next one. All of it is derived from the sessions
 * that were kept: nothing is stored besides, so nothing can get out of step.
 */
package squeezewell.trainee;
