package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import squeezewell.picture.MarksView;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Judgement;
import squeezewell.review.judge.Severity;
import squeezewell.review.judge.Verdict;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.FigureRows;
import squeezewell.review.say.PartText;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.review.say.Words;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;

/**
 * What the debrief says. Pure.
 *
 * @param headline the most important thing
 * @param first whether the rhythm was held and what to change first; empty if all went well
 * @param asked what was practised
 * @param figures three figures, each with its name and what was asked
 * @param toChange findings that are not good, worst first
 * @param wentWell findings that are good
 * @param found what was found, numbered in order of time
 * @param parts the parts with a rhythm of their own; empty if the rhythm never changed
 * @param details further facts, one a line
 * @param marks the whole practice as a ribbon
 * @param local how a local protocol is labelled, a paragraph each; empty for a guideline
 */
record DebriefView(
    String headline,
    String first,
    String asked,
    List<Figure> figures,
    List<Feedback> toChange,
    List<Feedback> wentWell,
    List<String> found,
    List<Part> parts,
    List<String> details,
    List<RibbonMark> marks,
    List<String> local) {

  /**
   * One large figure.
   *
   * @param value the figure
   * @param name what it is
   * @param askedFor what was asked
   * @param judgement how it compares
   */
  record Figure(String value, String name, String askedFor, Judgement judgement) {}

  /**
   * One part of a practice whose rhythm changed.
   *
   * @param title from when to when
   * @param asked what was asked for
   * @param lines its figures
   * @param verdict what the rule says of it; empty for a slip
   */
  record Part(String title, String asked, List<String> lines, String verdict) {}

  static DebriefView of(Review review) {
    List<Feedback> toChange = new ArrayList<>();
    List<Feedback> wentWell = new ArrayList<>();
    for (Feedback finding : review.findings()) {
      (finding.severity() == Severity.GOOD ? wentWell : toChange).add(finding);
    }
    return new DebriefView(
        review.headline(),
        first(review, toChange),
        askedLine(review),
        figures(review),
        toChange,
        wentWell,
        found(review),
        review.parts().stream().map(p -> part(review, p)).collect(Collectors.toList()),
        details(review),
        MarksView.of(review).index().marks(),
        review.asked().local().map(Phrases::local).orElse(List.of()));
  }

  private static String first(Review review, List<Feedback> toChange) {
    Verdict.Outcome outcome = review.verdict().outcome();
    if (toChange.isEmpty() && outcome == Verdict.Outcome.HELD) {
      return "";
    }
    String why = String.join("; ", review.reasons());
    return outcome.label()
        + toChange.stream()
            .limit(1)
            .flatMap(feedback -> feedback.whatToDo().stream())
            .findFirst()
            .map(words -> ". " + words)
            .orElse(why.isEmpty() ? "." : ": " + why + ".");
  }

  /** What was found, numbered in order of time. */
  static List<String> found(Review review) {
    List<String> lines = new ArrayList<>();
    for (NotedFinding noted : review.found()) {
      lines.add((lines.size() + 1) + "   at " + PartText.at(noted) + ": " + PartText.label(noted));
    }
    return lines;
  }

  private static Part part(Review whole, Review part) {
    List<String> lines = new ArrayList<>(PartText.figures(part));
    lines.addAll(PartText.differences(whole, part));
    return new Part(
        PartText.span(part),
        PartText.situation(part),
        lines,
        part.slip() ? "" : PartText.verdict(part));
  }

  private static String askedLine(Review review) {
    Prescription asked = review.asked();
    String rhythm =
        asked.intervalSeconds().isPresent()
            ? ", one breath every " + Phrases.seconds(asked.intervalSeconds().getAsDouble()) + " s"
            : ", " + asked.situation();
    boolean early = asked.practisedNanos() < asked.lengthNanos();
    return Quantities.clock(asked.practisedNanos())
        + (early ? " of " + Quantities.clock(asked.lengthNanos()) : "")
        + ", "
        + asked.patient().toLowerCase(Locale.ROOT)
        + rhythm
        + " ("
        + asked.protocolTitle()
        + (asked.local().isPresent() ? ", local protocol)" : ")");
  }

  /** For a rhythm that changed: what can be told of all parts together. */
  private static List<Figure> wholeFigures(Metrics metrics) {
    List<Figure> figures = new ArrayList<>();
    Metrics.Interval interval = metrics.interval();
    figures.add(
        new Figure(
            interval.count() > 0 ? interval.inRangeCount() + " of " + interval.count() : "–",
            "in range",
            "each in its part",
            Judgement.UNJUDGED));
    figures.add(
        metrics
            .compressions()
            .map(DebriefView::compressionRate)
            .orElse(
                new Figure(
                    Integer.toString(metrics.breathCount()),
                    "breaths",
                    "in all",
                    Judgement.UNJUDGED)));
    figures.add(gapFigure(metrics.gap()));
    return List.copyOf(figures);
  }

  static Figure gapFigure(Metrics.Gap gap) {
    if (!gap.happened()) {
      return new Figure("–", "longest gap", "breaths never began", Judgement.UNJUDGED);
    }
    return new Figure(
        Quantities.upTo(gap.longestSeconds(), 1) + " s",
        "longest gap",
        "from " + clock(gap.longestAtSeconds()),
        Judgement.UNJUDGED);
  }

  private static Figure compressionRate(Compressions done) {
    return new Figure(
        rounded(done.ratePerMinute(), ""),
        "compressions/min",
        done.count() + " in all",
        Judgement.UNJUDGED);
  }

  private static List<Figure> figures(Review review) {
    Metrics metrics = review.metrics();
    if (metrics.interval().count() > 0 && !review.parts().isEmpty()) {
      return wholeFigures(metrics);
    }
    if (metrics.compressions().isPresent() && !review.asked().intervalSeconds().isPresent()) {
      return cycleFigures(metrics.compressions().get());
    }
    Metrics.Interval interval = metrics.interval();
    Prescription asked = review.asked();
    OptionalDouble rate = metrics.rate().overallPerMinute();
    OptionalDouble mean = interval.meanSeconds();
    Judgement judgement =
        asked
            .breaths()
            .filter(plan -> mean.isPresent())
            .map(plan -> plan.judgeSeconds(mean.getAsDouble()))
            .orElse(Judgement.UNJUDGED);
    String askedRate =
        asked.intervalSeconds().isPresent()
            ? "asked: " + Phrases.seconds(60 / asked.intervalSeconds().getAsDouble())
            : "";
    String range = asked.breaths().map(plan -> Phrases.range(plan) + " s").orElse("");
    return List.of(
        new Figure(
            rate.isPresent() ? String.format(Locale.ROOT, "%.1f", rate.getAsDouble()) : "–",
            "breaths/min",
            askedRate,
            judgement),
        new Figure(
            interval.count() > 0 ? interval.inRangeCount() + " of " + interval.count() : "–",
            "in range",
            range,
            Judgement.UNJUDGED),
        gapFigure(metrics.gap()));
  }

  /** For a rhythm of cycles: how fast, how many cycles as asked, the longest pause. */
  private static List<Figure> cycleFigures(Compressions done) {
    return List.of(
        compressionRate(done),
        new Figure(
            done.cycles().isEmpty() ? "–" : done.goodCycles() + " of " + done.cycles().size(),
            "cycles as asked",
            "counts and pause",
            Judgement.UNJUDGED),
        new Figure(
            rounded(done.longestPauseSeconds(), " s"),
            "longest pause",
            done.pauseLimitSeconds().isPresent()
                ? "at most " + Quantities.upTo(done.pauseLimitSeconds().getAsDouble(), 1) + " s"
                : "",
            Judgement.UNJUDGED));
  }

  private static String rounded(OptionalDouble value, String unit) {
    return value.isPresent() ? Math.round(value.getAsDouble()) + unit : "–";
  }

  private static void addCompressions(Compressions done, List<String> lines) {
    lines.add(
        done.count()
            + " compressions"
            + (done.ratePerMinute().isPresent()
                ? ", " + rounded(done.ratePerMinute(), "") + " a minute"
                : ""));
    lines.add(
        String.format(
            Locale.ROOT,
            "Hands off the chest for %.0f s in all, %d %s",
            done.handsOffSeconds(),
            done.pauseCount(),
            done.pauseCount() == 1 ? "pause" : "pauses"));
  }

  private static List<String> details(Review review) {
    Metrics metrics = review.metrics();
    List<String> lines = new ArrayList<>();
    metrics.compressions().ifPresent(c -> addCompressions(c, lines));
    lines.add(
        Quantities.count(metrics.breathCount(), "breath")
            + metrics.prompts().map(prompts -> "; prompts: " + Words.prompts(prompts)).orElse(""));
    FigureRows.ofText(review, (name, text) -> lines.add(Phrases.capital(name) + ": " + text))
        .addUnprompted();
    metrics
        .asynchrony()
        .map(Metrics.Asynchrony::meanSeconds)
        .orElse(OptionalDouble.empty())
        .ifPresent(
            mean ->
                lines.add(
                    String.format(
                        Locale.ROOT,
                        "On average %.1f s %s the prompt",
                        Math.abs(mean),
                        mean < 0 ? "before" : "after")));
    metrics
        .inspiration()
        .medianSeconds()
        .ifPresent(
            median ->
                lines.add(
                    String.format(
                        Locale.ROOT,
                        "Squeezes: median %.1f s, asked %s s",
                        median,
                        Phrases.seconds(review.asked().inspirationNanos()))));
    for (PulseCheckResult check : metrics.pulseChecks()) {
      lines.add(line(check));
    }
    for (SuctionResult suction : metrics.suctions()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "Suction at %s for %.0f s%s",
              clock(suction.startedSeconds()),
              suction.lengthSeconds(),
              suction.withinLimit() ? "" : ", over the limit"));
    }
    return lines;
  }

  private static String line(PulseCheckResult check) {
    if (!check.startedSeconds().isPresent()) {
      return Phrases.capital(check.kind().words())
          + " due at "
          + clock(check.dueSeconds().orElse(0))
          + ": not made";
    }
    StringBuilder line = new StringBuilder(Phrases.capital(check.kind().words()) + " at ");
    line.append(clock(check.startedSeconds().getAsDouble()));
    check.dueSeconds().ifPresent(due -> line.append(", due at ").append(clock(due)));
    check
        .lengthSeconds()
        .ifPresent(length -> line.append(String.format(Locale.ROOT, ", %.1f s long", length)));
    return line.toString();
  }

  /** To the nearest second, as the findings tell it. */
  private static String clock(double seconds) {
    return Quantities.clock(seconds);
  }
}
