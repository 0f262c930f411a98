package squeezewell.coach;

import squeezewell.protocol.PatientChange;

/**
 * Something that a {@link VirtualTrainee} will find.
 *
 * @param atNanos when, session time
 * @param finding what
 */
public record ScriptedFinding(long atNanos, PatientChange finding) {}
