package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import squeezewell.review.Reviewer;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Practice;
import squeezewell.review.measure.Unprompted;
import squeezewell.review.say.Words;
import squeezewell.session.Session;

/** Picks what to tell the trainee: at most six findings, worst first, and what went well last. */
public final class Findings {
  private static final int MOST = 6;

  /** With fewer breaths nothing is said about the rhythm (our own choice). */
  static final int FEWEST_BREATHS = 5;

  /** What is said of a rhythm that was kept. */
  static final String EVEN = "Rhythm kept";

  private Findings() {}

  /**
   * What may be told of a part, or of a session with one rhythm, in no order.
   *
   * @param tested as far as it counts: of a test that came to its end, up to there
   */
  public static List<Ranked> of(Facts facts, Facts tested) {
    if (facts.practice().place().slip()) {
      return List.of(Ranked.advice(Ranked.NOTHING, "slip", "Not judged", Reviewer.SLIP));
    }
    List<Ranked> found = new ArrayList<>();
    int breaths = facts.metrics().breathCount();
    if (breaths == 0) {
      found.add(nothing(Math.round(facts.metrics().sessionSeconds() * 1e9)));
    } else if (breaths < FEWEST_BREATHS) {
      found.add(tooFew(breaths));
    }
    found.addAll(ofRhythm(tested));
    found.addAll(HoldFindings.of(List.of(facts)));
    if (found.isEmpty()) {
      found.add(nothingToSay());
    }
    return found;
  }

  /**
   * The findings of a session whose rhythm changed: those of each part, told with the time for
   * which they hold, and what is the same in several parts told once.
   *
   * @param whole the whole session
   * @param tested the parts, each as far as it counts
   */
  public static List<Ranked> ofAll(
      Session session, Practice whole, List<Facts> parts, List<Facts> tested) {
    List<Facts> judged =
        parts.stream().filter(f -> !f.practice().place().slip()).collect(Collectors.toList());
    int breaths = parts.stream().mapToInt(f -> f.metrics().breathCount()).sum();
    boolean compressed = parts.stream().anyMatch(f -> !f.practice().compressions().isEmpty());
    List<Ranked> found = new ArrayList<>();
    if (breaths == 0 && !compressed) {
      found.add(nothing(whole.endNanos()));
    } else {
      found.addAll(
          PartFindings.of(
              tested.stream()
                  .filter(f -> !f.practice().place().slip())
                  .collect(Collectors.toList())));
    }
    found.addAll(HoldFindings.of(judged));
    found.addAll(ChangeFindings.of(session, judged));
    if (found.isEmpty()) {
      found.add(breaths < FEWEST_BREATHS ? tooFew(breaths) : nothingToSay());
    }
    return found;
  }

  /** Those about breaths and compressions. */
  static List<Ranked> ofRhythm(Facts facts) {
    List<Ranked> found = new ArrayList<>();
    int breaths = facts.metrics().breathCount();
    if (breaths > 0) {
      found.addAll(GapFindings.of(facts));
      found.addAll(SqueezeFindings.of(facts));
    }
    if (breaths >= FEWEST_BREATHS) {
      found.addAll(RhythmFindings.of(facts));
      found.addAll(UnpromptedFindings.of(facts, found));
      if (found.stream().anyMatch(r -> r.isCode("unprompted-held")) && allUnprompted(facts)) {
        // It says the same of the same breaths, and more.
        found.removeIf(r -> r.isCode("rhythm-even"));
      }
      found.addAll(PromptFindings.of(facts));
    }
    List<Ranked> compressions = CompressionFindings.of(facts);
    if (compressions.stream().anyMatch(r -> r.isCode("breaths-missing"))) {
      // It says the same of the pauses, and why.
      found.removeIf(r -> r.isCode("missed-prompts"));
    }
    found.addAll(compressions);
    return found;
  }

  private static boolean allUnprompted(Facts facts) {
    int unprompted = facts.metrics().unprompted().map(Unprompted::intervalCount).orElse(0);
    return unprompted == facts.metrics().interval().count();
  }

  /**
   * At most six, worst first, what went well last.
   *
   * @param verdict where it is not held, something tells why
   */
  public static List<Finding> pick(List<Ranked> found, Verdict verdict) {
    List<Ranked> sorted = new ArrayList<>(found);
    if (found.stream().noneMatch(RhythmRule::tellsOfBreaths)) {
      if (verdict.outcome() == Verdict.Outcome.NOT_HELD) {
        sorted.add(notHeld(verdict));
      } else if (verdict.outcome() == Verdict.Outcome.UNDECIDED) {
        sorted.add(undecided(verdict));
      }
    }
    if (sorted.stream().anyMatch(r -> r.isCode("breaths-not-needed"))) {
      // It says the same of these breaths, and why.
      sorted.removeIf(r -> r.isCode("extra-breaths"));
    }
    if (verdict.outcome() == Verdict.Outcome.NOT_HELD
        || verdict.outcome() == Verdict.Outcome.UNDECIDED) {
      // Of a part it may be told all the same, with its place.
      sorted.removeIf(r -> r.isCode("rhythm-even") && r.finding().title().equals(EVEN));
    }
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

  private static Ranked nothing(long lengthNanos) {
    return Ranked.fault(
        Ranked.NOTHING,
        "no-breaths",
        "No breath was recorded",
        "No breath was recorded in "
            + Words.clock(lengthNanos)
            + ". If you did squeeze, check that the key or the sensor reaches the program, then"
            + " try again.");
  }

  private static Ranked notHeld(Verdict verdict) {
    return Ranked.advice(
        Ranked.UNEVEN,
        "rhythm-not-held",
        "Not quite held",
        reasons(verdict) + ". Give each breath its whole time, and squeeze when the next is due.");
  }

  private static Ranked undecided(Verdict verdict) {
    return Ranked.advice(
        Ranked.UNEVEN,
        "rhythm-undecided",
        "One breath may not have been recorded",
        reasons(verdict) + ". If you did squeeze then, press or hold more firmly, and try again.");
  }

  private static String reasons(Verdict verdict) {
    String reasons = String.join("; ", verdict.reasons());
    return Character.toUpperCase(reasons.charAt(0)) + reasons.substring(1);
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
