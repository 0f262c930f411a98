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
import squeezewell.storage.FileJournal;

class SessionReaderTest {
  private static final long SECOND = TestPlans.SECOND;

  @TempDir Path folder;
  private Path file;
  private String header;
  private String formatOne;
  private final List<SessionEvent> events =
      List.of(
          SessionEvent.of(1, SECOND, EventType.BREATH, ""),
          SessionEvent.of(2, 2 * SECOND, EventType.BREATH_END, "450 mL"),
          SessionEvent.of(3, 7 * SECOND, EventType.REMARK, "é呼😀\n"),
          SessionEvent.of(4, 8 * SECOND, EventType.RETRACT, "1"));

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
    formatOne = header.replaceFirst("\"version\":2", "\"version\":1");
    assertThat(formatOne).isNotEqualTo(header);
  }

  /** What is said of a file of which only the lines before the fault are read. */
  private String noteOn(String text, int read) throws Exception {
    Files.writeString(file, text);
    Session session = SessionReader.read(file);
    assertThat(session.events()).hasSize(read);
    assertThat(session.finished()).isFalse();
    assertThat(session.notes()).hasSize(1);
    assertThat(session.notes().get(0)).doesNotContainPattern("\\p{Cntrl}");
    assertThat(Files.readString(file)).as("the original").isEqualTo(text);
    return session.notes().get(0);
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
    String old = formatOne.replaceFirst("\"situation\":\"[a-z-]+\",", "");
    assertThat(old).isNotEqualTo(formatOne);
    Files.writeString(file, old + "\n" + vomit + lost);
    Session read = SessionReader.read(file);
    assertThat(read.findings()).isEmpty();
    assertThat(read.controls()).isEmpty();
    assertThat(read.events())
        .extracting(SessionEvent::detail)
        .containsExactly("vomit", "pulse-lost");
    assertThat(read.events()).extracting(SessionEvent::what).containsOnly(EventType.REMARK);
    Files.writeString(file, formatOne + "\n" + vomit + lost);
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
        "{\"n\":1,\"at\":0,\"what\":\"retract\",\"detail\":\"1\"} | detail is \"1\"; allowed: the number of an event before",
        "{\"n\":1,\"at\":0,\"what\":\"retract\",\"detail\":\"99999999999\"} | detail is \"99999999999\"; allowed",
        "{\"n\":1,\"at\":0,\"what\":\"retract\"} | allowed: the number of an event before",
        "{\"n\":1,\"at\":0,\"what\":\"\\u001b[31m\"} | allowed: one of breath",
      })
  void aBadLineIsNamedWithWhatIsWrong(String line, String message) throws Exception {
    assertThat(noteOn(formatOne + "\n" + line + "\n", 0)).startsWith("line 2").contains(message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"what\":\"breath\",\"millilitres\":99999 | millilitres is 99999; allowed: a number from 0 to 5000",
        "\"what\":\"retract\",\"event\":1 | event is 1; allowed: the number of an event before",
        "\"what\":\"retract\" | event is missing",
        "\"what\":\"finding\",\"finding\":\"sneeze\" | finding is \"sneeze\"; allowed: one of",
        "\"what\":\"prompts-on\",\"level\":6 | level is 6; allowed: a number from 0 to 5",
        "\"what\":\"prompts-on\",\"why\":\"so\" | why is \"so\"; allowed: one of",
        "\"what\":\"station-end\" | by is missing",
        "\"what\":\"station\" | setup is missing",
        "\"what\":\"suction\",\"compressing\":1 | compressing is 1; allowed: true or false",
        "\"what\":\"hole\",\"seconds\":-1 | seconds is -1; allowed: a number from 0",
      })
  void aFieldThatDoesNotFitItsEventIsNamed(String fields, String message) throws Exception {
    assertThat(noteOn(header + "\n{\"n\":1,\"at\":0," + fields + "}\n", 0)).contains(message);
  }

  @Test
  void timeThatGoesBackEndsWhatIsRead() throws Exception {
    String text =
        header
            + "\n{\"n\":1,\"at\":5,\"what\":\"breath\"}"
            + "\n{\"n\":2,\"at\":4,\"what\":\"breath\"}\n";
    assertThat(noteOn(text, 1)).contains("line 3: at is 4; allowed: at least 5");
  }

  /** F9: one bad byte in a session does not take the rest of it away. */
  @Test
  void whatStandsBeforeABadLineIsReadAndTheRestIsCounted() throws Exception {
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    lines.set(2, lines.get(2).substring(0, 20));
    String whole = String.join("\n", lines) + "\n";
    assertThat(noteOn(whole, 1))
        .startsWith("line 3: not well-formed JSON")
        .endsWith("That line and 2 after it are left out; everything before is good");
    assertThat(noteOn(whole + "torn", 1)).contains("That line and 3 after it are left out");
    lines.set(2, "{}");
    String last = String.join("\n", lines.subList(0, 3)) + "\n";
    assertThat(noteOn(last, 1)).endsWith("That line is left out; everything before is good");
  }

  /** F10: a crafted file does not fill the memory. */
  @Test
  void aSessionOfMoreLinesThanAnyRealOneIsRefused() throws Exception {
    StringBuilder text = new StringBuilder(header).append('\n');
    for (int n = 1; n < SessionReader.MOST_LINES; n++) {
      text.append("{\"n\":").append(n).append(",\"at\":0,\"what\":\"compression\"}\n");
    }
    Files.writeString(file, text);
    assertThat(SessionReader.read(file).events()).hasSize(SessionReader.MOST_LINES - 1);
    assertThat(refusal(text.append("\n").toString()))
        .hasMessageContaining("over 300000 lines; allowed: at most 300000 lines");
  }

  /** F6: a year that no calendar reckons with is a fault of that file. */
  @ParameterizedTest
  @CsvSource({"+1000000-01-01T00:00:00Z", "-0001-01-01T00:00:00Z", "2200-01-01T00:00:00Z"})
  void aYearOutOfBoundsIsRefused(String startedAt) throws Exception {
    String forged =
        header.replaceFirst("\"startedAt\":\"[^\"]+\"", "\"startedAt\":\"" + startedAt + "\"");
    assertThat(forged).isNotEqualTo(header);
    assertThat(refusal(forged + "\n")).hasMessageContaining("from 1970 to 2199");
  }

  @Test
  void aNewerVersionIsRefusedWithItsReason() throws Exception {
    assertThat(refusal(header.replaceFirst("\"version\":2", "\"version\":3") + "\n"))
        .hasMessageContaining("line 1: version is 3; allowed: at most 2")
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
  void aLineThatIsNotUtf8IsNamed() throws Exception {
    byte[] good = (header + "\n{\"n\":1,\"at\":0,\"what\":\"").getBytes(StandardCharsets.UTF_8);
    byte[] bytes = Arrays.copyOf(good, good.length + 2);
    bytes[good.length] = (byte) 0xE9;
    bytes[good.length + 1] = '\n';
    Files.write(file, bytes);
    assertThat(SessionReader.read(file).notes().get(0)).contains("line 2", "not UTF-8");
  }

  @Test
  void aHugeLineAndAHugeFileAreRefused() throws Exception {
    assertThat(noteOn(header + "\n" + "x".repeat(20_000_000), 0))
        .contains("line 2 is over 100000 bytes long; allowed")
        .endsWith("That line is left out; everything before is good");
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
  void millionsOfEmptyLinesAreRefused() throws Exception {
    assertThat(refusal(header + "\n".repeat(20_000_000))).hasMessageContaining("over 300000 lines");
  }
}
