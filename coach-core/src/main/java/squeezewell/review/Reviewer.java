package squeezewell.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import squeezewell.cue.Cue;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.Rhythm;
import squeezewell.review.judge.Findings;
import squeezewell.review.judge.HeldTest;
import squeezewell.review.judge.Ranked;
import squeezewell.review.judge.RhythmRule;
import squeezewell.review.judge.Verdict;
import squeezewell.review.measure.Alignment;
import squeezewell.review.measure.Asked;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Hold;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Measure;
import squeezewell.review.measure.MeasureCompressions;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.Penalties;
import squeezewell.review.measure.Practice;
import squeezewell.review.measure.PracticeParts;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.measure.RatePoint;
import squeezewell.review.measure.RollingRate;
import squeezewell.review.measure.Spans;
import squeezewell.review.measure.Unprompted;
import squeezewell.review.measure.WholeMeasure;
import squeezewell.review.say.Notes;
import squeezewell.review.say.Words;
import squeezewell.session.Breath;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;

/** Reviews a session: compares what was done with what was asked. Pure. */
public final class Reviewer {
  public static final String SLIP = "A finding that was taken back; not judged.";

  private Reviewer() {}

  /** The review of a session, whether it was brought to its end or not. */
  public static Review review(Session session) {
    Practice whole = Practice.of(session);
    Alignment alignment = align(whole);
    List<PracticeParts.Part> parts = PracticeParts.of(session, whole, alignment);
    List<Facts> facts = new ArrayList<>();
    Spans holds = Spans.whole(whole.holds());
    for (PracticeParts.Part part : parts) {
      facts.add(facts(part, holds));
    }
    List<Facts> tested = facts.stream().map(f -> tested(f, holds)).collect(Collectors.toList());
    List<String> notes = new ArrayList<>(Notes.of(session, whole));
    Notes.afterTest(facts.get(0), tested.get(0)).ifPresent(notes::add);
    // Asked once, since it looks through all events.
    boolean stationOver = session.finished() && Notes.inStation(session);
    if (facts.size() == 1) {
      return part(session, facts.get(0), tested.get(0), verdict(facts), notes, stationOver);
    }
    List<Review> reviews = new ArrayList<>();
    for (int i = 0; i < facts.size(); i++) {
      Facts one = facts.get(i);
      boolean slip = one.practice().place().slip();
      Verdict verdict = slip ? Verdict.notJudged(SLIP) : verdict(List.of(one));
      List<String> slipped = slip ? List.of(SLIP) : List.of();
      reviews.add(part(session, one, tested.get(i), verdict, slipped, stationOver));
    }
    List<Ranked> found = Findings.ofAll(session, whole, facts, tested);
    Asked asked = askedOfAll(session, whole, reviews, stationOver);
    return whole(session, whole, alignment, facts, found, reviews, notes, asked);
  }

  /**
   * A part as far as it counts. What comes after a test has ended does not, so nothing of it is
   * told beside the outcome.
   */
  private static Facts tested(Facts facts, Spans allHolds) {
    boolean test = facts.metrics().unprompted().flatMap(Unprompted::test).isPresent();
    OptionalLong end = test ? HeldTest.end(facts.practice()) : OptionalLong.empty();
    if (!end.isPresent() || end.getAsLong() >= facts.practice().endNanos()) {
      return facts;
    }
    Practice part = facts.practice().upTo(end.getAsLong());
    return facts(new PracticeParts.Part(part, align(part)), allHolds);
  }

  /** A test is judged by itself, and nothing else of its session is. */
  private static Verdict verdict(List<Facts> facts) {
    return facts.stream()
        .limit(1)
        .map(f -> f.metrics().unprompted().flatMap(Unprompted::test))
        .filter(Optional::isPresent)
        .map(test -> test.get().verdict())
        .findFirst()
        .orElseGet(() -> RhythmRule.judge(facts));
  }

  /** Breaths that no prompt could be heard for are neither paired nor left over. */
  private static Alignment align(Practice practice) {
    int[] prompted = promptedPlaces(practice);
    Alignment found = Alignment.of(promptTimes(practice), promptedBreaths(practice));
    if (prompted.length == practice.breaths().size()) {
      return found;
    }
    return new Alignment(
        found.pairs().stream()
            .map(p -> new Alignment.Pair(p.prompt(), prompted[p.breath()], p.errorNanos()))
            .collect(Collectors.toList()),
        found.unpairedPrompts(),
        found.unpairedBreaths().stream().map(k -> prompted[k]).collect(Collectors.toList()),
        found.offsetNanos(),
        found.costNanos());
  }

  private static int[] promptedPlaces(Practice practice) {
    List<Breath> breaths = practice.breaths();
    return IntStream.range(0, breaths.size())
        .filter(k -> !practice.silentAt(breaths.get(k).startNanos()))
        .toArray();
  }

  /** When the breaths began that could be prompted. */
  public static long[] promptedBreaths(Practice practice) {
    return Arrays.stream(promptedPlaces(practice))
        .mapToLong(k -> practice.breaths().get(k).startNanos())
        .toArray();
  }

  private static Facts facts(PracticeParts.Part part, Spans allHolds) {
    Practice practice = part.practice();
    List<IntervalPoint> intervals = intervals(practice, allHolds);
    List<RatePoint> rolling = RollingRate.of(intervals, practice.startNanos(), practice.endNanos());
    List<PromptMark> prompts = prompts(practice, part.alignment());
    Metrics metrics = Measure.of(practice, intervals, rolling, prompts, part.alignment());
    return new Facts(practice, metrics, intervals, rolling, prompts, part.alignment());
  }

  private static Review part(
      Session session,
      Facts facts,
      Facts tested,
      Verdict ruled,
      List<String> notes,
      boolean stationOver) {
    Practice practice = facts.practice();
    List<Ranked> found = Findings.of(facts, tested);
    Verdict verdict = RhythmRule.besides(ruled, found);
    return new Review(
        asked(session, practice, stationOver),
        practice.startNanos(),
        practice.endNanos(),
        facts.metrics().with(verdict),
        breaths(practice, facts.intervals(), facts.alignment()),
        MeasureCompressions.marks(practice),
        facts.prompts(),
        facts.intervals(),
        facts.rollingRate(),
        practice.holds(),
        practice.silences(),
        facts.alignment(),
        Findings.pick(found, verdict),
        verdict,
        notes,
        practice.place().equals(Practice.Place.WHOLE) ? session.findings() : List.of(),
        List.of());
  }

  private static Review whole(
      Session session,
      Practice whole,
      Alignment alignment,
      List<Facts> facts,
      List<Ranked> found,
      List<Review> parts,
      List<String> notes,
      Asked asked) {
    Verdict verdict = RhythmRule.besides(verdict(facts), found);
    List<BreathMark> breaths = new ArrayList<>();
    List<CompressionMark> compressions = new ArrayList<>();
    List<PromptMark> prompts = new ArrayList<>();
    List<IntervalPoint> intervals = new ArrayList<>();
    List<RatePoint> rolling = new ArrayList<>();
    int firstPrompt = 0;
    for (Review part : parts) {
      for (BreathMark breath : part.breaths()) {
        breaths.add(breath.movedBy(firstPrompt));
      }
      firstPrompt += part.prompts().size();
      compressions.addAll(part.compressions());
      prompts.addAll(part.prompts());
      intervals.addAll(part.intervals());
      rolling.addAll(part.rollingRate());
    }
    return new Review(
        asked,
        whole.startNanos(),
        whole.endNanos(),
        WholeMeasure.of(whole, facts, alignment).with(verdict),
        breaths,
        compressions,
        prompts,
        intervals,
        rolling,
        whole.holds(),
        whole.silences(),
        alignment,
        Findings.pick(found, verdict),
        verdict,
        notes,
        session.findings(),
        parts);
  }

  public static long[] promptTimes(Practice practice) {
    return practice.prompts().stream().mapToLong(Cue::atNanos).toArray();
  }

  public static long[] breathTimes(Practice practice) {
    return practice.breaths().stream().mapToLong(Breath::startNanos).toArray();
  }

  /**
   * @param holds of the whole session, since a breath of this part may lie a little outside of it
   */
  private static List<IntervalPoint> intervals(Practice practice, Spans holds) {
    List<IntervalPoint> points = new ArrayList<>();
    Optional<BreathPlan> plan = practice.breathPlan();
    if (!plan.isPresent()) {
      return points;
    }
    long[] at = breathTimes(practice);
    for (int k = 0; k + 1 < at.length; k++) {
      long length = at[k + 1] - at[k];
      boolean valid = !practice.place().slip() && holds.overlap(at[k], at[k + 1]) == 0;
      points.add(new IntervalPoint(at[k + 1], length, plan.get().judge(length), valid));
    }
    return points;
  }

  private static List<PromptMark> prompts(Practice practice, Alignment alignment) {
    long[] missing = Penalties.ofMissing(promptTimes(practice));
    boolean[] unpaired = new boolean[missing.length];
    alignment.unpairedPrompts().forEach(i -> unpaired[i] = true);
    List<PromptMark> marks = new ArrayList<>();
    int next = 0;
    for (int i = 0; i < missing.length; i++) {
      Cue cue = practice.prompts().get(i);
      List<Hold> holds = practice.holds();
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
            heldRightAfter || endedRightAfter
                ? PromptMark.Outcome.FORGIVEN
                : PromptMark.Outcome.MISSED;
      }
      marks.add(new PromptMark(cue.atNanos(), cue.lengthNanos(), outcome));
    }
    return marks;
  }

  private static List<BreathMark> breaths(
      Practice practice, List<IntervalPoint> intervals, Alignment alignment) {
    Map<Integer, Alignment.Pair> pairs = new HashMap<>();
    alignment.pairs().forEach(p -> pairs.put(p.breath(), p));
    Set<Integer> extra = new HashSet<>(alignment.unpairedBreaths());
    List<BreathMark> marks = new ArrayList<>();
    for (int k = 0; k < practice.breaths().size(); k++) {
      Breath breath = practice.breaths().get(k);
      boolean judged = k > 0 && k <= intervals.size() && intervals.get(k - 1).valid();
      Alignment.Pair pair = pairs.get(k);
      marks.add(
          new BreathMark(
              breath.startNanos(),
              breath.endNanos(),
              breath.millilitres(),
              judged ? intervals.get(k - 1).judgement() : Judgement.UNJUDGED,
              pair == null ? OptionalInt.empty() : OptionalInt.of(pair.prompt()),
              pair == null ? OptionalLong.empty() : OptionalLong.of(pair.errorNanos()),
              pair == null && !extra.contains(k)));
    }
    return marks;
  }

  /**
   * @param stationOver whether the session is a station's and came to its end
   */
  private static Asked asked(Session session, Practice practice, boolean stationOver) {
    SessionHeader header = session.header();
    Guidance guidance = practice.guidance();
    return new Asked(
        header.protocol().id(),
        header.protocol().title(),
        header.protocol().organisation(),
        header.protocol().year(),
        guidance.patient().label(),
        guidance.situation().label(),
        practice.breathPlan(),
        compressions(guidance.rhythm()),
        Measure.inspirationNanos(practice),
        practice.limits().gapLongest().nanos(),
        lengthNanos(practice, stationOver),
        practice.practisedNanos(),
        source(guidance.rhythm()),
        LocalLabel.of(
            header.protocol(), List.of(guidance), GuidelineLibrary.baseOf(header.protocol())));
  }

  /** The breathing of a station that came to its end lasted as long as it was to last. */
  private static long lengthNanos(Practice practice, boolean stationOver) {
    return stationOver ? practice.practisedNanos() : practice.plan().lengthNanos();
  }

  /** What stands for all parts; what differs between them is left out. */
  private static Asked askedOfAll(
      Session session, Practice whole, List<Review> parts, boolean stationOver) {
    SessionHeader header = session.header();
    Asked first = parts.get(0).asked();
    List<String> situations = new ArrayList<>();
    for (Review part : parts) {
      String label = part.asked().situation();
      if (situations.isEmpty() || !situations.get(situations.size() - 1).equals(label)) {
        situations.add(label);
      }
    }
    return new Asked(
        header.protocol().id(),
        header.protocol().title(),
        header.protocol().organisation(),
        header.protocol().year(),
        first.patient(),
        String.join("; then ", situations),
        Optional.empty(),
        "",
        first.inspirationNanos(),
        first.gapLongestNanos(),
        lengthNanos(whole, stationOver),
        whole.practisedNanos(),
        first.source(),
        first.local());
  }

  private static String compressions(Rhythm rhythm) {
    String range = rhythm.compressions().map(c -> "; " + Words.range(c)).orElse("");
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      return Words.count(cycle.perCycle(), "compression")
          + ", then "
          + Words.count(cycle.breathsPerCycle(), "breath")
          + range;
    }
    return range.isEmpty() ? "" : "without a break" + range;
  }

  private static Citation source(Rhythm rhythm) {
    return rhythm instanceof Rhythm.CompressionCycle cycle
        ? cycle.cycleSource()
        : rhythm.steadyBreaths().get().intervalSource();
  }
}
