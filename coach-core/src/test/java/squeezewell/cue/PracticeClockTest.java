package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.protocol.Situation;

class PracticeClockTest {
  private static Segment segment(Segment.Kind kind, long start, long end) {
    return new Segment(
        kind, start, end, start, start, false, TestPlans.adult(Situation.PULSE_NO_BREATHING));
  }

  /** Pauses from 10 to 15, 15 to 18 (at once after it, as if by another hand) and 30 to 40. */
  private static final PracticeClock CLOCK =
      new PracticeClock(
          List.of(
              segment(Segment.Kind.PACED, 0, 10),
              segment(Segment.Kind.PAUSED, 10, 15),
              segment(Segment.Kind.PAUSED, 15, 18),
              segment(Segment.Kind.SUCTION, 18, 30),
              segment(Segment.Kind.PAUSED, 30, 40),
              segment(Segment.Kind.ENDED, 40, Segment.OPEN)));

  /** Worked by hand. */
  @ParameterizedTest
  @CsvSource({
    "-5, -5", "0, 0", "9, 9", "10, 10", "12, 10", "15, 10", "17, 10", "18, 10", "19, 11", "29, 21",
    "30, 22", "39, 22", "40, 22", "41, 23"
  })
  void practiceTimeStandsStillInAPause(long session, long practice) {
    assertThat(CLOCK.toPractice(session)).isEqualTo(practice);
  }

  /** Worked by hand. */
  @ParameterizedTest
  @CsvSource({"-5, -5", "0, 0", "9, 9", "10, 18", "11, 19", "21, 29", "22, 40", "23, 41"})
  void whatFallsOnTheStartOfAPauseWaitsForItsEnd(long practice, long session) {
    assertThat(CLOCK.toSession(practice)).isEqualTo(session);
  }

  @Test
  void nothingComesAfterTheStartOfAPauseThatHasNotEnded() {
    PracticeClock clock =
        new PracticeClock(
            List.of(
                segment(Segment.Kind.PACED, 0, 10),
                segment(Segment.Kind.PAUSED, 10, Segment.OPEN)));
    assertThat(clock.toSession(9)).isEqualTo(9);
    assertThat(clock.toSession(10)).isEqualTo(Segment.OPEN);
    assertThat(clock.toSession(1_000)).isEqualTo(Segment.OPEN);
    assertThat(clock.toPractice(Long.MAX_VALUE)).isEqualTo(10);
  }

  @Provide
  Arbitrary<PracticePlan> plans() {
    return ControlScripts.plans();
  }

  @Provide
  Arbitrary<List<Control>> scripts() {
    return ControlScripts.scripts();
  }

  @Property
  void thereAndBackIsTheSamePracticeTime(
      @ForAll("plans") PracticePlan plan,
      @ForAll("scripts") List<Control> script,
      @ForAll @LongRange(min = 0, max = 900_000_000_000L) long practice) {
    PracticeClock clock = new PracticeClock(CueSchedule.of(plan, script).segments());
    long session = clock.toSession(practice);
    if (session != Segment.OPEN) {
      assertThat(clock.toPractice(session)).isEqualTo(practice);
    }
  }
}
