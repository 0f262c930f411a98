package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

/** {@code protocol show}: one edition in full, or several side by side. */
@Command(
    name = "show",
    description = {
      "Show an edition: every value with its source.",
      "Several are shown side by side; \"Changed\" says what the edition before",
      "asked for, among those shown and by the same organisation."
    })
final class ProtocolShowCommand extends CliCommand {
  @Mixin HomeOption home = new HomeOption();

  @Parameters(
      arity = "0..*",
      paramLabel = "ID",
      description = "Which edition or editions, such as aha-2020 aha-2025.")
  List<String> ids = new ArrayList<>();

  @Option(names = "--all", description = "All editions, the local ones too.")
  boolean all;

  @Option(
      names = "--patient",
      paramLabel = "GROUP",
      description = "Only for adult, child, infant or newborn.")
  String patient = "";

  @Option(
      names = "--situation",
      paramLabel = "NAME",
      description =
          "Only pulse-no-breathing, pulse-slow-breathing, arrest-no-advanced-airway,"
              + " arrest-advanced-airway or newborn-ventilation.")
  String situation = "";

  @Option(
      names = "--json",
      description =
          "Print JSON for a program to read: an object for one ID, an array for several and for"
              + " --all.")
  boolean json;

  ProtocolShowCommand(Surroundings around) {
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
      around.out().println(JsonText.of(writer -> write(writer, shown, store, one)));
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
        around.say("left out: " + problem);
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
    Optional<PatientGroup> group =
        patient.isEmpty()
            ? Optional.empty()
            : Optional.of(
                PracticeOptions.word(
                    "--patient", patient, PatientGroup.values(), PatientGroup::id));
    Optional<Situation> found =
        situation.isEmpty()
            ? Optional.empty()
            : Optional.of(
                PracticeOptions.word("--situation", situation, Situation.values(), Situation::id));
    List<Protocol> filtered =
        chosen.stream().map(p -> only(p, group, found)).collect(Collectors.toList());
    if (filtered.stream().allMatch(p -> p.guidance().isEmpty())) {
      throw BadInputException.notAllowed(
          found.isPresent() ? "--situation" : "--patient",
          "",
          found.map(Situation::id).orElse(patient)
              + (found.isPresent() && group.isPresent() ? " for " + patient : ""),
          "what these editions cover; see: protocol list");
    }
    return filtered;
  }

  private static Protocol only(
      Protocol protocol, Optional<PatientGroup> group, Optional<Situation> found) {
    List<Guidance> guidance =
        protocol.guidance().stream()
            .filter(g -> group.isEmpty() || g.patient() == group.get())
            .filter(g -> found.isEmpty() || g.situation() == found.get())
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
