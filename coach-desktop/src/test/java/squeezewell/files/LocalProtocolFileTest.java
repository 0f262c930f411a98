package squeezewell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.input.BadInputException;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;

class LocalProtocolFileTest {
  @TempDir Path folder;
  private HomeFolder home;
  private ProtocolDraft draft;

  @BeforeEach
  void copyAnEdition() {
    home = new HomeFolder(folder, ZoneOffset.UTC);
    draft =
        ProtocolDraft.copyOf(
                GuidelineLibrary.find("aha-2025").orElseThrow(),
                GuidelineLibrary.baseOf(GuidelineLibrary.find("aha-2025").orElseThrow()),
                Set.of(),
                2026)
            .with(ProtocolDetail.ORGANISATION, "Sanitätsdienst <b>\"Ü\"</b> \ud83d\ude91");
  }

  @Test
  void aNewProtocolIsReadBackAsItWasAndStandsInTheLibrary() throws Exception {
    LocalProtocolFile made = LocalProtocolFile.create(home, draft.protocol());
    assertThat(made.path()).isEqualTo(home.protocols().resolve("local-aha-2025.json"));
    assertThat(LocalProtocolFile.open(made.path())).isEqualTo(made);
    ProtocolStore store = ProtocolStore.read(home);
    assertThat(store.problems()).isEmpty();
    assertThat(store.find("local-aha-2025")).contains(draft.protocol());
    assertThat(store.files()).containsEntry("local-aha-2025", made.path());
    assertThat(store.ids()).contains("aha-2025", "local-aha-2025");
  }

  @Test
  void aFileThatIsThereIsNeverReplacedByANewOne() throws Exception {
    Files.createDirectories(home.protocols());
    Path there = Files.writeString(home.protocols().resolve("local-aha-2025.json"), "mine");
    LocalProtocolFile made = LocalProtocolFile.create(home, draft.protocol());
    assertThat(made.path().getFileName()).hasToString("local-aha-2025-2.json");
    assertThat(there).hasContent("mine");
  }

  @Test
  void theFileThatIsEditedIsReplacedWhole() throws Exception {
    LocalProtocolFile made = LocalProtocolFile.create(home, draft.protocol());
    Protocol changed = draft.with(0, ProtocolValue.BREATH_INTERVAL, "5").protocol();
    LocalProtocolFile now = made.replace(changed);
    assertThat(now.path()).isEqualTo(made.path());
    assertThat(LocalProtocolFile.open(made.path()).protocol()).isEqualTo(changed);
    assertThat(filesIn(home.protocols())).isEqualTo(1);
  }

  @Test
  void aFileThatAnotherProgramChangedMeanwhileIsLeftAsItIs() throws Exception {
    LocalProtocolFile made = LocalProtocolFile.create(home, draft.protocol());
    Files.writeString(made.path(), made.text() + "\n");
    assertThatThrownBy(() -> made.replace(draft.protocol()))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining(made.path().toString())
        .hasMessageContaining("another program changed the file");
    assertThat(made.path()).hasContent(made.text() + "\n");
  }

  @Test
  void aFileThatIsGoneIsNotMadeAnew() throws Exception {
    LocalProtocolFile made = LocalProtocolFile.create(home, draft.protocol());
    Files.delete(made.path());
    assertThatThrownBy(() -> made.replace(draft.protocol())).isInstanceOf(IOException.class);
    assertThat(made.path()).doesNotExist();
  }

  @Test
  void throughALinkTheFileThatItLeadsToIsReplaced() throws Exception {
    LocalProtocolFile made = LocalProtocolFile.create(home, draft.protocol());
    Path real = Files.move(made.path(), folder.resolve("elsewhere.json"));
    Files.createSymbolicLink(made.path(), real);
    Protocol changed = draft.with(0, ProtocolValue.GAP_LONGEST, "9").protocol();
    LocalProtocolFile.open(made.path()).replace(changed);
    assertThat(made.path()).isSymbolicLink();
    assertThat(LocalProtocolFile.open(real).protocol()).isEqualTo(changed);
  }

  @Test
  void aFileWithSeveralFaultsIsLeftOutWithTheirNumber() throws Exception {
    Files.createDirectories(home.protocols());
    Files.writeString(
        home.protocols().resolve("bad.json"),
        LocalProtocolFile.text(draft.protocol())
            .replaceFirst("\"target\": 6", "\"target\": 600")
            .replaceFirst("\"year\": 2026", "\"year\": 26"));
    assertThat(ProtocolStore.read(home).problems())
        .hasSize(1)
        .first()
        .asString()
        .contains("bad.json: year is 26")
        .contains("(and 1 more, which");
  }

  private static long filesIn(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.count();
    }
  }
}
