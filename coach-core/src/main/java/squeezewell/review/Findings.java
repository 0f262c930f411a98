package squeezewell.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** Picks what to tell the trainee: at most six findings, worst first, and what went well last. */
final class Findings {
  private static final int MOST = 6;

  /** With fewer breaths nothing is said about the rhythm (our own choice). */
  static final int FEWEST_BREATHS = 5;

  private Findings() {}

  static List<Finding> of(Facts facts) {
    List<Ranked> found = new ArrayList<>();
    int breaths = facts.metrics().breathCount();
    if (breaths == 0) {
      found.add(nothing(facts));
    } else if (breaths < FEWEST_BREATHS) {
      found.add(tooFew(breaths));
    }
    if (breaths > 0) {
      found.addAll(GapFindings.of(facts));
      found.addAll(SqueezeFindings.of(facts));
    }
    if (breaths >= FEWEST_BREATHS) {
      found.addAll(RhythmFindings.of(facts));
      found.addAll(PromptFindings.of(facts));
    }
    List<Ranked> compressions = CompressionFindings.of(facts);
    if (compressions.stream().anyMatch(r -> r.isCode("breaths-missing"))) {
      // It says the same of the pauses, and why.
      found.removeIf(r -> r.isCode("missed-prompts"));
    }
    found.addAll(compressions);
    found.addAll(HoldFindings.of(facts));
    if (found.isEmpty()) {
      found.add(nothingToSay());
    }
    return pick(found);
  }

  private static List<Finding> pick(List<Ranked> found) {
    List<Ranked> sorted = new ArrayList<>(found);
    sorted.sort(
        Comparator.comparing((Ranked r) -> r.finding().severity()).thenComparingInt(Ranked::harm));
    while (sorted.size() > MOST) {
      // One good word is kept, if there is one.
      boolean goodLast = sorted.get(MOST).is(Finding.Severity.GOOD);
      boolean onlyGood = !sorted.get(MOST - 1).is(Finding.Severity.GOOD);
      sorted.remove(goodLast && onlyGood ? MOST - 1 : sorted.size() - 1);
    }
    return sorted.stream().map(Ranked::finding).collect(Collectors.toList());
  }

  private static Ranked nothing(Facts facts) {
    return Ranked.fault(
        Ranked.NOTHING,
        "no-breaths",
        "No breath was recorded",
        "No breath was recorded in "
            + Words.clock(facts.metrics().sessionSeconds())
            + ". If you did squeeze, check that the key or the sensor reaches the program, then"
            + " try again.");
  }

  private static Ranked tooFew(int breaths) {
    return Ranked.advice(
        Ranked.NOTHING,
        "too-few-breaths",
        "Too few breaths to judge the rhythm",
        "Only "
            + Words.count(breaths, "breath")
            + (breaths == 1 ? " was" : " were")
            + " recorded. Practise for two minutes or more to see how your rhythm holds.");
  }

  private static Ranked nothingToSay() {
    return Ranked.advice(
        Ranked.NOTHING,
        "nothing-to-judge",
        "Nothing to judge yet",
        "There is too little in this practice to say something about it.");
  }
}
