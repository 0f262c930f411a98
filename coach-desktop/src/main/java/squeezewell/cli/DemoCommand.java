package squeezewell.cli;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import squeezewell.coach.Coach;
import squeezewell.coach.ScriptedFinding;
import squeezewell.coach.TraineeFault;
import squeezewell.coach.VirtualTrainee;
import squeezewell.cue.PracticePlan;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.words.Wording;

/** A practice by a virtual trainee, faster than time, then its debrief. */
@Command(name = "demo")
final class DemoCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(DemoCommand.class);
  private static final int USUAL_MINUTES = 5;
  private static final Pattern FOUND = Pattern.compile("(\\d{1,5}(?:\\.\\d{1,3})?)=([a-z-]+)");

  @Mixin PracticeOptions practice = new PracticeOptions();
  @Mixin PromptsOption prompts = new PromptsOption();
  @Mixin HomeOption home = new HomeOption();

  @Option(names = "--seed", paramLabel = "N", converter = OptionTypes.Seed.class)
  long seed = 1;

  @Option(names = "--fault", paramLabel = "NAME")
  TraineeFault fault = TraineeFault.NONE;

  @Option(names = "--found", paramLabel = "SECONDS=WORD")
  List<String> found = new ArrayList<>();

  @Option(names = "--json")
  boolean json;

  @Override
  Object[] footerValues() {
    return new Object[] {
      CAUTION,
      lines(TraineeFault.values(), f -> String.format("  %-15s%s", f.id(), f.meaning())),
      lines(PatientChange.values(), f -> String.format("  %-18s%s", f.word(), f.label()))
    };
  }

  private static <T> String lines(T[] choices, Function<T, String> line) {
    return Arrays.stream(choices).map(line).collect(Collectors.joining("\n"));
  }

  @Override
  public Integer call() throws BadInputException, IOException, CommandFailedException {
    PracticeOptions.Choice choice = practice.choice(ProtocolStore.read(home.home()), around::say);
    List<ScriptedFinding> script = script(choice.guidance().patient());
    PracticePlan plan = prompts.in(choice.plan(0, practice.lengthNanos(USUAL_MINUTES), 0));
    Instant now = around.wallClock().instant().truncatedTo(ChronoUnit.MILLIS);
    SessionHeader header =
        new SessionHeader(
            now,
            SessionHeader.Origin.VIRTUAL,
            WORDS.say("demo.trainee", seed, fault.id()),
            choice.protocol(),
            plan);
    VirtualTrainee trainee = new VirtualTrainee(seed, fault);
    if (json) {
      around.say(WORDS.say("demo.notice", seed, fault.id()));
    } else {
      around.print(WORDS.say("demo.notice.who", seed, fault.id(), fault.meaning()));
    }
    Session session =
        VirtualPractice.run(
            header,
            home,
            around,
            journal -> {
              Coach coach = new Coach(plan, journal, List.of());
              trainee.practise(coach, new ManualClock(), script);
              return coach.state().trouble();
            });
    show(Reviewer.review(session));
    return DONE;
  }

  private List<ScriptedFinding> script(PatientGroup patient) throws BadInputException {
    List<ScriptedFinding> script = new ArrayList<>();
    long last = 0;
    for (String entry : found) {
      ScriptedFinding next = scripted(entry, patient);
      if (next.atNanos() < last) {
        throw BadInputException.notAllowed(
            "--found", "", entry, "a time not before that of the finding before it");
      }
      last = next.atNanos();
      script.add(next);
    }
    return script;
  }

  private static ScriptedFinding scripted(String entry, PatientGroup patient)
      throws BadInputException {
    Matcher parts = FOUND.matcher(entry);
    if (!parts.matches()) {
      throw BadInputException.notAllowed(
          "--found", "", entry, "seconds up to 86400, an equals sign and a word: 60=pulse-lost");
    }
    PatientChange finding =
        OptionTypes.word("--found", parts.group(2), PatientChange.values(), PatientChange::word);
    if (!finding.concerns(patient)) {
      throw BadInputException.notAllowed(
          "--found", "", finding.word(), "what can be found in this patient: " + patient.id());
    }
    long nanos = new BigDecimal(parts.group(1)).movePointRight(9).longValueExact();
    return new ScriptedFinding(nanos, finding);
  }

  private void show(Review review) {
    if (!json) {
      TextRibbon ribbon = new TextRibbon(review, around.showsBlocks());
      if (around.console()) {
        ribbon.play(around);
      } else {
        around.print(ribbon.text());
      }
      around.print("");
    }
    around.print(review, json);
  }
}
