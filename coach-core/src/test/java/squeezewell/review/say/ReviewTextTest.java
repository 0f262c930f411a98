package squeezewell.review.say;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import squeezewell.protocol.PatientChange;
import squeezewell.review.Reviewer;
import squeezewell.review.SessionBuilder;
import squeezewell.review.VirtualTrainee;

class ReviewTextTest {
  @Test
  void noLineIsWiderThanATerminal() {
    for (String fault : new String[] {"sound", "fast", "pauses", "late-check", "short-squeeze"}) {
      Review review = Reviewer.review(new VirtualTrainee(fault, 3).session());
      assertThat(ReviewText.write(review).lines()).allMatch(line -> line.length() <= 80);
    }
  }

  @Test
  void theTextBeginsWithTheHeadlineAndHoldsTheFindings() {
    Review review = Reviewer.review(new VirtualTrainee("fast", 1).session());
    String text = ReviewText.write(review);
    assertThat(text).startsWith("Too fast\n");
    review.findings().forEach(f -> assertThat(text).contains(f.title()));
    assertThat(text)
        .contains("one breath every", "6 s (in range: 5 to 7 s)")
        .contains("Not a medical device.")
        .contains("Follow your local protocols and medical direction.")
        .contains("American Heart Association", "(2025)")
        .contains(review.asked().source().confidence().meaning());
  }

  @Test
  void aSessionWithoutBreathsIsTold() {
    assertThat(ReviewText.write(SessionBuilder.ofSeconds(130).review()))
        .startsWith("No breath was recorded\n")
        .contains("not enough breaths");
  }

  @Test
  void eachPartHasItsRowsAndWhatWasFoundItsTime() {
    String text =
        ReviewText.write(
            SessionBuilder.ofSeconds(180)
                .breathsEvery(6, 0.2, 84.2)
                .finding(90, PatientChange.PULSE_LOST)
                .undone(92)
                .finding(120, PatientChange.PULSE_LOST)
                .compressions(100, 120.5, 0.5)
                .review());
    assertThat(text)
        .containsSubsequence(
            "Found\n",
            "  at 1:30            No pulse (a slip, taken back)\n",
            "  at 2:00            No pulse\n",
            "From 0:00 to 1:30: pulse, not breathing\n",
            "  in range           14 of 14 intervals\n",
            "From 1:30 to 1:32: no pulse, no advanced airway (a slip, taken back)\n\n",
            "From 1:32 to 2:00: pulse, not breathing\n",
            "From 2:00 to 3:00: no pulse, no advanced airway\n",
            "  compressions asked 30 compressions, then 2 breaths; 100 to 120 a minute\n",
            "  compressions       100, 120 a minute, 100 % in range\n",
            "  by the rule        Not judged\n",
            "In all\n",
            "What to take from it\n",
            "Rhythm from: ",
            "Rhythm from: ");
  }

  @Test
  void theGapIsToldOnce() {
    // From 4.2 to 20 s: 15.8 s, no hold in it.
    assertThat(ReviewText.write(SessionBuilder.ofSeconds(26).breaths(0.2, 4.2, 20, 26).review()))
        .contains("  longest gap        15.8 s, from 0:04 (end of a squeeze to the start of the\n");
    assertThat(
            ReviewText.write(
                SessionBuilder.ofSeconds(26).breaths(0.2, 4.2, 20).suction(6, 12).review()))
        .contains("  longest gap        9.8 s, from 0:04 (end of a squeeze to the start of the\n");
  }

  @Test
  void howManyWaitsWereTooLongIsPlain() {
    // 12 s twice, 6 s else; at most 10 s is asked.
    Review review = SessionBuilder.ofSeconds(66).breaths(0, 6, 12, 24, 30, 36, 48, 54, 60).review();
    assertThat(review.findings())
        .filteredOn(f -> f.code().equals("long-gap"))
        .singleElement()
        .satisfies(f -> assertThat(f.text()).contains("2 waits in all were over 10 s."));
  }
}
