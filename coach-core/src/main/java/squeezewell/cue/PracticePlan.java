package squeezewell.cue;

import java.util.Objects;
import squeezewell.protocol.Guidance;

/**
 * What a practice asks for.
 *
 * @param guidance the rhythm and limits in force
 * @param countInNanos from the start of the session to the first prompt, nanoseconds, 0 to 60 s
 * @param lengthNanos time from the end of the planned count-in to the end of the practice,
 *     nanoseconds, positive, at most 24 h; time held by {@link Control.Kind#PAUSE} does not count.
 *     A hold inside the count-in takes the place of the rest of it.
 * @param leadNanos from a command that makes breathing go on to the prompt for it, nanoseconds, 0
 *     to 1 s. Sound needs a moment to reach the loudspeaker; with a lead it starts on time.
 */
public record PracticePlan(Guidance guidance, long countInNanos, long lengthNanos, long leadNanos) {
  private static final long SECOND = 1_000_000_000L;
  public static final long LONGEST_NANOS = 24 * 3_600 * SECOND;
  public static final long LONGEST_COUNT_IN_NANOS = 60 * SECOND;

  public PracticePlan {
    Objects.requireNonNull(guidance, "guidance");
    require("countInNanos", countInNanos, 0, LONGEST_COUNT_IN_NANOS);
    require("lengthNanos", lengthNanos, 1, LONGEST_NANOS);
    require("leadNanos", leadNanos, 0, SECOND);
  }

  private static void require(String name, long value, long least, long most) {
    if (value < least || value > most) {
      throw new IllegalArgumentException(
          name + " is " + value + "; allowed: " + least + " to " + most);
    }
  }
}
