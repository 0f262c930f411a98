package squeezewell.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import squeezewell.cue.Silence;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.measure.Hold;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.say.PartText;
import squeezewell.review.say.Review;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;

/** The marks of a practice on a ribbon, and each in words. Pure. */
public final class MarksView {
  private static final double MINUTE = 60e9;

  private final Review review;
  private final List<RibbonMark> unsorted = new ArrayList<>();
  private final IdentityHashMap<RibbonMark, Supplier<String>> words = new IdentityHashMap<>();
  private final Map<Long, IntervalPoint> intervals = new HashMap<>();
  private final Map<Integer, BreathMark> answers = new HashMap<>();
  private final IdentityHashMap<RibbonMark, Boolean> faults = new IdentityHashMap<>();
  private final MarkIndex index;

  private MarksView(Review review) {
    this.review = review;
    review.intervals().forEach(i -> intervals.put(i.atNanos(), i));
    review.breaths().forEach(b -> b.prompt().ifPresent(p -> answers.put(p, b)));
    review.holds().forEach(this::add);
    for (Silence silence : review.silences()) {
      add(
          new RibbonMark(
              RibbonMark.Kind.SILENCE,
              silence.startNanos(),
              silence.endNanos(),
              Judgement.UNJUDGED),
          false,
          () -> silence(silence));
    }
    for (int i = 0; i < review.found().size(); i++) {
      add(review.found().get(i), i + 1);
    }
    for (CompressionMark compression : review.compressions()) {
      add(
          point(RibbonMark.Kind.COMPRESSION, compression.atNanos()),
          compression.judgement().off(),
          () -> compression(compression));
    }
    for (int i = 0; i < review.prompts().size(); i++) {
      add(review.prompts().get(i), i);
    }
    for (BreathMark breath : review.breaths()) {
      add(
          new RibbonMark(
              RibbonMark.Kind.BREATH,
              breath.startNanos(),
              breath.endNanos().orElse(breath.startNanos()),
              breath.judgement()),
          breath.judgement().off() || breath.extra(),
          () -> breath(breath));
    }
    index = MarkIndex.of(unsorted);
  }

  public static MarksView of(Review review) {
    return new MarksView(review);
  }

  /** The marks in order of time. */
  public MarkIndex index() {
    return index;
  }

  /** What is said of the mark at a place. */
  public String words(int place) {
    return words.get(index.marks().get(place)).get();
  }

  /** Whether it is a breath too soon, too late or extra, a missed prompt, or such a compression. */
  public boolean notAsAsked(int place) {
    return faults.get(index.marks().get(place));
  }

  /** The parts with a rhythm of their own; empty if the rhythm never changed. */
  public List<PartSpan> parts() {
    List<PartSpan> spans = new ArrayList<>();
    for (Review part : review.parts()) {
      spans.add(
          new PartSpan(
              part.startNanos(),
              part.endNanos(),
              Quantities.letters(spans.size()),
              PartText.situation(part)));
    }
    return spans;
  }

  private void add(RibbonMark mark, boolean fault, Supplier<String> said) {
    unsorted.add(mark);
    words.put(mark, said);
    faults.put(mark, fault);
  }

  private void add(Hold hold) {
    RibbonMark.Kind kind =
        switch (hold.kind()) {
          case PULSE_CHECK -> RibbonMark.Kind.PULSE_CHECK;
          case SUCTION -> RibbonMark.Kind.SUCTION;
          case WATCHING -> RibbonMark.Kind.WATCH;
          case NO_RATE -> RibbonMark.Kind.NO_RATE;
          case PAUSED -> RibbonMark.Kind.PAUSE;
          case STALLED -> RibbonMark.Kind.STALL;
          default -> throw new IllegalArgumentException("no hold: " + hold.kind());
        };
    add(
        new RibbonMark(kind, hold.startNanos(), hold.endNanos(), Judgement.UNJUDGED),
        false,
        () -> hold(hold));
  }

  private void add(NotedFinding noted, int number) {
    add(point(RibbonMark.Kind.FINDING, noted.atNanos()), false, () -> found(noted, number));
  }

  private void add(PromptMark prompt, int place) {
    boolean missed = prompt.outcome() == PromptMark.Outcome.MISSED;
    add(
        point(missed ? RibbonMark.Kind.MISSED : RibbonMark.Kind.PROMPT, prompt.atNanos()),
        missed,
        () -> prompt(prompt, answers.get(place)));
  }

  private static RibbonMark point(RibbonMark.Kind kind, long nanos) {
    return new RibbonMark(kind, nanos, nanos, Judgement.UNJUDGED);
  }

  private String breath(BreathMark breath) {
    StringBuilder line =
        new StringBuilder("Breath at ").append(Quantities.tenthsClock(breath.startNanos()));
    line.append(
        breath.errorNanos().isPresent()
            ? ", " + lateness(breath.errorNanos().getAsLong())
            : breath.extra() ? ", extra: it answers no prompt" : ", not prompted");
    IntervalPoint interval = intervals.get(breath.startNanos());
    if (interval != null) {
      line.append(", ").append(after(interval));
    }
    breath
        .endNanos()
        .ifPresent(end -> line.append("; squeeze ").append(s(end - breath.startNanos())));
    breath
        .millilitres()
        .ifPresent(volume -> line.append(", ").append(Quantities.upTo(volume, 0)).append(" mL"));
    return line.append(".").toString();
  }

  /** How long after the breath before, and how that was. */
  static String after(IntervalPoint interval) {
    return s(interval.lengthNanos())
        + " after the one before, "
        + (interval.valid()
            ? interval.judgement().label()
            : "not judged: breathing was held between");
  }

  /** Late, early or on its prompt. */
  static String lateness(long errorNanos) {
    String size = s(Math.abs(errorNanos));
    return size.equals("0.0 s") ? "on its prompt" : size + (errorNanos > 0 ? " late" : " early");
  }

  private static String prompt(PromptMark prompt, BreathMark answer) {
    String outcome =
        switch (prompt.outcome()) {
          case MISSED -> "missed: no breath answers it";
          case FORGIVEN -> "not answered, excused: a hold or the end came right after";
          case MET ->
              answer == null || !answer.errorNanos().isPresent()
                  ? "met"
                  : "met by a breath " + lateness(answer.errorNanos().getAsLong());
        };
    return "Prompt at "
        + Quantities.tenthsClock(prompt.atNanos())
        + " to squeeze for "
        + s(prompt.lengthNanos())
        + ", "
        + outcome.replace("on its prompt", "at the same moment")
        + ".";
  }

  private static String compression(CompressionMark compression) {
    StringBuilder line =
        new StringBuilder("Compression at ").append(Quantities.tenthsClock(compression.atNanos()));
    if (compression.intervalNanos().isPresent()) {
      long nanos = compression.intervalNanos().getAsLong();
      line.append(String.format(Locale.ROOT, ", %.2f s after the one before, ", nanos / 1e9));
      line.append(
          compression.pause()
              ? "a pause"
              : Quantities.upTo(MINUTE / nanos, 0)
                  + " a minute, "
                  + compression.judgement().label());
    }
    return line.append(".").toString();
  }

  /** A time without prompts. */
  static String silence(Silence silence) {
    return "No prompts from "
        + Quantities.tenthsClock(silence.startNanos())
        + " to "
        + Quantities.tenthsClock(silence.endNanos())
        + ", "
        + s(silence.endNanos() - silence.startNanos())
        + ".";
  }

  /** A time without breaths. */
  static String hold(Hold hold) {
    String kind =
        switch (hold.kind()) {
          case PULSE_CHECK -> "Check";
          case SUCTION -> "Suction";
          case WATCHING -> "Watching";
          case NO_RATE -> "Breaths without a rate";
          case PAUSED -> "Pause";
          case STALLED -> "The program stood still,";
          default -> throw new IllegalArgumentException("no hold: " + hold.kind());
        };
    return kind
        + " from "
        + Quantities.tenthsClock(hold.startNanos())
        + " to "
        + Quantities.tenthsClock(hold.endNanos())
        + ", "
        + s(hold.endNanos() - hold.startNanos())
        + (hold.cutByEnd() ? ", cut by the end." : ".");
  }

  /** Something that was found, with its number. */
  static String found(NotedFinding noted, int number) {
    return "Found at "
        + Quantities.tenthsClock(noted.atNanos())
        + " ("
        + number
        + "): "
        + PartText.label(noted)
        + ".";
  }

  /** Seconds with a tenth: {@code 5.9 s}. */
  private static String s(long nanos) {
    return String.format(Locale.ROOT, "%.1f s", nanos / 1e9);
  }
}
