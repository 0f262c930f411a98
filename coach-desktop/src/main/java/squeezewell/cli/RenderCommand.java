package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

  RenderCommand(CliContext around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException, IOException {
    if (out.isEmpty() && cues.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "render needs a file to write: --out FILE or --cues FILE or both");
    }
    PracticeOptions.Choice choice = practice.choice(ProtocolStore.read(home.home()), around::say);
    long lengthNanos = practice.lengthNanos(USUAL_MINUTES);
    CueTrack track = track(choice, lengthNanos);
    Optional<OutputFile> sound = file("--out", out);
    Optional<OutputFile> list = file("--cues", cues);
    if (sound.isPresent() && list.isPresent()) {
      sound.get().mustDifferFrom("--cues", list.get().path());
    }
    if (sound.isPresent()) {
      track.write(sound.get().path(), force, progress(lengthNanos));
      around.say(WORDS.say("written", sound.get().path()));
    }
    if (list.isPresent()) {
      long zero = noCountIn ? 0 : COUNT_IN_NANOS;
      list.get().write(JsonText.of(json -> write(json, track, zero)) + "\n");
      around.say(WORDS.say("written", list.get().path()));
    }
    return DONE;
  }

  private CueTrack track(PracticeOptions.Choice choice, long lengthNanos) throws BadInputException {
    PracticePlan plan = PracticeOptions.plan(choice, noCountIn ? 0 : COUNT_IN_NANOS, lengthNanos);
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

  private Optional<OutputFile> file(String option, String text) throws BadInputException {
    return text.isEmpty() ? Optional.empty() : Optional.of(OutputFile.of(option, text, force));
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

  private static void write(JsonWriter json, CueTrack track, long zero) throws IOException {
    json.beginObject();
    json.name("sampleRate").value(track.rate());
    json.name("firstPromptAtSeconds").jsonValue(Quantities.exactSeconds(zero).toPlainString());
    json.name("cues").beginArray();
    for (CueTrack.Expected cue : track.cues()) {
      json.beginObject();
      json.name("atSeconds").jsonValue(Quantities.exactSeconds(cue.atNanos()).toPlainString());
      json.name("kind").value(cue.kind().id());
      json.name("count").value(cue.count());
      json.name("frame").value(cue.frame());
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }
}
