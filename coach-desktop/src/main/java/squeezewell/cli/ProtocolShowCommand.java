package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
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
import squeezewell.protocol.Situation;
import squeezewell.words.Wording;

/** {@code protocol show}: one edition in full, or several side by side. */
@Command(name = "show")
final class ProtocolShowCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(ProtocolShowCommand.class);
  @Mixin HomeOption home = new HomeOption();

  @Parameters(arity = "0..*", paramLabel = "ID", descriptionKey = "ID")
  List<String> ids = new ArrayList<>();

  @Option(names = "--all")
  boolean all;

  @Option(names = "--patient", paramLabel = "GROUP")
  PatientGroup patient;

  @Option(names = "--situation", paramLabel = "NAME")
  Situation situation;

  @Option(names = "--json")
  boolean json;

  ProtocolShowCommand(CliContext around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException {
    if (all == !ids.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "protocol show needs an ID, several, or --all alone");
    }
    ProtocolStore store = ProtocolStore.read(home.home());
    List<Protocol> shown = filtered(chosen(store));
    boolean one = !all && shown.size() == 1;
    if (json) {
      around.printJson(writer -> write(writer, shown, store, one));
    } else {
      around.print(
          one
              ? ProtocolText.of(shown.get(0), store.baseOf(shown.get(0)))
              : ProtocolTable.of(shown));
    }
    return DONE;
  }

  private List<Protocol> chosen(ProtocolStore store) throws BadInputException {
    if (all) {
      for (String problem : store.problems()) {
        around.say(WORDS.say("left-out", problem));
      }
      return store.protocols();
    }
    List<Protocol> chosen = new ArrayList<>();
    for (String id : ids) {
      Protocol protocol = store.require("protocol show", id);
      if (chosen.contains(protocol)) {
        throw BadInputException.notAllowed("protocol show", "", id, "each edition once");
      }
      chosen.add(protocol);
    }
    return chosen;
  }

  private List<Protocol> filtered(List<Protocol> chosen) throws BadInputException {
    List<Protocol> filtered = chosen.stream().map(p -> only(p)).collect(Collectors.toList());
    if (filtered.stream().allMatch(p -> p.guidance().isEmpty())) {
      String who = patient == null ? "" : patient.id();
      String value = situation == null ? who : situation.id();
      throw BadInputException.notAllowed(
          situation == null ? "--patient" : "--situation",
          "",
          situation == null || patient == null ? value : value + " for " + who,
          "what these editions cover; see: protocol list");
    }
    return filtered;
  }

  private Protocol only(Protocol protocol) {
    List<Guidance> guidance =
        protocol.guidance().stream()
            .filter(g -> patient == null || g.patient() == patient)
            .filter(g -> situation == null || g.situation() == situation)
            .collect(Collectors.toList());
    return protocol.withGuidance(guidance);
  }

  private static void write(
      JsonWriter writer, List<Protocol> shown, ProtocolStore store, boolean one)
      throws IOException {
    if (one) {
      ProtocolJson.write(writer, shown.get(0), store.baseOf(shown.get(0)));
      return;
    }
    writer.beginArray();
    for (Protocol protocol : shown) {
      ProtocolJson.write(writer, protocol, store.baseOf(protocol));
    }
    writer.endArray();
  }
}
