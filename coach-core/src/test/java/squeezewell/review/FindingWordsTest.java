package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.Tries;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.Compressions;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;

/**
 * No finding is contradicted by the numbers it prints: each is read again from the text as a
 * trainee reads it, rounded as it stands there, and has to bear out the word.
 */
class FindingWordsTest {
  private static final int SEEDS = Tries.orLong(2_000, 3_000);
  private static final int FEWEST_OF_EACH = 5;

  /** A number as it is printed, with the words that keep it off a limit. */
  private static final String N = "((?:just (?:under|over) )?\\d+(?:\\.\\d+)?)";

  private static final double BESIDE = 0.001;

  private record Rule(Pattern text, Predicate<double[]> bornOut) {}

  private final Map<String, Rule> rules = new LinkedHashMap<>();

  FindingWordsTest() {
    String out = "(\\d+) of (\\d+) intervals? (?:was|were) ";
    String usual = "(?:usually )?" + N + " s(?: \\(" + N + " breaths a minute\\))?; asked was one ";
    String range = ".*?(\\d+) of (\\d+) intervals were in range \\(" + N + " to " + N + " s\\)";
    // 0 and 1: how many of how many, 2: usual, 3: rate, 4: asked, 5 and 6: in range, 7 and 8: range
    rule(
        "too-fast",
        out + "too short, " + usual + "breath every " + N + " s\\." + range,
        n -> n[0] > 0 && n[0] + n[5] <= n[1] && n[2] < n[7] && !(n[3] <= 60 / n[7]));
    rule(
        "too-slow",
        out + "too long, " + usual + "breath every " + N + " s\\." + range,
        n -> n[0] > 0 && n[0] + n[5] <= n[1] && n[2] > n[8] && !(n[3] >= 60 / n[8]));
    rule(
        "unprompted-fast",
        "While no prompt was given " + out + "too short, " + usual + "breath every " + N,
        n -> n[0] > 0 && n[2] < n[4] && !(n[3] <= 60 / n[4]));
    rule(
        "unprompted-slow",
        "While no prompt was given " + out + "too long, " + usual + "breath every " + N,
        n -> n[0] > 0 && n[2] > n[4] && !(n[3] >= 60 / n[4]));
    String thirds = "went from about " + N + " s in the first third to about " + N + " s in the";
    rule("slowed-down", thirds, n -> n[1] > n[0]);
    rule("sped-up", thirds, n -> n[1] < n[0]);
    rule(
        "rhythm-uneven",
        "(\\d+) of (\\d+) intervals were in range \\([^)]*\\)\\. (\\d+) came too "
            + "(?:soon and (\\d+) too late|(?:soon|late), the others in time)",
        n -> {
          double off = n[2] + (Double.isNaN(n[3]) ? 0 : n[3]);
          return n[0] + off == n[1] && off > 0.15 * n[1];
        });
    String mean =
        "came " + N + " s apart on average \\(" + N + " a minute\\); asked was one every " + N;
    rule(
        "rhythm-even",
        mean + " s\\." + range,
        n -> kept(n[0], n[2], n[5], n[6]) && n[3] >= 0.85 * n[4]);
    String silent = mean + " s\\. (\\d+) of (\\d+) intervals";
    rule("unprompted-uneven", silent, n -> n[3] < 0.85 * n[4]);
    // The widest range there is: 1 to 1.5 s where 1.2 s is asked.
    rule("unprompted-held", silent, n -> n[3] >= 0.85 * n[4] && Math.abs(n[0] / n[2] - 1) < 0.26);
    rule("long-gap", "breath was " + N + " s, .*?; at most " + N + " s", n -> n[0] > n[1]);
    rule("no-long-gap", "breath was " + N + " s, .*?; at most " + N + " s", n -> n[0] <= n[1]);
    String squeeze =
        "usual squeeze lasted "
            + N
            + " s; asked was "
            + N
            + " s\\. (\\d+) of (\\d+) squeezes lasted "
            + N
            + " to "
            + N
            + " s\\.";
    rule("short-squeeze", squeeze, n -> n[0] < n[4] && n[0] < n[1] && n[2] <= 0.5 * n[3]);
    rule("long-squeeze", squeeze, n -> n[0] > n[5] && n[0] > n[1] && n[2] <= 0.5 * n[3]);
    rule("squeezes-good", squeeze, n -> n[0] >= n[4] && n[0] <= n[5] && n[2] >= 0.7 * n[3]);
    rule("squeezes-uneven", squeeze, n -> n[2] < 0.7 * n[3]);
    rule("missed-prompts", "(\\d+) prompts? of (\\d+) (?:was|were) not", n -> n[0] > 0);
    rule("extra-breaths", "(\\d+) breaths came without a prompt", n -> n[0] >= 2);
    rule("prompts-met", "each of the (\\d+) prompts", n -> n[0] >= 10);
    rule("anticipates", "came " + N + " s before the prompt", n -> n[0] > 0);
    rule("late", "came " + N + " s after the prompt", n -> n[0] >= 0.3);
    rule(
        "own-tempo",
        "usual interval was " + N + " s, the prompts' " + N + " s",
        n -> Math.abs(n[0] - n[1]) >= 0.02 * n[1]);
    rule("pulse-check-late", "began " + N + " s late; within " + N, n -> n[0] > n[1]);
    rule("pulse-check-early", "began " + N + " s early", n -> n[0] >= 15);
    String check = "check lasted " + N + " s; asked was " + N + " to " + N + " s";
    rule("pulse-check-long", check, n -> n[0] > n[2]);
    rule("pulse-check-short", check, n -> n[0] < n[1]);
    rule(
        "checks-on-time",
        "(\\d+) (?:pulse|rhythm|heart rate) checks? made when due",
        n -> n[0] > 0);
    rule("suction-long", "lasted " + N + " s; the limit is " + N, n -> n[0] > n[1]);
    String rate = "compressed " + N + " times a minute.*?; asked was " + N + " to " + N;
    rule("compress-too-fast", rate, n -> n[0] > n[2]);
    rule("compress-too-slow", rate, n -> n[0] < n[1]);
    rule("compressions-good", rate, n -> n[0] >= n[1] && n[0] <= n[2]);
    rule(
        "pause-too-long",
        "(\\d+) pauses? of (\\d+) .*? the longest " + N + " s; at most " + N,
        n -> n[0] > 0 && n[2] > n[3]);
    rule("breaths-missing", "(\\d+) of (\\d+) pauses? had fewer", n -> n[0] > 0.2 * n[1]);
    rule("wrong-number", "(\\d+) of (\\d+) cycles? did not", n -> n[0] > 0.2 * n[1]);
    rule("compressions-late", "came " + N + " s after the finding", n -> n[0] > 10);
    rule(
        "compressions-at-once",
        "came (?:along with|" + N + " s after) the finding",
        n -> !(n[0] > 10));
    rule("compressions-went-on", "(\\d+) compressions? came more than", n -> n[0] > 0);
  }

  private void rule(String code, String text, Predicate<double[]> bornOut) {
    rules.put(code, new Rule(Pattern.compile(text), bornOut));
  }

  /** In the range, or within 8 % of what was asked, as far as the printed number tells. */
  private static boolean kept(double mean, double asked, double low, double high) {
    return (mean >= low && mean <= high) || Math.abs(mean - asked) <= 0.08 * asked + 0.05;
  }

  @Test
  void thePrintedNumbersBearOutTheWords() {
    Map<String, Integer> seen = new TreeMap<>();
    for (long seed = 0; seed < SEEDS; seed++) {
      check(seed, RandomPractice.breathing(seed).review(), seen);
      if (seed % 5 == 0) {
        check(seed, RandomPractice.compressing(seed).review(), seen);
      }
    }
    System.out.println("findings whose numbers were read: " + seen);
    // A rule that no practice calls on would check nothing.
    assertThat(rules.keySet())
        .allSatisfy(
            code ->
                assertThat(seen.getOrDefault(code, 0))
                    .as(code)
                    .isGreaterThanOrEqualTo(FEWEST_OF_EACH));
  }

  @Test
  void oneLongWaitDoesNotMakeAFastRhythmReadAsSlow() {
    // 0 to 57 s every 3 s: 19 intervals. Then 120 s without a breath. The mean of all 20 is
    // (57 + 120) / 20 = 8.85 s, which is slow; the fast ones are 3 s, so 60 / 3 = 20 a minute.
    Feedback fast =
        only(SessionBuilder.ofSeconds(180).breathsEvery(3, 0, 57).breaths(177), "too-fast");
    assertThat(fast.text())
        .startsWith(
            "19 of 20 intervals were too short, usually 3 s (20 breaths a minute); asked was one"
                + " breath every 6 s. 0 of 20 intervals were in range (5 to 7 s).")
        .doesNotContain("8.8", "8.9");
  }

  @Test
  void aFewQuickBreathsDoNotMakeASlowRhythmReadAsFast() {
    // Ten intervals of 8 s and five of 0.5 s: the mean is 82.5 / 15 = 5.5 s, which is in range.
    SessionBuilder session = SessionBuilder.ofSeconds(90);
    session.breathsEvery(8, 0, 80).breathsEvery(0.5, 80.5, 82.5);
    assertThat(only(session, "too-slow").text())
        .startsWith("10 of 15 intervals were too long, usually 8 s (7.5 breaths a minute)")
        .doesNotContain("5.5 s apart");
    // The same in a test without prompts.
    SessionBuilder silent = SessionBuilder.ofSeconds(90).test();
    silent.breathsEvery(8, 0, 80).breathsEvery(0.5, 80.5, 82.5);
    assertThat(only(silent, "too-slow").text()).startsWith("10 of 15 intervals were too long");
  }

  @Test
  void aNumberJustBesideALimitIsNotPrintedAsTheLimit() {
    // 4.98 s would be rounded to 5 s, which is in range; 60 / 4.98 = 12.05, which is over 12.
    SessionBuilder fast = SessionBuilder.ofSeconds(120).breathsEvery(4.98, 0, 99.6);
    assertThat(only(fast, "a-little-fast").text()).contains("0 of 20 intervals were in range");
    // 4.8 s is clearly under 5 s, 12.5 a minute.
    SessionBuilder faster = SessionBuilder.ofSeconds(120).breathsEvery(4.8, 0, 96);
    assertThat(only(faster, "too-fast").text())
        .contains("usually 4.8 s (12.5 breaths a minute); asked");
    // A wait of 10.02 s, where 10 s is the limit.
    SessionBuilder waited = SessionBuilder.ofSeconds(70.02).breathsEvery(6, 0, 30);
    waited.breathsEvery(6, 40.02, 70.02);
    assertThat(only(waited, "long-gap").text())
        .contains("was just over 10 s, from 0:30; at most 10 s was asked");
  }

  @Test
  void aDriftThatThePrintedThirdsDoNotShowIsNotTold() {
    // A newborn, 1.2 s growing by 0.0006 s a breath: 0.0006 / 1.212 s of time, of a median of 1.212
    // s, is 2.45 % a minute, without any spread. The middles of the thirds are 13.3 breaths x 2
    // apart: 0.016 s, or 1.3 % of 1.2 s, which nobody hears.
    for (int sign = -1; sign <= 1; sign += 2) {
      SessionBuilder session =
          SessionBuilder.ofSeconds(60)
              .by(TestPlans.edition("aha-2020"), PatientGroup.NEWBORN)
              .in(Situation.NEWBORN_VENTILATION);
      double at = 0;
      for (int k = 0; k <= 40; k++) {
        session.breaths(at);
        at += 1.2 + sign * 0.0006 * k;
      }
      Review review = session.review();
      assertThat(review.metrics().drift().worthTelling()).isTrue();
      assertThat(sign * review.metrics().drift().percentPerMinute().getAsDouble())
          .isBetween(2.3, 2.6);
      assertThat(InterruptionsTest.codes(review)).doesNotContain("slowed-down", "sped-up");
    }
  }

  @Test
  void aMeanRateOfCompressionsThatNoneHadIsNotPraised() {
    // 0.3 and 0.79 s by turns: 60 / 0.545 = 110 a minute, but each is 200 or 76.
    SessionBuilder session =
        SessionBuilder.ofSeconds(60).in(Situation.ARREST_ADVANCED_AIRWAY).breathsEvery(6, 0, 54);
    for (int k = 0; k < 54; k++) {
      session.compressions(2, 1.09 * k, 0.3);
    }
    Review review = session.review();
    Compressions done = review.metrics().compressions().orElseThrow();
    assertThat(done.ratePerMinute().orElseThrow()).isBetween(100.0, 120.0);
    assertThat(done.inRangeFraction()).hasValue(0);
    assertThat(InterruptionsTest.codes(review)).doesNotContain("compressions-good");
  }

  @Test
  void compressionsThatCameAfterAWaitDidNotStartAtOnce() {
    SessionBuilder session = SessionBuilder.ofSeconds(120).breathsEvery(6, 0.2, 54.2);
    session.finding(60, PatientChange.PULSE_LOST).compressions(60, 68, 0.55);
    Feedback finding = only(session, "compressions-at-once");
    assertThat(finding.title()).isEqualTo("Compressions started in time");
    assertThat(finding.text()).contains("came 8 s after the finding at 1:00");
  }

  @Test
  void onlyAChecksTimeAndLengthThatAreKnownArePraised() {
    // Nothing was due at 30 s, so this check was not made when due.
    SessionBuilder extra = SessionBuilder.ofSeconds(100).breathsEvery(6, 0, 24);
    extra.pulseCheck(30, 37).breathsEvery(6, 37, 97);
    assertThat(InterruptionsTest.codes(extra.review())).doesNotContain("checks-on-time");
    // Due at 120 s, made at 118 s; the end at 121 s leaves its length unknown.
    SessionBuilder cut = SessionBuilder.ofSeconds(121).breathsEvery(6, 0, 114);
    cut.event(118, EventType.PULSE_CHECK, "");
    assertThat(only(cut, "checks-on-time").text()).isEqualTo("1 pulse check made when due.");
  }

  @Test
  void aTestOfNearlyTwoMinutesIsNotPrintedAsTwo() {
    // 20 intervals of 5.985 s: 119.7 s, which no clock shows as 2:00 yet.
    assertThat(
            SessionBuilder.ofSeconds(150).test().breathsEvery(5.985, 1, 120.7).review().reasons())
        .containsExactly("1:59 from the first breath to the last; the rule needs 2:00");
  }

  private static Feedback only(SessionBuilder session, String code) {
    return session.review().findings().stream()
        .filter(finding -> finding.code().equals(code))
        .findFirst()
        .orElseThrow(() -> new AssertionError(code + " not in " + session.review().findings()));
  }

  private void check(long seed, Review review, Map<String, Integer> seen) {
    List<String> codes = new ArrayList<>();
    for (Feedback finding : review.findings()) {
      codes.add(finding.code());
      Rule rule = rules.get(finding.code());
      if (rule == null) {
        continue;
      }
      Matcher found = rule.text().matcher(finding.text());
      assertThat(found.find()).as("seed %s, %s: %s", seed, finding.code(), finding.text()).isTrue();
      do {
        seen.merge(finding.code(), 1, Integer::sum);
        assertThat(rule.bornOut().test(numbers(found)))
            .as("seed %s, %s: %s", seed, finding.title(), finding.text())
            .isTrue();
      } while (found.find());
    }
    if (!review.parts().isEmpty()) {
      // What is told of one part may not hold for another.
      return;
    }
    String where = "seed " + seed;
    notBoth(where, codes, "rhythm-even", "too-fast");
    notBoth(where, codes, "rhythm-even", "too-slow");
    notBoth(where, codes, "rhythm-even", "rhythm-uneven");
    notBoth(where, codes, "slowed-down", "sped-up");
    notBoth(where, codes, "prompts-met", "missed-prompts");
    notBoth(where, codes, "anticipates", "late");
    notBoth(where, codes, "no-long-gap", "long-gap");
    notBoth(where, codes, "checks-on-time", "pulse-check-late");
    notBoth(where, codes, "squeezes-good", "short-squeeze");
    notBoth(where, codes, "compress-too-fast", "compressions-good");
    notBoth(where, codes, "unprompted-held", "unprompted-uneven");
  }

  private static void notBoth(String where, List<String> codes, String one, String other) {
    assertThat(codes.contains(one) && codes.contains(other))
        .as("%s: %s and %s", where, one, other)
        .isFalse();
  }

  /** What stands in the groups; not a number where a group took no part. */
  private static double[] numbers(Matcher found) {
    double[] numbers = new double[found.groupCount()];
    for (int i = 0; i < numbers.length; i++) {
      String group = found.group(i + 1);
      numbers[i] = group == null ? Double.NaN : number(group);
    }
    return numbers;
  }

  private static double number(String shown) {
    double number = Double.parseDouble(shown.replaceAll("[a-z ]", ""));
    return shown.startsWith("just under")
        ? number - BESIDE
        : shown.startsWith("just over") ? number + BESIDE : number;
  }
}
