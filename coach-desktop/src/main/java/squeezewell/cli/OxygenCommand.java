package squeezewell.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import squeezewell.equipment.Cylinder;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.EquipmentReader;
import squeezewell.equipment.Flow;
import squeezewell.equipment.OxygenSupply;
import squeezewell.equipment.Pressure;
import squeezewell.equipment.PressureUnit;
import squeezewell.input.BadInputException;

/** How long an oxygen cylinder lasts. */
@Command(name = "oxygen")
final class OxygenCommand extends CliCommand {
  @Option(names = "--cylinder", paramLabel = "SIZE")
  String cylinder = "";

  @Option(names = "--water-litres", paramLabel = "L")
  String waterLitres = "";

  @Option(names = "--factor", paramLabel = "F")
  String factor = "";

  @Option(names = "--contents", paramLabel = "L")
  String contents = "";

  @Option(names = "--full-pressure", paramLabel = "P")
  String fullPressure = "";

  @Option(names = "--pressure", paramLabel = "P", required = true)
  String pressure = "";

  @Option(names = "--flow", paramLabel = "F")
  String flow = "";

  @Option(names = "--reserve", paramLabel = "P")
  String reserve = "";

  @Option(names = "--json")
  boolean json;

  OxygenCommand(CliContext around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException {
    EquipmentLibrary kit = EquipmentReader.builtIn();
    Cylinder chosen = chosen(kit);
    Pressure gauge = Pressure.read("--pressure", pressure);
    Pressure kept = reserve.isEmpty() ? kit.reserve() : Pressure.read("--reserve", reserve);
    OxygenText text =
        new OxygenText(
            new OxygenSupply(chosen, gauge, kept),
            flow.isEmpty() ? kit.bagFlow() : Flow.read("--flow", flow),
            pressure.trim(),
            reserve.isEmpty() ? kit.reserve().in(PressureUnit.PSI, 1) + " psi" : reserve.trim(),
            reserve.isEmpty() ? kit.reserveSource().line() : "",
            flow.isEmpty() ? kit.bagFlowSource().line() : "");
    if (json) {
      around.printJson(text::write);
    } else {
      around.print(text.lines());
    }
    return DONE;
  }

  private Cylinder chosen(EquipmentLibrary kit) throws BadInputException {
    List<String> given = new ArrayList<>();
    for (String[] each :
        new String[][] {
          {"--cylinder", cylinder},
          {"--water-litres", waterLitres},
          {"--factor", factor},
          {"--contents", contents}
        }) {
      if (!each[1].isEmpty()) {
        given.add(each[0]);
      }
    }
    if (given.size() != 1) {
      throw BadInputException.fault(
          given.isEmpty() ? "oxygen" : String.join(", ", given),
          "",
          "allowed: exactly one of --cylinder, --water-litres, --factor, --contents");
    }
    if (contents.isEmpty() != fullPressure.isEmpty()) {
      throw contents.isEmpty()
          ? BadInputException.fault("--full-pressure", "", "allowed: only with --contents")
          : BadInputException.missing(
              "--full-pressure", "", "the pressure when full, with its unit");
    }
    return switch (given.get(0)) {
      case "--cylinder" -> kit.cylinder("--cylinder", cylinder);
      case "--water-litres" -> Cylinder.ofWaterVolume("--water-litres", waterLitres);
      case "--factor" -> Cylinder.ofFactor("--factor", factor);
      default -> Cylinder.ofContents("--contents", contents, "--full-pressure", fullPressure);
    };
  }
}
