package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import squeezewell.cue.Cue;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.session.Breath;

/**
 * A part of a practice, each prompt and each interval in it marked.
 *
 * @param practice the part
 * @param alignment which breath met which prompt, by their places in it
 * @param intervals the interval after each breath but the last, in order; empty for a rhythm of
 *     compressions and pauses
 * @param rollingRate breaths a minute over the last minute, once a second where known
 * @param prompts what became of each prompt, in order
 * @param locking whether breaths kept a place between prompts
 */
public record Marks(
    Practice practice,
    Alignment alignment,
    List<IntervalPoint> intervals,
    List<RatePoint> rollingRate,
    List<PromptMark> prompts,
    PhaseLocking locking) {
  /**
   * A tempo that is off by more than this share has nothing to do with the prompts (our own
   * choice).
   */
  private static final double ANOTHER_TEMPO = 0.25;

  private static final int FEWEST_INTERVALS = 5;

  /**
   * Marks a part.
   *
   * @param allHolds of the whole session, since a breath of this part may lie a little outside of
   *     it
   */
  public static Marks of(Practice practice, Alignment alignment, Spans allHolds) {
    List<IntervalPoint> intervals = intervals(practice, allHolds);
    PhaseLocking locking =
        practice.breathPlan().isPresent()
            ? practice.locking()
            : new PhaseLocking(OptionalDouble.empty(), 0, 0, 0);
    return new Marks(
        practice,
        alignment,
        intervals,
        RollingRate.of(intervals, practice.startNanos(), practice.endNanos()),
        prompts(
            practice,
            alignment,
            practice.breaths().isEmpty()
                || (practice.breathPlan().isPresent() && !locking.ownTempo())),
        locking);
  }

  private static List<IntervalPoint> intervals(Practice practice, Spans holds) {
    List<IntervalPoint> points = new ArrayList<>();
    Optional<BreathPlan> plan = practice.breathPlan();
    if (!plan.isPresent()) {
      return points;
    }
    long[] at = practice.breathTimes();
    for (int k = 0; k + 1 < at.length; k++) {
      long length = at[k + 1] - at[k];
      boolean valid = !practice.place().slip() && holds.overlap(at[k], at[k + 1]) == 0;
      points.add(new IntervalPoint(at[k + 1], length, plan.get().judge(length), valid));
    }
    return points;
  }

  private static List<PromptMark> prompts(
      Practice practice, Alignment alignment, boolean answered) {
    long[] missing = Penalties.ofMissing(practice.promptTimes());
    boolean[] unpaired = new boolean[missing.length];
    alignment.unpairedPrompts().forEach(i -> unpaired[i] = true);
    List<PromptMark> marks = new ArrayList<>();
    int next = 0;
    for (int i = 0; i < missing.length; i++) {
      Cue cue = practice.prompts().get(i);
      List<Interruption> holds = practice.holds();
      while (next < holds.size() && holds.get(next).startNanos() < cue.atNanos()) {
        next++;
      }
      boolean heldRightAfter =
          next < holds.size() && holds.get(next).startNanos() <= cue.atNanos() + missing[i];
      boolean endedRightAfter =
          practice.place().slip() || practice.endNanos() <= cue.atNanos() + missing[i];
      PromptMark.Outcome outcome = PromptMark.Outcome.MET;
      if (unpaired[i]) {
        outcome =
            heldRightAfter || endedRightAfter || !answered
                ? PromptMark.Outcome.FORGIVEN
                : PromptMark.Outcome.MISSED;
      }
      marks.add(new PromptMark(cue.atNanos(), cue.lengthNanos(), outcome));
    }
    return marks;
  }

  /**
   * Every breath, in order.
   *
   * @param firstPrompt how many prompts the parts before had
   */
  public List<BreathMark> breaths(int firstPrompt) {
    Map<Integer, Alignment.Pair> pairs = new HashMap<>();
    alignment.pairs().forEach(p -> pairs.put(p.breath(), p));
    Set<Integer> extra = new HashSet<>(alignment.unpairedBreaths());
    boolean paired = paired();
    List<BreathMark> marks = new ArrayList<>();
    for (int k = 0; k < practice.breaths().size(); k++) {
      Breath breath = practice.breaths().get(k);
      boolean judged = k > 0 && k <= intervals.size() && intervals.get(k - 1).valid();
      Alignment.Pair pair = paired ? pairs.get(k) : null;
      marks.add(
          new BreathMark(
              breath.startNanos(),
              breath.endNanos(),
              breath.millilitres(),
              judged ? intervals.get(k - 1).judgement() : Judgement.UNJUDGED,
              pair == null ? OptionalInt.empty() : OptionalInt.of(pair.prompt() + firstPrompt),
              pair == null ? OptionalLong.empty() : OptionalLong.of(pair.errorNanos()),
              !pairs.containsKey(k) && !extra.contains(k)));
    }
    return marks;
  }

  /**
   * Whether it means something which breath met which prompt: not in cycles, where a trainee's own
   * cycle counts and not the beat of the prompts, nor at another tempo.
   */
  public boolean paired() {
    return paired(practice, intervals, locking);
  }

  private static boolean paired(
      Practice practice, List<IntervalPoint> intervals, PhaseLocking locking) {
    Optional<BreathPlan> plan = practice.breathPlan();
    if (practice.place().slip()) {
      return true;
    }
    if (!plan.isPresent() || locking.ownTempo()) {
      return false;
    }
    double[] lengths =
        intervals.stream()
            .filter(IntervalPoint::valid)
            .mapToDouble(IntervalPoint::seconds)
            .toArray();
    double asked = plan.get().interval().seconds();
    return lengths.length < FEWEST_INTERVALS
        || Math.abs(Statistics.median(lengths).getAsDouble() / asked - 1) <= ANOTHER_TEMPO;
  }

  /** The intervals that count, in order. */
  public List<IntervalPoint> valid() {
    return intervals.stream().filter(IntervalPoint::valid).collect(Collectors.toList());
  }
}
