package squeezewell.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.session.EventType;
import squeezewell.session.SessionEvent;

/** What is remembered of a practice, with a disk that is full for a while or for good. */
class KeptSessionTest {
  private static final long SECOND = 1_000_000_000L;

  @TempDir Path folder;
  private final LivePlans.Fragile file = new LivePlans.Fragile();
  private final KeptSession kept = KeptSession.in(file, Path.of("kept.jsonl"), LivePlans.header());
  private final Coach coach = new Coach(LivePlans.plan(), kept, List.of());
  private long nowNanos;

  private void give(Command command, long atSeconds) {
    // In small steps, since a coach that is called too seldom writes a hole down.
    while (nowNanos < atSeconds * SECOND) {
      nowNanos += SECOND / 2;
      coach.advance(nowNanos);
    }
    coach.command(command, nowNanos);
  }

  private void breathe(long atSeconds) {
    give(Command.SQUEEZE, atSeconds);
    give(Command.SQUEEZE_END, atSeconds + 1);
  }

  @Test
  void withAFullDiskEveryBreathIsStillRememberedOnce() {
    breathe(0);
    file.failure = new IOException("no space left");
    breathe(6);
    breathe(12);
    breathe(18);
    give(Command.FINISH, 20);
    kept.close();
    assertThat(kept.session().events())
        .extracting(SessionEvent::number)
        .containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9);
    assertThat(kept.session().breaths()).hasSize(4);
    assertThat(kept.trouble()).isEqualTo("This practice is not being saved: no space left");
    assertThat(kept.session().notes()).containsExactly(kept.trouble());
    assertThat(file.closed).isTrue();
  }

  @Test
  void whenTheDiskHasRoomAgainTheFileIsCaughtUpAndNothingStandsTwice() {
    file.failure = new IOException("no space left");
    breathe(0);
    breathe(6);
    assertThat(kept.trouble()).contains("no space left");
    file.failure = null;
    breathe(12);
    assertThat(kept.trouble()).isEmpty();
    assertThat(file.events).extracting(SessionEvent::number).containsExactly(1, 2, 3, 4, 5, 6);
    assertThat(kept.session().events()).isEqualTo(file.events);
    assertThat(kept.session().notes()).isEmpty();
  }

  @Test
  void whatIsStillUnsavedAtTheEndIsTriedOnceMore() {
    file.failure = new IOException("no space left");
    breathe(0);
    file.failure = null;
    kept.close();
    assertThat(file.events).hasSize(2);
    assertThat(kept.trouble()).isEmpty();
  }

  @Test
  void aSessionWithoutAFileIsRememberedAndSaysSoToItsEnd() throws IOException {
    Path taken = Files.createFile(folder.resolve("taken.jsonl"));
    KeptSession none = KeptSession.create(taken, LivePlans.header());
    none.append(SessionEvent.of(1, 0, EventType.BREATH, ""));
    none.close();
    assertThat(none.path()).isEmpty();
    assertThat(none.trouble()).startsWith("This practice is not being saved");
    assertThat(none.session().breaths()).hasSize(1);
    assertThat(taken).isEmptyFile();
  }
}
