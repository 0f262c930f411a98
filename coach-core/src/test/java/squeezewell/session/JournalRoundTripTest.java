package squeezewell.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.input.BadInputException;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Tempo;
import squeezewell.storage.FileJournal;

class JournalRoundTripTest {
  private static final long SECOND = TestPlans.SECOND;
  private static final SessionHeader HEADER =
      TestPlans.header(TestPlans.everySixSeconds(TestPlans.MINUTE));

  /** All that format 1 can say of each kind of event. */
  private static final Map<EventType, List<String>> DETAILS =
      Map.ofEntries(
          Map.entry(EventType.BREATH, List.of("", "450 mL")),
          Map.entry(EventType.BREATH_END, List.of("", "450 mL", "62.125 mL", "0 mL")),
          Map.entry(EventType.SUCTION, List.of("", "compressing")),
          Map.entry(EventType.SUCTION_END, List.of("", "slip")),
          Map.entry(EventType.FINDING, List.of("vomit", "heart-rate-up")),
          Map.entry(EventType.FINDING_UNDONE, List.of("1")),
          Map.entry(EventType.RETRACT, List.of("2")),
          Map.entry(EventType.PROMPTS_OFF, List.of("", "test", "level 5", "level 2, gap")),
          Map.entry(EventType.PROMPTS_ON, List.of("level 0", "level 3, rescue")),
          Map.entry(EventType.PROMPTS_AT_ONCE, List.of("level 1, gap")),
          Map.entry(EventType.HOLE, List.of("", "1.0 s", "86400.5 s")),
          Map.entry(EventType.STATION, List.of("{\"a\":[1.50,true,null,\"é<'\\n\"],\"b\":{}}")),
          Map.entry(EventType.STATION_BEGIN, List.of("command", "clock")),
          Map.entry(EventType.STATION_END, List.of("command", "clock")),
          Map.entry(EventType.WAY_CHOSEN, List.of("gag=early")),
          Map.entry(
              EventType.MARK_CHANGED,
              List.of(
                  "pulse withdrawn No fingers on the neck",
                  "pulse earlier 12.5 Missed the tap",
                  "pulse late",
                  "pulse improper Two fingers off",
                  "open remark Good jaw thrust")));

  @TempDir Path folder;

  private Path write(SessionHeader header, List<SessionEvent> events) throws Exception {
    Path file = Files.createTempFile(folder, "s", ".jsonl");
    Files.delete(file);
    try (FileJournal journal = FileJournal.create(file, header)) {
      for (SessionEvent event : events) {
        journal.append(event);
      }
    }
    return file;
  }

  @Test
  void everyKindOfEventIsReadAsItWasWritten() throws Exception {
    List<SessionEvent> events = new ArrayList<>();
    for (EventType what : EventType.values()) {
      for (String detail : DETAILS.getOrDefault(what, List.of(""))) {
        SessionEvent event =
            SessionEvent.of(events.size() + 1, events.size() * SECOND, what, detail);
        assertThat(event.what()).isEqualTo(what);
        assertThat(event.detail()).as("in the words of format 1").isEqualTo(detail);
        events.add(event);
      }
    }
    Session session = SessionReader.read(write(HEADER, events));
    assertThat(session.events()).isEqualTo(events);
    assertThat(session.notes()).isEmpty();
    assertThat(session.header()).isEqualTo(HEADER);
  }

  @Test
  void aLocalProtocolKeepsItsBaseAndItsApproval() throws Exception {
    Protocol local =
        ProtocolDraft.copyOf(
                TestPlans.edition("aha-2025"),
                GuidelineLibrary.baseOf(TestPlans.edition("aha-2025")),
                Set.of(),
                2026)
            .with(ProtocolDetail.ORGANISATION, "A service")
            .with(ProtocolDetail.APPROVED_BY, "the director")
            .with(ProtocolDetail.APPROVED_ON, "2026-01-31")
            .with(0, ProtocolValue.BREATH_INTERVAL, "5.5")
            .protocol();
    SessionHeader header =
        new SessionHeader(
            HEADER.startedAt(),
            HEADER.origin(),
            "",
            local,
            new PracticePlan(local.guidance().get(0), 0, TestPlans.MINUTE, 0));
    Protocol read = SessionReader.read(write(header, List.of())).header().protocol();
    assertThat(read).isEqualTo(header.protocol());
    assertThat(read.basedOn()).isEqualTo("aha-2025");
    assertThat(read.approval()).isEqualTo(local.approval());
    assertThat(LocalLabel.of(read, GuidelineLibrary.baseOf(read)))
        .isEqualTo(
            LocalLabel.of(local, List.of(local.guidance().get(0)), GuidelineLibrary.baseOf(local)));
  }

  @Test
  void howManyRescuersThereAreStandsInTheHeaderWhereItIsNotTheUsualNumber() throws Exception {
    Protocol edition = TestPlans.edition("aha-2020");
    for (var guidance : edition.guidance()) {
      for (int there = Math.max(1, guidance.rescuers()); there <= 4; there++) {
        PracticePlan plan = PracticePlan.of(edition, guidance, there, 0, TestPlans.MINUTE, 0);
        SessionHeader header =
            new SessionHeader(HEADER.startedAt(), HEADER.origin(), "", edition, plan);
        Path file = write(header, List.of());
        assertThat(SessionReader.read(file).header().plan()).isEqualTo(plan);
        // Two are usual where the rhythm is for any number; else as many as it is for.
        boolean usual = there == (guidance.rescuers() == 0 ? 2 : guidance.rescuers());
        assertThat(Files.readString(file).contains("\"rescuers\":" + there + ",\"situation"))
            .isEqualTo(!usual);
      }
    }
  }

  @Test
  void theLevelThatFadingBeganWithStandsInTheHeader() throws Exception {
    PracticePlan fading = TestPlans.everySixSeconds(TestPlans.MINUTE).with(Prompting.FADING);
    for (int level = 0; level <= 4; level++) {
      SessionHeader header = TestPlans.header(fading.withStartLevel(level));
      Path file = write(header, List.of());
      assertThat(SessionReader.read(file).header()).isEqualTo(header);
      assertThat(SessionReader.readHeader(file)).isEqualTo(header);
      assertThat(Files.readString(file).contains("startLevel")).isEqualTo(level > 0);
    }
    Path file = write(TestPlans.header(fading.withStartLevel(4)), List.of());
    for (String wrong : List.of("\"startLevel\":5", "\"startLevel\":-1", "\"startLevel\":\"4\"")) {
      Path forged = folder.resolve("forged.jsonl");
      Files.writeString(forged, Files.readString(file).replace("\"startLevel\":4", wrong));
      assertThatThrownBy(() -> SessionReader.read(forged))
          .isInstanceOf(BadInputException.class)
          .hasMessageContaining("startLevel")
          .hasMessageContaining("4");
    }
    Path test = folder.resolve("test.jsonl");
    Files.writeString(
        test, Files.readString(file).replace("\"prompts\":\"fading\"", "\"prompts\":\"none\""));
    assertThatThrownBy(() -> SessionReader.read(test)).hasMessageContaining("startLevel");
  }

  @Test
  void aHeaderIsReadWithoutWhatFollowsIt() throws Exception {
    Path file = write(HEADER, List.of());
    Files.writeString(file, Files.readString(file) + "no event\n");
    assertThat(SessionReader.readHeader(file)).isEqualTo(HEADER);
    assertThat(SessionReader.read(file).notes()).hasSize(1);
    Files.writeString(file, "{\"format\":");
    assertThatThrownBy(() -> SessionReader.readHeader(file))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("header");
  }

  @Test
  void anyTextIsReadAsItWasWritten() throws Exception {
    List<String> details =
        List.of(
            "450 mL",
            "a \"quoted\" word, and 'another'",
            "two\nlines\r\nand a\ttab",
            "naïve — 呼吸 😀",
            "\\ / \u0000 \u001b[31m \u2028 \uFEFF",
            " ",
            "{\"n\":1}",
            "x".repeat(Fact.LONGEST_TEXT));
    List<SessionEvent> events = new ArrayList<>();
    for (String detail : details) {
      events.add(SessionEvent.of(events.size() + 1, 0, EventType.REMARK, detail));
    }
    assertThat(SessionReader.read(write(HEADER, events)).events()).isEqualTo(events);
  }

  @Test
  void everyEditionAndRhythmStandsInAHeader() throws Exception {
    List<PracticePlan> plans = new ArrayList<>();
    for (Rhythm rhythm : TestPlans.rhythms()) {
      plans.add(
          new PracticePlan(
              TestPlans.guidance(rhythm, TestPlans.usualLimits()), 3 * SECOND, 7 * SECOND, 1));
    }
    for (PracticePlan plan : plans) {
      SessionHeader header = TestPlans.header(plan);
      assertThat(SessionReader.read(write(header, List.of())).header()).isEqualTo(header);
    }
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (var guidance : edition.guidance()) {
        SessionHeader header =
            new SessionHeader(
                HEADER.startedAt(),
                SessionHeader.Origin.LIVE,
                "",
                edition,
                PracticePlan.of(edition, guidance, 0, PracticePlan.LONGEST_NANOS, SECOND));
        assertThat(SessionReader.read(write(header, List.of())).header()).isEqualTo(header);
      }
    }
  }

  @Test
  void aFileThatIsThereIsNeverWrittenOver() throws Exception {
    Path file = folder.resolve("kept.jsonl");
    Files.writeString(file, "kept");
    assertThatThrownBy(() -> FileJournal.create(file, HEADER))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(Files.readString(file)).isEqualTo("kept");
  }

  @Test
  void missingFoldersAreMade() throws Exception {
    Path file = folder.resolve("2026/01/s.jsonl");
    FileJournal.create(file, HEADER).close();
    assertThat(SessionReader.read(file).header()).isEqualTo(HEADER);
  }

  @Test
  void anInterruptOfTheWritingThreadLosesNothing() throws Exception {
    Path file = folder.resolve("interrupted.jsonl");
    try (FileJournal journal = FileJournal.create(file, HEADER)) {
      Thread.currentThread().interrupt();
      journal.append(SessionEvent.of(1, 0, EventType.BREATH, ""));
      journal.append(SessionEvent.of(2, 1, EventType.BREATH_END, ""));
    } finally {
      assertThat(Thread.interrupted()).isTrue();
    }
    assertThat(SessionReader.read(file).events()).hasSize(2);
  }

  @Test
  void whatHasBeenAppendedIsInTheFileBeforeItIsClosed() throws Exception {
    Path file = folder.resolve("open.jsonl");
    try (FileJournal journal = FileJournal.create(file, HEADER)) {
      journal.append(SessionEvent.of(1, 0, EventType.BREATH, ""));
      assertThat(SessionReader.read(file).events()).hasSize(1);
    }
  }

  @Test
  void aHeaderThatNoReaderWouldTakeIsRefusedBeforeThePractice() {
    // 11 a minute is an interval of 5.4545… s, which a protocol file can't hold.
    BreathPlan plan =
        new BreathPlan(
            Tempo.perMinute(new BigDecimal("11")),
            5 * SECOND,
            6 * SECOND,
            SECOND,
            TestPlans.CITATION,
            TestPlans.CITATION,
            TestPlans.CITATION);
    SessionHeader header =
        TestPlans.header(
            new PracticePlan(
                TestPlans.guidance(new Rhythm.SteadyBreaths(plan), TestPlans.usualLimits()),
                0,
                TestPlans.MINUTE,
                0));
    Path file = folder.resolve("refused.jsonl");
    assertThatThrownBy(() -> FileJournal.create(file, header))
        .isInstanceOf(IllegalArgumentException.class)
        .hasCauseInstanceOf(BadInputException.class);
    assertThat(file).doesNotExist();
  }

  @Test
  void whatNoFileMayHoldIsRefusedAtOnce() {
    assertThatThrownBy(
            () -> SessionEvent.of(1, 0, EventType.REMARK, "x".repeat(Fact.LONGEST_TEXT + 1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> SessionEvent.of(1, Long.MAX_VALUE, EventType.BREATH, ""))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                new SessionHeader(
                    HEADER.startedAt(),
                    HEADER.origin(),
                    "x".repeat(201),
                    HEADER.protocol(),
                    HEADER.plan()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
