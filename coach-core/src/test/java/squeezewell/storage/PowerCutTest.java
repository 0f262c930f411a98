package squeezewell.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.TestPlans;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;

/** F1 and F2: what a power cut at any instant leaves, by a model of a disk that forgets. */
class PowerCutTest {
  private static final int CUTS = 200;
  private static final long SECOND = TestPlans.SECOND;
  private static final SessionHeader HEADER =
      TestPlans.header(TestPlans.everySixSeconds(TestPlans.MINUTE));

  @TempDir Path folder;

  /**
   * Events come by chance, up to four a second; the file is forced a second after the last forcing
   * was done, which takes up to 0.3 s, so that what was written meanwhile waits for the next.
   */
  @Test
  void aPowerCutTakesAtMostTheLastSecondAndAHalfAndNeverTheHeader() throws Exception {
    Random random = new Random(20_261_130);
    long worst = 0;
    for (int run = 0; run < CUTS; run++) {
      long cut = (long) (random.nextDouble() * 40 * SECOND);
      List<SessionEvent> events = new ArrayList<>();
      DiskThatForgets disk = new DiskThatForgets(random);
      Path file = Path.of("s-" + run + ".jsonl");
      FileJournal journal = FileJournal.create(disk, file, HEADER);
      long force = SECOND;
      for (long at = 0; at < cut; at += (long) (random.nextDouble() * SECOND / 2)) {
        while (force <= at) {
          journal.force();
          force += SECOND + (long) (random.nextDouble() * 0.3 * SECOND);
        }
        EventType type = events.size() % 2 == 0 ? EventType.BREATH : EventType.BREATH_END;
        events.add(SessionEvent.of(events.size() + 1, at, type, ""));
        journal.append(events.get(events.size() - 1));
      }
      while (force <= cut) {
        journal.force();
        force += SECOND;
      }
      disk.cutInto(folder);
      Session left = SessionReader.read(folder.resolve(file));
      assertThat(left.header()).isEqualTo(HEADER);
      assertThat(left.events()).isEqualTo(events.subList(0, left.events().size()));
      if (left.events().size() < events.size()) {
        worst = Math.max(worst, cut - events.get(left.events().size()).atNanos());
      }
    }
    assertThat(worst).as("what is missing at most").isBetween(SECOND / 2, SECOND * 3 / 2);
  }

  @Test
  void aClosedSessionIsWholeAfterAPowerCut() throws Exception {
    for (int run = 0; run < 20; run++) {
      DiskThatForgets disk = new DiskThatForgets(new Random(run));
      Path file = Path.of("closed-" + run + ".jsonl");
      try (FileJournal journal = FileJournal.create(disk, file, HEADER)) {
        journal.append(SessionEvent.of(1, 0, EventType.BREATH, ""));
      }
      disk.cutInto(folder);
      assertThat(SessionReader.read(folder.resolve(file)).events()).hasSize(1);
    }
  }

  @Test
  void aFileThatIsSavedWholeIsTheNewOneAfterAPowerCut() throws Exception {
    for (int run = 0; run < 20; run++) {
      DiskThatForgets disk = new DiskThatForgets(new Random(run));
      Path file = Path.of("settings-" + run + ".json");
      WholeFile whole = new WholeFile(disk);
      whole.put(file, bytes("old"), false, Disk.Rights.OWNER);
      whole.put(file, bytes("new and longer"), true, Disk.Rights.OWNER);
      disk.cutInto(folder);
      assertThat(Files.readString(folder.resolve(file))).isEqualTo("new and longer");
    }
  }

  /** A line of which only half came to the file is cut off again before the next. */
  @Test
  void halfALineIsCutOffAtOnceAndTheNextFollowsTheLastGoodOne() throws Exception {
    DiskThatForgets disk = new DiskThatForgets(new Random(1));
    Path file = Path.of("half.jsonl");
    FileJournal journal = FileJournal.create(disk, file, HEADER);
    int header = disk.content(file).length;
    disk.failWith(new IOException("no space left"));
    SessionEvent event = SessionEvent.of(1, 0, EventType.BREATH, "");
    assertThat(fails(journal, event)).isTrue();
    assertThat(disk.content(file)).hasSize(header);
    disk.failWith(null);
    journal.append(event);
    assertThat(new String(disk.content(file), StandardCharsets.UTF_8).split("\n")).hasSize(2);
  }

  private static boolean fails(FileJournal journal, SessionEvent event) {
    try {
      journal.append(event);
      return false;
    } catch (IOException e) {
      return true;
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
