package squeezewell.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import squeezewell.input.BadInputException;
import squeezewell.kit.Cylinder;
import squeezewell.kit.Flow;
import squeezewell.kit.KitLibrary;
import squeezewell.kit.OxygenSupply;
import squeezewell.kit.Pressure;
import squeezewell.kit.PressureUnit;
import squeezewell.report.Caution;

/** How long an oxygen cylinder lasts. */
@Command(
    name = "oxygen",
    description = {
      "Work out how long an oxygen cylinder lasts at a flow, down to a reserve.",
      "Say what the cylinder is in one of four ways, then its pressure and flow."
    },
    footer = {
      "",
      "Pressures carry their unit: psi, bar, kPa or MPa.",
      "For example: oxygen --cylinder E --pressure 1200psi --flow 4",
      "             oxygen --water-litres 2 --pressure 137bar --flow 15",
      "",
      "A planning value, never a promise: gauges and flows are approximate.",
      Caution.LINE_1,
      Caution.LINE_2,
      Caution.LINE_3
    })
final class OxygenCommand extends CliCommand {
  @Option(
      names = "--cylinder",
      paramLabel = "SIZE",
      description = "A size: D, E, M, G, H or K (United States), UK-D, UK-CD, UK-E or UK-F.")
  String cylinder = "";

  @Option(
      names = "--water-litres",
      paramLabel = "L",
      description = "Or its water volume in litres, stamped on it.")
  String waterLitres = "";

  @Option(
      names = "--factor",
      paramLabel = "F",
      description = "Or its own factor in litres for each psi.")
  String factor = "";

  @Option(
      names = "--contents",
      paramLabel = "L",
      description = "Or its litres of gas when full, with --full-pressure.")
  String contents = "";

  @Option(
      names = "--full-pressure",
      paramLabel = "P",
      description = "Gauge pressure at which it is full.")
  String fullPressure = "";

  @Option(
      names = "--pressure",
      paramLabel = "P",
      required = true,
      description = "What the gauge shows, such as 1200psi or 137bar.")
  String pressure = "";

  @Option(
      names = "--flow",
      paramLabel = "F",
      description = "Flow in L/min, 0.01 to 200. Without it 15, usual for a bag.")
  String flow = "";

  @Option(
      names = "--reserve",
      paramLabel = "P",
      description = "Pressure kept back. Without it 200psi.")
  String reserve = "";

  @Option(names = "--json", description = "Print JSON for a program to read.")
  boolean json;

  OxygenCommand(Surroundings around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException {
    KitLibrary kit = KitLibrary.builtIn();
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
      around.out().println(JsonText.of(text::write));
    } else {
      around.print(text.lines());
    }
    return DONE;
  }

  private Cylinder chosen(KitLibrary kit) throws BadInputException {
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
