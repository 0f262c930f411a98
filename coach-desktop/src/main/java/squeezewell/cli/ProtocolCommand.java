package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolReader;
import squeezewell.words.Wording;

/** The guideline library. */
@Command(name = "protocol", synopsisSubcommandLabel = "(list | show | copy | check)")
final class ProtocolCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(ProtocolCommand.class);

  ProtocolCommand(CliContext around) {
    super(around);
  }

  @Override
  public Integer call() {
    throw new ParameterException(
        spec.commandLine(), "protocol needs one of these words: list, show, copy, check");
  }

  /** {@code protocol list}. */
  @Command(name = "list")
  static final class ListCommand extends CliCommand {
    @Mixin HomeOption home = new HomeOption();

    @Option(names = "--json")
    boolean json;

    ListCommand(CliContext around) {
      super(around);
    }

    @Override
    public Integer call() throws BadInputException {
      ProtocolStore store = ProtocolStore.read(home.home());
      if (json) {
        around.printJson(writer -> write(writer, store));
        return DONE;
      }
      for (Protocol protocol : store.protocols()) {
        around.print(
            WORDS.say(
                protocol.local() ? "edition.row.local" : "edition.row",
                protocol.id(),
                protocol.title(),
                protocol.organisation(),
                protocol.year()));
        if (!protocol.supersededBy().isEmpty()) {
          around.print(WORDS.say("edition.superseded", protocol.supersededBy()), "    ");
        }
        LocalLabel.of(protocol, store.baseOf(protocol))
            .ifPresent(label -> around.print(label.origin(), "    "));
        for (PatientGroup group : PatientGroup.values()) {
          String covered =
              protocol.guidance().stream()
                  .filter(g -> g.patient() == group)
                  .map(g -> g.situation().id())
                  .distinct()
                  .collect(Collectors.joining(", "));
          if (!covered.isEmpty()) {
            around.print(WORDS.say("edition.covers", group.id(), covered), "    ");
          }
        }
      }
      for (String problem : store.problems()) {
        around.say(WORDS.say("left-out", problem));
      }
      return DONE;
    }

    private static void write(JsonWriter json, ProtocolStore store) throws IOException {
      json.beginObject();
      json.name("protocols").beginArray();
      for (Protocol protocol : store.protocols()) {
        json.beginObject();
        json.name("id").value(protocol.id());
        json.name("title").value(protocol.title());
        json.name("organisation").value(protocol.organisation());
        json.name("year").value(protocol.year());
        json.name("local").value(protocol.local());
        json.name("supersededBy").value(ProtocolJson.supersededBy(protocol));
        ProtocolJson.local(json, protocol, store.baseOf(protocol));
        json.name("situations").beginArray();
        for (Guidance guidance : protocol.guidance()) {
          json.beginObject();
          json.name("patient").value(guidance.patient().id());
          json.name("situation").value(guidance.situation().id());
          json.endObject();
        }
        json.endArray();
        json.endObject();
      }
      json.endArray();
      json.name("problems").beginArray();
      for (String problem : store.problems()) {
        json.value(problem);
      }
      json.endArray();
      json.endObject();
    }
  }

  /** {@code protocol check}. */
  @Command(name = "check")
  static final class CheckCommand extends CliCommand {
    @Parameters(paramLabel = "FILE", descriptionKey = "FILE")
    String file = "";

    CheckCommand(CliContext around) {
      super(around);
    }

    @Override
    public Integer call() throws BadInputException {
      ProtocolReader.Checked checked = ProtocolReader.checkFile(path("FILE", file));
      int code = checked.protocol().isEmpty() ? explain(checked.faults()) : DONE;
      checked.unknown().forEach(note -> around.say(WORDS.say("note", note)));
      if (code != DONE) {
        return code;
      }
      Protocol protocol = checked.protocol().get();
      around.print(WORDS.say("good", file));
      around.print(
          "  "
              + WORDS.say(
                  "edition.checked",
                  protocol.id(),
                  protocol.title(),
                  protocol.organisation(),
                  protocol.year()));
      for (Guidance guidance : protocol.guidance()) {
        around.print("  " + guidance.patient().id() + " " + guidance.situation().id());
      }
      if (protocol.local() || !protocol.basedOn().isEmpty()) {
        Protocol local = protocol.asLocal();
        LocalLabel.of(local, GuidelineLibrary.baseOf(local)).ifPresent(this::label);
      }
      return DONE;
    }

    private int explain(List<BadInputException> faults) {
      for (BadInputException fault : faults) {
        around.say("squeezewell: " + fault.getMessage());
      }
      if (faults.size() > 1) {
        boolean cut = faults.size() == Faults.MOST;
        around.say(WORDS.say(cut ? "faults.cut" : "faults", faults.size()));
      }
      return BAD_INPUT;
    }

    private void label(LocalLabel label) {
      around.print(label.origin(), "  ");
      for (String difference : label.differences()) {
        around.print("- " + difference, "  ");
      }
    }
  }

  /** A path that a person wrote. */
  static Path path(String option, String text) throws BadInputException {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw BadInputException.notAllowed(option, "", text, "a path on this system");
    }
  }
}
