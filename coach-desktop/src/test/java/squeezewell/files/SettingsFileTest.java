package squeezewell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

class SettingsFileTest {
  @TempDir Path folder;

  @Test
  void withoutAFileTheDefaultsHold() throws Exception {
    assertThat(new SettingsFile(folder.resolve("settings.json")).read())
        .isEqualTo(Settings.defaults());
  }

  @Test
  void whatWasWrittenIsReadBack() throws Exception {
    Settings settings =
        Settings.defaults()
            .withTheme(Theme.DARK)
            .withTextSizePercent(150)
            .withPedalKeys(List.of(34, 66))
            .withCautionSeenAt(Instant.parse("2026-01-31T12:00:00Z"))
            .withSoundLevel("voice", new SoundLevel(0.35, true))
            .withCountStyle("spoken")
            .withLastChoice(
                new LastChoice(
                    "local-1", PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY, 2, 12))
            .withTrainee("Trainee 7 \"of\" <nine>");
    SettingsFile file = new SettingsFile(folder.resolve("deep").resolve("settings.json"));
    file.write(settings);
    assertThat(file.read()).isEqualTo(settings);
    assertThat(settings.soundLevels().keySet()).containsExactlyElementsOf(Settings.SOUND_KINDS);
  }

  @Test
  void aLastChoiceFromBeforeRescuersWereKeptIsStillRead() throws Exception {
    Path path =
        settings(
            "\"lastChoice\":{\"protocol\":\"aha-2020\",\"patient\":\"child\","
                + "\"situation\":\"arrest-no-advanced-airway\",\"minutes\":3}");
    LastChoice last = new SettingsFile(path).read().lastChoice();
    assertThat(last.rescuers()).isZero();
    // AHA 2020, pediatric basic life support: 30 to 2 alone, 15 to 2 with two rescuers.
    List<Guidance> covered =
        ProtocolStore.read(HomeFolder.at(folder)).require("", "aha-2020").guidance();
    assertThat(last.among(covered).orElseThrow().rescuers()).isEqualTo(1);
    LastChoice two = new LastChoice("aha-2020", last.patient(), last.situation(), 2, 3);
    assertThat(two.among(covered).orElseThrow().rescuers()).isEqualTo(2);
    assertThat(two.among(List.of())).isEmpty();
  }

  @Test
  void fieldsThatThisVersionDoesNotKnowStay() throws Exception {
    Path path =
        settings(
            "\"theme\":\"dark\",\"tint\":{\"a\":[1,2]},"
                + "\"sounds\":{\"bell\":{\"volume\":0.5},\"voice\":{\"volume\":1,\"pitch\":3}},"
                + "\"lastChoice\":{\"protocol\":\"p\",\"patient\":\"adult\","
                + "\"situation\":\"pulse-no-breathing\",\"minutes\":3,\"level\":2}");
    SettingsFile file = new SettingsFile(path);
    file.write(file.read().withTheme(Theme.LIGHT));
    String text = Files.readString(path).replaceAll("\\s", "");
    assertThat(text)
        .contains("\"theme\":\"light\"")
        .contains("\"tint\":{\"a\":[1,2]}")
        .contains("\"bell\":{\"volume\":0.5}")
        .contains("\"pitch\":3")
        .contains("\"level\":2");
  }

  /** F2: whatever stands there, the program starts, says so and writes nothing over. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "{\"format\":\"squeezewell-settings\",\"version\":2,\"theme\":7} | newer version",
        "{\"format\": | not well-formed",
        "'' | ends too early",
        "{\"format\":\"another\",\"version\":1} | format is",
      })
  void aFileThatCantBeUsedLocksNobodyOutAndIsPutAside(String text, String why) throws Exception {
    Path path = folder.resolve("settings.json");
    Files.writeString(path, text);
    SettingsFile file = new SettingsFile(path);
    SettingsFile.Loaded loaded = file.load();
    assertThat(loaded.settings()).isEqualTo(Settings.defaults());
    assertThat(loaded.problem()).contains(path.toString()).startsWith("The settings can't be used");
    assertThat(path).as("until something is changed").hasContent(text);
    file.write(loaded.settings().withTheme(Theme.DARK));
    assertThat(new SettingsFile(path).load())
        .isEqualTo(new SettingsFile.Loaded(Settings.defaults().withTheme(Theme.DARK), ""));
    assertThat(folder.resolve("settings-not-used-1.json")).hasContent(text);
    Files.writeString(path, "damaged again");
    file.write(Settings.defaults());
    assertThat(folder.resolve("settings-not-used-1.json")).hasContent(text);
    assertThat(folder.resolve("settings-not-used-2.json")).hasContent("damaged again");
  }

  @Test
  void aFolderInPlaceOfTheFileLocksNobodyOut() throws Exception {
    Path path = Files.createDirectory(folder.resolve("settings.json"));
    SettingsFile file = new SettingsFile(path);
    assertThat(file.load().problem()).contains("a folder");
    file.write(Settings.defaults());
    assertThat(file.load().problem()).isEmpty();
  }

  /** F11: two copies of the program, each with a change of its own. */
  @Test
  void twoCopiesOfTheProgramKeepEachOthersChanges() throws Exception {
    Path path = folder.resolve("settings.json");
    SettingsFile one = new SettingsFile(path);
    SettingsFile other = new SettingsFile(path, other(path));
    one.write(one.read().withTrainee("A"));
    other.write(Settings.defaults().withTheme(Theme.DARK));
    one.write(Settings.defaults().withTrainee("A").withCountStyle("silent"));
    assertThat(new SettingsFile(path).read())
        .isEqualTo(
            Settings.defaults().withTrainee("A").withTheme(Theme.DARK).withCountStyle("silent"));
  }

  private static Settings other(Path path) {
    return new SettingsFile(path).read();
  }

  /**
   * F11: names of people are for their owner; a link stays a link, and rights stay as they were.
   */
  @Test
  void aNewFileIsForItsOwnerAndALinkedOneKeepsItsPlaceAndItsRights() throws Exception {
    assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
    Path path = folder.resolve("settings.json");
    SettingsFile file = new SettingsFile(path);
    file.write(Settings.defaults());
    assertThat(rights(path)).isEqualTo("rw-------");
    Path real = folder.resolve("real.json");
    Files.move(path, real);
    Files.setPosixFilePermissions(real, PosixFilePermissions.fromString("rw-r-----"));
    Files.createSymbolicLink(path, real);
    file.write(Settings.defaults().withTrainee("B"));
    assertThat(path).isSymbolicLink();
    assertThat(rights(real)).isEqualTo("rw-r-----");
    assertThat(new SettingsFile(real).read().trainee()).isEqualTo("B");
  }

  private static String rights(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }

  @Test
  void nothingIsLeftBehindBesideTheFile() throws Exception {
    SettingsFile file = new SettingsFile(folder.resolve("settings.json"));
    file.write(Settings.defaults());
    file.write(Settings.defaults().withTrainee("B"));
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).containsExactly(folder.resolve("settings.json"));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "\"theme\":\"blue\" | theme is \"blue\" | dark, light",
        "\"textSizePercent\":110 | textSizePercent is 110 | 100, 125, 150, 175, 200",
        "\"pedalKeys\":[{\"keyCode\":0}] | pedalKeys[0].keyCode is 0 | from 1 to 33554431",
        "\"pedalKeys\":[{\"keyCode\":9},{\"keyCode\":9}] | pedalKeys[1].keyCode is 9 | once",
        "\"pedalKeys\":[{},{},{},{},{},{},{},{},{}] | pedalKeys is a list | at most 8 keys",
        "\"cautionSeenAt\":\"today\" | cautionSeenAt is \"today\" | 2026-01-31T12:00:00Z",
        "\"sounds\":{\"count\":{\"volume\":1.5}} | sounds.count.volume is 1.5 | from 0 to 1",
        "\"sounds\":{\"count\":{\"volume\":1,\"muted\":2}} | sounds.count.muted is 2 | true or false",
        "\"countStyle\":\"loud\" | countStyle is \"loud\" | silent, sound, spoken",
        "\"lastChoice\":{\"protocol\":\"p\",\"patient\":\"child\",\"situation\":\"pulse-no-breathing\",\"minutes\":3,\"rescuers\":5} | lastChoice.rescuers is 5 | from 0 to 4",
        "\"lastChoice\":{} | lastChoice.protocol is missing | 1 to 40 characters",
        "\"trainee\":5 | trainee is 5 | 1 to 200 characters",
      })
  void aFaultNamesFieldValueAndWhatIsAllowed(String fields, String place, String allowed)
      throws Exception {
    Path path = settings(fields);
    assertThat(new SettingsFile(path).load().problem())
        .contains(path.toString())
        .contains(place)
        .contains(allowed);
  }

  private Path settings(String fields) throws IOException {
    return Files.writeString(
        folder.resolve("settings.json"),
        "{\"format\":\"squeezewell-settings\",\"version\":1," + fields + "}");
  }

  @Test
  void aNameThatWasPastedWithATabOrIsTooLongIsReadAgain() throws Exception {
    // One short of the end stands a sign of two chars, which must not be cut in half.
    String longest = "x".repeat(Settings.LONGEST_NAME - 1);
    for (String typed : List.of("A\tB", " A\u0000B\u0085 ", longest + "\uD83D\uDE00", "\uD83DA")) {
      Settings settings = Settings.defaults().withTrainee(Settings.nameOf(typed));
      SettingsFile file = new SettingsFile(folder.resolve("settings.json"));
      file.write(settings);
      assertThat(file.read()).isEqualTo(settings);
    }
    assertThat(Settings.nameOf("A\tB ")).isEqualTo("A B");
    assertThat(Settings.nameOf(longest + "\uD83D\uDE00")).isEqualTo(longest);
    assertThatThrownBy(() -> Settings.defaults().withTrainee("A\tB"))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
