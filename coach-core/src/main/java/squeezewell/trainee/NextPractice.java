package squeezewell.trainee;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.cue.CueFader;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;

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

  private static final String AGAIN_LATER =
      "Skill fades all the same: take the test again within some weeks.";

  public NextPractice {
    lines = List.copyOf(lines);
  }

  /**
   * The advice for a trainee and a rhythm; empty where prompts may not fall silent.
   *
   * @param book all that was practised so far
   */
  public static Optional<NextPractice> of(
      RecordBook book, String trainee, Guidance guidance, ZoneId zone) {
    if (!Prompting.mayFallSilent(guidance)) {
      return Optional.empty();
    }
    HeldAlone held = book.heldAlone(trainee, guidance, zone);
    Optional<FadingStart> fading = book.fadingStart(trainee, guidance);
    List<String> lines = new ArrayList<>();
    if (!held.days().isEmpty()) {
      lines.add(held.words());
      lines.add(
          held.isOwn()
              ? AGAIN_LATER
              : "Take the test without prompts again on another day: two days count (our own"
                  + " choice).");
      return Optional.of(new NextPractice(Prompting.NONE, 0, lines));
    }
    if (!fading.isPresent()) {
      lines.add("Let the prompts fade: it shows whether the rhythm holds without them.");
      return Optional.of(new NextPractice(Prompting.FADING, 0, lines));
    }
    FadingStart start = fading.get();
    lines.add(
        "Fading, "
            + Days.of(start.lastAt(), zone)
            + ", ended at level "
            + start.lastLevel()
            + " of "
            + CueFader.HIGHEST
            + ".");
    if (start.lastLevel() >= READY_FOR_TEST) {
      lines.add(
          "Try the test without prompts; or fade again, from "
              + FadingStart.asks(start.level())
              + ".");
      return Optional.of(new NextPractice(Prompting.NONE, 0, lines));
    }
    lines.add("Fade again, from " + FadingStart.asks(start.level()) + ".");
    return Optional.of(new NextPractice(Prompting.FADING, start.level(), lines));
  }
}
