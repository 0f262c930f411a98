package squeezewell.trainee;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.review.say.VerdictText;

/**
 * The past practices that say something of a rhythm held alone. Immutable; the order in which they
 * come does not matter.
 */
public final class RecordBook {
  private final List<PastPractice> practices;

  private RecordBook(List<PastPractice> practices) {
    this.practices = practices;
  }

  /** The book of some practices. */
  public static RecordBook of(List<PastPractice> practices) {
    List<PastPractice> sorted = new ArrayList<>(practices);
    sorted.sort(Comparator.comparing(PastPractice::startedAt));
    return new RecordBook(List.copyOf(sorted));
  }

  private Stream<PastPractice> of(String trainee, Guidance guidance) {
    return practices.stream().filter(p -> p.isOf(trainee, guidance));
  }

  /**
   * The level to begin with, from the last practice of that trainee and rhythm in which prompts
   * faded; empty if there is none.
   */
  public Optional<FadingStart> fadingStart(String trainee, Guidance guidance) {
    return of(trainee, guidance)
        .filter(p -> p.prompting() == Prompting.FADING)
        .reduce((earlier, later) -> later)
        .map(FadingStart::after);
  }

  /** On which days that trainee passed the test of that rhythm. */
  public HeldAlone heldAlone(String trainee, Guidance guidance, ZoneId zone) {
    TreeSet<LocalDate> days = new TreeSet<>();
    of(trainee, guidance)
        .filter(PastPractice::isPassed)
        .forEach(p -> days.add(Days.on(p.startedAt(), zone)));
    return new HeldAlone(List.copyOf(days));
  }

  /**
   * What a practice says, in a few words for a list; empty if nothing. The days of passed tests are
   * counted up to it.
   *
   * @param zone where days are counted
   */
  public String words(PastPractice practice, ZoneId zone) {
    if (practice.prompting() == Prompting.FADING) {
      return practice.startLevel() == practice.endLevel()
          ? "fading, level " + practice.endLevel()
          : "fading, level " + practice.startLevel() + " to " + practice.endLevel();
    }
    if (!practice.isPassed()) {
      return practice
          .test()
          .map(outcome -> "test: " + VerdictText.test(outcome).toLowerCase(Locale.ROOT))
          .orElse("");
    }
    return upTo(practice.startedAt())
        .heldAlone(practice.trainee(), practice.guidance(), zone)
        .words();
  }

  /** The same book with nothing that began after an instant. */
  public RecordBook upTo(Instant last) {
    List<PastPractice> until = new ArrayList<>(practices);
    until.removeIf(p -> p.startedAt().isAfter(last));
    return new RecordBook(List.copyOf(until));
  }
}
