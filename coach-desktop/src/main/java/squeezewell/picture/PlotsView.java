package squeezewell.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.RatePoint;
import squeezewell.review.say.Figure;
import squeezewell.review.say.PartText;
import squeezewell.review.say.Review;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** What the plain charts of a debrief show. Pure. */
public final class PlotsView {
  private static final Wording WORDS = Wording.beside(PlotsView.class);

  /** Intervals beyond this many times the longest in range are drawn at the edge (our choice). */
  private static final double HIGHEST = 2;

  /** For a rhythm without a range, where the edge is, in seconds (our own choice). */
  private static final double EDGE_WITHOUT_RANGE = 20;

  private static final double MINUTE = 60e9;

  private final Review review;
  private final long originNanos;
  private final List<Review> ranged;

  private PlotsView(Review review, long originNanos) {
    this.review = review;
    this.originNanos = originNanos;
    ranged =
        review.rhythms().stream()
            .filter(p -> p.asked().breaths().isPresent() && !p.slip())
            .toList();
  }

  public static PlotsView of(Review review) {
    return of(review, review.startNanos());
  }

  /**
   * The same, for a part too.
   *
   * @param originNanos the instant that is 0 on the axis of minutes
   */
  public static PlotsView of(Review review, long originNanos) {
    return new PlotsView(review, originNanos);
  }

  /** Whether a part at least asks for steady breaths. */
  public boolean hasRange() {
    return !ranged.isEmpty();
  }

  /** The time between breaths over the practice, with the range of each part. */
  public PlotData intervals() {
    double top = edgeSeconds();
    Timed chart = new Timed();
    for (Review part : ranged) {
      chart.range(part, low(part), high(part));
      chart.target(part, part.asked().intervalSeconds().getAsDouble());
    }
    for (IntervalPoint point : review.intervals()) {
      if (point.valid()) {
        chart.point(
            point.atNanos(),
            Math.min(point.seconds(), top),
            point.judgement(),
            WORDS.say(
                point.seconds() > top ? "interval.beyond" : "interval",
                Quantities.tenthsClock(point.atNanos()),
                MarksView.after(point)));
      }
    }
    Metrics.Interval interval = review.metrics().interval();
    String summary =
        WORDS.say(
            "interval.summary",
            interval.count(),
            interval.inRangeCount(),
            interval.fastCount(),
            interval.slowCount());
    return chart.data("interval.label", 0, top * 1.04, false, summary);
  }

  /** Breaths a minute over the last minute, with the range of each part. */
  public PlotData rate() {
    Timed chart = new Timed();
    for (Review part : ranged) {
      chart.range(part, 60 / high(part), 60 / low(part));
      chart.target(part, 60 / part.asked().intervalSeconds().getAsDouble());
    }
    for (RatePoint point : review.rollingRate()) {
      Judgement judgement = judged(point);
      chart.point(
          point.atNanos(),
          point.perMinute(),
          judgement,
          WORDS.say(
              "rate",
              Quantities.clock(point.atNanos()),
              Quantities.decimals(point.perMinute(), 1),
              judgement.label()));
    }
    DoubleSummaryStatistics all =
        review.rollingRate().stream().mapToDouble(RatePoint::perMinute).summaryStatistics();
    double most = Math.max(0, all.getMax());
    double top = ranged.stream().mapToDouble(part -> 60 / low(part)).reduce(most, Math::max);
    String summary =
        all.getCount() == 0
            ? WORDS.say("rate.unknown")
            : WORDS.say(
                "rate.summary",
                Quantities.decimals(all.getMin(), 1),
                Quantities.decimals(all.getMax(), 1));
    return chart.data("rate.label", 0, Math.max(1, top * 1.2), true, summary);
  }

  /** By the range in force where the minute ends. */
  private Judgement judged(RatePoint point) {
    for (Review part : ranged) {
      if (point.atNanos() >= part.startNanos() && point.atNanos() <= part.endNanos()) {
        return part.asked().breaths().get().judgeRate(point.perMinute());
      }
    }
    return Judgement.UNJUDGED;
  }

  /**
   * Breath minus prompt over the practice. A breath is in band if it is no further from its prompt
   * than the range of its part leaves on that side of the interval asked for (our own choice).
   */
  public PlotData lateness() {
    double edge = 1;
    Timed chart = new Timed();
    for (Review part : ranged) {
      double target = part.asked().intervalSeconds().getAsDouble();
      chart.range(part, low(part) - target, high(part) - target);
      edge = Math.max(edge, Math.max(target - low(part), high(part) - target));
    }
    Map<Judgement, Integer> counts = new EnumMap<>(Judgement.class);
    for (BreathMark breath : review.breaths()) {
      if (breath.errorNanos().isPresent()) {
        long error = breath.errorNanos().getAsLong();
        edge = Math.max(edge, Math.ceil(Math.abs(error) / 5e8) / 2);
        Judgement judgement = judgedLateness(breath.startNanos(), error);
        counts.merge(judgement, 1, Integer::sum);
        chart.point(
            breath.startNanos(),
            error / 1e9,
            judgement,
            WORDS.say(
                "lateness." + Figure.slug(judgement.name()),
                Quantities.tenthsClock(breath.startNanos()),
                MarksView.lateness(error)));
      }
    }
    double left = minutes(review.startNanos());
    chart.targets.add(new PlotData.Level(left, 0, left + lengthMinutes(), 0));
    return chart.data("lateness.label", -edge * 1.1, edge * 1.1, false, latenessSummary(counts));
  }

  /** By the range of the part that the breath is in; where one ends, the next has begun. */
  private Judgement judgedLateness(long atNanos, long errorNanos) {
    Judgement judgement = Judgement.UNJUDGED;
    for (Review part : ranged) {
      if (atNanos >= part.startNanos() && atNanos <= part.endNanos()) {
        judgement = part.asked().breaths().get().judgeLateness(errorNanos);
      }
    }
    return judgement;
  }

  private String latenessSummary(Map<Judgement, Integer> counts) {
    Optional<Metrics.Asynchrony> asynchrony =
        review.metrics().asynchrony().filter(a -> a.meanSeconds().isPresent());
    if (!asynchrony.isPresent()) {
      return WORDS.say("lateness.unknown");
    }
    double late = asynchrony.get().meanSeconds().getAsDouble();
    String summary =
        WORDS.say(
            late < 0 ? "lateness.mean.early" : "lateness.mean.late",
            Quantities.decimals(Math.abs(late), 1));
    OptionalDouble spread = asynchrony.get().sdSeconds();
    if (spread.isPresent()) {
      summary = WORDS.say("lateness.spread", summary, Quantities.decimals(spread.getAsDouble(), 1));
    }
    summary = WORDS.say("lateness.summary", summary);
    return hasRange()
        ? WORDS.say(
            "lateness.counts",
            summary,
            counts.getOrDefault(Judgement.IN_RANGE, 0),
            counts.getOrDefault(Judgement.FAST, 0),
            counts.getOrDefault(Judgement.SLOW, 0))
        : summary;
  }

  /** How many intervals there are of each length, with the ranges that were asked for. */
  public PlotData histogram() {
    List<IntervalPoint> valid = review.intervals().stream().filter(IntervalPoint::valid).toList();
    long edge = Math.round(edgeSeconds() * 1e9);
    HistogramBins bins =
        HistogramBins.of(valid.stream().mapToLong(IntervalPoint::lengthNanos).toArray(), edge);
    List<PlotData.Bar> bars = new ArrayList<>();
    List<PlotData.Stop> stops = new ArrayList<>();
    int most = 1;
    for (int bin = 0; bin < bins.counts().size(); bin++) {
      int place = bin;
      List<Judgement> inBin =
          valid.stream()
              .filter(p -> bins.binOf(p.lengthNanos()) == place)
              .map(IntervalPoint::judgement)
              .toList();
      double from = bins.lowNanos(bin) / 1e9;
      double to = (bins.lowNanos(bin) + bins.widthNanos()) / 1e9;
      List<String> pieces = new ArrayList<>();
      int height = 0;
      for (Judgement judgement : Judgement.values()) {
        int count = (int) inBin.stream().filter(j -> j == judgement).count();
        if (count > 0) {
          bars.add(new PlotData.Bar(from, to, height, height + count, judgement));
          pieces.add(count + " " + judgement.label());
          height += count;
        }
      }
      if (height > 0) {
        boolean open = bins.openEnd() && bin == bins.counts().size() - 1;
        stops.add(
            new PlotData.Stop(
                PlotData.Kind.BAR,
                (from + to) / 2,
                height,
                only(inBin),
                WORDS.say(
                    open ? "histogram.open" : "histogram.bin",
                    Quantities.upTo(from, 2),
                    Quantities.upTo(to, 2),
                    height,
                    String.join(", ", pieces))));
      }
      most = Math.max(most, height);
    }
    double high = most * 1.1;
    List<PlotData.Box> ranges = new ArrayList<>();
    List<PlotData.Level> targets = new ArrayList<>();
    for (Review part : ranged) {
      double target = part.asked().intervalSeconds().getAsDouble();
      ranges.add(new PlotData.Box(low(part), high(part), 0, high));
      targets.add(new PlotData.Level(target, 0, target, high));
    }
    double right = ranged.stream().mapToDouble(PlotsView::high).max().orElse(1);
    double end = bins.lowNanos(bins.counts().size()) / 1e9;
    return new PlotData(
        WORDS.say("histogram.label"),
        WORDS.say("interval.label"),
        WORDS.say("histogram.up"),
        0,
        Math.max(right * 1.3, end * 1.02),
        0,
        high,
        ranges.stream().distinct().toList(),
        targets.stream().distinct().toList(),
        stops,
        false,
        bars,
        List.of(),
        List.of(),
        List.of(),
        WORDS.say("histogram.summary", valid.size(), Quantities.seconds(bins.widthNanos())),
        1);
  }

  private static Judgement only(List<Judgement> judgements) {
    return judgements.stream().distinct().count() == 1 ? judgements.get(0) : Judgement.UNJUDGED;
  }

  /** A chart over time, and what stands over its whole height: findings, holds, parts. */
  private final class Timed {
    private final List<PlotData.Box> ranges = new ArrayList<>();
    private final List<PlotData.Level> targets = new ArrayList<>();
    private final List<PlotData.Stop> stops = new ArrayList<>();

    Timed() {
      for (int i = 0; i < review.found().size(); i++) {
        NotedFinding noted = review.found().get(i);
        line(noted.atNanos(), MarksView.found(noted, i + 1));
      }
      review.holds().forEach(h -> line(h.startNanos(), MarksView.hold(h)));
      for (int i = 1; i < review.parts().size(); i++) {
        Review part = review.parts().get(i);
        String at = Quantities.tenthsClock(part.startNanos());
        String words = WORDS.say("part", Quantities.letters(i), at, PartText.situation(part));
        line(part.startNanos(), words);
      }
    }

    private void line(long nanos, String words) {
      stops.add(
          new PlotData.Stop(PlotData.Kind.LINE, minutes(nanos), 0, Judgement.UNJUDGED, words));
    }

    void point(long nanos, double y, Judgement judgement, String words) {
      stops.add(new PlotData.Stop(PlotData.Kind.POINT, minutes(nanos), y, judgement, words));
    }

    void range(Review part, double low, double high) {
      ranges.add(new PlotData.Box(minutes(part.startNanos()), minutes(part.endNanos()), low, high));
    }

    void target(Review part, double at) {
      targets.add(new PlotData.Level(minutes(part.startNanos()), at, minutes(part.endNanos()), at));
    }

    PlotData data(String label, double low, double high, boolean joined, String summary) {
      stops.sort(Comparator.comparingDouble(PlotData.Stop::x));
      double left = minutes(review.startNanos());
      return new PlotData(
          WORDS.say(label),
          WORDS.say("minutes"),
          WORDS.say(label),
          left,
          left + lengthMinutes() * 1.01,
          low,
          high,
          ranges,
          targets,
          stops,
          joined,
          List.of(),
          review.found().stream().map(f -> minutes(f.atNanos())).toList(),
          review.holds().stream()
              .map(h -> new PlotData.Span(minutes(h.startNanos()), minutes(h.endNanos())))
              .toList(),
          review.parts().stream().skip(1).map(p -> minutes(p.startNanos())).toList(),
          summary,
          // A rate is known every second; ten of them is as far as one wants to go with a key.
          joined ? 10 : 1);
    }
  }

  private double edgeSeconds() {
    return ranged.stream().mapToDouble(p -> HIGHEST * high(p)).max().orElse(EDGE_WITHOUT_RANGE);
  }

  private static double low(Review part) {
    return part.asked().breaths().get().range().low();
  }

  private static double high(Review part) {
    return part.asked().breaths().get().range().high();
  }

  private double minutes(long nanos) {
    return (nanos - originNanos) / MINUTE;
  }

  private double lengthMinutes() {
    return Math.max(1, (review.endNanos() - review.startNanos()) / MINUTE);
  }
}
