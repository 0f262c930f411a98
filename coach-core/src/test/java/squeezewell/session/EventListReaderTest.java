package squeezewell.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.TestPlans;
import squeezewell.input.BadInputException;

class EventListReaderTest {
  private static final SessionHeader HEADER =
      TestPlans.header(TestPlans.everySixSeconds(TestPlans.MINUTE));

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void nameTheFile() {
    file = folder.resolve("list.csv");
  }

  private Session read(String text) throws Exception {
    Files.writeString(file, text);
    return EventListReader.read(file, HEADER);
  }

  private BadInputException refusal(String text) throws Exception {
    try {
      read(text);
    } catch (BadInputException e) {
      assertThat(e.getMessage()).startsWith(file.toString()).doesNotContainPattern("\\p{Cntrl}");
      return e;
    }
    throw new AssertionError("nothing was refused");
  }

  @Test
  void aGoodListIsRead() throws Exception {
    Session session =
        read(
            "at_s,what,detail\n0,breath,\n1.05,breath-end,450 mL\n"
                + "6.000000001,breath,\n7,finding,\"vomit, \"\"much\"\"\"\n");
    assertThat(session.events())
        .containsExactly(
            SessionEvent.of(1, 0, EventType.BREATH, ""),
            SessionEvent.of(2, 1_050_000_000L, EventType.BREATH_END, "450 mL"),
            SessionEvent.of(3, 6_000_000_001L, EventType.BREATH, ""),
            SessionEvent.of(4, 7_000_000_000L, EventType.FINDING, "vomit, \"much\""));
    assertThat(session.breaths().get(0).millilitres()).hasValue(450);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\uFEFFat_s,what,detail\n0,breath,\n1,breath-end,\n",
        "\uFEFF\"at_s\",\"what\",\"detail\"\n0,breath,\n1,breath-end,\n",
        "at_s,what,detail\r\n0,breath,\r\n1,breath-end,\r\n",
        "at_s,what,detail\n0,breath,\n1,breath-end,",
        "at_s,what\n0,breath\n1,breath-end\n",
        " at_s , what , detail \n 0 , breath ,\n\n1,breath-end\n",
      })
  void whatOtherProgramsWriteIsReadToo(String text) throws Exception {
    assertThat(read(text).events())
        .containsExactly(
            SessionEvent.of(1, 0, EventType.BREATH, ""),
            SessionEvent.of(2, 1_000_000_000L, EventType.BREATH_END, ""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-1,breath, | row 3, column at_s is -1; allowed: seconds from 0 to 86400",
        "1e3,breath, | row 3, column at_s is 1e3; allowed",
        "NaN,breath, | row 3, column at_s is NaN; allowed",
        "1:30,breath, | row 3, column at_s is 1:30; allowed",
        "86400.5,breath, | row 3, column at_s is 86400.5; allowed",
        "99999999999,breath, | row 3, column at_s is 99999999999; allowed",
        "٣,breath, | row 3, column at_s is ٣; allowed",
        "4,breath, | row 3, column at_s is 4; allowed: at least the time of the row before",
        "6,sneeze, | row 3, column what is sneeze; allowed: one of breath, breath-end, compression",
        "6,retract,1 | row 3, column what is retract; allowed: one of breath",
        "6,Breath, | row 3, column what is Breath; allowed",
        "6 | row 3 is 1 columns; allowed: the columns at_s,what,detail",
        "6,breath,a,b | row 3 is 4 columns; allowed: the columns at_s,what,detail",
        ",breath, | row 3, column at_s is ; allowed",
      })
  void aBadRowIsNamedWithItsColumnItsValueAndWhatIsAllowed(String row, String message)
      throws Exception {
    assertThat(refusal("at_s,what,detail\n5,breath,\n" + row + "\n")).hasMessageContaining(message);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\n\n",
        "0,breath,\n",
        "at,what,detail\n",
        "at_s\n",
        "at_s,what,detail,more\n"
      })
  void aWrongOrMissingHeaderIsRefused(String text) throws Exception {
    assertThat(refusal(text))
        .hasMessageContaining("row 1")
        .hasMessageContaining("allowed: at_s,what,detail");
  }

  @Test
  void compressionsAreRead() throws Exception {
    Session session = read("at_s,what\n0,compression\n0.55,compression\n0.6,breath\n");
    assertThat(session.compressions()).containsExactly(0L, 550_000_000L);
    assertThat(session.breaths()).hasSize(1);
  }

  @Test
  void aListWithoutRowsHasNoEvents() throws Exception {
    assertThat(read("at_s,what,detail\n").events()).isEmpty();
  }

  @Test
  void textThatIsNotUtf8IsRefused() throws Exception {
    Files.write(file, "at_s,what,detail\n0,finding,é\n".getBytes(StandardCharsets.ISO_8859_1));
    try {
      EventListReader.read(file, HEADER);
      throw new AssertionError("it was read");
    } catch (BadInputException e) {
      assertThat(e).hasMessageContaining("list.csv").hasMessageContaining("not UTF-8");
    }
  }

  @Test
  void controlCharactersDoNotReachTheMessage() throws Exception {
    assertThat(refusal("at_s,what,detail\n0,\u001b[31mred\u0007,\n"))
        .hasMessageContaining("column what");
  }

  @Test
  void aRemarkIsARemarkAndAFindingIsAWord() throws Exception {
    Session read =
        read("at_s,what,detail\n1,remark,vomit\n2,finding,vomit in the mask\n3,finding,vomit\n");
    assertThat(read.findings()).hasSize(1);
    assertThat(read.findings().get(0).number()).isEqualTo(3);
  }

  @Test
  void aQuoteWithoutItsEndIsRefused() throws Exception {
    assertThat(refusal("at_s,what,detail\n0,finding,\"" + "x\n".repeat(5_000_000)))
        .hasMessageContaining("allowed");
    assertThat(refusal("at_s,what,detail\n0,finding,\"" + "x\n".repeat(50_000)))
        .hasMessageContaining("row 2, column detail");
  }

  @Test
  void aHugeFileIsRefused() throws Exception {
    assertThat(refusal("x".repeat(17_000_000)))
        .hasMessageContaining("size is 17000000 bytes; allowed: at most 16000000 bytes");
    assertThat(refusal("at_s,what,detail\n" + ",".repeat(15_900_000)))
        .hasMessageContaining("allowed");
  }
}
