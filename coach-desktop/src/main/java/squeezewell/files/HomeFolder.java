package squeezewell.files;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import squeezewell.input.BadInputException;
import squeezewell.storage.WholeFile;
import squeezewell.words.Wording;

/**
 * The folder that holds what a person keeps: protocols, sessions and settings. Finding it makes
 * nothing; {@link #make} makes it.
 *
 * @param root the folder itself; absolute
 * @param zone the time zone in which sessions are dated
 */
public record HomeFolder(Path root, ZoneId zone) {
  /** The environment variable that names the folder. */
  public static final String VARIABLE = "SQUEEZEWELL_HOME";

  private static final DateTimeFormatter YEAR = DateTimeFormatter.ofPattern("uuuu", Locale.ROOT);
  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MM", Locale.ROOT);
  private static final DateTimeFormatter STEM =
      DateTimeFormatter.ofPattern("uuuu-MM-dd_HHmmss", Locale.ROOT);

  /** A part of a file that is older was left behind by a program that was killed. */
  private static final Duration LONGEST_WRITING = Duration.ofHours(1);

  private static final Wording WORDS = Wording.beside(HomeFolder.class);

  public HomeFolder {
    root = root.toAbsolutePath().normalize();
  }

  /** A home at a known place; sessions are dated in this machine's time zone. */
  public static HomeFolder at(Path root) {
    return new HomeFolder(root, ZoneId.systemDefault());
  }

  /**
   * The home of this machine's user.
   *
   * @param option what {@code --home} names; empty if it was not given
   * @throws BadInputException if a name is no path on this system, or if a file stands where the
   *     folder would be
   */
  public static HomeFolder resolve(String option) throws BadInputException {
    HomeFolder home =
        at(
            rootOf(
                option,
                System.getenv(),
                System.getProperty("os.name", ""),
                System.getProperty("user.home", "")));
    home.mustBeAFolderOrFree();
    return home;
  }

  /** A file in the way would look like a home without sessions. */
  private void mustBeAFolderOrFree() throws BadInputException {
    Path there = root;
    while (there != null && !Files.exists(there)) {
      there = there.getParent();
    }
    if (there != null && !Files.isDirectory(there)) {
      String place = there.equals(root) ? "" : ", but " + there + " is a file";
      throw BadInputException.notAllowed(
          "the home folder",
          "",
          root + place,
          "a folder, or a place for a new one, chosen with --home or " + VARIABLE);
    }
  }

  /**
   * Where the home is: {@code --home}, else {@link #VARIABLE}, else the platform's usual place.
   *
   * @param option what {@code --home} names; empty if it was not given
   * @param environment the environment variables
   * @param system the name of the operating system
   * @param userHome the user's own folder
   * @throws BadInputException if a name is no path on this system
   */
  static Path rootOf(String option, Map<String, String> environment, String system, String userHome)
      throws BadInputException {
    if (!option.isEmpty()) {
      return path("--home", option);
    }
    String named = environment.getOrDefault(VARIABLE, "");
    if (!named.isEmpty()) {
      return path(VARIABLE, named);
    }
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      String roaming = environment.getOrDefault("APPDATA", "");
      return roaming.isEmpty()
          ? path("user.home", userHome).resolve("AppData/Roaming/Squeezewell")
          : path("APPDATA", roaming).resolve("Squeezewell");
    }
    if (name.startsWith("mac")) {
      return path("user.home", userHome).resolve("Library/Application Support/Squeezewell");
    }
    String data = environment.getOrDefault("XDG_DATA_HOME", "");
    // The XDG Base Directory Specification says that a relative path there is to be ignored.
    return data.startsWith("/")
        ? path("XDG_DATA_HOME", data).resolve("squeezewell")
        : path("user.home", userHome).resolve(".local/share/squeezewell");
  }

  private static Path path(String source, String text) throws BadInputException {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw BadInputException.notAllowed(source, "", text, "a path on this system");
    }
  }

  /** The folder of local protocols. */
  public Path protocols() {
    return root.resolve("protocols");
  }

  /** The folder of the user's own stations; it need not be there. */
  public Path stations() {
    return root.resolve("stations");
  }

  /** The folder of sessions. */
  public Path sessions() {
    return root.resolve("sessions");
  }

  /** The file of settings. */
  public Path settingsFile() {
    return root.resolve("settings.json");
  }

  /**
   * A file for a new session: {@code sessions/YYYY/MM/YYYY-MM-DD_HHMMSS-XXXXXXXX.jsonl}, with
   * {@code -2}, {@code -3} and so on after the time if that second has a session. The last part is
   * drawn by chance, so that two programs never take the same name. The date is the local one,
   * since people look for the day as they lived it. Nothing is made.
   *
   * @param startedAt when the session began
   */
  public Path newSessionFile(Instant startedAt) {
    LocalDateTime local = LocalDateTime.ofInstant(startedAt, zone);
    Path folder = sessions().resolve(YEAR.format(local)).resolve(MONTH.format(local));
    String stem = STEM.format(local);
    int number = 1;
    try (DirectoryStream<Path> sameSecond = Files.newDirectoryStream(folder, stem + "*.jsonl")) {
      for (Path unused : sameSecond) {
        number++;
      }
    } catch (IOException e) {
      // There is no such folder yet, or whoever writes the file will find out.
    }
    String chance = UUID.randomUUID().toString().substring(0, 8);
    return folder.resolve(stem + (number == 1 ? "-" : "-" + number + "-") + chance + ".jsonl");
  }

  /**
   * Makes the folder as {@link #make} does; a practice goes on where that fails.
   *
   * @return that nothing is kept, and why; empty if all is well
   */
  public Optional<String> makeIfPossible() {
    try {
      make();
      return Optional.empty();
    } catch (BadInputException e) {
      return Optional.of(WORDS.say("home-not-written", root, e.getMessage(), VARIABLE));
    }
  }

  /**
   * Makes the folder and those in it, where they are missing.
   *
   * @return this
   * @throws BadInputException if that fails or the folder can't be written to
   */
  public HomeFolder make() throws BadInputException {
    for (Path folder : new Path[] {root, protocols(), sessions()}) {
      try {
        Files.createDirectories(folder);
      } catch (IOException e) {
        throw fault(folder, WORDS.say("home-not-made", e.getClass().getSimpleName(), VARIABLE));
      }
      if (!Files.isWritable(folder)) {
        throw fault(folder, WORDS.say("home-read-only", VARIABLE));
      }
    }
    for (Path folder : new Path[] {root, protocols(), stations()}) {
      WholeFile.cleanUp(folder, Instant.now().minus(LONGEST_WRITING));
    }
    return this;
  }

  /**
   * The JSON files of a folder, by name; none if it is not there.
   *
   * @param problems where a folder that can't be listed is told
   */
  static List<Path> jsonFiles(Path folder, List<String> problems) {
    List<Path> files = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, "*.json")) {
        found.forEach(files::add);
      } catch (IOException e) {
        problems.add(folder + ": " + WORDS.say("not-listed", e.getMessage()));
      }
    }
    Collections.sort(files);
    return files;
  }

  /** The first fault of a file, and which command lists the others. */
  static String firstOf(List<BadInputException> faults, String command) {
    String first = faults.get(0).getMessage();
    int more = faults.size() - 1;
    return more == 0 ? first : WORDS.say("more-faults", first, more, command);
  }

  static BadInputException fault(Path place, String message) {
    return BadInputException.fault(place.toString(), "", message);
  }
}
