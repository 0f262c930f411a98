package squeezewell.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.measure.Interruption;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.say.Figure;
import squeezewell.review.say.PartText;
import squeezewell.review.say.Review;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** The marks of a practice on a ribbon, and each in words. Pure. */
public final class MarksView {
  static final Wording WORDS = Wording.beside(MarksView.class);

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
    for (UnpromptedSpan silence : review.silences()) {
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

  private void add(Interruption hold) {
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
    IntervalPoint interval = intervals.get(breath.startNanos());
    List<String> parts = new ArrayList<>();
    parts.add(WORDS.say("breath", clock(breath.startNanos())));
    parts.add(
        breath.errorNanos().isPresent()
            ? lateness(breath.errorNanos().getAsLong())
            : WORDS.say(breath.extra() ? "breath.extra" : "breath.unprompted"));
    if (interval != null) {
      parts.add(after(interval));
    }
    String line = String.join(", ", parts);
    if (breath.endNanos().isPresent()) {
      line =
          WORDS.say("breath.squeeze", line, s(breath.endNanos().getAsLong() - breath.startNanos()));
    }
    return breath.millilitres().isPresent()
        ? WORDS.say("breath.volume", line, Quantities.upTo(breath.millilitres().getAsDouble(), 0))
        : line + ".";
  }

  /** How long after the breath before, and how that was. */
  static String after(IntervalPoint interval) {
    return WORDS.say(
        "after",
        s(interval.lengthNanos()),
        interval.valid() ? interval.judgement().label() : WORDS.say("not-judged"));
  }

  /** Late, early or on its prompt. */
  static String lateness(long errorNanos) {
    return isLate(errorNanos)
        ? WORDS.say(errorNanos > 0 ? "late" : "early", s(Math.abs(errorNanos)))
        : WORDS.say("on-its-prompt");
  }

  private static boolean isLate(long errorNanos) {
    return Math.round(Math.abs(errorNanos) / 1e8) > 0;
  }

  private static String prompt(PromptMark prompt, BreathMark answer) {
    return WORDS.say(
        "prompt", clock(prompt.atNanos()), s(prompt.lengthNanos()), outcome(prompt, answer));
  }

  private static String outcome(PromptMark prompt, BreathMark answer) {
    if (prompt.outcome() != PromptMark.Outcome.MET
        || answer == null
        || !answer.errorNanos().isPresent()) {
      return WORDS.say("prompt." + Figure.slug(prompt.outcome().name()));
    }
    long error = answer.errorNanos().getAsLong();
    return WORDS.say(
        "prompt.met-by", isLate(error) ? lateness(error) : WORDS.say("at-the-same-moment"));
  }

  private static String compression(CompressionMark compression) {
    String at = clock(compression.atNanos());
    if (!compression.intervalNanos().isPresent()) {
      return WORDS.say("compression", at);
    }
    long nanos = compression.intervalNanos().getAsLong();
    String seconds = Quantities.decimals(nanos / 1e9, 2);
    return compression.pause()
        ? WORDS.say("compression.pause", at, seconds)
        : WORDS.say(
            "compression.rate",
            at,
            seconds,
            Quantities.upTo(MINUTE / nanos, 0),
            compression.judgement().label());
  }

  /** A time without prompts. */
  static String silence(UnpromptedSpan silence) {
    return WORDS.say(
        "silence",
        clock(silence.startNanos()),
        clock(silence.endNanos()),
        s(silence.endNanos() - silence.startNanos()));
  }

  /** A time without breaths. */
  static String hold(Interruption hold) {
    return WORDS.say(
        hold.cutByEnd() ? "hold.cut" : "hold.whole",
        WORDS.say("hold." + Figure.slug(hold.kind().name())),
        clock(hold.startNanos()),
        clock(hold.endNanos()),
        s(hold.endNanos() - hold.startNanos()));
  }

  /** Something that was found, with its number. */
  static String found(NotedFinding noted, int number) {
    return WORDS.say("found", clock(noted.atNanos()), number, PartText.label(noted));
  }

  private static String clock(long nanos) {
    return Quantities.tenthsClock(nanos);
  }

  /** Seconds with a tenth: {@code 5.9 s}. */
  private static String s(long nanos) {
    return Quantities.decimals(nanos / 1e9, 1) + " s";
  }
}
