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
  private static final BigDecimal LIGHTEST = new BigDecimal("0.2");
  private static final BigDecimal HEAVIEST = new BigDecimal("400");
  private static final BigDecimal LARGEST_BREATH = new BigDecimal("20");
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
        list("cylinders", "a list of cylinders", this::cylinder),
        list("volumes", "a list of rules for breaths", this::volume),
        oralAirways(),
        list("sizes", "a list of advice", this::advice),
        list("checkList", "a list of things to have ready", this::item));
  }

  /** Reads one entry of a list. */
  private interface Entry<T> {
    T read(JsonValue each) throws BadInputException;
  }

  private <T> List<T> list(String name, String allowed, Entry<T> entry) throws BadInputException {
    List<T> all = new ArrayList<>();
    for (JsonValue each : top.list(name, 1, allowed)) {
      all.add(entry.read(each));
    }
    return all;
  }

  private Cylinder cylinder(JsonValue each) throws BadInputException {
    String id = each.text("id", 10);
    String label = each.text("label", 60);
    if (each.has("litresPerPsi")) {
      BigDecimal factor = each.number("litresPerPsi", LEAST, MOST, "L/psi");
      BigDecimal fullest = each.number("fullestLitres", LEAST, MOST, "L");
      return Cylinder.byFactor(id, label, factor, fullest, citation(each));
    }
    BigDecimal litres = each.number("contentsLitres", LEAST, MOST, "L");
    BigDecimal bar = each.number("fullBar", BigDecimal.ONE, new BigDecimal("500"), "bar");
    Pressure full = Pressure.of(each.source(), bar, PressureUnit.BAR);
    return Cylinder.byContents(id, label, litres, full, citation(each));
  }

  private VolumeRule volume(JsonValue each) throws BadInputException {
    each.choice("unit", List.of("mL/kg"), u -> u);
    BigDecimal low = each.number("low", BigDecimal.ONE, LARGEST_BREATH, "mL/kg");
    return new VolumeRule(
        each.text("id", 30),
        each.text("label", 60),
        low,
        each.number("high", low, LARGEST_BREATH, "mL/kg"),
        each.number("lightest", LIGHTEST, HEAVIEST, "kg"),
        each.number("heaviest", LIGHTEST, HEAVIEST, "kg"),
        citation(each));
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

  private Advice advice(JsonValue each) throws BadInputException {
    String words = each.text("words", LONGEST_WORDS);
    return new Advice(each.text("topic", 60), each.text("name", 60), words, citation(each));
  }

  private CheckItem item(JsonValue each) throws BadInputException {
    String why = each.text("why", LONGEST_WORDS);
    return new CheckItem(each.text("group", 60), each.text("item", 60), why, citation(each));
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
