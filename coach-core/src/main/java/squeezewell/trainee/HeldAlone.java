package squeezewell.trainee;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;

/**
 * On which days a trainee passed the test without prompts. Days are those of the calendar where the
 * program runs. That two days make a rhythm one's own is our own choice; that skill fades within
 * two months and that an early refresher helps is what studies found (docs/sources.md).
 *
 * @param days in order, each once
 */
public record HeldAlone(List<LocalDate> days) {
  /** How many days it takes. */
  public static final int DAYS = 2;

  public HeldAlone {
    days = List.copyOf(days);
  }

  /** Whether the test was passed on two different days. */
  public boolean isOwn() {
    return days.size() >= DAYS;
  }

  /** What there is to say, in a sentence for people; empty if the test was never passed. */
  public String words() {
    if (days.isEmpty()) {
      return "";
    }
    String on = days.stream().limit(DAYS).map(Days::of).collect(Collectors.joining(" and "));
    return isOwn()
        ? "Held without prompts on two days (" + on + "): the rhythm is yours."
        : "Held without prompts on one day (" + on + ").";
  }
}
