package squeezewell.trainee;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.review.say.VerdictText;

/**
 * The past practices that say something of a rhythm held alone. Immutable; the order in which they
 * come does not matter.
 */
public final class RecordBook {
  private static final Duration DAYS_APART = Duration.ofHours(20);
  private static final Duration REST = Duration.ofMinutes(30);

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

  /**
   * On which days that trainee held that rhythm without prompts. Only the first test of a day
   * counts, and only if nothing was practised in the half hour before it: who may try until it
   * works passes by chance, and what was just practised is no retention. Two days are at least 20
   * hours apart. (Our own choice. A test that is undecided is no try.)
   */
  public HeldAlone heldAlone(String trainee, Guidance guidance, ZoneId zone) {
    Set<LocalDate> tried = new HashSet<>();
    List<LocalDate> days = new ArrayList<>();
    Optional<Instant> last = Optional.empty();
    for (PastPractice practice : of(trainee, guidance).collect(Collectors.toList())) {
      LocalDate day = Days.on(practice.startedAt(), zone);
      boolean first = practice.isTried() && tried.add(day);
      boolean apart =
          !last.isPresent() || !practice.startedAt().isBefore(last.get().plus(DAYS_APART));
      if (first && practice.isPassed() && apart && !isWarmedUp(practice)) {
        days.add(day);
        last = Optional.of(practice.startedAt());
      }
    }
    return new HeldAlone(days);
  }

  /** Whether the same trainee had practised right before. */
  private boolean isWarmedUp(PastPractice test) {
    return practices.stream()
        .filter(p -> p.trainee().trim().equals(test.trainee().trim()))
        .anyMatch(
            p ->
                p.startedAt().isBefore(test.startedAt())
                    && p.endedAt().plus(REST).isAfter(test.startedAt()));
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
