package squeezewell.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.station.file.StationLibrary;

class StationStoreTest {
  @TempDir Path folder;

  @Test
  void ownStationsFollowTheBuiltInOnesAndBrokenFilesAreNamed() throws Exception {
    HomeFolder home = HomeFolder.at(folder);
    assertThat(StationStore.read(home).problems()).isEmpty();
    Files.createDirectories(home.stations());
    String text = StationLibrary.stations().get(0).definition();
    String own = text.replaceFirst("\"id\":\\s*\"adult-secretions\"", "\"id\":\"mine\"");
    Files.writeString(home.stations().resolve("b.json"), own);
    Files.writeString(home.stations().resolve("c.json"), text);
    Files.writeString(home.stations().resolve("d.json"), "{\"format\":1}");
    StationStore store = StationStore.read(home);
    int builtIn = StationLibrary.stations().size();
    assertThat(store.stations()).hasSize(builtIn + 1);
    assertThat(store.stations().get(builtIn).id()).isEqualTo("mine");
    assertThat(store.own()).containsExactly("mine");
    assertThat(store.problems()).hasSize(2);
    assertThat(store.problems().get(0)).contains("c.json", "adult-secretions");
    assertThat(store.problems().get(1)).contains("d.json");
  }
}
