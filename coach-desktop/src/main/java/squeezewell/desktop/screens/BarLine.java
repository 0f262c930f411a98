package squeezewell.desktop.screens;

/**
 * What stands on a bar of time.
 *
 * @param text the one time that presses most, in words
 * @param fill how much of it is used up, 0 to 1
 * @param urgent whether it is nearly or wholly used up
 */
public record BarLine(String text, double fill, boolean urgent) {}
