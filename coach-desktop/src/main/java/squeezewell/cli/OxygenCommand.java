package squeezewell.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;
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
import squeezewell.report.Caution;
import squeezewell.words.Wording;

/** How long an oxygen cylinder lasts. */
@Command(name = "oxygen")
final class OxygenCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(OxygenCommand.class);

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

  @Override
  public Integer call() throws BadInputException {
    EquipmentLibrary kit = EquipmentReader.builtIn();
    Cylinder chosen = chosen(kit);
    Pressure gauge = Pressure.read("--pressure", pressure);
    Pressure kept = reserve.isEmpty() ? kit.reserve() : Pressure.read("--reserve", reserve);
    OxygenSupply supply = new OxygenSupply(chosen, gauge, kept);
    Flow rate = flow.isEmpty() ? kit.bagFlow() : Flow.read("--flow", flow);
    if (json) {
      around.printJson(JsonText.of(tree(supply, rate)));
    } else {
      print(kit, supply, rate);
    }
    return DONE;
  }

  private Cylinder chosen(EquipmentLibrary kit) throws BadInputException {
    Map<String, String> ways = new LinkedHashMap<>();
    ways.put("--cylinder", cylinder);
    ways.put("--water-litres", waterLitres);
    ways.put("--factor", factor);
    ways.put("--contents", contents);
    ways.values().removeIf(String::isEmpty);
    if (ways.size() != 1) {
      throw BadInputException.fault(
          ways.isEmpty() ? "oxygen" : String.join(", ", ways.keySet()),
          "",
          "allowed: exactly one of --cylinder, --water-litres, --factor, --contents");
    }
    if (contents.isEmpty() != fullPressure.isEmpty()) {
      throw contents.isEmpty()
          ? BadInputException.fault("--full-pressure", "", "allowed: only with --contents")
          : BadInputException.missing(
              "--full-pressure", "", "the pressure when full, with its unit");
    }
    return switch (ways.keySet().iterator().next()) {
      case "--cylinder" -> kit.cylinder("--cylinder", cylinder);
      case "--water-litres" -> Cylinder.ofWaterVolume("--water-litres", waterLitres);
      case "--factor" -> Cylinder.ofFactor("--factor", factor);
      default -> Cylinder.ofContents("--contents", contents, "--full-pressure", fullPressure);
    };
  }

  private void print(EquipmentLibrary kit, OxygenSupply supply, Flow rate) {
    String kept =
        reserve.isEmpty() ? kit.reserve().in(PressureUnit.PSI, 1) + " psi" : reserve.trim();
    String key = supply.atReserve() ? "oxygen.at-reserve" : "oxygen.minutes";
    around.print(WORDS.say(key, supply.wholeMinutesAt(rate), rate));
    line("oxygen.cylinder", supply.cylinder().label());
    line("oxygen.gauge", pressure.trim(), kept);
    line("oxygen.litres", plain(supply.usableLitres(), 1), plain(supply.litres(), 1));
    line("oxygen.rule", supply.cylinder().rule());
    line("oxygen.exact", plain(supply.minutesAt(rate), 2));
    line("oxygen.source", supply.cylinder().source().line());
    if (reserve.isEmpty()) {
      line("oxygen.reserve", kit.reserveSource().line());
    }
    if (flow.isEmpty()) {
      line("oxygen.flow", kit.bagFlowSource().line());
    }
    if (supply.isImplausible()) {
      line("oxygen.implausible");
    }
    around.print("");
    around.print(WORDS.say("oxygen.caution", Caution.TEXT), "");
  }

  private void line(String key, Object... values) {
    around.print(WORDS.say(key, values), "  ");
  }

  private static Map<String, Object> tree(OxygenSupply supply, Flow rate) {
    Cylinder cylinder = supply.cylinder();
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("cylinder", cylinder.id());
    json.put("label", cylinder.label());
    json.put("pressure", tree(supply.gauge()));
    json.put("reserve", tree(supply.reserve()));
    json.put("flowLitresPerMinute", rate.litresPerMinute());
    json.put("minutes", supply.minutesAt(rate));
    json.put("wholeMinutes", supply.wholeMinutesAt(rate));
    json.put("litres", supply.usableLitres());
    json.put("litresInCylinder", supply.litres());
    json.put("atReserve", supply.atReserve());
    json.put("implausible", supply.isImplausible());
    json.put("rule", cylinder.rule());
    json.put("source", cylinder.source().document());
    json.put("confidence", cylinder.source().confidence().id());
    json.put("caution", WORDS.say("oxygen.caution.short", Caution.TEXT));
    return json;
  }

  private static Map<String, Object> tree(Pressure pressure) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("psi", pressure.in(PressureUnit.PSI, 3));
    json.put("bar", pressure.in(PressureUnit.BAR, 3));
    return json;
  }

  /** Rounded down, so that it never says more than there is. */
  private static String plain(BigDecimal number, int decimals) {
    BigDecimal bare = number.setScale(decimals, RoundingMode.DOWN).stripTrailingZeros();
    return (bare.scale() < 0 ? bare.setScale(0) : bare).toPlainString();
  }
}
