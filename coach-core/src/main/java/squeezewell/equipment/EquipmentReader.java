package squeezewell.equipment;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import squeezewell.input.BadInputException;
import squeezewell.input.Json;
import squeezewell.input.JsonValue;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Confidence;

/** Reads the file on kit. */
public final class EquipmentReader {
  private static final String FILE = "kit.json";
  private static final BigDecimal LEAST = new BigDecimal("0.01");
  private static final BigDecimal MOST = new BigDecimal("100000");
  private static final int LONGEST_WORDS = 300;

  private final JsonValue top;
  private final JsonValue sources;

  private EquipmentReader(JsonValue top) throws BadInputException {
    this.top = top;
    this.sources = top.field("sources", "an object of named sources");
  }

  /**
   * The library that comes with the program.
   *
   * @throws IllegalStateException if the program's own file is damaged
   */
  public static EquipmentLibrary builtIn() {
    InputStream stream =
        Objects.requireNonNull(EquipmentReader.class.getResourceAsStream(FILE), FILE);
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
      String text = reader.lines().collect(Collectors.joining("\n"));
      return read(Json.readText(FILE, text));
    } catch (IOException | BadInputException e) {
      throw new IllegalStateException("the built-in file on kit is damaged", e);
    }
  }

  static EquipmentLibrary read(JsonValue top) throws BadInputException {
    top.choice("format", List.of("squeezewell-kit"), f -> f);
    top.integer("version", 1, 1);
    return new EquipmentReader(top).library();
  }

  private EquipmentLibrary library() throws BadInputException {
    JsonValue reserve = top.field("reserve", "a pressure with its source");
    reserve.choice("unit", List.of("psi"), u -> u);
    BigDecimal psi = reserve.number("value", BigDecimal.ZERO, new BigDecimal("3000"), "psi");
    JsonValue bagFlow = top.field("bagFlow", "a flow with its source");
    bagFlow.choice("unit", List.of("L/min"), u -> u);
    return new EquipmentLibrary(
        Pressure.of(reserve.source(), psi, PressureUnit.PSI),
        citation(reserve),
        Flow.of(
            bagFlow.source(),
            bagFlow.number("value", BigDecimal.ONE, new BigDecimal("60"), "L/min")),
        citation(bagFlow),
        cylinders(),
        volumes(),
        oralAirways(),
        sizes(),
        checkList());
  }

  private List<Cylinder> cylinders() throws BadInputException {
    List<Cylinder> all = new ArrayList<>();
    for (JsonValue each : top.list("cylinders", 1, "a list of cylinders")) {
      String id = each.text("id", 10);
      String label = each.text("label", 60);
      all.add(
          each.has("litresPerPsi")
              ? Cylinder.byFactor(
                  id,
                  label,
                  each.number("litresPerPsi", LEAST, MOST, "L/psi"),
                  each.number("fullestLitres", LEAST, MOST, "L"),
                  citation(each))
              : Cylinder.byContents(
                  id,
                  label,
                  each.number("contentsLitres", LEAST, MOST, "L"),
                  Pressure.of(
                      each.source(),
                      each.number("fullBar", BigDecimal.ONE, new BigDecimal("500"), "bar"),
                      PressureUnit.BAR),
                  citation(each)));
    }
    return all;
  }

  private static final BigDecimal HEAVIEST = BigDecimal.valueOf(400);

  private List<VolumeRule> volumes() throws BadInputException {
    List<VolumeRule> all = new ArrayList<>();
    BigDecimal most = new BigDecimal("20");
    for (JsonValue each : top.list("volumes", 1, "a list of rules for breaths")) {
      each.choice("unit", List.of("mL/kg"), u -> u);
      BigDecimal low = each.number("low", BigDecimal.ONE, most, "mL/kg");
      all.add(
          new VolumeRule(
              each.text("id", 30),
              each.text("label", 60),
              low,
              each.number("high", low, most, "mL/kg"),
              each.number("lightest", BigDecimal.valueOf(0.2), HEAVIEST, "kg"),
              each.number("heaviest", BigDecimal.valueOf(0.2), HEAVIEST, "kg"),
              citation(each)));
    }
    return all;
  }

  private OralAirways oralAirways() throws BadInputException {
    JsonValue value = top.field("oralAirways", "shortest, longest and step in mm");
    value.choice("unit", List.of("mm"), u -> u);
    return new OralAirways(
        (int) value.integer("shortest", 10, 200),
        (int) value.integer("longest", 10, 200),
        (int) value.integer("step", 1, 50),
        citation(value));
  }

  private List<Advice> sizes() throws BadInputException {
    List<Advice> all = new ArrayList<>();
    for (JsonValue each : top.list("sizes", 1, "a list of advice")) {
      all.add(
          new Advice(
              each.text("topic", 60),
              each.text("name", 60),
              each.text("words", LONGEST_WORDS),
              citation(each)));
    }
    return all;
  }

  private List<CheckItem> checkList() throws BadInputException {
    List<CheckItem> all = new ArrayList<>();
    for (JsonValue each : top.list("checkList", 1, "a list of things to have ready")) {
      all.add(
          new CheckItem(
              each.text("group", 60),
              each.text("item", 60),
              each.text("why", LONGEST_WORDS),
              citation(each)));
    }
    return all;
  }

  private Citation citation(JsonValue value) throws BadInputException {
    JsonValue source =
        sources.field(
            value.text("source", 60), "an object with organisation, title, year, section");
    return new Citation(
        source.text("organisation", 120),
        source.text("title", 300),
        (int) source.integer("year", 1950, 2100),
        source.text("section", 300),
        value.choice("confidence", List.of(Confidence.values()), Confidence::id));
  }
}
