package squeezewell.equipment;

import squeezewell.protocol.Citation;

/**
 * One thing to have ready before a practice.
 *
 * @param group what it belongs to
 * @param item the thing
 * @param why the reason, for people
 * @param source where the reason comes from
 */
public record CheckItem(String group, String item, String why, Citation source) {}
