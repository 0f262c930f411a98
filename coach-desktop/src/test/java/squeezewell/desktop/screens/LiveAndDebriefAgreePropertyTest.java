package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import squeezewell.coach.Coach;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.Protocol;
import squeezewell.review.Reviewer;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.say.Review;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** What is said of a breath or a compression while it is practised, the debrief says too. */
class LiveAndDebriefAgreePropertyTest {
  private static final long SECOND = Practices.SECOND;
  private static final long LENGTH = 120 * SECOND;

  /** Well over a bounce, so that every press is taken. */
  private static final long LEAST_STEP = 250_000_000L;

  /** Longer than the longest interval asked for. */
  private static final long NEAR = 8 * SECOND;

  private final List<SessionEvent> events = new ArrayList<>();
  private final Map<Long, Judgement> live = new LinkedHashMap<>();
  private final Map<Long, Judgement> pad = new LinkedHashMap<>();

  @Property(tries = 500)
  void theStateShownLiveIsTheDebriefs(@ForAll @LongRange(max = Long.MAX_VALUE) long seed) {
    events.clear();
    live.clear();
    pad.clear();
    SplittableRandom random = new SplittableRandom(seed);
    Protocol edition = any(random, GuidelineLibrary.editions());
    Guidance guidance = any(random, edition.guidance());
    PracticePlan plan =
        PracticePlan.of(edition, guidance, random.nextInt(2) * (3 * SECOND), LENGTH, 0);
    Coach coach = new Coach(plan, journal(), List.of());
    practise(coach, random);
    Session session =
        new Session(
            new SessionHeader(
                Instant.parse("2026-03-01T09:00:00Z"),
                SessionHeader.Origin.LIVE,
                "",
                edition,
                plan),
            events,
            List.of());
    // The debrief counts from the first prompt, live time from the start of the session.
    long zero = Session.zeroNanos(plan, session.breaths());
    Review review = Reviewer.review(session);
    breathsAgree(coach.state(), review, zero);
    compressionsAgree(review, zero);
  }

  private void practise(Coach coach, SplittableRandom random) {
    long now = 0;
    while (now < LENGTH && !coach.state().finished()) {
      Guidance guidance = coach.state().schedule().guidanceAt(now);
      boolean compresses = guidance.rhythm().compressions().isPresent();
      int what = random.nextInt(100);
      if (what < 8) {
        now += LEAST_STEP + random.nextLong(4 * SECOND);
        pass(coach, now);
        coach.find(any(random, List.of(PatientChange.values())), now);
      } else if (what < 14) {
        now += LEAST_STEP + random.nextLong(3 * SECOND);
        pass(coach, now);
        coach.command(
            any(
                random,
                List.of(
                    Command.UNDO_FINDING,
                    Command.SUCTION,
                    Command.SUCTION_END,
                    Command.PULSE_CHECK,
                    Command.PULSE_CHECK_END,
                    Command.PAUSE,
                    Command.RESUME)),
            now);
      } else if (compresses && what < 80) {
        now = compress(coach, now, random);
      } else {
        now = breathe(coach, now, random);
      }
    }
    pass(coach, Math.max(now, LENGTH + 10 * SECOND));
    coach.command(Command.FINISH, LENGTH + 10 * SECOND);
  }

  /** A breath after an interval that is in range, just at its ends, just beyond or anything. */
  private long breathe(Coach coach, long after, SplittableRandom random) {
    CoachState before = coach.state();
    long interval = LEAST_STEP + random.nextLong(12 * SECOND);
    Optional<BreathPlan> plan = before.schedule().guidanceAt(after).rhythm().steadyBreaths();
    if (plan.isPresent() && random.nextInt(3) > 0) {
      long end = random.nextBoolean() ? plan.get().lowNanos() : plan.get().highNanos();
      interval = end + random.nextLong(-2, 3) * (random.nextBoolean() ? 1 : SECOND / 10);
    }
    int count = before.breaths().size();
    long from = count == 0 ? after : before.breaths().get(count - 1).startNanos();
    long at = Math.max(after + LEAST_STEP, from + interval);
    pass(coach, at);
    coach.command(random.nextBoolean() ? Command.BREATH : Command.SQUEEZE, at);
    CoachState state = coach.state();
    if (state.breaths().size() == count + 1) {
      Judgement said = LiveView.of(state, at).judgement();
      Judgement drawn = drawn(state, at);
      if (said != Judgement.UNJUDGED) {
        assertThat(said).isEqualTo(drawn);
      }
      live.put(state.breaths().get(count).startNanos(), drawn);
    }
    long end = at + LEAST_STEP / 2;
    coach.command(Command.SQUEEZE_END, end);
    return end;
  }

  private static Judgement drawn(CoachState state, long at) {
    return LiveView.ribbon(state, at).stream()
        .filter(mark -> mark.kind() == RibbonMark.Kind.BREATH && mark.startNanos() == at)
        .map(RibbonMark::judgement)
        .findFirst()
        .orElse(Judgement.UNJUDGED);
  }

  /** Some compressions at a steady rate, in whole or in tenths, about the ends of the range. */
  private long compress(Coach coach, long after, SplittableRandom random) {
    double rate = random.nextBoolean() ? 80 + random.nextInt(60) : 95 + random.nextInt(300) / 10.0;
    long step = Math.round(60e9 / rate);
    long at = after + LEAST_STEP;
    for (int i = random.nextInt(2, 20); i > 0 && !coach.state().finished(); i--) {
      at += step;
      pass(coach, at);
      coach.command(Command.COMPRESS, at);
      CoachState state = coach.state();
      List<Long> recent = state.recentCompressions();
      if (!recent.isEmpty() && recent.get(recent.size() - 1) == at) {
        pad.put(at, CompressionView.of(state, at).judgement());
      }
    }
    return at;
  }

  private void breathsAgree(CoachState last, Review review, long zero) {
    long before = Long.MIN_VALUE / 2;
    for (BreathMark mark : review.breaths()) {
      long at = mark.startNanos() + zero;
      Judgement drawn = drawn(last, at);
      if (mark.judgement() != Judgement.UNJUDGED && drawn != Judgement.UNJUDGED) {
        assertThat(drawn).as("breath at %d", at).isEqualTo(mark.judgement());
      }
      if (farFromChanges(last, before, at)) {
        assertThat(drawn).as("breath at %d", at).isEqualTo(mark.judgement());
        if (last.findings().stream().noneMatch(f -> f.undone())) {
          assertThat(live).containsEntry(at, drawn);
        }
      }
      before = at;
    }
  }

  /**
   * The debrief knows whether a breath near a change still answered the prompts before it; live
   * nothing is said of it.
   */
  private static boolean farFromChanges(CoachState last, long from, long to) {
    return last.schedule().segments().stream()
        .mapToLong(Segment::startNanos)
        .allMatch(change -> change == 0 || change < from - NEAR || change > to + NEAR);
  }

  /** The pad shows the mean of some intervals: where all are alike, it says what they are. */
  private void compressionsAgree(Review review, long zero) {
    List<CompressionMark> marks = review.compressions();
    for (int k = CompressionView.INTERVALS; k < marks.size(); k++) {
      List<Judgement> window =
          marks.subList(k - CompressionView.INTERVALS + 1, k + 1).stream()
              .map(CompressionMark::judgement)
              .distinct()
              .collect(Collectors.toList());
      Judgement shown = pad.getOrDefault(marks.get(k).atNanos() + zero, Judgement.UNJUDGED);
      // What is not judged in the end (taken back, in a pause, the first of a part) contradicts
      // nothing: while it stood, the pad judged it with those before.
      boolean unjudged = window.get(0) == Judgement.UNJUDGED;
      if (window.size() == 1 && shown != Judgement.UNJUDGED && !unjudged) {
        assertThat(shown)
            .as("compression at %d", marks.get(k).atNanos() + zero)
            .isEqualTo(window.get(0));
      }
    }
  }

  private Journal journal() {
    return new Journal() {
      @Override
      public void append(SessionEvent event) {
        events.add(event);
      }

      @Override
      public void close() {
        // Nothing is open.
      }
    };
  }

  private static void pass(Coach coach, long until) {
    OptionalLong due = coach.nextDueNanos();
    while (due.isPresent() && due.getAsLong() <= until) {
      coach.advance(due.getAsLong());
      due = coach.nextDueNanos();
    }
  }

  private static <T> T any(SplittableRandom random, List<T> all) {
    return all.get(random.nextInt(all.size()));
  }
}
