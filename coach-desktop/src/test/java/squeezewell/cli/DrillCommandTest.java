package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.files.HomeFolder;
import squeezewell.files.SessionStore;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.storage.FileJournal;

class DrillCommandTest {
  private static final long SECOND = 1_000_000_000L;

  @TempDir Path folder;

  @Test
  void theInputsEndEndsThePracticeAndTheSessionIsKept() throws Exception {
    CliRun run = CliRun.typing("\n", "drill", "--no-sound", "--home", folder.toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains("not its end").contains("Not a medical device");
    List<Path> files = new SessionStore(HomeFolder.at(folder)).files();
    assertThat(files).hasSize(1);
    assertThat(run.err()).contains("kept: " + files.get(0));
    Session session = new SessionStore(HomeFolder.at(folder)).open(files.get(0));
    assertThat(session.breaths()).hasSize(1);
    assertThat(session.breaths().get(0).endNanos()).isEmpty();
    assertThat(session.finished()).isTrue();
  }

  private Session drill(StringBuilder said, String... more) throws Exception {
    List<String> words =
        new ArrayList<>(List.of("drill", "--no-sound", "--home", folder.toString()));
    words.addAll(List.of("--prompts", "fading"));
    words.addAll(List.of(more));
    CliRun run = CliRun.typing("q\n", words.toArray(new String[0]));
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    said.append(run.out());
    Path file = Path.of(run.err().replaceFirst("(?s).*kept: (.*?)\\R.*", "$1"));
    return new SessionStore(HomeFolder.at(folder)).open(file);
  }

  /**
   * From level 2, up to level 3: two blocks at level 2 were good without a run-up, so 3 is next.
   */
  @Test
  void fadingGoesOnFromTheLastPracticeAndSaysWhy() throws Exception {
    StringBuilder first = new StringBuilder();
    Session anew = drill(first);
    assertThat(anew.header().plan().startLevel()).isZero();
    assertThat(first.toString()).doesNotContain("Last time").contains("Next practice");
    Protocol edition = anew.header().protocol();
    PracticePlan plan =
        PracticePlan.of(edition, anew.header().plan().guidance(), 0, 300 * SECOND, 0)
            .with(Prompting.FADING)
            .withStartLevel(2);
    // After the one that has just been kept.
    Instant at = anew.header().startedAt().plusSeconds(1);
    try (FileJournal journal =
        FileJournal.create(
            HomeFolder.at(folder).newSessionFile(at),
            new SessionHeader(at, SessionHeader.Origin.LIVE, "", edition, plan))) {
      journal.append(SessionEvent.of(1, 60 * SECOND, EventType.PROMPTS_ON, "level 3"));
    }
    // F11: one of a clock that was wrong does not count as the last.
    Instant wrong = Instant.parse("2099-01-31T12:00:00Z");
    try (FileJournal journal =
        FileJournal.create(
            HomeFolder.at(folder).newSessionFile(wrong),
            new SessionHeader(wrong, SessionHeader.Origin.LIVE, "", edition, plan))) {
      journal.append(SessionEvent.of(1, 60 * SECOND, EventType.PROMPTS_ON, "level 1"));
    }
    StringBuilder said = new StringBuilder();
    Session next = drill(said);
    assertThat(next.header().plan().startLevel()).isEqualTo(3);
    assertThat(said.toString().replaceAll("\\s+", " "))
        .contains("you ended at level 3 of 5.")
        .contains("begins with level 3, 3 breaths prompted, then 12 not")
        .contains("--start-level 0 begins anew");
    assertThat(drill(new StringBuilder(), "--start-level", "0").header().plan().startLevel())
        .isZero();
  }

  @Test
  void damagedSettingsAreToldOfAndStopNobody() throws Exception {
    Files.writeString(folder.resolve("settings.json"), "{");
    CliRun run = CliRun.typing("\n", "drill", "--no-sound", "--home", folder.toString());
    assertThat(run.code()).isZero();
    assertThat(run.err()).contains("The settings can't be used", "settings.json", "kept: ");
    assertThat(new SessionStore(HomeFolder.at(folder)).files()).hasSize(1);
    assertThat(folder.resolve("settings.json")).hasContent("{");
  }

  /**
   * F8: a home in which no file can be made; the practice goes on, and says that nothing is kept.
   */
  @Test
  void aHomeThatCantBeWrittenIsPractisedInAndSaysThatNothingIsKept() throws Exception {
    Path home = Files.createDirectory(folder.resolve("home"));
    Files.writeString(home.resolve("sessions"), "a file where the sessions go");
    CliRun run = CliRun.typing("\n", "drill", "--no-sound", "--home", home.toString());
    assertThat(run.err().replaceAll("\\s+", " "))
        .contains("Nothing can be kept in " + home, "This practice is not being saved: ")
        .doesNotContain("kept: ");
    assertThat(run.out()).as("the debrief").contains("breaths");
    assertThat(run.code()).isEqualTo(1);
  }

  @Test
  void singleKeysMeanWhatTheHelpSays() throws Exception {
    assertThat(keys(true, " \np\u001Bsz"))
        .containsExactly(
            DrillKeys.Action.BREATH,
            DrillKeys.Action.BREATH,
            DrillKeys.Action.PULSE_CHECK,
            DrillKeys.Action.PAUSE,
            DrillKeys.Action.SUCTION,
            DrillKeys.Action.PAUSE,
            DrillKeys.Action.FINISH);
    assertThat(keys(true, "\u001B"))
        .containsExactly(DrillKeys.Action.PAUSE, DrillKeys.Action.FINISH);
  }

  @Test
  void arrowKeysMeanNothing() throws Exception {
    assertThat(keys(true, "\u001B[A\u001BOP\u001B[15~ "))
        .containsExactly(DrillKeys.Action.BREATH, DrillKeys.Action.FINISH);
  }

  @Test
  void inLinesAnEmptyLineIsABreathAndALetterIsNot() throws Exception {
    assertThat(keys(false, "\np\n\r\n q\n"))
        .containsExactly(
            DrillKeys.Action.BREATH,
            DrillKeys.Action.PULSE_CHECK,
            DrillKeys.Action.BREATH,
            DrillKeys.Action.FINISH,
            DrillKeys.Action.FINISH);
  }

  @Test
  void theLineOfTheMomentFitsATerminalAndSaysWhatToDo() {
    CliRun.Screen paper = new CliRun.Screen();
    DrillScreen screen = new DrillScreen(paper.around(), true, () -> "");
    PracticePlan plan =
        new PracticePlan(
            GuidelineLibrary.editions().get(0).guidance().get(0), 3 * SECOND, 300 * SECOND, 0);
    Coach coach = new Coach(plan, Journal.none(), List.of(screen));
    coach.advance(0);
    assertThat(screen.status(coach.state(), SECOND)).startsWith("GET READY     2");
    coach.command(Command.BREATH, 3 * SECOND);
    assertThat(screen.status(coach.state(), 3 * SECOND + SECOND / 2))
        .startsWith("SQUEEZE       1 ██████......")
        .contains("breaths 1")
        .contains("left 4:59");
    coach.command(Command.BREATH, 9 * SECOND);
    coach.command(Command.SOUND_LOST, 10 * SECOND);
    String line = screen.status(coach.state(), 10 * SECOND);
    assertThat(line).startsWith("RELEASE").contains("last after 6.0 s").contains("no sound");
    assertThat(line.length()).isLessThan(80);
  }

  @Test
  void remindersAreWrittenOut() {
    CliRun.Screen paper = new CliRun.Screen();
    DrillScreen screen = new DrillScreen(paper.around(), false, () -> "");
    PracticePlan plan =
        new PracticePlan(GuidelineLibrary.editions().get(0).guidance().get(0), 0, 300 * SECOND, 0);
    Coach coach = new Coach(plan, Journal.none(), List.of(screen));
    for (long at = 0; at <= 120 * SECOND; at += SECOND / 10) {
      coach.advance(at);
    }
    assertThat(paper.text())
        .contains("0:00  squeeze")
        .contains("1:50  pulse check soon")
        .contains("2:00  pulse check due");
  }

  @Test
  void thatAPracticeIsNotSavedIsWrittenOutOnceAndSoIsThatItIsAgain() {
    CliRun.Screen paper = new CliRun.Screen();
    AtomicReference<String> trouble = new AtomicReference<>("not saved: no space left");
    DrillScreen screen = new DrillScreen(paper.around(), false, trouble::get);
    PracticePlan plan =
        new PracticePlan(GuidelineLibrary.editions().get(0).guidance().get(0), 0, 300 * SECOND, 0);
    Coach coach = new Coach(plan, Journal.none(), List.of(screen));
    screen.draw(coach.state(), 0);
    screen.draw(coach.state(), SECOND / 10);
    trouble.set("");
    screen.draw(coach.state(), SECOND / 5);
    screen.draw(coach.state(), SECOND / 4);
    assertThat(paper.text().lines())
        .containsExactly("not saved: no space left", "This practice is being saved again.");
  }

  @Test
  void cIsOneCompressionAndTheHelpSaysSoWhereTheRhythmHasThem() throws Exception {
    assertThat(keys(true, "cC"))
        .containsExactly(
            DrillKeys.Action.COMPRESSION, DrillKeys.Action.COMPRESSION, DrillKeys.Action.FINISH);
    for (boolean single : new boolean[] {true, false}) {
      assertThat(DrillCommand.help(single, true)).contains("compress").hasSizeLessThan(80);
      assertThat(DrillCommand.help(single, false)).doesNotContain("compress");
    }
  }

  @Test
  void compressionsAreKeptWhereTheRhythmHasThemAndElseMeanNothing() throws Exception {
    assertThat(compressionsKept("arrest-no-advanced-airway")).isEqualTo(1);
    assertThat(compressionsKept("pulse-no-breathing")).isZero();
  }

  @Test
  void fListsWhatMayBeFoundAndADigitNotesItAndUTakesItBack() throws Exception {
    Path home = folder.resolve("findings");
    CliRun run = CliRun.typing("4\nf\n1\n2\nu\n", "drill", "--no-sound", "--home", home.toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out())
        .contains("  1  No pulse")
        .contains("Start chest compressions at once, 5 to 6 cm deep.");
    Path file = new SessionStore(HomeFolder.at(home)).files().get(0);
    // A digit before the list means nothing, and so does one after the choice.
    assertThat(new SessionStore(HomeFolder.at(home)).open(file).events())
        .extracting(e -> e.what().word() + " " + e.detail())
        .containsExactly("finding pulse-lost", "finding-undone 1", "finish ");
  }

  private long compressionsKept(String situation) throws Exception {
    Path home = folder.resolve(situation);
    CliRun run =
        CliRun.typing(
            "c\n", "drill", "--no-sound", "--situation", situation, "--home", home.toString());
    assertThat(run.code()).as(run.err()).isZero();
    Path file = new SessionStore(HomeFolder.at(home)).files().get(0);
    return new SessionStore(HomeFolder.at(home))
        .open(file).events().stream().filter(e -> e.what() == EventType.COMPRESSION).count();
  }

  @Test
  void theLineOfTheMomentCountsCompressions() {
    CliRun.Screen paper = new CliRun.Screen();
    DrillScreen screen = new DrillScreen(paper.around(), true, () -> "");
    PracticePlan plan =
        new PracticePlan(
            GuidelineLibrary.editions()
                .get(0)
                .find(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY)
                .orElseThrow(),
            0,
            300 * SECOND,
            0);
    Coach coach = new Coach(plan, Journal.none(), List.of(screen));
    coach.command(Command.COMPRESS, SECOND / 10);
    coach.command(Command.COMPRESS, SECOND);
    coach.command(Command.SOUND_LOST, SECOND);
    // Worked by hand: at 110 a minute the third compression is due at 1.09 s, the fourth at 1.64 s.
    String line = screen.status(coach.state(), SECOND * 12 / 10);
    assertThat(line).startsWith("COMPRESS      3").contains("breaths 0, compressed 2");
    assertThat(line.length()).isLessThan(80);
  }

  private static List<DrillKeys.Action> keys(boolean single, String typed) throws Exception {
    List<DrillKeys.Action> actions = new ArrayList<>();
    new DrillKeys(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), single, () -> 0)
        .read(
            new DrillKeys.Listener() {
              @Override
              public void pressed(DrillKeys.Action action, long nanoTime) {
                actions.add(action);
              }

              @Override
              public void digit(int digit, long nanoTime) {
                // Tested by what is kept.
              }
            });
    return actions;
  }
}
