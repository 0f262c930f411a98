package squeezewell.cli;

import java.io.IOException;
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
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.files.HomeFolder;
import squeezewell.files.ProtocolStore;
import squeezewell.files.Settings;
import squeezewell.files.SettingsFile;
import squeezewell.input.BadInputException;
import squeezewell.live.KeptSession;
import squeezewell.live.LivePractice;
import squeezewell.live.PracticeSound;
import squeezewell.live.SmallHeap;
import squeezewell.protocol.PatientChange;
import squeezewell.report.Caution;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.MonotonicClock;
import squeezewell.session.SessionHeader;
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

  DrillCommand(CliContext around) {
    super(around);
  }

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
    NextText next = new NextText(around, folder);
    PracticePlan plan =
        prompts.in(
            choice.plan(COUNT_IN_NANOS, lengthNanos, noSound ? 0 : PracticeSound.leadNanos()),
            guidance -> next.levelOfLastTime(settings.trainee(), guidance));
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
    Debrief.print(around, review, false);
    next.print(header, review);
    if (!kept.trouble().isEmpty()) {
      throw new CommandFailedException(kept.trouble());
    }
    around.say(WORDS.say("kept", kept.path().orElseThrow()));
    return DONE;
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
      sound.ifPresent(s -> s.onLost(lost -> live.post(soundCommand(lost), System.nanoTime())));
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
      switch (action) {
        case COMPRESSION -> {
          long now = live.clock().nanos();
          if (live.state().schedule().guidanceAt(now).rhythm().compressions().isPresent()) {
            live.post(Command.COMPRESS, nanoTime);
          }
        }
        case FINDINGS -> offer();
        default -> {
          Command command = command(action, live);
          live.post(command, nanoTime);
          if (command == Command.PULSE_CHECK) {
            tellAnswers();
          }
        }
      }
    }

    /** What can be answered to the check that goes on. */
    private List<CheckAnswer> answers() {
      CueSchedule schedule = live.state().schedule();
      long now = live.clock().nanos();
      return schedule.stretchAt(now).kind() == Segment.Kind.PULSE_CHECK
          ? CheckAnswer.offered(schedule.inForceAt(now))
          : List.of();
    }

    private void tellAnswers() {
      List<CheckAnswer> answers =
          CheckAnswer.offered(live.state().schedule().inForceAt(live.clock().nanos()));
      for (int i = 0; i < answers.size(); i++) {
        screen.line("  " + (i + 1) + "  " + answers.get(i).label());
      }
    }

    private void offer() {
      offered = live.state().course().state().possible();
      for (int i = 0; i < offered.size(); i++) {
        screen.line("  " + (i + 1) + "  " + offered.get(i).label());
      }
    }

    @Override
    public void digit(int digit, long nanoTime) {
      if (offered.isEmpty()) {
        List<CheckAnswer> answers = answers();
        if (digit <= answers.size()) {
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

  private static Command command(DrillKeys.Action action, LivePractice live) {
    Segment.Kind now = live.state().schedule().stretchAt(live.clock().nanos()).kind();
    return switch (action) {
      case BREATH -> Command.BREATH;
      case UNDO_FINDING -> Command.UNDO_FINDING;
      case PULSE_CHECK -> toggle(Segment.Kind.PULSE_CHECK, now);
      case SUCTION -> toggle(Segment.Kind.SUCTION, now);
      case PAUSE -> toggle(Segment.Kind.PAUSED, now);
      default -> Command.FINISH;
    };
  }

  private static Command toggle(Segment.Kind hold, Segment.Kind now) {
    return Command.toggle(hold, now == hold);
  }

  private static Command soundCommand(boolean lost) {
    return lost ? Command.SOUND_LOST : Command.SOUND_BACK;
  }
}
