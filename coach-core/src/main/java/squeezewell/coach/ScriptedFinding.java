package squeezewell.coach;

import squeezewell.protocol.ClinicalFinding;

/**
 * Something that a {@link VirtualTrainee} will find.
 *
 * @param atNanos when, session time
 * @param finding what
 */
public record ScriptedFinding(long atNanos, ClinicalFinding finding) {}
