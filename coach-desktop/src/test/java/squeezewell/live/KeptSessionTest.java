package squeezewell.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.input.BadInputException;
import squeezewell.session.EventType;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionReader;

/** What is remembered of a practice, with a disk that is full for a while or for good. */
class KeptSessionTest {
  private static final long SECOND = 1_000_000_000L;

  @TempDir Path folder;
  private final FragileDisk disk = new FragileDisk();
  private Runnable force;
  private boolean forcingStopped;
  private int names;
  private KeptSession kept;
  private Coach coach;
  private long nowNanos;

  private Path name() {
    names++;
    return folder.resolve("s-" + names + ".jsonl");
  }

  private KeptSession keep(Supplier<Path> name) {
    return KeptSession.create(
        disk,
        name,
        LivePlans.header(),
        task -> {
          force = task;
          return () -> forcingStopped = true;
        });
  }

  @BeforeEach
  void begin() {
    kept = keep(this::name);
    coach = new Coach(LivePlans.plan(), kept, List.of());
  }

  private List<SessionEvent> written() throws BadInputException {
    return SessionReader.read(kept.path().orElseThrow()).events();
  }

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
    disk.failure = new IOException("no space left");
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
    assertThat(disk.open.get()).isZero();
  }

  @Test
  void whenTheDiskHasRoomAgainTheFileIsCaughtUpAndNothingStandsTwice() throws Exception {
    disk.failure = new IOException("no space left");
    breathe(0);
    breathe(6);
    assertThat(kept.trouble()).contains("no space left");
    disk.failure = null;
    breathe(12);
    assertThat(kept.trouble()).isEmpty();
    assertThat(written()).extracting(SessionEvent::number).containsExactly(1, 2, 3, 4, 5, 6);
    assertThat(kept.session().events()).isEqualTo(written());
    assertThat(kept.session().notes()).isEmpty();
  }

  @Test
  void whatIsStillUnsavedAtTheEndIsTriedOnceMore() throws Exception {
    disk.failure = new IOException("no space left");
    breathe(0);
    disk.failure = null;
    kept.close();
    assertThat(written()).hasSize(2);
    assertThat(kept.trouble()).isEmpty();
  }

  @Test
  void aSessionWithoutAFileIsRememberedAndSaysSoToItsEnd() throws IOException {
    Path taken = Files.createFile(folder.resolve("taken.jsonl"));
    KeptSession none = keep(() -> taken);
    none.append(SessionEvent.of(1, 0, EventType.BREATH, ""));
    none.close();
    assertThat(none.path()).isEmpty();
    assertThat(none.trouble())
        .startsWith("This practice is not being saved: ")
        .contains("is there already");
    assertThat(none.session().breaths()).hasSize(1);
    assertThat(taken).isEmptyFile();
  }

  /** F1: the header at once, events whenever the other thread comes by, and the rest at the end. */
  @Test
  void whatIsWrittenIsForcedToTheDiskAboutOnceASecond() {
    assertThat(Forcing.EVERY_MILLIS).isEqualTo(1_000);
    int header = disk.forced.get();
    assertThat(header).isEqualTo(1);
    breathe(0);
    assertThat(disk.forced.get()).as("never on the thread that paces").isEqualTo(header);
    force.run();
    force.run();
    assertThat(disk.forced.get()).as("once, since there is no more").isEqualTo(header + 1);
    breathe(6);
    kept.close();
    assertThat(forcingStopped).isTrue();
    assertThat(disk.forced.get()).isEqualTo(header + 2);
  }

  @Test
  void aDiskThatCantBeForcedIsToldOfUntilItCan() {
    breathe(0);
    disk.forceFailure = new IOException("input/output error");
    force.run();
    assertThat(kept.trouble()).contains("input/output error");
    breathe(6);
    assertThat(kept.trouble()).as("a write mends nothing").contains("input/output error");
    disk.forceFailure = null;
    force.run();
    assertThat(kept.trouble()).isEmpty();
  }

  /** F5: another program removed, cut or wrote into the file in the middle of the practice. */
  @ParameterizedTest
  @ValueSource(strings = {"removed", "cut", "longer"})
  void aFileThatIsNotAsItWasWrittenIsWrittenAnewFromMemory(String how) throws Exception {
    breathe(0);
    Path first = kept.path().orElseThrow();
    switch (how) {
      case "removed" -> Files.delete(first);
      case "cut" -> Files.write(first, Arrays.copyOf(Files.readAllBytes(first), 100));
      default -> Files.writeString(first, "rubbish", StandardOpenOption.APPEND);
    }
    if (!how.equals("longer")) {
      breathe(6);
    }
    byte[] changed = how.equals("removed") ? null : Files.readAllBytes(first);
    kept.close();
    assertThat(kept.trouble()).isEmpty();
    assertThat(kept.path().orElseThrow()).isNotEqualTo(first);
    assertThat(written()).isEqualTo(kept.session().events()).hasSizeGreaterThanOrEqualTo(2);
    if (changed != null) {
      assertThat(Files.readAllBytes(first)).as("the other is left as it is").isEqualTo(changed);
    }
  }

  /** F8: a home that could not be written to, and can again before the end. */
  @Test
  void whatCouldNotBeKeptAtFirstIsKeptAtTheEndIfItCanBe() throws Exception {
    disk.failure = new IOException("no space left");
    kept = keep(this::name);
    coach = new Coach(LivePlans.plan(), kept, List.of());
    breathe(0);
    assertThat(kept.path()).isEmpty();
    assertThat(kept.trouble()).contains("no space left");
    disk.failure = null;
    kept.close();
    assertThat(kept.trouble()).isEmpty();
    assertThat(written()).hasSize(2);
  }
}
