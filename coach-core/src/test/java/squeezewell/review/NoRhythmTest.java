package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** A practice in which the edition has no rhythm for what was found. */
class NoRhythmTest {
  @Test
  void breathsForAChildWhosePulseIsBackAreNotCalledNeedless() {
    var edition = TestPlans.edition("erc-2025");
    var arrest =
        edition.find(PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY, 2).orElseThrow();
    PracticePlan plan = PracticePlan.of(edition, arrest, 0, 2 * TestPlans.MINUTE, 0);
    List<SessionEvent> events = new ArrayList<>();
    events.add(SessionEvent.of(1, 30 * TestPlans.SECOND, EventType.FINDING, "pulse-back"));
    for (int n = 2; n <= 20; n++) {
      events.add(SessionEvent.of(n, (40 + 3L * n) * TestPlans.SECOND, EventType.BREATH, ""));
    }
    SessionHeader header =
        new SessionHeader(Instant.EPOCH, SessionHeader.Origin.EVENT_LIST, "", edition, plan);
    Review review = Reviewer.review(new Session(header, events, List.of()));
    assertThat(review.findings()).extracting(Feedback::code).doesNotContain("breaths-not-needed");
    // From the finding at 0:30 to the end of the plan at 2:00.
    assertThat(review.notes())
        .contains(
            "For 1:30 the patient needed breaths and no compressions, and this edition gives no"
                + " rate for them. How they came then is not judged.");
  }
}
