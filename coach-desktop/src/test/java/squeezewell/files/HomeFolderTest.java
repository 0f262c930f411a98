package squeezewell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.input.BadInputException;

class HomeFolderTest {
  private static final Map<String, String> NOTHING = Map.of();

  @TempDir Path folder;

  @Test
  void theOptionComesBeforeTheVariableAndTheVariableBeforeThePlatform() throws Exception {
    Map<String, String> variable = Map.of(HomeFolder.VARIABLE, "/b", "XDG_DATA_HOME", "/c");
    assertThat(HomeFolder.rootOf("/a", variable, "Linux", "/home/u")).isEqualTo(Path.of("/a"));
    assertThat(HomeFolder.rootOf("", variable, "Linux", "/home/u")).isEqualTo(Path.of("/b"));
    assertThat(HomeFolder.rootOf("", Map.of("XDG_DATA_HOME", "/c"), "Linux", "/home/u"))
        .isEqualTo(Path.of("/c/squeezewell"));
  }

  @Test
  void eachPlatformHasItsUsualPlace() throws Exception {
    assertThat(HomeFolder.rootOf("", NOTHING, "Linux", "/home/u"))
        .isEqualTo(Path.of("/home/u/.local/share/squeezewell"));
    assertThat(HomeFolder.rootOf("", NOTHING, "Mac OS X", "/Users/u"))
        .isEqualTo(Path.of("/Users/u/Library/Application Support/Squeezewell"));
    assertThat(HomeFolder.rootOf("", Map.of("APPDATA", "/r"), "Windows 11", "/u"))
        .isEqualTo(Path.of("/r/Squeezewell"));
  }

  @Test
  void aRelativeDataHomeIsIgnoredAsItsSpecificationSays() throws Exception {
    // XDG Base Directory Specification: a relative path "should be considered invalid and ignored".
    assertThat(HomeFolder.rootOf("", Map.of("XDG_DATA_HOME", "c"), "Linux", "/home/u"))
        .isEqualTo(Path.of("/home/u/.local/share/squeezewell"));
  }

  @Test
  void aNameThatIsNoPathIsNamed() {
    assertThatThrownBy(() -> HomeFolder.rootOf("a\0b", NOTHING, "Linux", "/home/u"))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("--home");
  }

  @Test
  void aSessionIsFiledUnderItsLocalDay() {
    // 23:30 UTC on 31 December is 00:30 on 1 January one hour further east.
    Instant late = Instant.parse("2026-12-31T23:30:05Z");
    assertThat(HomeFolder.at(folder, ZoneId.of("+01:00")).newSessionFile(late))
        .isEqualTo(folder.resolve("sessions/2027/01/2027-01-01_003005.jsonl"));
    assertThat(HomeFolder.at(folder, ZoneOffset.UTC).newSessionFile(late))
        .isEqualTo(folder.resolve("sessions/2026/12/2026-12-31_233005.jsonl"));
  }

  @Test
  void twoSessionsOfOneSecondHaveTwoFiles() throws Exception {
    HomeFolder home = HomeFolder.at(folder, ZoneOffset.UTC);
    Instant at = Instant.parse("2026-01-31T12:00:00Z");
    Path first = home.newSessionFile(at);
    Files.createDirectories(first.getParent());
    Files.createFile(first);
    Path second = home.newSessionFile(at);
    assertThat(second).hasFileName("2026-01-31_120000-2.jsonl");
    Files.createFile(second);
    assertThat(home.newSessionFile(at)).hasFileName("2026-01-31_120000-3.jsonl");
  }

  @Test
  void findingAHomeMakesNothingAndMakingItMakesItsFolders() throws Exception {
    Path root = folder.resolve("new").resolve("home");
    HomeFolder home = HomeFolder.at(root);
    assertThat(root).doesNotExist();
    home.make();
    assertThat(home.protocols()).isDirectory();
    assertThat(home.sessions()).isDirectory();
  }

  @Test
  void aHomeInsideAFileIsRefused() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    assertThatThrownBy(() -> HomeFolder.at(file.resolve("home")).make())
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining(file.toString())
        .hasMessageContaining("--home");
  }
}
