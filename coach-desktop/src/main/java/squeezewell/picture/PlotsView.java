package squeezewell.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.RatePoint;
import squeezewell.review.say.PartText;
import squeezewell.review.say.Review;
import squeezewell.words.Quantities;

/** What the plain charts of a debrief show. Pure. */
public final class PlotsView {
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
            .collect(Collectors.toList());
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
    List<PlotData.Stop> stops = lines();
    for (IntervalPoint point : review.intervals()) {
      if (point.valid()) {
        boolean beyond = point.seconds() > top;
        stops.add(
            new PlotData.Stop(
                PlotData.Kind.POINT,
                minutes(point.atNanos()),
                Math.min(point.seconds(), top),
                point.judgement(),
                "Breath at "
                    + Quantities.tenthsClock(point.atNanos())
                    + ", "
                    + MarksView.after(point)
                    + (beyond ? " (drawn at the upper edge)." : ".")));
      }
    }
    List<PlotData.Box> ranges = new ArrayList<>();
    List<PlotData.Level> targets = new ArrayList<>();
    for (Review part : ranged) {
      ranges.add(box(part, low(part), high(part)));
      targets.add(level(part, part.asked().intervalSeconds().getAsDouble()));
    }
    Metrics.Interval interval = review.metrics().interval();
    String summary =
        String.format(
            Locale.ROOT,
            "%s: %d in range, %d fast, %d slow.",
            Quantities.count(interval.count(), "interval"),
            interval.inRangeCount(),
            interval.fastCount(),
            interval.slowCount());
    return timed("seconds between breaths", 0, top * 1.04, ranges, targets, stops, false, summary);
  }

  /** Breaths a minute over the last minute, with the range of each part. */
  public PlotData rate() {
    double top = 0;
    List<PlotData.Box> ranges = new ArrayList<>();
    List<PlotData.Level> targets = new ArrayList<>();
    for (Review part : ranged) {
      ranges.add(box(part, 60 / high(part), 60 / low(part)));
      targets.add(level(part, 60 / part.asked().intervalSeconds().getAsDouble()));
      top = Math.max(top, 60 / low(part));
    }
    List<PlotData.Stop> stops = lines();
    for (RatePoint point : review.rollingRate()) {
      Judgement judgement = judged(point);
      stops.add(
          new PlotData.Stop(
              PlotData.Kind.POINT,
              minutes(point.atNanos()),
              point.perMinute(),
              judgement,
              String.format(
                  Locale.ROOT,
                  "In the minute up to %s: %.1f breaths a minute, %s.",
                  Quantities.clock(point.atNanos()),
                  point.perMinute(),
                  judgement.label())));
      top = Math.max(top, point.perMinute());
    }
    int known = review.rollingRate().size();
    double least = review.rollingRate().stream().mapToDouble(RatePoint::perMinute).min().orElse(0);
    double most = review.rollingRate().stream().mapToDouble(RatePoint::perMinute).max().orElse(0);
    String summary =
        known == 0
            ? "Not known: half a minute of steady breaths is needed."
            : String.format(Locale.ROOT, "Between %.1f and %.1f breaths a minute.", least, most);
    return timed(
        "breaths a minute, over the last minute",
        0,
        Math.max(1, top * 1.2),
        ranges,
        targets,
        stops,
        true,
        summary);
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
    List<PlotData.Box> bands = new ArrayList<>();
    for (Review part : ranged) {
      double target = part.asked().intervalSeconds().getAsDouble();
      bands.add(box(part, low(part) - target, high(part) - target));
      edge = Math.max(edge, Math.max(target - low(part), high(part) - target));
    }
    List<PlotData.Stop> stops = lines();
    Map<Judgement, Integer> counts = new EnumMap<>(Judgement.class);
    for (BreathMark breath : review.breaths()) {
      if (breath.errorNanos().isPresent()) {
        long error = breath.errorNanos().getAsLong();
        edge = Math.max(edge, Math.ceil(Math.abs(error) / 5e8) / 2);
        Judgement judgement = judgedLateness(breath.startNanos(), error);
        counts.merge(judgement, 1, Integer::sum);
        stops.add(
            new PlotData.Stop(
                PlotData.Kind.POINT,
                minutes(breath.startNanos()),
                error / 1e9,
                judgement,
                "Breath at "
                    + Quantities.tenthsClock(breath.startNanos())
                    + ", "
                    + MarksView.lateness(error)
                    + inBand(judgement)
                    + "."));
      }
    }
    double left = minutes(review.startNanos());
    List<PlotData.Level> zero = List.of(new PlotData.Level(left, 0, left + lengthMinutes(), 0));
    return timed(
        "seconds after the prompt",
        -edge * 1.1,
        edge * 1.1,
        bands,
        zero,
        stops,
        false,
        latenessSummary(counts));
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

  private static String inBand(Judgement judgement) {
    return switch (judgement) {
      case IN_RANGE -> ", in band";
      case FAST -> ", too early";
      case SLOW -> ", too late";
      case UNJUDGED -> "";
    };
  }

  private String latenessSummary(Map<Judgement, Integer> counts) {
    Optional<Metrics.Asynchrony> asynchrony =
        review.metrics().asynchrony().filter(a -> a.meanSeconds().isPresent());
    if (!asynchrony.isPresent()) {
      return "No breath answered a prompt.";
    }
    double late = asynchrony.get().meanSeconds().getAsDouble();
    StringBuilder summary =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "On average %.1f s %s",
                Math.abs(late),
                late < 0 ? "before the prompt" : "after the prompt"));
    asynchrony
        .get()
        .sdSeconds()
        .ifPresent(
            sd -> summary.append(String.format(Locale.ROOT, ", standard deviation %.1f s", sd)));
    summary.append(". Above the line is late, below it early.");
    if (hasRange()) {
      summary.append(
          String.format(
              Locale.ROOT,
              " %d in band, %d too early, %d too late; the band is as wide as the range around the"
                  + " interval asked for.",
              counts.getOrDefault(Judgement.IN_RANGE, 0),
              counts.getOrDefault(Judgement.FAST, 0),
              counts.getOrDefault(Judgement.SLOW, 0)));
    }
    return summary.toString();
  }

  /** How many intervals there are of each length, with the ranges that were asked for. */
  public PlotData histogram() {
    List<IntervalPoint> valid =
        review.intervals().stream().filter(IntervalPoint::valid).collect(Collectors.toList());
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
              .collect(Collectors.toList());
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
                Quantities.upTo(from, 2)
                    + (open
                        ? " s or longer: "
                        : " to just under " + Quantities.upTo(to, 2) + " s: ")
                    + Quantities.count(height, "interval")
                    + ", "
                    + String.join(", ", pieces)
                    + "."));
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
        "how many intervals of each length",
        "seconds between breaths",
        "intervals",
        0,
        Math.max(right * 1.3, end * 1.02),
        0,
        high,
        ranges.stream().distinct().collect(Collectors.toList()),
        targets.stream().distinct().collect(Collectors.toList()),
        stops,
        false,
        bars,
        List.of(),
        List.of(),
        List.of(),
        Quantities.count(valid.size(), "interval")
            + " in bars of "
            + Quantities.seconds(bins.widthNanos())
            + ".",
        1);
  }

  private static Judgement only(List<Judgement> judgements) {
    return judgements.stream().distinct().count() == 1 ? judgements.get(0) : Judgement.UNJUDGED;
  }

  private PlotData timed(
      String label,
      double low,
      double high,
      List<PlotData.Box> ranges,
      List<PlotData.Level> targets,
      List<PlotData.Stop> stops,
      boolean joined,
      String summary) {
    stops.sort(Comparator.comparingDouble(PlotData.Stop::x));
    return new PlotData(
        label,
        "minutes",
        label,
        minutes(review.startNanos()),
        minutes(review.startNanos()) + lengthMinutes() * 1.01,
        low,
        high,
        ranges,
        targets,
        stops,
        joined,
        List.of(),
        review.found().stream().map(f -> minutes(f.atNanos())).collect(Collectors.toList()),
        review.holds().stream()
            .map(h -> new PlotData.Span(minutes(h.startNanos()), minutes(h.endNanos())))
            .collect(Collectors.toList()),
        review.parts().stream()
            .skip(1)
            .map(p -> minutes(p.startNanos()))
            .collect(Collectors.toList()),
        summary,
        // A rate is known every second; ten of them is as far as one wants to go with a key.
        joined ? 10 : 1);
  }

  /** What stands over the whole height: findings, holds, the beginnings of parts. */
  private List<PlotData.Stop> lines() {
    List<PlotData.Stop> stops = new ArrayList<>();
    for (int i = 0; i < review.found().size(); i++) {
      stops.add(
          line(review.found().get(i).atNanos(), MarksView.found(review.found().get(i), i + 1)));
    }
    review.holds().forEach(h -> stops.add(line(h.startNanos(), MarksView.hold(h))));
    for (int i = 1; i < review.parts().size(); i++) {
      Review part = review.parts().get(i);
      stops.add(
          line(
              part.startNanos(),
              "Part "
                  + Quantities.letters(i)
                  + " begins at "
                  + Quantities.tenthsClock(part.startNanos())
                  + ": "
                  + PartText.situation(part)
                  + "."));
    }
    return stops;
  }

  private PlotData.Stop line(long nanos, String words) {
    return new PlotData.Stop(PlotData.Kind.LINE, minutes(nanos), 0, Judgement.UNJUDGED, words);
  }

  private PlotData.Box box(Review part, double low, double high) {
    return new PlotData.Box(minutes(part.startNanos()), minutes(part.endNanos()), low, high);
  }

  private PlotData.Level level(Review part, double at) {
    return new PlotData.Level(minutes(part.startNanos()), at, minutes(part.endNanos()), at);
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
