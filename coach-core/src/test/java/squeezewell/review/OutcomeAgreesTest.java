package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import squeezewell.Tries;
import squeezewell.protocol.PatientChange;
import squeezewell.review.judge.Severity;
import squeezewell.review.judge.Verdict;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.review.say.VerdictText;
import squeezewell.session.EventType;

/**
 * The outcome and what is told beside it never contradict each other as a trainee reads them: what
 * is held has no fault of the breaths beside it, and what is not held begins with what to change
 * and praises the rhythm nowhere.
 */
class OutcomeAgreesTest {
  private static final int SEEDS = Tries.orLong(900, 1_500);

  /** Faults of single breaths, checks and suction say nothing about the rhythm. */
  private static final Set<String> OTHER_THINGS =
      Set.of(
          "short-squeeze",
          "long-squeeze",
          "squeezes-uneven",
          "pulse-check-missed",
          "pulse-check-late",
          "pulse-check-long",
          "pulse-check-short",
          "suction-long");

  private static final Set<String> COMPRESSIONS =
      Set.of(
          "compress-too-fast",
          "compress-too-slow",
          "pause-too-long",
          "compressions-late",
          "compressions-missing");

  /** Praise of one part, where the rhythm changed. */
  private static final Pattern PLACE = Pattern.compile(", (before|after|\\d+:\\d\\d to) .*\\d");

  @Test
  void outcomeAndFindingsNeverContradictEachOther() {
    Map<Verdict.Outcome, Integer> seen = new TreeMap<>();
    for (long seed = 0; seed < SEEDS; seed++) {
      agree("breathing " + seed, RandomPractice.breathing(seed).review(), seen);
      if (seed % 5 == 0) {
        agree("compressing " + seed, RandomPractice.compressing(seed).review(), seen);
      }
    }
    System.out.println("outcomes that were read beside their findings: " + seen);
    assertThat(seen.keySet()).contains(Verdict.Outcome.values());
    assertThat(seen.values()).allMatch(n -> n >= 10);
  }

  @Test
  void aFastStretchThatTheShareHidesIsNotHeld() {
    // 92 intervals of 6 s and in their midst 15 of 3 s, 597 s in all. 15 of 107 are 14 %,
    // the mean is 597 / 107 = 5.58 s, 7 % short, and no wait is long: the share and the mean would
    // let it pass. The 15 of 3 s are 45 s at 20 a minute.
    Review review = segment(15, 3);
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.NOT_HELD);
    assertThat(review.reasons()).singleElement().asString().startsWith("a burst of fast");
    assertThat(review.headline()).isEqualTo("A burst of fast breaths");
    assertThat(InterruptionsTest.codes(review)).doesNotContain("rhythm-even");
  }

  @Test
  void aFewQuickBreathsInALongPracticeAreNeitherAFaultNorAgainstIt() {
    // Five of 2 s are 10 s in all, which is told and no more.
    Review review = segment(5, 2);
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.HELD);
    assertThat(InterruptionsTest.codes(review)).contains("rhythm-even").doesNotContain("too-fast");
  }

  @Test
  void aRhythmLostWithoutPromptsIsNotHeldHoweverGoodTheRestWas() {
    // Eight silent intervals of 4.5 s, 60 prompted ones of 6 s: 8 of 68 are 12 %, the mean is
    // (36 + 360) / 68 = 5.8 s.
    SessionBuilder session = SessionBuilder.ofSeconds(396);
    session
        .event(181, EventType.PROMPTS_OFF, "level 1")
        .event(217, EventType.PROMPTS_ON, "level 0");
    session.breathsEvery(6, 0, 180).breathsEvery(4.5, 184.5, 216).breathsEvery(6, 222, 396);
    Review review = session.review();
    assertThat(review.headline()).isEqualTo("Too fast without prompts");
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.NOT_HELD);
    assertThat(review.reasons()).containsExactly("too fast without prompts");
  }

  @Test
  void aShortPartThatWasTooFastIsNotHiddenByALongOneThatWasHeld() {
    // An adult whose breathing stops is to be breathed for as before; six intervals of 3 s then
    // are 6 of 56, and by themselves all.
    SessionBuilder session = SessionBuilder.ofSeconds(318);
    session.in(squeezewell.protocol.Situation.PULSE_SLOW_BREATHING).breathsEvery(6, 0, 300);
    session.finding(300.5, PatientChange.BREATHING_STOPPED).breathsEvery(3, 303, 318);
    Review review = session.review();
    assertThat(review.parts()).hasSize(2);
    assertThat(review.headline()).startsWith("Too fast, after 5:0");
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.NOT_HELD);
  }

  @Test
  void whatComesAfterATestIsNotToldBesideItsOutcome() {
    // Two minutes at 6 s, then half a minute at 2 s and a minute of nothing.
    Review review =
        SessionBuilder.ofSeconds(210)
            .test()
            .breathsEvery(6, 0, 120)
            .breathsEvery(2, 122, 150)
            .review();
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.HELD);
    assertThat(InterruptionsTest.codes(review))
        .contains("unprompted-held")
        .doesNotContain("too-fast", "long-gap", "sped-up");
    assertThat(review.notes())
        .contains(
            "The test ended at 2:00. 15 later breaths are in the figures and pictures and not"
                + " judged.");
    assertThat(review.metrics().breathCount()).isEqualTo(36);
  }

  @Test
  void aTestWithALateStartIsNotPassedBesideARhythmThatIsNotHeld() {
    // From the first breath on every interval is 6 s for 120 s, but the first comes after 25 s, and
    // at most 12 s without a breath were asked for.
    Review review = SessionBuilder.ofSeconds(150).test().breathsEvery(6, 25, 145).review();
    assertThat(review.testIntervals()).hasValue(20);
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.NOT_HELD);
    assertThat(review.reasons()).containsExactly("a late start");
    assertThat(VerdictText.test(review.verdict().outcome())).isEqualTo("Not held without prompts");
  }

  @Test
  void theBreathThatEndsATestIsOneOfItsBreaths() {
    // 20 intervals of 6 s from 0 to 120 s; nothing after the last one.
    Review review = SessionBuilder.ofSeconds(180).test().breathsEvery(6, 0, 120).review();
    assertThat(review.findings().toString()).contains("20 of 20 intervals were in range");
  }

  @Test
  void aMeanThatTheRuleDoesNotAllowIsTold() {
    // 5.4 s is 10 % short of 6 s although every interval is in range.
    Review review = SessionBuilder.ofSeconds(240).test().breathsEvery(5.4, 0, 237.6).review();
    assertThat(review.reasons()).containsExactly("mean interval 5.4 s");
    assertThat(InterruptionsTest.codes(review))
        .contains("a-little-fast")
        .doesNotContain("rhythm-even");
  }

  private static Review segment(int count, double seconds) {
    double fast = count * seconds;
    SessionBuilder session = SessionBuilder.ofSeconds(555 + fast);
    session.breathsEvery(6, 0, 276).breathsEvery(seconds, 276 + seconds, 276 + fast);
    return session.breathsEvery(6, 282 + fast, 552 + fast).review();
  }

  private static void agree(String name, Review review, Map<Verdict.Outcome, Integer> seen) {
    String told = name + ": " + review.verdict() + " " + review.findings();
    Verdict.Outcome outcome = review.verdict().outcome();
    List<Feedback> findings = review.findings();
    seen.merge(outcome, 1, Integer::sum);
    List<Feedback> faults =
        findings.stream()
            .filter(f -> f.severity() == Severity.FAULT)
            .filter(f -> !OTHER_THINGS.contains(f.code()))
            .collect(Collectors.toList());
    if (outcome == Verdict.Outcome.HELD) {
      assertThat(faults).as(told).isEmpty();
      assertThat(review.reasons()).as(told).isEmpty();
    } else if (outcome == Verdict.Outcome.NOT_HELD || outcome == Verdict.Outcome.UNDECIDED) {
      assertThat(review.reasons()).as(told).isNotEmpty();
      assertThat(findings.get(0).severity()).as(told).isNotEqualTo(Severity.GOOD);
      // Even breaths are praised beside a fault of the compressions alone.
      boolean breaths =
          faults.isEmpty() || !faults.stream().allMatch(f -> COMPRESSIONS.contains(f.code()));
      assertThat(findings)
          .as(told)
          .noneMatch(
              f -> breaths && f.code().equals("rhythm-even") && !PLACE.matcher(f.title()).find());
      boolean test = review.testIntervals().isPresent();
      assertThat(findings).as(told).noneMatch(f -> test && f.code().equals("unprompted-held"));
    }
  }
}
