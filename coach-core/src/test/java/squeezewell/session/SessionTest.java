package squeezewell.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.cue.Control;

class SessionTest {
  private static final long SECOND = TestPlans.SECOND;

  /** A session of "seconds what detail" lines. */
  private static Session session(SessionHeader.Origin origin, String... lines) {
    SessionHeader plain = TestPlans.header(TestPlans.everySixSeconds(TestPlans.MINUTE));
    List<SessionEvent> events = new ArrayList<>();
    for (String line : lines) {
      String[] parts = line.split(" ", 3);
      events.add(
          SessionEvent.of(
              events.size() + 1,
              TestPlans.nanos(parts[0]),
              EventType.of(parts[1]).orElseThrow(),
              parts.length > 2 ? parts[2] : ""));
    }
    return new Session(
        new SessionHeader(plain.startedAt(), origin, "", plain.protocol(), plain.plan()),
        events,
        List.of());
  }

  private static Session session(String... lines) {
    return session(SessionHeader.Origin.LIVE, lines);
  }

  private static Breath breath(long start, long end) {
    return new Breath(start * SECOND, OptionalLong.of(end * SECOND), OptionalDouble.empty());
  }

  @Test
  void aRetractedBreathTakesItsEndWithIt() {
    Session session =
        session("1 breath", "2 breath-end", "7 breath", "8 breath-end", "9 retract 3", "13 breath");
    assertThat(session.breaths())
        .containsExactly(
            breath(1, 2), new Breath(13 * SECOND, OptionalLong.empty(), OptionalDouble.empty()));
    assertThat(session.standing()).extracting(SessionEvent::number).containsExactly(1, 2, 6);
  }

  /** A review asks for them for each part, and there may be thousands of parts. */
  @Test
  void whatStandsIsSortedOutOnce() {
    Session session = session("1 breath", "2 breath-end", "3 retract 1", "9 finish");
    assertThat(session.standing()).isSameAs(session.standing());
    Session whole = session("1 breath", "2 breath-end", "9 finish");
    assertThat(whole.standing()).isSameAs(whole.events());
  }

  @Test
  void sessionsWithTheSameFactsAreEqual() {
    Session one = session("1 breath", "9 finish");
    assertThat(one).isEqualTo(session("1 breath", "9 finish"));
    assertThat(one).hasSameHashCodeAs(session("1 breath", "9 finish"));
    assertThat(one).isNotEqualTo(session("1 breath", "8 finish"));
    assertThat(one)
        .isNotEqualTo(new Session(one.header(), one.events(), List.of("torn off")))
        .isNotEqualTo(session(SessionHeader.Origin.EVENT_LIST, "1 breath", "9 finish"))
        .isNotEqualTo("1 breath");
  }

  @Test
  void aRetractedFirstBreathLeavesTheSecondWhole() {
    Session session =
        session("1 breath", "2 breath-end", "7 breath", "8 breath-end", "9 retract 1");
    assertThat(session.breaths()).containsExactly(breath(7, 8));
  }

  @Test
  void aRetractedCompressionWasNeverThere() {
    Session session = session("1 compression", "1.5 compression", "2 compression", "2.1 retract 2");
    assertThat(session.compressions()).containsExactly(SECOND, 2 * SECOND);
    assertThat(session.breaths()).isEmpty();
  }

  @Test
  void aRetractedControlChangesThePromptsBack() {
    Session session = session("10 pause", "11 retract 1");
    assertThat(session.controls()).isEmpty();
    assertThat(session.schedule().endNanos()).hasValue(60 * SECOND);
    assertThat(session("10 pause").controls())
        .containsExactly(new Control(10 * SECOND, Control.Kind.PAUSE));
  }

  @Test
  void aRetractedFinishIsNoFinish() {
    assertThat(session("10 finish").finished()).isTrue();
    assertThat(session("10 finish", "10 retract 1").finished()).isFalse();
  }

  @Test
  void theLastEndOfABouncingContactCounts() {
    assertThat(session("1 breath", "1 breath-end", "2 breath-end").breaths())
        .containsExactly(breath(1, 2));
    assertThat(session("1 breath-end", "2 breath", "3 breath-end").breaths())
        .containsExactly(breath(2, 3));
  }

  @ParameterizedTest
  @CsvSource({"450 mL, 450", "450mL, 450", "0.5 mL, 0.5", "99999.999 mL, 99999.999", "0 mL, 0"})
  void aVolumeStandsInTheDetail(String detail, double millilitres) {
    assertThat(session("1 breath", "2 breath-end " + detail).breaths().get(0).millilitres())
        .hasValue(millilitres);
    assertThat(session("1 breath " + detail, "2 breath-end").breaths().get(0).millilitres())
        .hasValue(millilitres);
  }

  @ParameterizedTest
  @CsvSource({"450", "-450 mL", "450 L", "4e2 mL", "450 ml", "NaN mL", "1000000 mL", "450  mL x"})
  void anyOtherDetailIsNoVolume(String detail) {
    assertThat(session("1 breath", "2 breath-end " + detail).breaths().get(0).millilitres())
        .isEmpty();
  }

  @Test
  void theEndIsTheFinishElseTheLastEventElseThePlan() {
    assertThat(session("10 breath", "30 finish").endNanos()).isEqualTo(30 * SECOND);
    assertThat(session("10 breath", "30 breath").endNanos()).isEqualTo(30 * SECOND);
    assertThat(session().endNanos()).isZero();
    assertThat(session("10 breath", "20 pause").endNanos()).isEqualTo(20 * SECOND);
    assertThat(session(SessionHeader.Origin.EVENT_LIST, "10 breath").endNanos())
        .isEqualTo(60 * SECOND);
    assertThat(session(SessionHeader.Origin.EVENT_LIST, "10 pause", "20 resume").endNanos())
        .isEqualTo(70 * SECOND);
  }
}
