package squeezewell.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.review.judge.Findings;
import squeezewell.review.judge.UnpromptedTrial;
import squeezewell.review.measure.Alignment;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Marks;
import squeezewell.review.measure.Measure;
import squeezewell.review.measure.MeasureCompressions;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.Practice;
import squeezewell.review.measure.PracticeParts;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.measure.RatePoint;
import squeezewell.review.measure.Spans;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Notes;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.session.NotedFinding;
import squeezewell.session.Session;

/** Reviews a session: measures what was done, judges it by what was asked, and says so. Pure. */
public final class Reviewer {
  private final Session session;
  private final long zero;
  private final List<NotedFinding> noted;
  private final Spans holds;
  private final Optional<Protocol> base;
  private final boolean stationOver;

  private Reviewer(Session session, Practice whole) {
    this.session = session;
    zero = Session.zeroNanos(session.header().plan(), session.breaths());
    noted = session.findings().stream().map(f -> f.from(zero)).collect(Collectors.toList());
    holds = Spans.whole(whole.onItsClock(zero).holds());
    // Both are asked once: one opens an edition, the other looks through all events.
    base = GuidelineLibrary.baseOf(session.header().protocol());
    stationOver = session.finished() && Notes.inStation(session);
  }

  /** The review of a session, whether it was brought to its end or not. */
  public static Review review(Session session) {
    Practice whole = Practice.of(session);
    return new Reviewer(session, whole).review(whole);
  }

  private Review review(Practice asRecorded) {
    Alignment alignment = asRecorded.align();
    List<Analysis> parts = new ArrayList<>();
    for (PracticeParts.Part part : PracticeParts.of(session, asRecorded, alignment)) {
      parts.add(Analysis.of(Marks.of(part.practice().onItsClock(zero), part.alignment(), holds)));
    }
    Practice whole = asRecorded.onItsClock(zero);
    List<Analysis> tested = parts.stream().map(this::tested).collect(Collectors.toList());
    List<String> notes = new ArrayList<>(Notes.of(session, whole));
    Notes.afterTest(parts.get(0), tested.get(0)).ifPresent(notes::add);
    if (parts.size() == 1) {
      return review(whole, alignment, parts, tested, notes, List.of());
    }
    List<Review> reviews = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      Analysis part = parts.get(i);
      reviews.add(
          review(
              part.practice(),
              part.marks().alignment(),
              List.of(part),
              List.of(tested.get(i)),
              part.practice().place().slip() ? List.of(Notes.SLIP) : List.of(),
              List.of()));
    }
    return review(whole, alignment, parts, tested, notes, reviews);
  }

  /**
   * A part as far as it counts. What comes after a test has ended does not, so nothing of it is
   * told beside the outcome.
   */
  private Analysis tested(Analysis facts) {
    OptionalLong end =
        UnpromptedTrial.isOf(facts) ? UnpromptedTrial.end(facts.practice()) : OptionalLong.empty();
    if (!end.isPresent() || end.getAsLong() >= facts.practice().endNanos()) {
      return facts;
    }
    Practice part = facts.practice().upTo(end.getAsLong());
    return Analysis.of(Marks.of(part, part.align(), holds));
  }

  /**
   * Reviews a practice, or a part of it.
   *
   * @param whole all of it
   * @param alignment which breath met which prompt in it
   * @param parts its parts with a rhythm each; one, if the rhythm never changed
   * @param tested the same, each as far as it counts
   * @param reviews one for each part, if there are several
   */
  private Review review(
      Practice whole,
      Alignment alignment,
      List<Analysis> parts,
      List<Analysis> tested,
      List<String> notes,
      List<Review> reviews) {
    boolean alone = parts.size() == 1;
    List<Marks> marks = parts.stream().map(Analysis::marks).collect(Collectors.toList());
    Metrics metrics = alone ? parts.get(0).metrics() : Measure.of(whole, marks, alignment);
    List<BreathMark> breaths = new ArrayList<>();
    List<CompressionMark> compressions = new ArrayList<>();
    List<PromptMark> prompts = new ArrayList<>();
    List<IntervalPoint> intervals = new ArrayList<>();
    List<RatePoint> rolling = new ArrayList<>();
    for (Marks part : marks) {
      breaths.addAll(part.breaths(prompts.size()));
      compressions.addAll(MeasureCompressions.marks(part.practice()));
      prompts.addAll(part.prompts());
      intervals.addAll(part.intervals());
      rolling.addAll(part.rollingRate());
    }
    Findings judged = Findings.of(noted, parts, tested);
    boolean slip = alone && parts.get(0).practice().place().slip();
    return new Review(
        Prescription.of(
            session.header().protocol(),
            marks.stream().map(Marks::practice).collect(Collectors.toList()),
            whole.practisedNanos(),
            stationOver,
            base),
        whole.startNanos(),
        whole.endNanos(),
        metrics,
        breaths,
        compressions,
        prompts,
        intervals,
        rolling,
        whole.holds(),
        whole.silences(),
        alignment,
        judged.findings().stream().map(Feedback::of).collect(Collectors.toList()),
        judged.verdict(),
        UnpromptedTrial.isOf(parts.get(0)) && !slip
            ? OptionalInt.of(UnpromptedTrial.of(parts.get(0).practice()).intervalCount())
            : OptionalInt.empty(),
        slip,
        notes,
        whole.place().first() && whole.place().last() ? noted : List.of(),
        reviews);
  }
}
