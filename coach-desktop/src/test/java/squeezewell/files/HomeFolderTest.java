package squeezewell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.assertj.core.api.Condition;
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
    assertThat(new HomeFolder(folder, ZoneId.of("+01:00")).newSessionFile(late))
        .hasParentRaw(folder.resolve("sessions/2027/01"))
        .has(name("2027-01-01_003005-[0-9a-f]{8}.jsonl"));
    assertThat(new HomeFolder(folder, ZoneOffset.UTC).newSessionFile(late))
        .hasParentRaw(folder.resolve("sessions/2026/12"))
        .has(name("2026-12-31_233005-[0-9a-f]{8}.jsonl"));
  }

  @Test
  void twoSessionsOfOneSecondHaveTwoFiles() throws Exception {
    HomeFolder home = new HomeFolder(folder, ZoneOffset.UTC);
    Instant at = Instant.parse("2026-01-31T12:00:00Z");
    Path first = home.newSessionFile(at);
    Files.createDirectories(first.getParent());
    Files.createFile(first);
    Path second = home.newSessionFile(at);
    assertThat(second).has(name("2026-01-31_120000-2-[0-9a-f]{8}.jsonl"));
    Files.createFile(second);
    assertThat(home.newSessionFile(at)).has(name("2026-01-31_120000-3-[0-9a-f]{8}.jsonl"));
  }

  /** F4: two programs that ask at the same instant, before either has made its file. */
  @Test
  void twoStartsAtTheSameInstantHaveTwoNames() {
    HomeFolder home = new HomeFolder(folder, ZoneOffset.UTC);
    Instant at = Instant.parse("2026-01-31T12:00:00Z");
    Set<Path> names = new HashSet<>();
    for (int i = 0; i < 1_000; i++) {
      names.add(home.newSessionFile(at));
    }
    assertThat(names).hasSize(1_000);
  }

  private static Condition<Path> name(String pattern) {
    return new Condition<>(p -> p.getFileName().toString().matches(pattern), pattern);
  }

  /** F11: what a killed program left is removed once it can't be in work any more. */
  @Test
  void partsOfFilesThatAreOldAreRemoved() throws Exception {
    HomeFolder home = HomeFolder.at(folder).make();
    Path old = Files.createFile(folder.resolve(".settings.json-1.part"));
    Files.setLastModifiedTime(old, FileTime.from(Instant.now().minusSeconds(7_200)));
    Path fresh = Files.createFile(home.protocols().resolve(".p.json-2.part"));
    Path other = Files.createFile(folder.resolve("mine.part"));
    Files.setLastModifiedTime(other, FileTime.from(Instant.EPOCH));
    home.make();
    assertThat(old).doesNotExist();
    assertThat(fresh).exists();
    assertThat(other).exists();
  }

  /** F8: whoever only wants to practise is told, and practises. */
  @Test
  void aHomeThatCantBeMadeIsToldOfAndStopsNobody() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    assertThat(HomeFolder.at(file.resolve("home")).makeIfPossible().orElseThrow())
        .startsWith("Nothing can be kept in " + file.resolve("home"))
        .contains("--home", "SQUEEZEWELL_HOME");
    assertThat(HomeFolder.at(folder.resolve("good")).makeIfPossible()).isEmpty();
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
