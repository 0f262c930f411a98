package squeezewell.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.audio.SoundOutput;
import squeezewell.audio.SoundSource;
import squeezewell.audio.Sounding;
import squeezewell.coach.Replay;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * A minute of one breath every 6 s, given 0.5 s late. Times are worked by hand: a change takes
 * effect the lead of the sound after the command.
 */
class ReplayPlayerTest {
  private static final long SECOND = 1_000_000_000L;
  private static final long LEAD = SoundOutput.LEAD_NANOS;

  private final ManualClock clock = new ManualClock();
  private SoundSource heard = SoundSource.silence();
  private final ReplayPlayer player =
      new ReplayPlayer(new Replay(session()), clock, source -> heard = source);

  private static Session session() {
    Protocol protocol =
        GuidelineLibrary.editions().stream()
            .filter(p -> p.id().equals("aha-2020"))
            .findFirst()
            .orElseThrow();
    PracticePlan plan =
        new PracticePlan(
            protocol.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow(),
            0,
            60 * SECOND,
            0);
    List<SessionEvent> events = new ArrayList<>();
    for (int k = 0; k < 10; k++) {
      long at = k * 6L * SECOND + SECOND / 2;
      events.add(SessionEvent.of(2 * k + 1, at, EventType.BREATH, ""));
      events.add(SessionEvent.of(2 * k + 2, at + SECOND, EventType.BREATH_END, ""));
    }
    events.add(SessionEvent.of(21, 60 * SECOND, EventType.FINISH, ""));
    return new Session(
        new SessionHeader(Instant.EPOCH, SessionHeader.Origin.LIVE, "", protocol, plan),
        events,
        List.of());
  }

  private void at(long nanos) {
    clock.moveTo(nanos);
  }

  @Test
  void itStandsStillUntilItIsPlayedAndThenShowsAndSoundsTheSameMoment() {
    at(10 * SECOND);
    assertThat(player.nowNanos()).isZero();
    player.toggle();
    at(10 * SECOND + LEAD + 7 * SECOND);
    assertThat(player.nowNanos()).isEqualTo(7 * SECOND);
    assertThat(player.state().breaths()).hasSize(2);
    assertThat(player.state().squeezing()).isTrue();
    // The breath of 6.5 s sounds 6.5 s after the start.
    long asked = 10 * SECOND + LEAD + 6 * SECOND + SECOND / 2;
    assertThat(heard.between(asked, asked + 1))
        .containsExactly(new Sounding.Deed(asked, Sounding.Act.SQUEEZED));
  }

  @Test
  void fasterAndSlowerGoOnFromTheMomentAndPauseIsSilent() {
    at(0);
    player.toggle();
    player.faster();
    player.faster();
    assertThat(player.speed()).isEqualTo(4);
    at(LEAD + 5 * SECOND);
    assertThat(player.nowNanos()).isEqualTo(20 * SECOND);
    player.toggle();
    assertThat(player.playing()).isFalse();
    assertThat(player.nowNanos()).isEqualTo(20 * SECOND + 4 * LEAD);
    at(100 * SECOND);
    assertThat(player.nowNanos()).isEqualTo(20 * SECOND + 4 * LEAD);
    assertThat(heard.between(6 * SECOND, 200 * SECOND)).isEmpty();
    player.slower();
    assertThat(player.speed()).isEqualTo(2);
  }

  @Test
  void aSkipStaysInsideTheSessionAndKeepsPlaying() {
    at(0);
    player.toggle();
    at(LEAD + 30 * SECOND);
    player.skip(10 * SECOND);
    assertThat(player.nowNanos()).isEqualTo(40 * SECOND);
    assertThat(player.playing()).isTrue();
    player.skip(-90 * SECOND);
    assertThat(player.nowNanos()).isZero();
    player.seek(90 * SECOND);
    assertThat(player.nowNanos()).isEqualTo(60 * SECOND);
    assertThat(player.playing()).isFalse();
    assertThat(player.state().finished()).isTrue();
  }

  @Test
  void whileTheSliderIsDraggedItStandsStillAndIsSilentAndThenGoesOn() {
    at(0);
    player.toggle();
    at(LEAD + 10 * SECOND);
    player.hold(true);
    player.seek(30 * SECOND);
    at(LEAD + 15 * SECOND);
    assertThat(player.nowNanos()).isEqualTo(30 * SECOND);
    assertThat(player.playing()).isTrue();
    assertThat(heard.between(11 * SECOND, 100 * SECOND)).isEmpty();
    player.hold(false);
    at(2 * LEAD + 16 * SECOND);
    assertThat(player.nowNanos()).isEqualTo(31 * SECOND);
    assertThat(heard.between(16 * SECOND, 100 * SECOND)).isNotEmpty();
  }
}
