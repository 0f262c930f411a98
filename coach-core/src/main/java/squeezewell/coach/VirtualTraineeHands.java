package squeezewell.coach;

import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;

/** When a {@link VirtualTrainee} compresses: near each prompt for a compression, once. */
final class VirtualTraineeHands {
  private static final double NANOS_PER_SECOND = 1e9;
  private static final long LOOK_AHEAD = 6_000_000_000L;

  private final Coach coach;
  private final VirtualTraineeChance chance;
  private long answeredUntil;
  private long notBefore;
  private OptionalLong next = OptionalLong.empty();

  VirtualTraineeHands(Coach coach, VirtualTraineeChance chance) {
    this.coach = coach;
    this.chance = chance;
  }

  /** The next compression if it comes before an instant and before the end of the practice. */
  OptionalLong nextBefore(long nanos) {
    if (!asked()) {
      return OptionalLong.empty();
    }
    if (!next.isPresent()) {
      next = chooseUpTo(nanos);
    }
    long end = coach.state().schedule().endNanos().orElse(Long.MAX_VALUE);
    boolean due = next.isPresent() && next.getAsLong() < Math.min(nanos, end);
    return due ? next : OptionalLong.empty();
  }

  private boolean asked() {
    return coach.state().schedule().segments().stream()
        .anyMatch(s -> s.guidance().rhythm().compressions().isPresent());
  }

  /** The compression was given. */
  void done() {
    notBefore = next.getAsLong();
    next = OptionalLong.empty();
  }

  /** The prompts have changed: what was meant to answer an old one is dropped. */
  void startAnew(long nowNanos) {
    answeredUntil = nowNanos;
    notBefore = nowNanos;
    next = OptionalLong.empty();
  }

  private OptionalLong chooseUpTo(long nanos) {
    Optional<Cue> prompt =
        coach
            .state()
            .schedule()
            .between(answeredUntil, Math.max(answeredUntil, nanos) + LOOK_AHEAD)
            .stream()
            .filter(c -> c.kind() == CueKind.COMPRESS)
            .findFirst();
    if (!prompt.isPresent()) {
      return OptionalLong.empty();
    }
    answeredUntil = prompt.get().atNanos() + 1;
    long lag = Math.round(chance.normal(0.02, 0.03, -0.06, 0.1) * NANOS_PER_SECOND);
    return OptionalLong.of(Math.max(notBefore, prompt.get().atNanos() + lag));
  }
}
