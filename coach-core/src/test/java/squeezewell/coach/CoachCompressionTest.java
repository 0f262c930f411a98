package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.session.SessionReader;
import squeezewell.storage.FileJournal;

/** Compressions as they are told and written down. */
class CoachCompressionTest {
  private static final long MILLI = TestPlans.MILLI;
  private static final PracticePlan PLAN =
      new PracticePlan(
          TestPlans.guidance(TestPlans.cycle("110", 30, 2, "4", "1"), TestPlans.usualLimits()),
          0,
          TestPlans.MINUTE,
          0);

  private final MemoryJournal journal = new MemoryJournal();
  private final Coach coach = new Coach(PLAN, journal, List.of());

  @TempDir Path folder;

  @Test
  void eachIsWrittenAndCounted() {
    compress(0, 545, 1_091);
    assertThat(journal.lines())
        .containsExactly("0 compression", "545 compression", "1091 compression");
    assertThat(coach.state().compressionCount()).isEqualTo(3);
    assertThat(coach.state().recentCompressions()).containsExactly(0L, 545 * MILLI, 1_091 * MILLI);
    assertThat(coach.state().breaths()).isEmpty();
  }

  @Test
  void aBouncingContactIsOneCompression() {
    coach.command(Command.COMPRESS, 1_000 * MILLI);
    coach.command(Command.COMPRESS, 1_000 * MILLI + HandsRecord.COMPRESSION_BOUNCE_NANOS - 1);
    assertThat(coach.state().compressionCount()).isEqualTo(1);
    coach.command(Command.COMPRESS, 1_000 * MILLI + HandsRecord.COMPRESSION_BOUNCE_NANOS);
    assertThat(coach.state().compressionCount()).isEqualTo(2);
  }

  @Test
  void oneEndsACheckThatHasBegunAWhileAgo() {
    coach.command(Command.PULSE_CHECK, 1_000 * MILLI);
    compress(1_299);
    assertThat(journal.lines()).containsExactly("1000 pulse-check", "1299 compression");
    compress(1_600);
    assertThat(journal.lines()).endsWith("1600 pulse-check-end compression", "1600 compression");
  }

  @Test
  void oneLeavesSuctionAloneWhereSomebodyElseClearsTheAirway() {
    coach.command(Command.SUCTION, 1_000 * MILLI);
    compress(1_300);
    assertThat(journal.lines()).containsExactly("1000 suction compressing", "1300 compression");
  }

  @Test
  void theScreenSeesTheLastOnesAndTheCountOfAll() {
    for (int k = 0; k < 100; k++) {
      compress(k * 550L);
    }
    assertThat(coach.state().compressionCount()).isEqualTo(100);
    assertThat(coach.state().recentCompressions())
        .hasSize(CoachState.RECENT)
        .endsWith(99 * 550 * MILLI);
  }

  @Test
  void theJournalKeepsEachToTheNanosecond() throws Exception {
    Path file = folder.resolve("s.jsonl");
    try (FileJournal kept = FileJournal.create(file, TestPlans.header(PLAN))) {
      Coach live = new Coach(PLAN, kept, List.of());
      live.command(Command.COMPRESS, 7);
      live.command(Command.COMPRESS, 545_454_545L);
      live.command(Command.BREATH, 700_000_000L);
    }
    assertThat(SessionReader.read(file).compressions()).containsExactly(7L, 545_454_545L);
    assertThat(SessionReader.read(file).breaths()).hasSize(1);
  }

  private void compress(long... millis) {
    for (long at : millis) {
      coach.command(Command.COMPRESS, at * MILLI);
    }
  }
}
