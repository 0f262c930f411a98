package squeezewell.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.input.BadInputException;

class SessionReaderTest {
  private static final long SECOND = TestPlans.SECOND;

  @TempDir Path folder;
  private Path file;
  private String header;
  private final List<SessionEvent> events =
      List.of(
          new SessionEvent(1, SECOND, What.BREATH, ""),
          new SessionEvent(2, 2 * SECOND, What.BREATH_END, "450 mL"),
          new SessionEvent(3, 7 * SECOND, What.FINDING, "é呼😀\n"),
          new SessionEvent(4, 8 * SECOND, What.RETRACT, "1"));

  @BeforeEach
  void writeAGoodFile() throws Exception {
    file = folder.resolve("s.jsonl");
    try (FileJournal journal =
        FileJournal.create(file, TestPlans.header(TestPlans.everySixSeconds(TestPlans.MINUTE)))) {
      for (SessionEvent event : events) {
        journal.append(event);
      }
    }
    header = Files.readAllLines(file).get(0);
  }

  private BadInputException refusal(String text) throws Exception {
    Files.writeString(file, text);
    try {
      SessionReader.read(file);
    } catch (BadInputException e) {
      assertThat(e.getMessage()).startsWith(file.toString()).doesNotContainPattern("\\p{Cntrl}");
      return e;
    }
    throw new AssertionError("nothing was refused");
  }

  /**
   * Before findings could change a rhythm, headers named no situation and findings were remarks.
   */
  @Test
  void aRemarkOfAnOldFileIsNoFindingWhateverItsWords() throws Exception {
    String vomit = "{\"n\":1,\"at\":5000000000,\"what\":\"finding\",\"detail\":\"vomit\"}\n";
    String lost = "{\"n\":2,\"at\":6000000000,\"what\":\"finding\",\"detail\":\"pulse-lost\"}\n";
    String old = header.replaceFirst("\"situation\":\"[a-z-]+\",", "");
    assertThat(old).isNotEqualTo(header);
    Files.writeString(file, old + "\n" + vomit + lost);
    Session read = SessionReader.read(file);
    assertThat(read.findings()).isEmpty();
    assertThat(read.controls()).isEmpty();
    assertThat(read.events())
        .extracting(SessionEvent::detail)
        .containsExactly("vomit", "pulse-lost");
    assertThat(read.events()).extracting(SessionEvent::what).containsOnly(What.REMARK);
    Files.writeString(file, header + "\n" + vomit + lost);
    assertThat(SessionReader.read(file).findings()).hasSize(2);
  }

  /** Wherever the program was stopped in writing, what had been written whole is read. */
  @Test
  void aFileTornAtAnyByteIsReadUpToTheTear() throws Exception {
    byte[] whole = Files.readAllBytes(file);
    List<Integer> lineEnds = new ArrayList<>();
    for (int i = 0; i < whole.length; i++) {
      if (whole[i] == '\n') {
        lineEnds.add(i + 1);
      }
    }
    assertThat(lineEnds).hasSize(events.size() + 1);
    for (int length = 0; length <= whole.length; length++) {
      Files.write(file, Arrays.copyOf(whole, length));
      int kept = length;
      long lines = lineEnds.stream().filter(end -> end <= kept).count();
      if (lines == 0) {
        try {
          SessionReader.read(file);
          throw new AssertionError("read " + length + " bytes of a header");
        } catch (BadInputException e) {
          assertThat(e).hasMessageContaining("line 1").hasMessageContaining("allowed");
        }
        continue;
      }
      Session session = SessionReader.read(file);
      assertThat(session.events()).isEqualTo(events.subList(0, (int) lines - 1));
      boolean torn = length != lineEnds.get((int) lines - 1);
      assertThat(session.notes()).hasSize(torn ? 1 : 0);
      if (torn) {
        assertThat(session.notes().get(0)).contains("line " + (lines + 1), "torn off");
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "rubbish | line 2: not well-formed JSON",
        "[] | line 2: top is a list; allowed: an object",
        "{} | n is missing",
        "{\"n\":2,\"at\":0,\"what\":\"breath\"} | n is 2; allowed: 1, since events are numbered",
        "{\"n\":4294967297,\"at\":0,\"what\":\"breath\"} | n is 4294967297; allowed",
        "{\"n\":1,\"at\":-1,\"what\":\"breath\"} | at is -1; allowed: a number from 0",
        "{\"n\":1,\"at\":9000000000000000000,\"what\":\"breath\"} | at is 9000000000000000000; allowed",
        "{\"n\":1,\"at\":1e18,\"what\":\"breath\"} | at is 1E+18; allowed",
        "{\"n\":1,\"at\":0.5,\"what\":\"breath\"} | at is 0.5; allowed: a whole number",
        "{\"n\":1,\"at\":\"0\",\"what\":\"breath\"} | at is \"0\"; allowed: a number",
        "{\"n\":1,\"at\":0,\"what\":\"sneeze\"} | what is \"sneeze\"; allowed: one of breath, breath-end",
        "{\"n\":1,\"at\":0,\"what\":\"breath\",\"detail\":7} | detail is 7; allowed: a text",
        "{\"n\":1,\"n\":1,\"at\":0,\"what\":\"breath\"} | n: the field stands there twice",
        "{\"n\":1,\"at\":0,\"what\":\"retract\",\"detail\":\"1\"} | detail is 1; allowed: the number of an event before",
        "{\"n\":1,\"at\":0,\"what\":\"retract\",\"detail\":\"99999999999\"} | detail is 99999999999; allowed",
        "{\"n\":1,\"at\":0,\"what\":\"retract\"} | allowed: the number of an event before",
        "{\"n\":1,\"at\":0,\"what\":\"\\u001b[31m\"} | allowed: one of breath",
      })
  void aBadLineIsNamedWithWhatIsWrong(String line, String message) throws Exception {
    assertThat(refusal(header + "\n" + line + "\n"))
        .hasMessageContaining("line 2")
        .hasMessageContaining(message);
  }

  @Test
  void timeThatGoesBackIsRefused() throws Exception {
    assertThat(
            refusal(
                header
                    + "\n{\"n\":1,\"at\":5,\"what\":\"breath\"}"
                    + "\n{\"n\":2,\"at\":4,\"what\":\"breath\"}\n"))
        .hasMessageContaining("line 3: at is 4; allowed: at least 5");
  }

  @Test
  void rubbishInTheMiddleIsAnErrorAndNotATear() throws Exception {
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    lines.set(2, lines.get(2).substring(0, 20));
    assertThat(refusal(String.join("\n", lines) + "\n")).hasMessageContaining("line 3");
  }

  @Test
  void aNewerVersionIsRefusedWithItsReason() throws Exception {
    assertThat(refusal(header.replaceFirst("\"version\":1", "\"version\":2") + "\n"))
        .hasMessageContaining("line 1: version is 2; allowed: at most 1")
        .hasMessageContaining("newer version");
    assertThat(refusal("{\"format\":\"other\"}\n")).hasMessageContaining("format is \"other\"");
  }

  @Test
  void anEmptyFileIsRefused() throws Exception {
    assertThat(refusal("")).hasMessageContaining("the file is empty");
    assertThat(refusal("\n")).hasMessageContaining("line 1");
  }

  @Test
  void windowsLineEndsAreAccepted() throws Exception {
    Files.writeString(file, Files.readString(file).replace("\n", "\r\n"));
    assertThat(SessionReader.read(file).events()).isEqualTo(events);
  }

  @Test
  void unknownFieldsAreLeftAlone() throws Exception {
    Files.writeString(file, header + "\n{\"n\":1,\"at\":0,\"what\":\"breath\",\"more\":[1]}\n");
    assertThat(SessionReader.read(file).events()).hasSize(1);
  }

  @Test
  void aFileThatIsNotUtf8IsRefusedByItsLine() throws Exception {
    byte[] good = (header + "\n{\"n\":1,\"at\":0,\"what\":\"").getBytes(StandardCharsets.UTF_8);
    byte[] bytes = Arrays.copyOf(good, good.length + 2);
    bytes[good.length] = (byte) 0xE9;
    bytes[good.length + 1] = '\n';
    Files.write(file, bytes);
    try {
      SessionReader.read(file);
      throw new AssertionError("it was read");
    } catch (BadInputException e) {
      assertThat(e).hasMessageContaining("line 2").hasMessageContaining("not UTF-8");
    }
  }

  @Test
  void aHugeLineAndAHugeFileAreRefused() throws Exception {
    assertThat(refusal(header + "\n" + "x".repeat(20_000_000)))
        .hasMessageContaining("line 2 is over 100000 bytes long; allowed");
    Path huge = folder.resolve("huge.jsonl");
    try (OutputStream out = Files.newOutputStream(huge)) {
      byte[] block = new byte[1_000_000];
      Arrays.fill(block, (byte) 'x');
      for (int i = 0; i < 65; i++) {
        out.write(block);
      }
    }
    file = huge;
    try {
      SessionReader.read(huge);
      throw new AssertionError("it was read");
    } catch (BadInputException e) {
      assertThat(e).hasMessageContaining("size is 65000000 bytes; allowed: at most 64000000");
    }
  }

  @Test
  void millionsOfEmptyLinesAreRefusedAtTheFirst() throws Exception {
    assertThat(refusal(header + "\n".repeat(20_000_000))).hasMessageContaining("line 2");
  }
}
