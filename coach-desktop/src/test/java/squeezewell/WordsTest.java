package squeezewell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The words of the program stand in bundles beside the rooms that say them. */
class WordsTest {
  private static final List<String> MODULES = List.of("../coach-core", "../audio", ".");

  /** Rooms whose sentences all stand in bundles. */
  private static final Set<String> CLEAN =
      Set.of(
          "coach",
          "input",
          "protocol",
          "session",
          "storage",
          "station/file",
          "review/measure",
          "review/say",
          "review/compare",
          "cli",
          "files",
          "picture",
          "report",
          "desktop/look",
          "desktop/screens/live",
          "desktop/screens/settings");

  /** Sentences that may stand in code, each with its reason. */
  private static final Set<String> ALLOWED =
      Set.of(
          // Part of a citation in files of services, by which they are known again.
          "value set by this service",
          // What a line of a script may say, in a message on a line that is none.
          " SECONDS, compressions COUNT SECONDS, end");

  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*)\"");
  private static final Pattern COMMENT = Pattern.compile("(?s:/\\*.*?\\*/)|(?m:^\\s*//[^\\n]*$)");

  /** Messages for whoever writes a file, an option or a program. */
  private static final Pattern MESSAGE =
      Pattern.compile("BadInputException|Illegal\\w+Exception|ParameterException|JsonValue");

  /**
   * A package of a module.
   *
   * @param module its folder
   * @param path its path below the root package, such as {@code review/say}
   */
  private record Room(String module, String path) {
    private List<String> sources() throws IOException {
      try (Stream<Path> files = Files.list(Path.of(module, "src/main/java/squeezewell", path))) {
        List<String> texts = new ArrayList<>();
        for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
          texts.add(COMMENT.matcher(Files.readString(file)).replaceAll(""));
        }
        return texts;
      }
    }

    private Properties words() throws IOException {
      Properties words = new Properties();
      Path file =
          Path.of(module, "src/main/resources/squeezewell", path).resolve("words.properties");
      try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
        words.load(reader);
      }
      return words;
    }

    @Override
    public String toString() {
      return path;
    }
  }

  private static Stream<Room> rooms(String root, String end) throws IOException {
    List<Room> rooms = new ArrayList<>();
    for (String module : MODULES) {
      Path folder = Path.of(module, root, "squeezewell");
      if (Files.isDirectory(folder)) {
        try (Stream<Path> files = Files.walk(folder)) {
          files
              .filter(f -> f.toString().endsWith(end))
              .map(f -> folder.relativize(f.getParent()).toString().replace('\\', '/'))
              .distinct()
              .forEach(path -> rooms.add(new Room(module, path)));
        }
      }
    }
    return rooms.stream();
  }

  static Stream<Room> roomsWithWords() throws IOException {
    return rooms("src/main/resources", "words.properties");
  }

  static Stream<Room> cleanRooms() throws IOException {
    return rooms("src/main/java", ".java").filter(room -> CLEAN.contains(room.path()));
  }

  @Test
  void theRoomsAreFound() throws IOException {
    assertThat(roomsWithWords().map(Room::path)).contains("protocol", "cli");
    assertThat(cleanRooms()).hasSize(CLEAN.size());
  }

  /**
   * A key is a literal, or begins with one that ends in a dot; or it is built of literals and of
   * the words of constants, perhaps those of another room of the module.
   */
  @ParameterizedTest
  @MethodSource("roomsWithWords")
  void everyKeyIsUsed(Room room) throws IOException {
    Set<String> literals = literals(room.sources());
    Set<String> parts = new TreeSet<>();
    for (Room other : rooms("src/main/java", ".java").toList()) {
      if (other.module().equals(room.module())) {
        List<String> sources = other.sources();
        literals(sources).forEach(l -> parts.addAll(Arrays.asList(l.split("[. ]", -1))));
        for (String source : sources) {
          Pattern.compile("\\b[A-Z][A-Z0-9_]+\\b")
              .matcher(source)
              .results()
              .forEach(m -> parts.add(m.group().toLowerCase(Locale.ROOT).replace('_', '-')));
        }
      }
    }
    Set<String> unused = new TreeSet<>(room.words().stringPropertyNames());
    unused.removeIf(
        key ->
            literals.contains(key)
                || literals.stream().anyMatch(l -> l.endsWith(".") && key.startsWith(l))
                || parts.containsAll(Arrays.asList(key.split("\\.", -1))));
    assertThat(unused).isEmpty();
  }

  private static Set<String> literals(List<String> sources) {
    Set<String> literals = new TreeSet<>();
    for (String source : sources) {
      LITERAL.matcher(source).results().forEach(m -> literals.add(m.group(1)));
    }
    return literals;
  }

  @ParameterizedTest
  @MethodSource("roomsWithWords")
  void everyKeyThatIsSaidIsThereWithAsManyPlacesAsValues(Room room) throws IOException {
    Properties words = room.words();
    List<String> wrong = new ArrayList<>();
    for (String source : room.sources()) {
      for (List<String> call : calls(source)) {
        boolean built = call.get(0).contains(" + ");
        boolean one = LITERAL.matcher(call.get(0)).matches();
        Matcher literal = LITERAL.matcher(call.get(0).replaceAll("\\w+\\.equals\\([^)]*\\)", ""));
        while (!built && literal.find()) {
          String key = literal.group(1);
          String pattern = words.getProperty(key);
          if (pattern == null) {
            wrong.add(key + " is missing");
          } else if (!call.toString().contains("toArray") && !call.toString().contains("values")) {
            int values = call.size() - 1;
            Set<Integer> places = places(pattern);
            boolean fits = places.stream().allMatch(p -> p < values);
            if (!fits || (one && places.size() < values)) {
              wrong.add(key + " has places " + places + " for " + values + " values");
            }
          }
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("roomsWithWords")
  void everyPatternCanBeSaid(Room room) throws IOException {
    Properties words = room.words();
    for (String key : words.stringPropertyNames()) {
      String pattern = words.getProperty(key);
      int places = places(pattern).stream().mapToInt(p -> p + 1).max().orElse(0);
      Object[] values = new Object[places];
      Arrays.fill(values, 2);
      String said = new MessageFormat(pattern.replace("'", "''"), Locale.ROOT).format(values);
      assertThat(said).as(key).doesNotContain("{").doesNotContain("null");
    }
  }

  @ParameterizedTest
  @MethodSource("cleanRooms")
  void noSentenceStandsInCode(Room room) throws IOException {
    List<String> sentences = new ArrayList<>();
    for (String source : room.sources()) {
      for (String statement : statements(source)) {
        Matcher literal = LITERAL.matcher(statement);
        while (!MESSAGE.matcher(statement).find() && literal.find()) {
          String text = literal.group(1);
          if (isSentence(text) && !ALLOWED.contains(text)) {
            sentences.add(text);
          }
        }
      }
    }
    assertThat(sentences).isEmpty();
  }

  private static boolean isSentence(String text) {
    return text.matches("(?s).*\\p{L}+ +\\p{L}+ +\\p{L}+.*")
        && (text.matches("(?s)\\s*\\p{Lu}.*") || text.matches("(?s).*\\p{L}{2}[.!?]( .*)?"));
  }

  private static Set<Integer> places(String pattern) {
    Set<Integer> places = new TreeSet<>();
    Matcher place = Pattern.compile("\\{(\\d+)[,}]").matcher(pattern);
    while (place.find()) {
      places.add(Integer.valueOf(place.group(1)));
    }
    return places;
  }

  /** The arguments of each call of {@code WORDS.say}. */
  private static List<List<String>> calls(String source) {
    List<List<String>> calls = new ArrayList<>();
    for (int at = source.indexOf("WORDS.say("); at >= 0; at = source.indexOf("WORDS.say(", at)) {
      at += "WORDS.say(".length();
      List<String> arguments = new ArrayList<>();
      int depth = 0;
      int from = at;
      int i = at;
      for (boolean quoted = false; depth >= 0; i++) {
        char c = source.charAt(i);
        quoted ^= c == '"' && source.charAt(i - 1) != '\\';
        depth += quoted ? 0 : c == '(' || c == '{' ? 1 : c == ')' || c == '}' ? -1 : 0;
        if (!quoted && ((c == ',' && depth == 0) || depth < 0)) {
          arguments.add(source.substring(from, i).trim());
          from = i + 1;
        }
      }
      calls.add(arguments);
    }
    return calls;
  }

  /** The text between semicolons and braces that stand in no literal. */
  private static List<String> statements(String source) {
    String bare =
        LITERAL.matcher(source).replaceAll(m -> "\"" + "x".repeat(m.group().length() - 2) + "\"");
    List<Integer> ends =
        Pattern.compile("[;{}]|$")
            .matcher(bare)
            .results()
            .map(m -> m.start())
            .collect(Collectors.toList());
    List<String> statements = new ArrayList<>();
    int from = 0;
    for (int end : ends) {
      statements.add(source.substring(from, end));
      from = end;
    }
    return statements;
  }
}
