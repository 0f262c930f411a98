package squeezewell.cli;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import squeezewell.audio.CueTrack;
import squeezewell.audio.SoundLevels;
import squeezewell.coach.Coach;
import squeezewell.coach.TraineeFault;
import squeezewell.coach.VirtualTrainee;
import squeezewell.cue.Control;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.session.Journal;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** The cue track as a file. */
@Command(name = "render")
final class RenderCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(RenderCommand.class);
  private static final int USUAL_MINUTES = 10;
  private static final long COUNT_IN_NANOS = 3_000_000_000L;
  private static final long LONG_NANOS = 30 * 60_000_000_000L;

  @Mixin PracticeOptions practice = new PracticeOptions();
  @Mixin HomeOption home = new HomeOption();

  @Option(names = "--rate", paramLabel = "HZ", converter = OptionTypes.FrameRate.class)
  int rate = 48_000;

  @Option(names = "--out", paramLabel = "FILE")
  String out = "";

  @Option(names = "--cues", paramLabel = "FILE")
  String cues = "";

  @Option(names = "--no-count-in")
  boolean noCountIn;

  @Option(names = "--fault", paramLabel = "NAME")
  TraineeFault fault = TraineeFault.NONE;

  @Option(names = "--force")
  boolean force;

  @Override
  public Integer call() throws BadInputException, IOException {
    if (out.isEmpty() && cues.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "render needs a file to write: --out FILE or --cues FILE or both");
    }
    PracticeOptions.Choice choice = practice.choice(ProtocolStore.read(home.home()), around::say);
    long lengthNanos = practice.lengthNanos(USUAL_MINUTES);
    CueTrack track = track(choice, lengthNanos);
    OutputFile sound = out.isEmpty() ? null : OutputFile.of("--out", out, force);
    OutputFile list = cues.isEmpty() ? null : OutputFile.of("--cues", cues, force);
    if (sound != null && list != null) {
      sound.mustDifferFrom("--cues", list.path());
    }
    if (sound != null) {
      track.write(sound.path(), force, progress(lengthNanos));
      around.say(WORDS.say("written", sound.path()));
    }
    if (list != null) {
      list.write(JsonText.text(JsonText.of(tree(track))) + "\n");
      around.say(WORDS.say("written", list.path()));
    }
    return DONE;
  }

  private CueTrack track(PracticeOptions.Choice choice, long lengthNanos) throws BadInputException {
    PracticePlan plan = choice.plan(countInNanos(), lengthNanos, 0);
    try {
      return fault == TraineeFault.NONE
          ? new CueTrack(withChecks(CueSchedule.of(plan)), rate, SoundLevels.defaults())
          : CueTrack.replay(faulty(choice, plan), rate, SoundLevels.defaults());
    } catch (IllegalArgumentException e) {
      throw BadInputException.fault("--minutes", "", e.getMessage());
    }
  }

  /** Silence while each check is made; a newborn's breaths go on meanwhile. */
  private static CueSchedule withChecks(CueSchedule schedule) {
    CueSchedule checked = schedule;
    if (schedule.plan().guidance().patient().isJudgedByHeartRate()) {
      return checked;
    }
    long from = 0;
    while (true) {
      long end = checked.endNanos().orElse(0);
      Optional<Cue> due =
          checked.between(from, end).stream()
              .filter(cue -> cue.kind() == CueKind.PULSE_CHECK_DUE)
              .findFirst();
      if (due.isEmpty()) {
        return checked;
      }
      long at = due.get().atNanos();
      long until = at + schedule.plan().guidance().limits().pulseCheckLongest().nanos();
      checked =
          checked
              .with(new Control(at, Control.Kind.PULSE_CHECK))
              .with(new Control(until, Control.Kind.PULSE_CHECK_END));
      from = until + 1;
    }
  }

  /** A practice by a made-up trainee with the fault: prompts, and what is done, as sounds. */
  private Session faulty(PracticeOptions.Choice choice, PracticePlan plan) {
    SessionHeader header =
        new SessionHeader(Instant.EPOCH, SessionHeader.Origin.VIRTUAL, "", choice.protocol(), plan);
    List<SessionEvent> events = new ArrayList<>();
    Coach coach = new Coach(plan, Journal.to(events::add), List.of());
    new VirtualTrainee(1, fault).practise(coach, new ManualClock());
    return new Session(header, events, List.of());
  }

  private long countInNanos() {
    return noCountIn ? 0 : COUNT_IN_NANOS;
  }

  private DoubleConsumer progress(long lengthNanos) {
    if (lengthNanos < LONG_NANOS) {
      return done -> {};
    }
    int[] told = {0};
    return done -> {
      int tenths = (int) (done * 10);
      if (tenths > told[0]) {
        told[0] = tenths;
        around.say(WORDS.say("progress", String.format(Locale.ROOT, "%3d", tenths * 10)));
      }
    };
  }

  private Map<String, Object> tree(CueTrack track) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("sampleRate", track.rate());
    json.put("firstPromptAtSeconds", Quantities.exactSeconds(countInNanos()));
    json.put("cues", track.cues().stream().map(RenderCommand::tree).toList());
    return json;
  }

  private static Map<String, Object> tree(CueTrack.Expected cue) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("atSeconds", Quantities.exactSeconds(cue.atNanos()));
    json.put("kind", cue.kind().id());
    json.put("count", cue.count());
    json.put("frame", cue.frame());
    return json;
  }
}
