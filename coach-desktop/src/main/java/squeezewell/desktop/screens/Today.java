package squeezewell.desktop.screens;

import squeezewell.files.LastChoice;
import squeezewell.review.say.Review;
import squeezewell.trainee.NextPractice;

/**
 * What to practice today, from the last practice of a person.
 *
 * @param last how that went
 * @param advice what follows from it
 * @param choice what sets that up
 */
public record Today(Review last, NextPractice advice, LastChoice choice) {}
