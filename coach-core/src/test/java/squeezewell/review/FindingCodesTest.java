package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.CheckKind;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.judge.FindingCode;
import squeezewell.review.judge.Sentence;
import squeezewell.review.judge.Severity;
import squeezewell.review.judge.Verdict;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;

/** Each finding has its sentences, is documented and is told of some practice. */
class FindingCodesTest {
  private static final Path ROOMS = Path.of("src/main/java/squeezewell/review");

  /** Keys in the code; those that end in a dot or a hyphen go on with the id of an enum. */
  private static final Pattern KEY = Pattern.compile("\"([a-z][a-z0-9]*(?:[.-][a-z0-9]*)*)\"");

  private static Set<String> words() throws IOException {
    Properties words = new Properties();
    Path file = Path.of("src/main/resources/squeezewell/review/say/words.properties");
    try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      words.load(in);
    }
    return new TreeSet<>(words.stringPropertyNames());
  }

  @Test
  void everyFindingHasATitleAndItsIdFollowsItsName() throws IOException {
    Set<String> words = words();
    for (FindingCode code : FindingCode.values()) {
      assertThat(code.id()).isEqualTo(code.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      assertThat(words).anyMatch(key -> key.startsWith(code.id() + ".title"));
      assertThat(code.severities()).isNotEmpty();
    }
  }

  /** Missing words would else show themselves only to whom that very sentence is told. */
  @Test
  void everyKeyInTheCodeHasWordsAndNoWordsAreLeftOver() throws IOException {
    Set<String> words = words();
    List<String> literals = new ArrayList<>();
    for (Path file : sources()) {
      Matcher found = KEY.matcher(Files.readString(file));
      while (found.find()) {
        literals.add(found.group(1));
      }
    }
    Set<String> built = new TreeSet<>();
    for (FindingCode code : FindingCode.values()) {
      Stream.of(".title", ".why", ".next").forEach(kind -> built.add(code.id() + kind));
    }
    for (CheckKind kind : CheckKind.values()) {
      String id = kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
      literals.stream().filter(key -> key.endsWith(".")).forEach(key -> built.add(key + id));
    }
    for (Verdict.Outcome outcome : Verdict.Outcome.values()) {
      built.add("test." + outcome.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    for (String ending : List.of(".no-rate", ".pause")) {
      literals.forEach(key -> built.add(key + ending));
    }
    Set<String> used = new TreeSet<>(literals);
    used.addAll(built);
    Set<String> leftOver = new TreeSet<>(words);
    leftOver.removeIf(key -> key.endsWith(".source"));
    leftOver.removeAll(used);
    Set<String> anyLiteral = anyLiteral();
    leftOver.removeIf(key -> isRow(key, anyLiteral));
    assertThat(leftOver).isEmpty();
    Set<String> missing =
        literals.stream()
            .filter(key -> key.matches(".+[.-](done|why|next|title)(\\..+)?"))
            .filter(key -> !key.endsWith("."))
            .filter(((Predicate<String>) words::contains).negate())
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(missing).isEmpty();
  }

  /** A row is named in the code by its key, and its clauses by the figures that they tell. */
  private static boolean isRow(String key, Set<String> literals) {
    if (!key.startsWith("row.")) {
      return false;
    }
    String row = key.substring("row.".length());
    int dot = row.lastIndexOf('.');
    return literals.contains(row)
        || (dot > 0
            && literals.contains(row.substring(0, dot))
            && literals.stream().anyMatch(l -> l.endsWith(row.substring(dot))));
  }

  private static Set<String> anyLiteral() throws IOException {
    Set<String> literals = new TreeSet<>();
    for (Path file : sources()) {
      Matcher found = Pattern.compile("\"([A-Za-z.-]+)\"").matcher(Files.readString(file));
      while (found.find()) {
        literals.add(found.group(1));
      }
    }
    return literals;
  }

  /** A reason says what is behind it, or that nothing is. */
  @Test
  void everyReasonHasASourceAndNoSourceIsLeftOver() throws IOException {
    Set<String> reasons = words();
    reasons.removeIf(key -> !key.matches("[a-z-]+[.]why[^=]*") || key.endsWith(".source"));
    Set<String> sources = words();
    sources.removeIf(key -> !key.endsWith(".source"));
    assertThat(reasons).hasSizeGreaterThan(30);
    assertThat(sources)
        .isEqualTo(
            reasons.stream()
                .map(k -> k + ".source")
                .collect(Collectors.toCollection(TreeSet::new)));
  }

  private static List<Path> sources() throws IOException {
    try (Stream<Path> judge = Files.list(ROOMS.resolve("judge"));
        Stream<Path> say = Files.list(ROOMS.resolve("say"))) {
      return Stream.concat(judge, say)
          .filter(file -> file.toString().endsWith(".java"))
          .collect(Collectors.toList());
    }
  }

  @Test
  void everyFindingIsDocumented() throws IOException {
    String formats = Files.readString(Path.of("../docs/formats.md"));
    String listed = formats.substring(formats.indexOf("Codes of findings."));
    for (FindingCode code : FindingCode.values()) {
      assertThat(listed).contains("`" + code.id() + "`");
    }
  }

  @Test
  void everyFindingIsToldOfSomePractice() {
    Set<String> told = new TreeSet<>();
    for (SessionBuilder example : examples()) {
      add(example.review(), told);
    }
    for (long seed = 0; !told.containsAll(ids()) && seed < 2_000; seed++) {
      add(RandomPractice.breathing(seed).review(), told);
      add(RandomPractice.compressing(seed).review(), told);
    }
    Set<String> missing = new TreeSet<>(ids());
    missing.removeAll(told);
    assertThat(missing).isEmpty();
  }

  private static Set<String> ids() {
    return EnumSet.allOf(FindingCode.class).stream()
        .map(FindingCode::id)
        .collect(Collectors.toSet());
  }

  /** Those that chance seldom brings. */
  private static List<SessionBuilder> examples() {
    return List.of(
        // A test in which the program stood still from 38 to 68 s.
        SessionBuilder.ofSeconds(192)
            .test()
            .breathsEvery(6, 1, 37)
            .event(68, EventType.HOLE, "30.0 s")
            .breathsEvery(6, 69, 189),
        SessionBuilder.ofSeconds(60),
        SessionBuilder.ofSeconds(60).breaths(1, 7),
        SessionBuilder.ofSeconds(60).in(Situation.ARREST_ADVANCED_AIRWAY).breathsEvery(6, 0, 54),
        SessionBuilder.ofSeconds(120)
            .breathsEvery(6, 0, 30)
            .finding(31, PatientChange.PULSE_LOST)
            .undone(40)
            .breathsEvery(6, 42, 120),
        SessionBuilder.ofSeconds(240).test().breathsEvery(5.4, 0, 237.6),
        SessionBuilder.ofSeconds(60)
            .breathsEvery(6, 0.2, 54.2)
            .finding(27, PatientChange.BREATHING_BACK),
        swinging(),
        fewCompressions(),
        lostBreath());
  }

  /** In range all along, and yet 1.3 s longer and shorter in turns. */
  private static SessionBuilder swinging() {
    SessionBuilder test = SessionBuilder.ofSeconds(150).test();
    for (int k = 0; k < 11; k++) {
      test.breaths(1 + 12 * k, 6.35 + 12 * k);
    }
    return test;
  }

  /** Each breath with its prompt, and too few compressions to say something about them. */
  private static SessionBuilder fewCompressions() {
    SessionBuilder session = SessionBuilder.ofSeconds(60).in(Situation.ARREST_NO_ADVANCED_AIRWAY);
    List<PromptMark> prompts = session.review().prompts();
    prompts.forEach(prompt -> session.breaths(prompt.atNanos() / 1e9));
    return session.compressions(5, 0, 0.55);
  }

  /**
   * A newborn, 1.2 s apart and 1.45 s for a while, in the middle of which one breath is missing: of
   * 2.1 s at the longest, which is too long by the rule and not half as long again as those beside
   * it.
   */
  private static SessionBuilder lostBreath() {
    SessionBuilder session =
        SessionBuilder.ofSeconds(150)
            .by(TestPlans.edition("aha-2020"), PatientGroup.NEWBORN)
            .in(Situation.NEWBORN_VENTILATION)
            .test();
    double at = 0;
    for (int k = 0; k < 120; k++) {
      session.breaths(at);
      at += k == 60 ? 2.1 : Math.abs(k - 60) <= 3 ? 1.45 : 1.2;
    }
    return session;
  }

  private static void add(Review review, Set<String> told) {
    review.findings().forEach(finding -> told.add(finding.code()));
    review.parts().forEach(part -> add(part, told));
  }

  @Test
  void aReasonIsToldOnceWhateverTheNumberOfParts() {
    // Squeezes of 0.4 s before and after the change; the same patient, the same reason with a year.
    SessionBuilder session = SessionBuilder.ofSeconds(120);
    for (int at = 0; at < 114; at += 6) {
      session.squeeze(at, 0.4, "");
    }
    Review review = session.finding(60, PatientChange.BREATHING_SLOW).review();
    Feedback squeezes =
        review.findings().stream()
            .filter(finding -> finding.code().equals("short-squeeze"))
            .findFirst()
            .orElseThrow();
    assertThat(squeezes.severity()).isEqualTo(Severity.FAULT);
    assertThat(squeezes.paragraphs(Sentence.Kind.WHY))
        .singleElement()
        .satisfies(why -> assertThat(why.source()).startsWith("Anesthesiology 2014"));
    assertThat(squeezes.text().split("let it last", -1)).hasSize(2);
    // The figures are those of each part.
    assertThat(squeezes.text().split("Your usual squeeze lasted", -1)).hasSize(3);
    assertThat(squeezes.whatToDo()).hasSize(1);
  }
}
