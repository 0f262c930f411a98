package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolReader;

/** The guideline library. */
@Command(
    name = "protocol",
    description = "The guideline library: list and show editions, check a local file.",
    synopsisSubcommandLabel = "(list | show | check)")
final class ProtocolCommand extends CliCommand {
  ProtocolCommand(Surroundings around) {
    super(around);
  }

  @Override
  public Integer call() {
    throw new ParameterException(
        spec.commandLine(), "protocol needs one of these words: list, show, check");
  }

  /** {@code protocol list}. */
  @Command(name = "list", description = "List the editions, and what each of them covers.")
  static final class ListCommand extends CliCommand {
    @Mixin HomeOption home = new HomeOption();

    @Option(names = "--json", description = "Print JSON for a program to read.")
    boolean json;

    ListCommand(Surroundings around) {
      super(around);
    }

    @Override
    public Integer call() throws BadInputException {
      ProtocolStore store = ProtocolStore.read(home.home());
      if (json) {
        around.out().println(JsonText.of(writer -> write(writer, store)));
        return DONE;
      }
      for (Protocol protocol : store.protocols()) {
        around.print(
            protocol.id()
                + "  "
                + protocol.title()
                + ", "
                + protocol.organisation()
                + ", "
                + protocol.year()
                + (protocol.local() ? " (local)" : ""));
        for (PatientGroup group : PatientGroup.values()) {
          String covered =
              protocol.guidance().stream()
                  .filter(g -> g.patient() == group)
                  .map(g -> g.situation().id())
                  .distinct()
                  .collect(Collectors.joining(", "));
          if (!covered.isEmpty()) {
            around.print(TextWrap.wrap(group.id() + ": " + covered, 78, "    "));
          }
        }
      }
      for (String problem : store.problems()) {
        around.say("left out: " + problem);
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
  @Command(
      name = "check",
      description = "Check a protocol file. The first fault is explained, if there is one.")
  static final class CheckCommand extends CliCommand {
    @Parameters(paramLabel = "FILE", description = "The file, format version 1.")
    String file = "";

    CheckCommand(Surroundings around) {
      super(around);
    }

    @Override
    public Integer call() throws BadInputException {
      Protocol protocol = ProtocolReader.readFile(path("FILE", file));
      around.print(file + ": good");
      around.print(
          "  "
              + protocol.id()
              + ", "
              + protocol.title()
              + ", "
              + protocol.organisation()
              + ", "
              + protocol.year());
      for (Guidance guidance : protocol.guidance()) {
        around.print("  " + guidance.patient().id() + " " + guidance.situation().id());
      }
      return DONE;
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
