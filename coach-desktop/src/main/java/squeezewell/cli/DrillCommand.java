package squeezewell.cli;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import squeezewell.coach.Command;
import squeezewell.coach.CueOutput;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.files.HomeFolder;
import squeezewell.files.ProtocolStore;
import squeezewell.files.SessionStore;
import squeezewell.files.Settings;
import squeezewell.files.SettingsFile;
import squeezewell.input.BadInputException;
import squeezewell.live.KeptSession;
import squeezewell.live.LivePractice;
import squeezewell.live.PracticeSound;
import squeezewell.live.SmallHeap;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientChange;
import squeezewell.report.Caution;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.MonotonicClock;
import squeezewell.session.SessionHeader;
import squeezewell.trainee.FadingStart;
import squeezewell.trainee.NextPractice;
import squeezewell.trainee.RecordBook;
import squeezewell.words.Wording;

/** One live practice in the terminal. */
@CommandLine.Command(name = "drill")
final class DrillCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(DrillCommand.class);
  private static final int USUAL_MINUTES = 5;
  private static final long COUNT_IN_NANOS = 3_000_000_000L;
  private static final long FRAME_MILLIS = 80;
  private static final long RING_MILLIS = 1_500;

  @Mixin PracticeOptions practice = new PracticeOptions();
  @Mixin PromptsOption prompts = new PromptsOption();
  @Mixin HomeOption home = new HomeOption();

  @Option(names = "--no-sound")
  boolean noSound;

  @Override
  public Integer call() throws BadInputException, CommandFailedException {
    HomeFolder folder = home.home();
    PracticeOptions.Choice choice = practice.choice(ProtocolStore.read(folder), around::say);
    long lengthNanos = practice.lengthNanos(USUAL_MINUTES);
    folder.makeIfPossible().ifPresent(around::say);
    SettingsFile.Loaded loaded = new SettingsFile(folder.settingsFile()).load();
    if (!loaded.problem().isEmpty()) {
      around.say(loaded.problem());
    }
    Settings settings = loaded.settings();
    PracticePlan plan =
        prompts.in(
            choice.plan(COUNT_IN_NANOS, lengthNanos, noSound ? 0 : PracticeSound.leadNanos()),
            guidance -> levelOfLastTime(folder, settings.trainee(), guidance));
    around.print(
        WORDS.say("drill.title", choice.protocol().title(), choice.guidance().situation().label()));
    around.print(Caution.TEXT, "");
    MonotonicClock clock = MonotonicClock.startNow();
    SessionHeader header =
        new SessionHeader(
            clock.startedAt(),
            SessionHeader.Origin.LIVE,
            settings.trainee(),
            choice.protocol(),
            plan);
    KeptSession kept = KeptSession.create(() -> folder.newSessionFile(clock.startedAt()), header);
    if (!run(plan, clock, kept, settings)) {
      return COULD_NOT;
    }
    around.print("");
    Review review = Reviewer.review(kept.session());
    around.print(review, false);
    printNext(folder, header, review);
    if (!kept.trouble().isEmpty()) {
      throw new CommandFailedException(kept.trouble());
    }
    around.say(WORDS.say("kept", kept.path().orElseThrow()));
    return DONE;
  }

  /** The level of fading that a practice begins with; says why if it goes on from another one. */
  private int levelOfLastTime(HomeFolder folder, String trainee, Guidance guidance) {
    Optional<FadingStart> start = book(folder).fadingStart(trainee, guidance);
    start
        .filter(s -> s.lastLevel() > 0)
        .map(
            s -> WORDS.say("next.begins-with", s.words(folder.zone()), FadingStart.asks(s.level())))
        .ifPresent(words -> around.print(words, ""));
    return start.map(FadingStart::level).orElse(0);
  }

  /** Prints what to practise after a practice that was kept; nothing where there is no advice. */
  private void printNext(HomeFolder folder, SessionHeader header, Review review) {
    NextPractice.of(
            book(folder),
            header.trainee(),
            header.plan().guidance(),
            folder.zone(),
            NextPractice.Result.of(review))
        .ifPresent(
            next -> {
              around.print("");
              around.print(WORDS.say("next.title"));
              next.lines().forEach(line -> around.print(line, "  "));
            });
  }

  /**
   * A folder that can't be listed holds nothing to go on from; keeping the practice tells of it. A
   * session dated in the future decides nothing.
   */
  private static RecordBook book(HomeFolder folder) {
    try {
      return new SessionStore(folder).bookUpTo(Instant.now());
    } catch (BadInputException e) {
      return RecordBook.of(List.of());
    }
  }

  /** Practises to the end; false if the program is being stopped meanwhile. */
  private boolean run(
      PracticePlan plan, MonotonicClock clock, KeptSession kept, Settings settings) {
    Optional<RawTerminal> terminal = around.console() ? RawTerminal.open() : Optional.empty();
    DrillScreen screen = new DrillScreen(around, terminal.isPresent(), kept::trouble);
    screen.line(help(terminal.isPresent(), hasCompressions(plan)));
    screen.line(WORDS.say("drill.findings"));
    screen.line(WORDS.say("drill.start-only"));
    Optional<PracticeSound> sound =
        noSound ? Optional.empty() : Optional.of(new PracticeSound(clock, settings));
    List<CueOutput> outputs = new ArrayList<>(List.of(screen));
    sound.ifPresent(outputs::add);
    CountDownLatch over = new CountDownLatch(1);
    SmallHeap.ask();
    LivePractice live =
        new LivePractice(
            plan,
            clock,
            kept,
            outputs,
            state -> {
              if (state.finished()) {
                over.countDown();
              }
            });
    Thread rescue = new Thread(() -> stop(live, terminal), "squeezewell-stop");
    Runtime.getRuntime().addShutdownHook(rescue);
    try {
      sound.ifPresent(
          s ->
              s.onLost(
                  lost ->
                      live.post(
                          lost ? Command.SOUND_LOST : Command.SOUND_BACK, System.nanoTime())));
      live.start();
      readKeys(live, screen, terminal.isPresent());
      while (!over.await(FRAME_MILLIS, TimeUnit.MILLISECONDS)) {
        screen.draw(live.state(), clock.nanos());
      }
      live.close();
      if (!live.state().trouble().isEmpty()) {
        around.say("squeezewell: " + live.state().trouble());
      }
      if (sound.isPresent()) {
        TimeUnit.MILLISECONDS.sleep(RING_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      stop(live, terminal);
      sound.ifPresent(PracticeSound::close);
    }
    try {
      Runtime.getRuntime().removeShutdownHook(rescue);
      return true;
    } catch (IllegalStateException e) {
      return false;
    }
  }

  /** What the keys do, in one line of under 80 columns. */
  static String help(boolean singleKeys, boolean compressions) {
    String key = singleKeys ? "drill.keys" : "drill.lines";
    return WORDS.say(compressions ? key + ".compressing" : key);
  }

  private static boolean hasCompressions(PracticePlan plan) {
    return plan.all().stream().anyMatch(g -> g.rhythm().compressions().isPresent());
  }

  /** Also what happens on Ctrl-C: the session gets its end and the terminal its old ways. */
  private static void stop(LivePractice live, Optional<RawTerminal> terminal) {
    live.close();
    terminal.ifPresent(RawTerminal::close);
  }

  private void readKeys(LivePractice live, DrillScreen screen, boolean singleKeys) {
    DrillKeys keys = new DrillKeys(around.in(), singleKeys, System::nanoTime);
    Thread reader =
        new Thread(
            () -> {
              try {
                keys.read(new KeyActions(live, screen));
              } catch (IOException e) {
                live.post(Command.FINISH, System.nanoTime());
              }
            },
            "squeezewell-keys");
    reader.setDaemon(true);
    reader.start();
  }

  /** What the keys do. Used on the thread that reads them. */
  static final class KeyActions implements DrillKeys.Listener {
    private final LivePractice live;
    private final DrillScreen screen;
    private List<PatientChange> offered = List.of();

    KeyActions(LivePractice live, DrillScreen screen) {
      this.live = live;
      this.screen = screen;
    }

    @Override
    public void pressed(DrillKeys.Action action, long nanoTime) {
      CueSchedule schedule = live.state().schedule();
      long now = live.clock().nanos();
      switch (action) {
        case BREATH -> live.post(Command.BREATH, nanoTime);
        case COMPRESSION -> {
          if (schedule.guidanceAt(now).rhythm().compressions().isPresent()) {
            live.post(Command.COMPRESS, nanoTime);
          }
        }
        case PULSE_CHECK -> {
          if (toggle(Segment.Kind.PULSE_CHECK, nanoTime) == Command.PULSE_CHECK) {
            ActiveGuidance inForce = live.state().schedule().inForceAt(live.clock().nanos());
            list(CheckAnswer.offered(inForce).stream().map(CheckAnswer::label).toList());
          }
        }
        case SUCTION -> toggle(Segment.Kind.SUCTION, nanoTime);
        case PAUSE -> toggle(Segment.Kind.PAUSED, nanoTime);
        case FINDINGS -> {
          offered = live.state().course().state().possible();
          list(offered.stream().map(PatientChange::label).toList());
        }
        case UNDO_FINDING -> live.post(Command.UNDO_FINDING, nanoTime);
        case FINISH -> live.post(Command.FINISH, nanoTime);
      }
    }

    private Command toggle(Segment.Kind hold, long nanoTime) {
      CueSchedule schedule = live.state().schedule();
      boolean now = schedule.stretchAt(live.clock().nanos()).kind() == hold;
      Command command = Command.toggle(hold, now);
      live.post(command, nanoTime);
      return command;
    }

    private void list(List<String> labels) {
      for (int i = 0; i < labels.size(); i++) {
        screen.line("  " + (i + 1) + "  " + labels.get(i));
      }
    }

    @Override
    public void digit(int digit, long nanoTime) {
      if (offered.isEmpty()) {
        CueSchedule schedule = live.state().schedule();
        long now = live.clock().nanos();
        boolean checking = schedule.stretchAt(now).kind() == Segment.Kind.PULSE_CHECK;
        List<CheckAnswer> answers = CheckAnswer.offered(schedule.inForceAt(now));
        if (checking && digit <= answers.size()) {
          live.post(answers.get(digit - 1), nanoTime);
        }
      } else if (digit <= offered.size()) {
        PatientChange found = offered.get(digit - 1);
        offered = List.of();
        String advice = live.state().course().after(found).advice(found);
        live.post(found, nanoTime);
        screen.line(WORDS.say("drill.found", found.label(), advice));
      }
    }
  }
}
