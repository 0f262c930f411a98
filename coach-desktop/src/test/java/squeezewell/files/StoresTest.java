package squeezewell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.stream.JsonWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.cue.PracticePlan;
import squeezewell.input.BadInputException;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolWriter;
import squeezewell.protocol.Situation;
import squeezewell.session.SessionHeader;
import squeezewell.storage.FileJournal;

class StoresTest {
  @TempDir Path folder;
  private HomeFolder home;

  @BeforeEach
  void makeHome() throws Exception {
    home = new HomeFolder(folder, ZoneOffset.UTC).make();
  }

  @Test
  void sessionsAreListedNewestFirst() throws Exception {
    Path first = session("2025-12-31T23:00:00Z");
    Path second = session("2026-01-31T12:00:00Z");
    Path third = session("2026-01-31T12:00:00Z");
    Path fourth = session("2026-02-01T08:00:00Z");
    assertThat(new SessionStore(home).files()).containsExactly(fourth, third, second, first);
  }

  @Test
  void anUnreadableSessionIsListedWithItsReasonAndKept() throws Exception {
    session("2026-01-31T12:00:00Z");
    Path bad = home.sessions().resolve("2026/01/2026-01-31_130000.jsonl");
    Files.writeString(bad, "{}\n");
    List<SessionStore.Entry> entries =
        new SessionStore(home).entries().collect(Collectors.toList());
    assertThat(entries).hasSize(2);
    assertThat(entries.get(0).session()).isEmpty();
    assertThat(entries.get(0).problem()).contains(bad.toString()).contains("format");
    assertThat(entries.get(1).session()).isPresent();
    assertThat(entries.get(1).problem()).isEmpty();
    assertThat(bad).hasContent("{}\n");
  }

  @Test
  void aHomeThatIsNotThereHasNoSessions() throws Exception {
    assertThat(new SessionStore(HomeFolder.at(folder.resolve("none"))).files()).isEmpty();
  }

  @Test
  void localProtocolsFollowTheBuiltInOnes() throws Exception {
    protocol("service.json", "service-1");
    ProtocolStore store = ProtocolStore.read(home);
    assertThat(store.problems()).isEmpty();
    assertThat(store.protocols()).hasSize(GuidelineLibrary.editions().size() + 1);
    assertThat(store.find("service-1")).get().extracting(Protocol::local).isEqualTo(true);
    assertThat(store.find("aha-2025")).get().extracting(Protocol::local).isEqualTo(false);
  }

  @Test
  void aLocalProtocolThatCanNotBeUsedIsListedAsAProblem() throws Exception {
    protocol("b-same.json", "aha-2025");
    Files.writeString(home.protocols().resolve("a-bad.json"), "[]");
    ProtocolStore store = ProtocolStore.read(home);
    assertThat(store.protocols()).hasSameSizeAs(GuidelineLibrary.editions());
    assertThat(store.problems()).hasSize(2);
    assertThat(store.problems().get(0)).contains("a-bad.json");
    assertThat(store.problems().get(1)).contains("b-same.json").contains("id is aha-2025");
  }

  @Test
  void anUnknownIdentifierIsAnsweredWithThoseThereAre() {
    assertThatThrownBy(() -> ProtocolStore.read(home).require("--protocol", "aha-1999"))
        .isInstanceOf(BadInputException.class)
        .hasMessage(
            "--protocol is aha-1999; allowed: one of "
                + GuidelineLibrary.editions().stream()
                    .map(Protocol::id)
                    .collect(Collectors.joining(", ")));
  }

  private Path session(String startedAt) throws Exception {
    Protocol protocol = GuidelineLibrary.editions().get(0);
    PracticePlan plan =
        new PracticePlan(
            protocol.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow(),
            0,
            60_000_000_000L,
            0);
    Instant at = Instant.parse(startedAt);
    Path file = home.newSessionFile(at);
    FileJournal.create(file, new SessionHeader(at, SessionHeader.Origin.LIVE, "", protocol, plan))
        .close();
    return file;
  }

  /** F6: a date that no calendar reckons with is told of that file, and stops no list. */
  @Test
  void aSessionWithAYearOutOfBoundsStandsInTheListWithItsReason() throws Exception {
    Path good = session("2026-01-31T12:00:00Z");
    Path bad = session("2026-01-31T12:00:01Z");
    Files.writeString(
        bad, Files.readString(bad).replace("2026-01-31T12:00:01Z", "+999999999-01-31T12:00:01Z"));
    List<SessionStore.Entry> entries = new SessionStore(home).entries().toList();
    assertThat(entries).extracting(SessionStore.Entry::file).containsExactly(bad, good);
    assertThat(entries.get(0).problem()).contains("startedAt", "from 1970 to 2199");
    assertThat(entries.get(1).session()).isPresent();
    assertThat(new SessionStore(home).book()).isNotNull();
  }

  private void protocol(String file, String id) throws Exception {
    Protocol built = GuidelineLibrary.editions().get(0);
    StringWriter text = new StringWriter();
    ProtocolWriter.write(
        new JsonWriter(text),
        new Protocol(id, "Service", "A service", 2026, false, built.guidance()));
    Files.writeString(home.protocols().resolve(file), text.toString());
  }
}
