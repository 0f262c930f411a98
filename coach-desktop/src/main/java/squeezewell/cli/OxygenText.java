package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import squeezewell.equipment.Flow;
import squeezewell.equipment.OxygenSupply;
import squeezewell.equipment.Pressure;
import squeezewell.equipment.PressureUnit;
import squeezewell.report.Caution;
import squeezewell.words.Wording;

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
  private static final Wording WORDS = Wording.beside(OxygenText.class);
  private static final int WIDTH = 78;

  /** For people. */
  String lines() {
    StringBuilder text = new StringBuilder();
    long whole = supply.wholeMinutesAt(flow);
    text.append(WORDS.say(supply.atReserve() ? "oxygen.at-reserve" : "oxygen.minutes", whole, flow))
        .append('\n');
    line(text, WORDS.say("oxygen.cylinder", supply.cylinder().label()));
    line(text, WORDS.say("oxygen.gauge", gaugeWritten, reserveWritten));
    line(
        text,
        WORDS.say("oxygen.litres", plain(supply.usableLitres(), 1), plain(supply.litres(), 1)));
    line(text, WORDS.say("oxygen.rule", supply.cylinder().rule()));
    line(text, WORDS.say("oxygen.exact", plain(supply.minutesAt(flow), 2)));
    line(text, WORDS.say("oxygen.source", supply.cylinder().source().line()));
    if (!reserveSource.isEmpty()) {
      line(text, WORDS.say("oxygen.reserve", reserveSource));
    }
    if (!flowSource.isEmpty()) {
      line(text, WORDS.say("oxygen.flow", flowSource));
    }
    if (supply.isImplausible()) {
      line(text, WORDS.say("oxygen.implausible"));
    }
    text.append('\n').append(TextWrap.wrap(WORDS.say("oxygen.caution", Caution.TEXT), WIDTH, ""));
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
    json.name("caution").value(WORDS.say("oxygen.caution.short", Caution.TEXT));
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
