package squeezewell.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
      List<Map<String, Object>> trees =
          shown.stream().map(p -> ProtocolJson.of(p, store.baseOf(p))).toList();
      around.printJson(JsonText.of(one ? trees.get(0) : trees));
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
      store.problems().forEach(problem -> around.say(WORDS.say("left-out", problem)));
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
    List<Protocol> filtered = chosen.stream().map(this::only).toList();
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
            .toList();
    return protocol.withGuidance(guidance);
  }
}
