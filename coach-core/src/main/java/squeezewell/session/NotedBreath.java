package squeezewell.session;

import java.util.OptionalLong;

/**
 * A breath of a session, and whether it stands.
 *
 * @param breath the breath
 * @param takenBackNanos when it was taken back as a slip, session time; empty if it was not
 */
public record NotedBreath(Breath breath, OptionalLong takenBackNanos) {}
