package squeezewell.session;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Protocol;

/**
 * What was fixed before a session began.
 *
 * @param startedAt wall-clock time of the session's start; all else counts from it
 * @param origin how the session came about
 * @param trainee who practised, at most {@link #LONGEST_TRAINEE} characters; empty if not said
 * @param protocol the edition in force, cut down to what may come into force for this patient; the
 *     entry that the practice starts with stands first
 * @param plan what was practised
 */
public record SessionHeader(
    Instant startedAt, Origin origin, String trainee, Protocol protocol, PracticePlan plan) {
  /** The longest name of a trainee, in characters. */
  public static final int LONGEST_TRAINEE = 200;

  public SessionHeader {
    Objects.requireNonNull(startedAt, "startedAt");
    Objects.requireNonNull(origin, "origin");
    Objects.requireNonNull(trainee, "trainee");
    Objects.requireNonNull(plan, "plan");
    if (trainee.length() > LONGEST_TRAINEE) {
      throw new IllegalArgumentException("a trainee's name of " + trainee.length() + " characters");
    }
    protocol =
        new Protocol(
            protocol.id(),
            protocol.title(),
            protocol.organisation(),
            protocol.year(),
            protocol.local(),
            plan.all(),
            List.of(),
            protocol.basedOn(),
            protocol.approval());
  }

  /** How a session came about. */
  public enum Origin {
    LIVE("live"),
    VIRTUAL("virtual"),
    EVENT_LIST("event-list");

    private final String word;

    Origin(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }
}
