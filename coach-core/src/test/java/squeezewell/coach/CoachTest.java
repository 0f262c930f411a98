package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.cue.CueKind;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.storage.FileJournal;

class CoachTest {
  private static final long SECOND = 1_000_000_000L;

  @TempDir Path folder;

  @Test
  void aPracticeIsReadBackAsItHappened() throws Exception {
    Protocol protocol = GuidelineLibrary.editions().get(0);
    PracticePlan plan =
        new PracticePlan(
            protocol.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow(),
            0,
            120 * SECOND,
            0);
    Path file = folder.resolve("session.jsonl");
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-01-31T12:00:00Z"), SessionHeader.Origin.LIVE, "", protocol, plan);
    try (FileJournal journal = FileJournal.create(file, header)) {
      Coach coach = new Coach(plan, journal, List.of());
      for (long k = 0; k < 20; k++) {
        coach.command(Command.SQUEEZE, k * 6 * SECOND + SECOND / 10);
        coach.command(Command.SQUEEZE_END, k * 6 * SECOND + SECOND);
      }
      coach.advance(121 * SECOND);
      assertThat(coach.state().finished()).isTrue();
    }
    Session session = SessionReader.read(file);
    assertThat(session.header()).isEqualTo(header);
    assertThat(session.breaths()).hasSize(20);
    assertThat(session.finished()).isTrue();
    assertThat(session.endNanos()).isEqualTo(120 * SECOND);
    assertThat(session.schedule().squeezesUntil(session.endNanos())).hasSize(20);
    assertThat(session.schedule().between(0, 6 * SECOND))
        .extracting(c -> c.kind())
        .containsExactly(
            CueKind.SQUEEZE,
            CueKind.RELEASE,
            CueKind.COUNT,
            CueKind.COUNT,
            CueKind.COUNT,
            CueKind.COUNT);
  }
}
