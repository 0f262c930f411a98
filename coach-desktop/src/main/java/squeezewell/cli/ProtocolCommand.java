package squeezewell.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
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
@Command(
    name = "protocol",
    synopsisSubcommandLabel = "(list | show | copy | check)",
    subcommands = {
      ProtocolCommand.ListCommand.class,
      ProtocolShowCommand.class,
      ProtocolCopyCommand.class,
      ProtocolCommand.CheckCommand.class
    })
final class ProtocolCommand extends CliCommand.Group {
  private static final Wording WORDS = Wording.beside(ProtocolCommand.class);

  /** {@code protocol list}. */
  @Command(name = "list")
  static final class ListCommand extends CliCommand {
    @Mixin HomeOption home = new HomeOption();

    @Option(names = "--json")
    boolean json;

    @Override
    public Integer call() throws BadInputException {
      ProtocolStore store = ProtocolStore.read(home.home());
      if (json) {
        around.printJson(JsonText.of(tree(store)));
        return DONE;
      }
      for (Protocol protocol : store.protocols()) {
        String key = protocol.local() ? "edition.row.local" : "edition.row";
        around.print(WORDS.say(key, values(protocol)));
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
      store.problems().forEach(problem -> around.say(WORDS.say("left-out", problem)));
      return DONE;
    }

    private static Map<String, Object> tree(ProtocolStore store) {
      List<Object> protocols = new ArrayList<>();
      for (Protocol protocol : store.protocols()) {
        Map<String, Object> json = ProtocolJson.head(protocol, store.baseOf(protocol));
        json.put("situations", protocol.guidance().stream().map(ListCommand::situation).toList());
        protocols.add(json);
      }
      Map<String, Object> json = new LinkedHashMap<>();
      json.put("protocols", protocols);
      json.put("problems", store.problems());
      return json;
    }

    private static Map<String, Object> situation(Guidance guidance) {
      Map<String, Object> json = new LinkedHashMap<>();
      json.put("patient", guidance.patient().id());
      json.put("situation", guidance.situation().id());
      return json;
    }
  }

  /** {@code protocol check}. */
  @Command(name = "check")
  static final class CheckCommand extends CliCommand {
    @Parameters(paramLabel = "FILE", descriptionKey = "FILE")
    String file = "";

    @Override
    public Integer call() throws BadInputException {
      ProtocolReader.Checked checked = ProtocolReader.checkFile(OutputFile.path("FILE", file));
      if (checked.protocol().isEmpty()) {
        List<BadInputException> faults = checked.faults();
        faults.forEach(fault -> around.say("squeezewell: " + fault.getMessage()));
        if (faults.size() > 1) {
          String key = faults.size() == Faults.MOST ? "faults.cut" : "faults";
          around.say(WORDS.say(key, faults.size()));
        }
      }
      checked.unknown().forEach(note -> around.say(WORDS.say("note", note)));
      if (checked.protocol().isEmpty()) {
        return BAD_INPUT;
      }
      Protocol protocol = checked.protocol().get();
      around.print(WORDS.say("good", file));
      around.print("  " + WORDS.say("edition.checked", values(protocol)));
      for (Guidance guidance : protocol.guidance()) {
        around.print("  " + guidance.patient().id() + " " + guidance.situation().id());
      }
      if (protocol.local() || !protocol.basedOn().isEmpty()) {
        Protocol local = protocol.asLocal();
        LocalLabel.of(local, GuidelineLibrary.baseOf(local)).ifPresent(this::label);
      }
      return DONE;
    }

    private void label(LocalLabel label) {
      around.print(label.origin(), "  ");
      label.differences().forEach(difference -> around.print("- " + difference, "  "));
    }
  }

  /** An edition in one line: identifier, title, organisation, year. */
  static Object[] values(Protocol protocol) {
    return new Object[] {protocol.id(), protocol.title(), protocol.organisation(), protocol.year()};
  }
}
