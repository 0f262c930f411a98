package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Replay;
import squeezewell.cue.PracticePlan;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Protocol;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

class ReplayViewTest {
  private static final long SECOND = 1_000_000_000L;

  /** Three minutes with a check, a finding and a breath without a known end. */
  static Session session() {
    Protocol protocol = Practices.protocol();
    PracticePlan plan = Practices.plan(3, 3);
    List<SessionEvent> events = new ArrayList<>();
    add(events, 3, EventType.BREATH, "");
    add(events, 4, EventType.BREATH_END, "");
    add(events, 10, EventType.BREATH, "");
    add(events, 20, EventType.FINDING, "gag");
    add(events, 120, EventType.PULSE_CHECK, "");
    add(events, 127, EventType.PULSE_CHECK_END, "");
    add(events, 150, EventType.FINISH, "");
    return new Session(
        new SessionHeader(
            Instant.parse("2026-03-01T09:00:00Z"), SessionHeader.Origin.LIVE, "", protocol, plan),
        events,
        List.of());
  }

  private static void add(List<SessionEvent> to, long second, EventType what, String detail) {
    to.add(SessionEvent.of(to.size() + 1, second * SECOND, what, detail));
  }

  private final Replay replay = new Replay(session());
  private final ReplayView view = ReplayView.of(replay);

  @Test
  void holdsAndFindingsAreMomentsToGoTo() {
    assertThat(view.endNanos()).isEqualTo(150 * SECOND);
    assertThat(view.moments())
        .extracting(m -> m.fromNanos() / SECOND, m -> m.toNanos() / SECOND, m -> m.finding())
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(20L, 20L, true),
            org.assertj.core.groups.Tuple.tuple(120L, 127L, false));
    assertThat(view.after(0).orElseThrow().fromNanos()).isEqualTo(20 * SECOND);
    assertThat(view.after(20 * SECOND).orElseThrow().label()).isEqualTo("Pulse check");
    assertThat(view.after(120 * SECOND)).isEmpty();
    assertThat(view.before(19 * SECOND)).isEmpty();
    // One that was just reached does not count, so that pressing again goes further back.
    assertThat(view.before(121 * SECOND).orElseThrow().fromNanos()).isEqualTo(20 * SECOND);
    assertThat(view.before(122 * SECOND).orElseThrow().fromNanos()).isEqualTo(120 * SECOND);
  }

  @Test
  void theWordsTellWhatWasDone() {
    assertThat(view.time(62 * SECOND)).isEqualTo("0:59 of 2:27");
    assertThat(words(2)).isEqualTo("No breath yet");
    assertThat(ReplayView.breath(replay.stateAt(3_400_000_000L), 3_400_000_000L))
        .isEqualTo("Squeezing, 0.4 s");
    assertThat(words(5)).isEqualTo("Squeezed 1.0 s, breath 1");
    assertThat(words(12)).isEqualTo("Squeezed, breath 2");
  }

  private String words(long second) {
    return ReplayView.breath(replay.stateAt(second * SECOND), second * SECOND);
  }

  /** A breath noted as one instant must not grow on the ribbon for ever. */
  @Test
  void aBreathWithoutAKnownEndIsAPoint() {
    RibbonMark last =
        LiveView.ribbon(replay.stateAt(15 * SECOND), 15 * SECOND).stream()
            .filter(m -> m.kind() == RibbonMark.Kind.BREATH && m.startNanos() == 10 * SECOND)
            .findFirst()
            .orElseThrow();
    assertThat(last.endNanos()).isEqualTo(10 * SECOND);
  }
}
