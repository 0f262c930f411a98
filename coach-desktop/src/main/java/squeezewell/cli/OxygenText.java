package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import squeezewell.kit.Flow;
import squeezewell.kit.OxygenSupply;
import squeezewell.kit.Pressure;
import squeezewell.kit.PressureUnit;
import squeezewell.report.Caution;

/**
 * What is said about a cylinder.
 *
 * @param supply the cylinder with its pressures
 * @param flow how fast it runs
 * @param gaugeWritten the gauge pressure as it was written
 * @param reserveWritten the reserve as it was written
 * @param reserveSource where the reserve comes from; empty if a person gave it
 * @param flowSource where the flow comes from; empty if a person gave it
 */
record OxygenText(
    OxygenSupply supply,
    Flow flow,
    String gaugeWritten,
    String reserveWritten,
    String reserveSource,
    String flowSource) {
  private static final int WIDTH = 78;

  /** For people. */
  String lines() {
    StringBuilder text = new StringBuilder();
    long whole = supply.wholeMinutesAt(flow);
    text.append(whole == 1 ? "1 minute" : whole + " minutes")
        .append(" at ")
        .append(flow)
        .append(supply.atReserve() ? ": the gauge shows no more than the reserve" : "")
        .append('\n');
    line(text, "cylinder: " + supply.cylinder().label());
    line(text, "gauge " + gaugeWritten + ", kept back " + reserveWritten);
    line(
        text,
        "above the reserve "
            + plain(supply.usableLitres(), 1)
            + " L, in the cylinder "
            + plain(supply.litres(), 1)
            + " L");
    line(text, "rule: minutes = " + supply.cylinder().rule());
    line(
        text,
        "worked out: " + plain(supply.minutesAt(flow), 2) + " minutes, rounded down to whole ones");
    line(text, "source: " + supply.cylinder().source().line());
    if (!reserveSource.isEmpty()) {
      line(text, "reserve: " + reserveSource);
    }
    if (!flowSource.isEmpty()) {
      line(text, "flow: " + flowSource);
    }
    if (supply.isImplausible()) {
      line(text, "Check the size and the unit: that is more than such a cylinder holds.");
    }
    text.append('\n');
    text.append(
        TextWrap.wrap(
            "A planning value, never a promise: gauges and flows are approximate. Change the"
                + " cylinder in good time. "
                + Caution.TEXT,
            WIDTH,
            ""));
    return text.toString();
  }

  /** For a program. */
  void write(JsonWriter json) throws IOException {
    json.beginObject();
    json.name("cylinder").value(supply.cylinder().id());
    json.name("label").value(supply.cylinder().label());
    pressure(json, "pressure", supply.gauge());
    pressure(json, "reserve", supply.reserve());
    json.name("flowLitresPerMinute").value(flow.litresPerMinute());
    json.name("minutes").value(supply.minutesAt(flow));
    json.name("wholeMinutes").value(supply.wholeMinutesAt(flow));
    json.name("litres").value(supply.usableLitres());
    json.name("litresInCylinder").value(supply.litres());
    json.name("atReserve").value(supply.atReserve());
    json.name("implausible").value(supply.isImplausible());
    json.name("rule").value(supply.cylinder().rule());
    json.name("source").value(supply.cylinder().source().document());
    json.name("confidence").value(supply.cylinder().source().confidence().id());
    json.name("caution").value("A planning value, never a promise. " + Caution.TEXT);
    json.endObject();
  }

  private static void pressure(JsonWriter json, String name, Pressure pressure) throws IOException {
    json.name(name).beginObject();
    json.name("psi").value(pressure.in(PressureUnit.PSI, 3));
    json.name("bar").value(pressure.in(PressureUnit.BAR, 3));
    json.endObject();
  }

  private static void line(StringBuilder text, String words) {
    text.append(TextWrap.wrap(words, WIDTH, "  ")).append('\n');
  }

  /** Rounded down, so that it never says more than there is. */
  private static String plain(BigDecimal number, int decimals) {
    BigDecimal bare = number.setScale(decimals, RoundingMode.DOWN).stripTrailingZeros();
    return (bare.scale() < 0 ? bare.setScale(0) : bare).toPlainString();
  }
}
