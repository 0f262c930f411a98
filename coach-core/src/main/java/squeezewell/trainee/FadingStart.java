package squeezewell.trainee;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Objects;
import squeezewell.cue.CueFader;

/**
 * The level with which the next practice with fading prompts begins.
 *
 * @param lastAt when the last such practice began
 * @param lastLevel the level it ended with, 0 to {@link CueFader#HIGHEST}
 * @param level the level to begin with, 0 to {@link CueFader#HIGHEST_START}
 */
public record FadingStart(Instant lastAt, int lastLevel, int level) {
  public FadingStart {
    Objects.requireNonNull(lastAt, "lastAt");
  }

  /**
   * What follows from a practice (our own choice). One begins one level below the one that the last
   * practice ended with; or with that one itself if it had begun no more than one level below, and
   * so was held without a run-up; and never without a prompt to give the pace.
   */
  static FadingStart after(PastPractice last) {
    int end = last.endLevel();
    int level = Math.max(end - 1, Math.min(end, last.startLevel() + 1));
    return new FadingStart(
        last.startedAt(), end, Math.min(CueFader.HIGHEST_START, Math.max(0, level)));
  }

  /** Why, in a sentence for people. */
  public String words(ZoneId zone) {
    return "Last time, "
        + Days.of(lastAt, zone)
        + ", you ended at level "
        + lastLevel
        + " of "
        + CueFader.HIGHEST
        + ".";
  }

  /** What a level asks for, in a clause for people. */
  public static String asks(int level) {
    return "level "
        + level
        + (level == 0
            ? ", every breath prompted at first"
            : ", "
                + CueFader.prompted(level)
                + " breaths prompted, then "
                + CueFader.silent(level)
                + " not");
  }
}
