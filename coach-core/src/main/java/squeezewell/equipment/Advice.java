package squeezewell.equipment;

import squeezewell.protocol.Citation;

/**
 * One thing to know about a size or a way to measure it.
 *
 * @param topic the part of the kit it is about
 * @param name what it says
 * @param words the advice, for people
 * @param source where it comes from
 */
public record Advice(String topic, String name, String words, Citation source) {}
