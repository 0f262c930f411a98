package squeezewell.trainee;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.review.Reviewer;
import squeezewell.review.judge.Verdict;
import squeezewell.session.Fact;
import squeezewell.session.NotedFinding;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * What one past practice says about a rhythm held alone.
 *
 * @param startedAt when it began
 * @param endedAt when it ended, as far as that is known
 * @param trainee who practised; empty for somebody without a name
 * @param guidance the rhythm it began with
 * @param prompting how far breaths were to be prompted
 * @param startLevel the level of fading it began with; 0 where prompts did not fade
 * @param endLevel the level it ended with, before any finding that changed the rhythm; 0 where
 *     prompts did not fade
 * @param test the verdict on the test without prompts; empty if it was none
 */
public record PastPractice(
    Instant startedAt,
    Instant endedAt,
    String trainee,
    Guidance guidance,
    Prompting prompting,
    int startLevel,
    int endLevel,
    Optional<Verdict.Outcome> test) {
  public PastPractice {
    Objects.requireNonNull(startedAt, "startedAt");
    Objects.requireNonNull(endedAt, "endedAt");
    Objects.requireNonNull(trainee, "trainee");
    Objects.requireNonNull(guidance, "guidance");
    Objects.requireNonNull(prompting, "prompting");
    Objects.requireNonNull(test, "test");
  }

  /**
   * Whether a session says something of a rhythm held alone: one that a person practised live, with
   * prompts that faded or none. Made-up trainees and event lists say nothing of a person.
   */
  public static boolean tells(SessionHeader header) {
    return header.origin() == SessionHeader.Origin.LIVE
        && header.plan().prompting() != Prompting.THROUGHOUT;
  }

  /**
   * What the header of any other live practice says: only that it took place. What is practised
   * right before a test is a run-up to it.
   *
   * @param writtenAt when its file was last written; the earlier of that and its planned end counts
   */
  public static Optional<PastPractice> of(SessionHeader header, Instant writtenAt) {
    if (header.origin() != SessionHeader.Origin.LIVE) {
      return Optional.empty();
    }
    Instant planned = header.startedAt().plusNanos(header.plan().lengthNanos());
    boolean early = writtenAt.isAfter(header.startedAt()) && writtenAt.isBefore(planned);
    return Optional.of(
        new PastPractice(
            header.startedAt(),
            early ? writtenAt : planned,
            header.trainee(),
            header.plan().guidance(),
            Prompting.THROUGHOUT,
            0,
            0,
            Optional.empty()));
  }

  /** What a session says; empty if {@link #tells} says that it says nothing. */
  public static Optional<PastPractice> of(Session session) {
    SessionHeader header = session.header();
    if (!tells(header)) {
      return Optional.empty();
    }
    Prompting prompting = header.plan().prompting();
    return Optional.of(
        new PastPractice(
            header.startedAt(),
            header.startedAt().plusNanos(session.endNanos()),
            header.trainee(),
            header.plan().guidance(),
            prompting,
            header.plan().startLevel(),
            prompting == Prompting.FADING ? endLevel(session) : 0,
            prompting == Prompting.NONE ? Reviewer.review(session).test() : Optional.empty()));
  }

  /** Each change of the level is an event; another rhythm begins again with level 0. */
  private static int endLevel(Session session) {
    List<NotedFinding> findings = session.findings();
    int until =
        findings.stream()
            .filter(NotedFinding::changesPrompts)
            .mapToInt(NotedFinding::number)
            .min()
            .orElse(Integer.MAX_VALUE);
    int level = session.header().plan().startLevel();
    for (SessionEvent event : session.standing()) {
      if (event.number() < until && event.fact() instanceof Fact.Prompts prompts) {
        level = prompts.level().orElse(level);
      }
    }
    return level;
  }

  /** Whether it was a test that decided something; one that was given up decides too. */
  boolean isTried() {
    return test.filter(outcome -> outcome != Verdict.Outcome.UNDECIDED).isPresent();
  }

  /** Whether it was a test, and passed. */
  boolean isPassed() {
    return test.filter(outcome -> outcome == Verdict.Outcome.HELD).isPresent();
  }

  /**
   * Whether somebody practised just that: the same name, patient, situation and interval between
   * breaths with the same range, whatever the edition.
   */
  public boolean isOf(String name, Guidance wanted) {
    return trainee.trim().equals(name.trim()) && sameRhythm(guidance, wanted);
  }

  /** Whether two ask for the same of the same patient, as far as the steady breaths go. */
  static boolean sameRhythm(Guidance one, Guidance other) {
    return one.patient() == other.patient()
        && one.situation() == other.situation()
        && one.rhythm().steadyBreaths().isPresent()
        && other
            .rhythm()
            .steadyBreaths()
            .map(b -> b.asksTheSame(one.rhythm().steadyBreaths().get()))
            .orElse(false);
  }
}
