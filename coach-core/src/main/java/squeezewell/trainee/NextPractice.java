package squeezewell.trainee;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.cue.CueFader;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;
import squeezewell.words.Wording;

/**
 * What to practise next, until the rhythm holds without prompts. The steps are our own choice.
 *
 * @param prompting how far breaths are to be prompted
 * @param startLevel the level of fading to begin with; 0 where prompts do not fade
 * @param lines why, in sentences for people
 */
public record NextPractice(Prompting prompting, int startLevel, List<String> lines) {
  /** From this level on the test is worth a try: three breaths prompted, then twelve not. */
  static final int READY_FOR_TEST = 3;

  private static final Wording WORDS = Wording.beside(NextPractice.class);

  public NextPractice {
    lines = List.copyOf(lines);
  }

  /** How a practice went that is to be gone on from. */
  public enum Result {
    /** Too little to go on, or most intervals were out of range. */
    NOT_YET,
    /** Most intervals were in range. */
    WELL,
    /** Nothing was practised yet. */
    NONE;

    /** At least so many intervals, and this share of them in range (our own choice). */
    private static final int FEWEST = 10;

    private static final double MOSTLY = 0.7;

    /** That of a review. */
    public static Result of(Review review) {
      Metrics.Interval interval = review.metrics().interval();
      return interval.count() >= FEWEST && interval.inRangeFraction().orElse(0) >= MOSTLY
          ? WELL
          : NOT_YET;
    }
  }

  /**
   * The advice for a trainee and a rhythm; empty where prompts may not fall silent. It follows the
   * practice that was just done: who is out of range is not told to do without prompts.
   *
   * @param book all that was practised so far
   * @param last how the last practice went
   */
  public static Optional<NextPractice> of(
      RecordBook book, String trainee, Guidance guidance, ZoneId zone, Result last) {
    if (!Prompting.mayFallSilent(guidance)) {
      return Optional.empty();
    }
    HeldAlone held = book.heldAlone(trainee, guidance, zone);
    Optional<FadingStart> fading = book.fadingStart(trainee, guidance);
    List<String> lines = new ArrayList<>();
    if (!held.days().isEmpty()) {
      lines.add(held.words());
    }
    if (last == Result.NOT_YET) {
      lines.add(WORDS.say("next.throughout"));
      return Optional.of(new NextPractice(Prompting.THROUGHOUT, 0, lines));
    }
    if (!held.days().isEmpty()) {
      lines.add(WORDS.say(held.isOwn() ? "next.again-later" : "next.second-day"));
      return Optional.of(new NextPractice(Prompting.NONE, 0, lines));
    }
    if (!fading.isPresent()) {
      lines.add(WORDS.say("next.fade"));
      return Optional.of(new NextPractice(Prompting.FADING, 0, lines));
    }
    FadingStart start = fading.get();
    lines.add(
        WORDS.say(
            "next.last-fading",
            Days.of(start.lastAt(), zone),
            start.lastLevel(),
            CueFader.HIGHEST));
    boolean ready = start.lastLevel() >= READY_FOR_TEST;
    lines.add(WORDS.say(ready ? "next.test" : "next.fade-again", FadingStart.asks(start.level())));
    return Optional.of(
        ready
            ? new NextPractice(Prompting.NONE, 0, lines)
            : new NextPractice(Prompting.FADING, start.level(), lines));
  }
}
