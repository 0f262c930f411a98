package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import squeezewell.review.judge.Severity;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.session.Session;

/**
 * Made-up trainees with one fault each: the first finding must name it. A trainee follows the
 * prompts with a lag of 0.25 s and a spread that gives intervals an SD of 0.4 s, squeezes for 1 s
 * and checks the pulse in time, unless the fault says otherwise. (These numbers are our own.)
 */
class VirtualFaultsTest {
  private static final int SEEDS = 100;
  private static final int FEWEST_RIGHT = 95;

  @Test
  void theFirstFindingNamesTheFault() {
    Map<String, String> codes = new LinkedHashMap<>();
    codes.put("fast", "too-fast");
    codes.put("fast-after-check", "too-fast");
    codes.put("slow", "too-slow");
    codes.put("slowing", "slowed-down");
    codes.put("skips", "missed-prompts");
    codes.put("pauses", "long-gap");
    codes.put("late-check", "pulse-check-late");
    codes.put("no-check", "pulse-check-missed");
    codes.put("long-check", "pulse-check-long");
    codes.put("short-check", "pulse-check-short");
    codes.put("long-suction", "suction-long");
    codes.put("short-squeeze", "short-squeeze");
    codes.put("long-squeeze", "long-squeeze");
    codes.put("anticipates", "anticipates");
    codes.put("late", "late");
    // An even tempo of about 5 s, where 5 to 7 s is in range.
    codes.put("own-tempo", "a-little-fast");
    StringBuilder table = new StringBuilder();
    Map<String, Integer> right = new LinkedHashMap<>();
    codes.forEach(
        (fault, code) -> {
          Map<String, Integer> firsts = new HashMap<>();
          for (int seed = 0; seed < SEEDS; seed++) {
            Review review = Reviewer.review(new VirtualTrainee(fault, seed).session());
            firsts.merge(review.findings().get(0).code(), 1, Integer::sum);
          }
          right.put(fault, firsts.getOrDefault(code, 0));
          table.append(
              String.format(
                  Locale.ROOT, "%-18s %3d of %d  %s%n", fault, right.get(fault), SEEDS, firsts));
        });
    System.out.print(table);
    assertThat(right.values()).allSatisfy(n -> assertThat(n).isGreaterThanOrEqualTo(FEWEST_RIGHT));
  }

  @Test
  void aSoundTraineeHasNoFault() {
    int clean = 0;
    List<String> faults = new ArrayList<>();
    for (int seed = 0; seed < SEEDS; seed++) {
      Session session = new VirtualTrainee("sound", seed).session();
      List<Feedback> findings = Reviewer.review(session).findings();
      boolean fault = findings.stream().anyMatch(f -> f.severity() == Severity.FAULT);
      clean += fault ? 0 : 1;
      findings.stream()
          .filter(f -> f.severity() != Severity.GOOD)
          .forEach(f -> faults.add(f.code()));
    }
    System.out.printf(
        Locale.ROOT, "%-18s %3d of %d without a fault %s%n", "sound", clean, SEEDS, faults);
    assertThat(clean).isGreaterThanOrEqualTo(FEWEST_RIGHT);
  }

  @Test
  void aPerfectTraineeHasOnlyGoodFindings() {
    List<Feedback> findings =
        Reviewer.review(new VirtualTrainee("perfect", 1).session()).findings();
    assertThat(findings).hasSizeBetween(3, 6);
    assertThat(findings).allMatch(f -> f.severity() == Severity.GOOD);
  }
}
