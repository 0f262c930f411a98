package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import squeezewell.TestPlans;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.Protocol;
import squeezewell.review.judge.Verdict;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.measure.Interruption;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.review.say.ReviewText;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * What must hold of the review of any session with findings, in every edition, for every patient;
 * the pooled figures are worked out again here, naively, from the events and the stretches.
 */
class PartsPropertyTest {
  private static final long SECOND = TestPlans.SECOND;
  private static final long LENGTH = 150 * SECOND;

  @Property(tries = 1_000)
  void thePartsAddUpToTheWhole(@ForAll @LongRange(max = Long.MAX_VALUE) long seed)
      throws IOException {
    Session session = session(new SplittableRandom(seed));
    Review review = Reviewer.review(session);

    thePartsAreTheWhole(session, review);
    everyPromptAndBreathIsAccountedFor(review);
    sumsAddUp(review);
    intervalsStayInsideTheirPart(review);
    pooledFiguresAreThoseOfANaiveCount(review);
    compressionsAreThoseOfANaiveCount(session, review);
    checksAreCountedOnce(review);
    nothingIsAskedForWhileWatching(session, review);
    slipsAreNotJudged(review);
    assertThat(review.findings()).hasSizeBetween(1, 6);
    assertThat(review.findings()).isSortedAccordingTo(Comparator.comparing(Feedback::severity));
    assertThat(ReviewText.write(review).lines()).allMatch(l -> l.length() <= 80);
    StringBuilder json = new StringBuilder();
    ReviewJson.write(review, json);
    assertThat(json.toString()).doesNotContain("NaN", "Infinity");
  }

  private static long zero(Session session) {
    return Session.zeroNanos(session.header().plan(), session.breaths());
  }

  private static void thePartsAreTheWhole(Session session, Review review) {
    long zero = zero(session);
    List<Review> parts = review.rhythms();
    assertThat(review.parts().size()).isNotEqualTo(1);
    assertThat(parts.get(0).startNanos()).isEqualTo(review.startNanos());
    assertThat(parts.get(parts.size() - 1).endNanos()).isEqualTo(review.endNanos());
    for (int i = 1; i < parts.size(); i++) {
      assertThat(parts.get(i).startNanos()).isEqualTo(parts.get(i - 1).endNanos());
    }
    // Each part asks for what the schedule has in force just after its start.
    for (Review part : parts) {
      if (part.startNanos() < part.endNanos()) {
        assertThat(part.asked().situation())
            .isEqualTo(
                session.schedule().guidanceAt(zero + part.endNanos() - 1).situation().label())
            .isEqualTo(session.schedule().guidanceAt(zero + part.startNanos()).situation().label());
      }
    }
    assertThat(all(parts, Review::breaths).stream().map(BreathMark::startNanos))
        .containsExactlyElementsOf(
            session.breaths().stream()
                .map(b -> b.startNanos() - zero)
                .filter(b -> b <= review.endNanos())
                .collect(Collectors.toList()));
    assertThat(review.compressions().stream().map(CompressionMark::atNanos))
        .containsExactlyElementsOf(
            session.compressions().stream()
                .map(c -> c - zero)
                .filter(c -> c <= review.endNanos())
                .collect(Collectors.toList()));
    assertThat(all(parts, Review::prompts)).isEqualTo(review.prompts());
    assertThat(all(parts, Review::intervals)).isEqualTo(review.intervals());
    assertThat(all(parts, Review::rollingRate)).isEqualTo(review.rollingRate());
  }

  private static void everyPromptAndBreathIsAccountedFor(Review review) {
    List<Review> all = new ArrayList<>(review.parts());
    all.add(review);
    for (Review one : all) {
      if (!one.metrics().prompts().isPresent()) {
        assertThat(one.parts().isEmpty() && one.breaths().stream().anyMatch(BreathMark::met))
            .isFalse();
        continue;
      }
      Metrics.Prompts prompts = one.metrics().prompts().get();
      assertThat(prompts.met() + prompts.extra()).isEqualTo(one.metrics().breathCount());
      assertThat(prompts.met() + prompts.missed() + prompts.forgiven())
          .isEqualTo(prompts.given())
          .isEqualTo(one.prompts().size());
      assertThat(one.breaths().stream().filter(BreathMark::met).count()).isEqualTo(prompts.met());
      Set<Integer> met = new HashSet<>();
      for (BreathMark breath : one.breaths()) {
        if (breath.met()) {
          int prompt = breath.prompt().getAsInt();
          assertThat(met.add(prompt)).isTrue();
          assertThat(one.prompts().get(prompt).outcome()).isEqualTo(PromptMark.Outcome.MET);
          assertThat(breath.errorNanos().getAsLong())
              .isEqualTo(breath.startNanos() - one.prompts().get(prompt).atNanos());
        }
      }
    }
  }

  private static void sumsAddUp(Review review) {
    same(review, Metrics::breathCount);
    if (review.metrics().prompts().isPresent()) {
      same(review, m -> m.prompts().map(Metrics.Prompts::given).orElse(0));
      same(review, m -> m.prompts().map(Metrics.Prompts::met).orElse(0));
      same(review, m -> m.prompts().map(Metrics.Prompts::missed).orElse(0));
      same(review, m -> m.prompts().map(Metrics.Prompts::extra).orElse(0));
      same(review, m -> m.prompts().map(Metrics.Prompts::forgiven).orElse(0));
    }
    same(review, m -> m.interval().count());
    same(review, m -> m.interval().inRangeCount());
    same(review, m -> m.interval().fastCount());
    same(review, m -> m.interval().slowCount());
    same(review, m -> m.inspiration().count());
    same(review, m -> m.gap().overLimitCount());
    same(review, m -> m.pulseChecks().size());
    same(review, m -> m.suctions().size());
    near(review, Metrics::sessionSeconds);
    near(review, Metrics::effectiveSeconds);
    near(review, m -> m.hyperventilationMinutes().orElse(0));
    near(review, Metrics::holeSeconds);
    near(review, m -> m.gap().overLimitSeconds());
    near(review, m -> m.interval().excessBreaths());
    near(review, m -> m.interval().deficitBreaths());
  }

  private static void intervalsStayInsideTheirPart(Review review) {
    for (Review part : review.rhythms()) {
      Set<Long> breaths =
          part.breaths().stream().map(BreathMark::startNanos).collect(Collectors.toSet());
      for (IntervalPoint point : part.intervals()) {
        assertThat(breaths).contains(point.atNanos(), point.atNanos() - point.lengthNanos());
        // AHA 2015 prints a rate over a minute: a single breath has half a second more.
        boolean rate =
            part.asked().protocolId().equals("aha-2015")
                && part.asked().lowNanos().getAsLong() == 5_000_000_000L
                && part.asked().highNanos().getAsLong() == 6_000_000_000L;
        long more = rate ? 500_000_000L : 0;
        long low = part.asked().lowNanos().getAsLong() - more;
        long high = part.asked().highNanos().getAsLong() + more;
        Judgement judgement = Judgement.IN_RANGE;
        if (point.lengthNanos() < low) {
          judgement = Judgement.FAST;
        } else if (point.lengthNanos() > high) {
          judgement = Judgement.SLOW;
        }
        assertThat(point.judgement()).isEqualTo(judgement);
      }
    }
  }

  private static void pooledFiguresAreThoseOfANaiveCount(Review review) {
    List<Double> lengths = new ArrayList<>();
    Set<List<Long>> ranges = new HashSet<>();
    for (Review part : review.rhythms()) {
      if (!part.asked().lowNanos().isPresent()) {
        continue;
      }
      ranges.add(
          List.of(part.asked().lowNanos().getAsLong(), part.asked().highNanos().getAsLong()));
      for (int k = 1; k < part.breaths().size(); k++) {
        long from = part.breaths().get(k - 1).startNanos();
        long to = part.breaths().get(k).startNanos();
        boolean held =
            review.holds().stream()
                .anyMatch(h -> Math.min(h.endNanos(), to) > Math.max(h.startNanos(), from));
        if (!held && !isSlip(part)) {
          lengths.add((to - from) / 1e9);
        }
      }
    }
    Metrics.Interval interval = review.metrics().interval();
    assertThat(interval.count()).isEqualTo(lengths.size());
    double sum = lengths.stream().mapToDouble(d -> d).sum();
    if (ranges.size() == 1 && !lengths.isEmpty()) {
      close(interval.meanSeconds(), sum / lengths.size());
      if (sum > 0) {
        close(review.metrics().rate().overallPerMinute(), 60 * lengths.size() / sum);
      }
    } else {
      assertThat(interval.meanSeconds()).isEmpty();
      assertThat(review.metrics().rate().overallPerMinute()).isEmpty();
    }
    close(
        OptionalDouble.of(review.metrics().effectiveSeconds()),
        seconds(review, review.startNanos(), review.endNanos()));
  }

  /** Time without the excused parts of holds, piece by piece. */
  private static double seconds(Review review, long from, long to) {
    TreeSet<Long> cuts = new TreeSet<>(List.of(from, to));
    for (Interruption hold : review.holds()) {
      cuts.add(Math.max(from, Math.min(to, hold.startNanos())));
      cuts.add(Math.max(from, Math.min(to, hold.startNanos() + hold.excusedNanos())));
    }
    long sum = 0;
    long before = from;
    for (long cut : cuts) {
      long start = before;
      boolean excused =
          review.holds().stream()
              .anyMatch(h -> h.startNanos() <= start && start < h.startNanos() + h.excusedNanos());
      sum += excused ? 0 : cut - before;
      before = cut;
    }
    return sum / 1e9;
  }

  private static void compressionsAreThoseOfANaiveCount(Session session, Review review) {
    long given =
        session.compressions().stream().filter(c -> c - zero(session) <= review.endNanos()).count();
    List<Review> asked =
        review.rhythms().stream()
            .filter(p -> !p.asked().compressions().isEmpty() && !isSlip(p))
            .collect(Collectors.toList());
    assertThat(review.metrics().compressions().isPresent())
        .isEqualTo(given > 0 || !asked.isEmpty());
    review
        .metrics()
        .compressions()
        .ifPresent(
            done -> {
              assertThat(done.count()).isEqualTo((int) given);
              done.fraction().ifPresent(f -> assertThat(f).isBetween(0.0, 1.0));
              if (!asked.isEmpty()) {
                double time =
                    asked.stream()
                        .mapToDouble(p -> seconds(review, p.startNanos(), p.endNanos()))
                        .sum();
                double off =
                    asked.stream()
                        .mapToDouble(p -> p.metrics().compressions().get().handsOffSeconds())
                        .sum();
                assertThat(done.handsOffSeconds()).isCloseTo(off, within(1e-6));
                if (time > 0) {
                  close(done.fraction(), Math.max(0, 1 - off / time));
                }
                assertThat(done.pauseCount())
                    .isEqualTo(
                        asked.stream()
                            .mapToInt(p -> p.metrics().compressions().get().pauseCount())
                            .sum());
              }
            });
  }

  private static void checksAreCountedOnce(Review review) {
    List<PulseCheckResult> checks = review.metrics().pulseChecks();
    Set<Double> made =
        checks.stream()
            .filter(c -> c.startedSeconds().isPresent())
            .map(c -> c.startedSeconds().getAsDouble())
            .collect(Collectors.toSet());
    Set<Double> held =
        review.holds().stream()
            .filter(h -> h.kind() == Segment.Kind.PULSE_CHECK)
            .filter(h -> h.startNanos() <= review.endNanos())
            // One that was broken off under 2 s was not made, where the pulse was to be felt.
            .filter(h -> made.contains(h.startNanos() / 1e9) || h.seconds() >= 2)
            .map(h -> h.startNanos() / 1e9)
            .collect(Collectors.toSet());
    assertThat(made).isEqualTo(held);
    assertThat(checks.stream().filter(c -> c.startedSeconds().isPresent()).count())
        .isEqualTo(made.size());
    boolean paused = review.holds().stream().anyMatch(h -> h.kind() == Segment.Kind.PAUSED);
    for (PulseCheckResult check : checks) {
      if (check.outcome() == PulseCheckResult.Outcome.MISSED && !paused) {
        double due = check.dueSeconds().getAsDouble();
        // No change came within the time in which a check would still have served it: at least
        // half the spacing, which is 60 s or, for some, 30 s.
        assertThat(review.parts())
            .noneMatch(p -> p.startNanos() / 1e9 > due && p.startNanos() / 1e9 <= due + 30 - 1e-6);
      }
    }
  }

  private static void nothingIsAskedForWhileWatching(Session session, Review review) {
    for (Segment segment : session.schedule().segments()) {
      long start = segment.startNanos() - zero(session);
      long end = Math.min(segment.endNanos() - zero(session), review.endNanos());
      if (segment.kind() == Segment.Kind.WATCHING && start < end) {
        assertThat(review.prompts()).noneMatch(p -> start <= p.atNanos() && p.atNanos() < end);
        assertThat(review.holds())
            .anyMatch(
                h ->
                    h.kind() == Segment.Kind.WATCHING
                        && h.startNanos() == start
                        && h.excusedNanos() == end - start);
      }
    }
  }

  private static void slipsAreNotJudged(Review review) {
    for (Review part : review.parts()) {
      if (isSlip(part)) {
        assertThat(part.verdict().outcome()).isEqualTo(Verdict.Outcome.NOT_JUDGED);
        assertThat(part.metrics().prompts().orElseThrow().missed()).isZero();
        assertThat(part.metrics().interval().count()).isZero();
        assertThat(review.found()).anyMatch(f -> f.undone() && f.atNanos() <= part.startNanos());
      }
    }
    if (review.found().stream().noneMatch(f -> f.undone())) {
      assertThat(review.parts()).noneMatch(PartsPropertyTest::isSlip);
    }
  }

  private static boolean isSlip(Review part) {
    return part.slip();
  }

  private static <T> List<T> all(
      List<Review> parts, java.util.function.Function<Review, List<T>> what) {
    return parts.stream().map(what).flatMap(Collection::stream).collect(Collectors.toList());
  }

  private static void same(Review review, ToIntFunction<Metrics> what) {
    assertThat(review.rhythms().stream().mapToInt(p -> what.applyAsInt(p.metrics())).sum())
        .isEqualTo(what.applyAsInt(review.metrics()));
  }

  private static void near(Review review, ToDoubleFunction<Metrics> what) {
    assertThat(review.rhythms().stream().mapToDouble(p -> what.applyAsDouble(p.metrics())).sum())
        .isCloseTo(what.applyAsDouble(review.metrics()), within(1e-6));
  }

  private static void close(OptionalDouble value, double expected) {
    assertThat(value).isPresent();
    assertThat(value.getAsDouble()).isCloseTo(expected, within(1e-6));
  }

  // Below: sessions by chance.

  private static Session session(SplittableRandom random) {
    List<Protocol> editions = GuidelineLibrary.editions();
    Protocol edition = random.nextInt(5) == 0 ? TwoRhythms.protocol() : pick(editions, random);
    Guidance guidance = pick(edition.guidance(), random);
    PracticePlan plan = PracticePlan.of(edition, guidance, random.nextInt(4) * SECOND, LENGTH, 0);
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-01-31T12:00:00Z"),
            random.nextBoolean() ? SessionHeader.Origin.LIVE : SessionHeader.Origin.EVENT_LIST,
            "",
            edition,
            plan);
    List<SessionEvent> events = script(random);
    events = withHands(random, new Session(header, numbered(events), List.of()), events);
    return new Session(header, numbered(events), List.of());
  }

  /** Findings and commands; the detail of a finding that is taken back is set when numbered. */
  private static List<SessionEvent> script(SplittableRandom random) {
    List<SessionEvent> events = new ArrayList<>();
    long at = 0;
    int steps = random.nextInt(13);
    for (int i = 0; i < steps; i++) {
      at += random.nextInt(4) == 0 ? 0 : random.nextInt(1 + random.nextInt(100)) * SECOND / 4;
      int what = random.nextInt(20);
      if (what < 11) {
        String word = pick(List.of(PatientChange.values()), random).word();
        events.add(SessionEvent.of(1, at, EventType.FINDING, word));
      } else if (what < 14) {
        events.add(SessionEvent.of(1, at, EventType.FINDING_UNDONE, ""));
      } else if (what == 14) {
        events.add(
            SessionEvent.of(
                1, at, EventType.HOLE, random.nextInt(20) + "." + random.nextInt(10) + " s"));
      } else {
        events.add(
            SessionEvent.of(
                1,
                at,
                pick(
                    List.of(
                        EventType.PULSE_CHECK,
                        EventType.PULSE_CHECK_END,
                        EventType.SUCTION,
                        EventType.SUCTION_END,
                        EventType.PAUSE,
                        EventType.RESUME),
                    random),
                ""));
      }
    }
    return events;
  }

  /** Breaths and compressions near the prompts, or wherever. */
  private static List<SessionEvent> withHands(
      SplittableRandom random, Session asked, List<SessionEvent> script) {
    List<SessionEvent> events = new ArrayList<>(script);
    long end = asked.schedule().endNanos().orElse(LENGTH * 2);
    double care = random.nextDouble();
    for (Cue cue : asked.schedule().between(0, end)) {
      boolean breath = cue.kind() == CueKind.SQUEEZE;
      if ((breath || cue.kind() == CueKind.COMPRESS) && random.nextDouble() < care) {
        double spread = breath ? 0.4 : 0.04;
        long at = cue.atNanos() + Math.round(spread * random.nextGaussian() * SECOND);
        events.add(
            SessionEvent.of(
                1, Math.max(0, at), breath ? EventType.BREATH : EventType.COMPRESSION, ""));
      }
    }
    for (int i = random.nextInt(25); i > 0; i--) {
      events.add(
          SessionEvent.of(
              1,
              random.nextInt(170) * SECOND,
              random.nextInt(4) == 0 ? EventType.COMPRESSION : EventType.BREATH,
              ""));
    }
    if (random.nextBoolean()) {
      List<SessionEvent> ends = new ArrayList<>();
      for (SessionEvent event : events) {
        if (event.what() == EventType.BREATH) {
          long length = SECOND / 2 + random.nextInt(1_000) * SECOND / 1_000;
          ends.add(SessionEvent.of(1, event.atNanos() + length, EventType.BREATH_END, ""));
        }
      }
      events.addAll(ends);
    }
    if (random.nextInt(3) > 0) {
      events.add(SessionEvent.of(1, (30 + random.nextInt(140)) * SECOND, EventType.FINISH, ""));
    }
    return events;
  }

  private static List<SessionEvent> numbered(List<SessionEvent> events) {
    List<SessionEvent> sorted = new ArrayList<>(events);
    sorted.sort(Comparator.comparingLong(SessionEvent::atNanos));
    List<SessionEvent> numbered = new ArrayList<>();
    Deque<Integer> found = new ArrayDeque<>();
    for (SessionEvent event : sorted) {
      int number = numbered.size() + 1;
      String detail = event.detail();
      if (event.what() == EventType.FINDING) {
        found.push(number);
      } else if (event.what() == EventType.FINDING_UNDONE) {
        if (found.isEmpty()) {
          continue;
        }
        detail = found.pop().toString();
      }
      numbered.add(SessionEvent.of(number, event.atNanos(), event.what(), detail));
    }
    return numbered;
  }

  private static <T> T pick(List<T> list, SplittableRandom random) {
    return list.get(random.nextInt(list.size()));
  }
}
