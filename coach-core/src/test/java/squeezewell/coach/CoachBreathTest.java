package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.session.EventType;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;

/** Breaths of which only the start is told. */
class CoachBreathTest {
  private static final long SECOND = 1_000_000_000L;

  private final List<SessionEvent> events = new ArrayList<>();
  private final Coach coach =
      new Coach(
          new PracticePlan(GuidelineLibrary.editions().get(0).guidance().get(0), 0, 60 * SECOND, 0),
          new Kept(events),
          List.of());

  @Test
  void eachIsWrittenWithoutAnEnd() {
    coach.command(Command.BREATH, 0);
    letTimePassUntil(6);
    coach.command(Command.BREATH, 6 * SECOND);
    assertThat(events)
        .extracting(SessionEvent::what)
        .containsExactly(EventType.BREATH, EventType.BREATH);
    assertThat(coach.state().squeezing()).isFalse();
    assertThat(coach.state().breaths()).allMatch(b -> !b.endNanos().isPresent());
    assertThat(coach.state().lastIntervalNanos()).hasValue(6 * SECOND);
  }

  @Test
  void aBouncingContactIsOneBreath() {
    coach.command(Command.BREATH, SECOND);
    coach.command(Command.BREATH, SECOND + HandsRecord.BOUNCE_NANOS - 1);
    assertThat(coach.state().breaths()).hasSize(1);
    assertThat(events).hasSize(1);
  }

  @Test
  void oneDuringASqueezeThatIsHeldChangesNothing() {
    coach.command(Command.SQUEEZE, SECOND);
    coach.command(Command.BREATH, 3 * SECOND);
    assertThat(coach.state().breaths()).hasSize(1);
    assertThat(coach.state().squeezing()).isTrue();
  }

  @Test
  void itEndsAPulseCheckAsASqueezeDoes() {
    coach.command(Command.PULSE_CHECK, SECOND);
    letTimePassUntil(7);
    coach.command(Command.BREATH, 7 * SECOND);
    assertThat(events)
        .extracting(SessionEvent::what)
        .containsExactly(EventType.PULSE_CHECK, EventType.PULSE_CHECK_END, EventType.BREATH);
  }

  private void letTimePassUntil(int seconds) {
    for (int second = 0; second <= seconds; second++) {
      coach.advance(second * SECOND);
    }
  }

  private record Kept(List<SessionEvent> events) implements Journal {
    @Override
    public void append(SessionEvent event) {
      events.add(event);
    }

    @Override
    public void close() {}
  }
}
